package parfield.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.formats.Setup;
import parfield.plan.Demand;

/** Bands and demands on their way from the setup to the page and back. */
class DemandPageTest {
  @TempDir private static Path folder;
  private static TestServer server;
  private UUID id;

  @BeforeAll
  static void start() {
    server = TestServer.start(folder);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  @BeforeEach
  void sample() {
    id = server.sample();
  }

  private String at() {
    return "/bench/" + id + "/recommend";
  }

  private String text() {
    return server.workspace().benches().setup(id).text();
  }

  private long revision() {
    return server.workspace().benches().setup(id).revision();
  }

  private Setup setup() {
    return server.server().desk().benches().open(id).setupOrRefuse();
  }

  private void store(String text) {
    server.workspace().benches().saveSetup(id, revision(), text, "test");
  }

  /** The sample's text with other demands. */
  private static String demanding(String text, String demands) {
    return text.substring(0, text.indexOf("demands:")) + demands;
  }

  private List<Map.Entry<String, String>> form() {
    return HtmlForm.fields(server.get(at()).body(), "/recommend/demands");
  }

  private static List<Map.Entry<String, String>> with(
      List<Map.Entry<String, String>> form, String name, int which, String value) {
    List<Map.Entry<String, String>> changed = new ArrayList<>();
    int seen = 0;
    for (Map.Entry<String, String> field : form) {
      boolean hit = field.getKey().equals(name) && seen++ == which;
      changed.add(hit ? Map.entry(name, value) : field);
    }
    return changed;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{band: soft, coverage: 0.705}",
        "{band: stony, coverage: 0.5, of: living surface}",
        "{band: stony, coverage: 0.5, of: plane, depth: 12.5}",
        "{retention: 0.85, of: lowest height}",
        "{retention: 0.85, depth: 15}",
        "{retention: 0.8, of: living surface}",
        "{evenness: 0.333333}",
        "{evenness: 0.4, of: plane, depth: 40}",
        "{ends_to_centre: 1.25, depth: 15}",
        "{ends to centre: 0.75}",
        "{hot spot: 350.5}",
        "{hot-spot: 400, of: living surface}",
        "{mean ppfd: [100, 250.5]}",
        "{mean_ppfd: [0, 300], depth: 20}"
      })
  @DisplayName("every kind of demand survives the way from the text to the page and back")
  void kinds(String demand) {
    store(demanding(text(), "demands:\n  - " + demand + "\n"));
    List<Demand> demanded = setup().demands();
    List<Map.Entry<String, String>> form = form();
    store(demanding(text(), ""));
    assertThat(setup().demands()).isEmpty();

    HttpResponse<String> answer =
        server.post(at() + "/demands", with(form, "revision", 0, String.valueOf(revision())));

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(302);
    assertThat(setup().demands()).isEqualTo(demanded).hasSize(1);
  }

  @Test
  @DisplayName("what was not changed stays as it is written, comments too")
  void unchanged() {
    String before = text();
    server.post(at() + "/demands", form());
    assertThat(text()).isEqualTo(before);

    server.post(at() + "/demands", with(form(), "band-to", 0, "170"));
    assertThat(text()).isEqualTo(before.replace("to: 160", "to: 170"));
  }

  @Test
  @DisplayName("with a demand of a zone, bands can be changed and the demands stay")
  void zones() {
    String zoned =
        demanding(
            text(),
            "demands:\n  - {band: stony, coverage: 0.5, zone: {x: [20, 40]}}\n  - {evenness: 0.2}\n");
    store(zoned);

    server.post(at() + "/demands", with(form(), "band-from", 1, "190"));

    assertThat(text()).isEqualTo(zoned.replace("from: 180", "from: 190"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "true",
        "12",
        "a: b",
        "\"x",
        "it's, {so}",
        "# no",
        "- a",
        "null",
        "ü 🐠",
        "0x10",
        "~"
      })
  @DisplayName("a band may have any name: it is written so that it is read back")
  void names(String name) {
    List<Map.Entry<String, String>> form = with(form(), "band-name", 1, name);

    HttpResponse<String> answer =
        server.post(at() + "/demands", with(form, "demand-band", 0, name));

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(302);
    assertThat(setup().bands()).containsOnlyKeys("soft", name);
    assertThat(((Demand.Coverage) setup().demands().get(0)).band().name()).isEqualTo(name);
  }

  @Test
  @DisplayName("what is typed but not chosen is asked for, and what is chosen away is gone")
  void rows() {
    HttpResponse<String> nothing =
        server.post(at() + "/demands", with(form(), "demand-value", 3, "70"));
    assertThat(nothing.statusCode()).isEqualTo(422);
    assertThat(nothing.body())
        .contains("a demand says 70 but not of what")
        .contains("choose what it asks for, or empty its fields")
        .contains("name=\"demand-value\" value=\"70\"");

    HttpResponse<String> less =
        server.post(at() + "/demands", with(form(), "demand-kind", 1, "DELETE"));
    assertThat(less.statusCode()).isEqualTo(302);
    assertThat(setup().demands()).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1, 5", "12d", "0x1p3", "NaN", "1e3", "3 4", "--2", ""})
  @DisplayName("what is no number is none, not half of one")
  void noNumbers(String typed) {
    HttpResponse<String> answer = server.post(at() + "/demands", with(form(), "band-to", 0, typed));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("upper end of band soft: got");
  }

  @ParameterizedTest
  @ValueSource(strings = {"170", "170,0", "170.", "170 µmol m⁻² s⁻¹", "170µmol", "+170", " 170 "})
  void numbers(String typed) {
    server.post(at() + "/demands", with(form(), "band-to", 0, typed));

    assertThat(setup().bands().get("soft").to()).isEqualTo(170);
  }
}
