package parfield.web.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import parfield.answer.Refusal;

/** Changes of one block of a setup; a general YAML library reads them back. */
class SetupBlocksTest {
  private static Map<?, ?> read(String text) {
    return (Map<?, ?>) new Load(LoadSettings.builder().build()).loadFromString(text);
  }

  private static String append(String text) {
    return SetupBlocks.append(
        text, "rigs", "new", List.of("new:", "  hang: [7]"), "new: {hang: [7]}");
  }

  private static void assertAppended(String before, String after) {
    assertThat(append(before)).isEqualTo(after);
    assertThat(((Map<?, ?>) read(after).get("rigs")).get("new"))
        .isEqualTo(Map.of("hang", List.of(7)));
  }

  @Test
  void after() {
    assertAppended("rigs:\n  a: 1\nx: 1\n", "rigs:\n  a: 1\n  new:\n    hang: [7]\nx: 1\n");
    assertAppended(
        "rigs:\n    a:\n        b: 1\n",
        "rigs:\n    a:\n        b: 1\n    new:\n      hang: [7]\n");
    assertAppended("rigs:\n  a: 1", "rigs:\n  a: 1\n  new:\n    hang: [7]\n");
    assertAppended("x: 1", "x: 1\nrigs:\n  new:\n    hang: [7]\n");
    assertAppended("rigs:\nx: 1\n", "rigs:\n  new:\n    hang: [7]\nx: 1\n");
    assertAppended("rigs: {}  # none\nx: 1\n", "rigs:  # none\n  new:\n    hang: [7]\nx: 1\n");
    assertAppended("rigs: null\n", "rigs:\n  new:\n    hang: [7]\n");
  }

  @Test
  @DisplayName("comments stay where they are, before the first entry and after the last")
  void comments() {
    String before =
        """
        rigs: # all
        # none
              # deeper
          # the first
          a: 1 # one

          # after
        # x
        x: 1
        """;
    assertAppended(before, before.replace("# one\n", "# one\n  new:\n    hang: [7]\n"));
  }

  @Test
  @DisplayName("in braces, on one line or many")
  void braces() {
    assertAppended("rigs: {a: 1}\nx: 1\n", "rigs: {a: 1, new: {hang: [7]}}\nx: 1\n");
    assertAppended(
        "rigs: {\n  a: {b: 1}, # one\n  c: \"}\" # two\n  }\n",
        "rigs: {\n  a: {b: 1}, # one\n  c: \"}\", new: {hang: [7]} # two\n  }\n");
  }

  @Test
  @DisplayName("lines end as they ended; letters beyond the basic plane do not shift anything")
  void ends() {
    assertAppended(
        "# ü 𝛼 🐠\r\nrigs:\r\n  a: 1\r\nx: 1\r\n",
        "# ü 𝛼 🐠\r\nrigs:\r\n  a: 1\r\n  new:\r\n    hang: [7]\r\nx: 1\r\n");
    assertThat(
            SetupBlocks.replace("a: 1\r\nbands:\r\n  b: 1\r\nx: 1\r\n", "bands", List.of("  c: 2")))
        .isEqualTo("a: 1\r\nbands:\r\n  c: 2\r\nx: 1\r\n");
  }

  @Test
  void spellings() {
    assertThat(append("'RIGS':\n  a: 1\n")).isEqualTo("'RIGS':\n  a: 1\n  new:\n    hang: [7]\n");
    assertAppended(
        "rigs:\n  a: |\n    x\n    y\nx: 1\n",
        "rigs:\n  a: |\n    x\n    y\n  new:\n    hang: [7]\nx: 1\n");
    assertAppended("rigs:\n  a:\n  - b\n", "rigs:\n  a:\n  - b\n  new:\n    hang: [7]\n");
    assertAppended(
        "k: &k {b: 1}\nrigs:\n  a: *k\nx: 1\n",
        "k: &k {b: 1}\nrigs:\n  a: *k\n  new:\n    hang: [7]\nx: 1\n");
  }

  @Test
  void replaces() {
    assertThat(SetupBlocks.replace("a: 1\nbands: {x: 1}\n", "bands", List.of("  c: 2")))
        .isEqualTo("a: 1\nbands:\n  c: 2\n");
    assertThat(
            SetupBlocks.replace(
                "bands: # from a book\n  # soft ones\n  x: 1 # x\n# after\na: 1\n",
                "bands",
                List.of("  c: 2")))
        .isEqualTo("bands: # from a book\n  # soft ones\n  c: 2\n# after\na: 1\n");
    assertThat(
            SetupBlocks.replace("demands:\n- {x: 1}\n- y: 2\n  z: 3\na: 1\n", "demands", List.of()))
        .isEqualTo("a: 1\n");
    assertThat(SetupBlocks.replace("a: 1", "bands", List.of("  c: 2")))
        .isEqualTo("a: 1\nbands:\n  c: 2\n");
    assertThat(SetupBlocks.replace("a: 1", "bands", List.of())).isEqualTo("a: 1");
    assertThat(SetupBlocks.replace("bands:\na: 1\n", "bands", List.of("  c: 2")))
        .isEqualTo("bands:\n  c: 2\na: 1\n");
    assertThat(SetupBlocks.replace("  a: 1\n  bands: {x: 1}\n", "bands", List.of("  c: 2")))
        .isEqualTo("  a: 1\n  bands:\n    c: 2\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{rigs: {a: 1}}",
        "- rigs",
        "",
        "rigs: [",
        "rigs: text\n",
        "rigs: [a]\n",
        "rigs: &r {a: 1}\nothers: *r\n",
        "rigs:\n  a:\n    *k\n",
        "rigs:\n  new: 1\n",
        "x: 1\n...\n",
        "rigs:\n\ta: 1\n",
        "rigs:\t{a: 1}\n",
        "rigs:\r  a: 1\rx: 1",
      })
  @DisplayName("what cannot be changed is refused, with what to do")
  void refused(String text) {
    assertThatThrownBy(() -> append(text))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal ->
                assertThat(refusal.problem().hints().toString()).contains("on the page Set up"));
  }

  @Test
  void refusedInWords() {
    assertThatThrownBy(() -> append("{rigs: {a: 1}}"))
        .hasMessage(
            "the setup is written in one pair of braces: nothing can be changed in it from here");
    assertThatThrownBy(() -> append("rigs: [a]\n"))
        .hasMessage(
            "the setup writes rigs in a way that cannot be changed from here; nothing was saved");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "soft",
        "mixed reef",
        "null",
        "Null",
        "~",
        "true",
        "No",
        "12",
        "1e3",
        "0x10",
        ".inf",
        "a: b",
        "a, b",
        "\"x",
        "it's",
        "#x",
        "a #b",
        "- x",
        "[x]",
        "{x}",
        "&a",
        "*a",
        "!t",
        "|",
        "%x",
        "@x",
        "`x",
        " x ",
        "",
        "a\\b",
        "ü – 🐠",
        "a\u0085b",
        "a\u2028b",
        "\uFEFFx",
        "x\ty",
        "?",
        "2026-11-30",
        "=",
        "<<",
        "a:",
        "on"
      })
  @DisplayName("any name is read back as the text it was, as a key, a value and in brackets")
  void quoted(String name) {
    String scalar = YamlText.quoted(name);

    assertThat(read(scalar + ": {a: [" + scalar + ", " + scalar + "], b: " + scalar + "}\n"))
        .isEqualTo(Map.of(name, Map.of("a", List.of(name, name), "b", name)));
  }
}
