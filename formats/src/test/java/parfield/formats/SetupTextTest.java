package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Changes of a setup's text: the value reads as asked, and all else stays as it was written. */
class SetupTextTest {
  private static final SetupPath TANK = SetupPath.root().key("tank");
  private static final SetupPath RIGS = SetupPath.root().key("rigs");

  private static final String SETUP =
      """
      # 𝄞 a bench
      parfield: 1
      tank:   # the big one
        length: 90   # inner
        "width" : 60
        Walls: {left: clean, back: {painted: true}}  # as seen
        my_key: kept

      rigs:
        low:
          hang:
            # first
            - {fixture: bar, x: 45, y: 30, height: 18}
            - fixture: bar   # second
              x: 60
              y: 30
              height: 18
        empty:
      meters: {probe, other: {}}
      # the end
      """;

  private static SetupText text() {
    return SetupText.of("setup.yaml", SETUP);
  }

  private static SetupValue figure(String text) {
    return new SetupValue.Figure(text);
  }

  @Test
  @DisplayName("a number is replaced in its place, by whatever quotes and capitals it is named")
  void replaced() {
    SetupText changed =
        text()
            .with(TANK.key("length"), figure("100.5"))
            .with(TANK.key("width"), figure("61"))
            .with(TANK.key("walls").key("back"), new SetupValue.Text("film"))
            .with(RIGS.name("low").key("hang").at(1).key("x"), figure("-7"));

    assertThat(changed.text())
        .isEqualTo(
            SETUP
                .replace("length: 90", "length: 100.5")
                .replace("\"width\" : 60", "\"width\" : 61")
                .replace("{painted: true}", "film")
                .replace("x: 60", "x: -7"));
  }

  @Test
  @DisplayName("what is added goes to the end of its map or list, in that one's own layout")
  void added() {
    SetupText changed =
        text()
            .with(TANK.key("rim"), figure("2"))
            .with(TANK.key("walls").key("right"), new SetupValue.Text("it's"))
            .with(RIGS.name("low").key("hang").at(1).key("yaw"), figure("90"))
            .with(
                RIGS.name("low").key("hang").at(2), new SetupValue.Fields(Map.of("x", figure("1"))))
            .with(RIGS.name("empty").key("dials").name("blue"), figure("50"))
            .with(SetupPath.root().key("meters").name("probe").key("applied"), figure("true"))
            .with(SetupPath.root().key("meters").name("other").key("applied"), figure("false"))
            .with(SetupPath.root().key("bands").name("soft").key("from"), figure("80"));

    assertThat(changed.text())
        .isEqualTo(
            SETUP
                .replace("my_key: kept\n", "my_key: kept\n  rim: 2\n")
                .replace("{painted: true}}", "{painted: true}, right: 'it''s'}")
                .replace(
                    "height: 18\n  empty:\n",
                    "height: 18\n        yaw: 90\n      - {x: 1}\n  empty: {dials: {blue: 50}}\n")
                .replace(
                    "{probe, other: {}}\n",
                    "{probe: {applied: true}, other: {applied: false}}\nbands: {soft: {from: 80}}\n"));
  }

  @Test
  @DisplayName("what is taken away takes its own lines, and leaves the comments about others")
  void takenAway() {
    assertThat(text().without(TANK.key("width")).text())
        .isEqualTo(SETUP.replace("  \"width\" : 60\n", ""));
    assertThat(text().without(TANK.key("walls").key("left")).text())
        .isEqualTo(SETUP.replace("left: clean, ", ""));
    assertThat(text().without(RIGS.name("low").key("hang").at(1)).text())
        .isEqualTo(
            SETUP.replace(
                "      - fixture: bar   # second\n        x: 60\n        y: 30\n        height: 18\n",
                ""));
    assertThat(text().without(RIGS.name("low").key("hang").at(1).key("fixture")).text())
        .isEqualTo(SETUP.replace("- fixture: bar   # second\n        x: 60", "- x: 60"));
    assertThat(text().without(SetupPath.root().key("meters").name("probe")).text())
        .isEqualTo(SETUP.replace("probe, ", ""));
    assertThat(text().without(TANK.key("nothing")).text()).isEqualTo(SETUP);
    assertThat(text().without(TANK).without(RIGS).text())
        .isEqualTo("# 𝄞 a bench\nparfield: 1\n\nmeters: {probe, other: {}}\n# the end\n");
  }

  @Test
  @DisplayName("a name is changed where it stands; one that is taken is refused")
  void renamed() {
    assertThat(text().renamed(RIGS.name("low"), "very: low").text())
        .isEqualTo(SETUP.replace("low:", "'very: low':"));
    assertThatThrownBy(() -> text().renamed(RIGS.name("low"), "empty"))
        .isInstanceOf(InvalidFile.class)
        .hasMessage(
            "setup.yaml:10: rigs.low: got empty, allowed a name that is not taken yet; choose"
                + " another name");
  }

  @Test
  @DisplayName("a key of the format is found however it is written, a name only letter by letter")
  void keysAndNames() {
    SetupText text = SetupText.of("setup.yaml", "fixtures: {Bar: 1}\nscale_error: 2\n");
    assertThat(text.value(SetupPath.root().key("scale error"))).hasValue(figure("2"));
    assertThat(text.value(SetupPath.root().key("fixtures").name("bar"))).isEmpty();
    assertThat(text.with(SetupPath.root().key("fixtures").name("bar"), figure("3")).text())
        .startsWith("fixtures: {Bar: 1, bar: 3}");
  }

  @Test
  @DisplayName("what an anchor repeats, and texts in lines of their own, are left to the text")
  void refused() {
    SetupText anchored = SetupText.of("setup.yaml", "a: &x {b: 1}\nc: *x\nd: |\n  text\n");
    assertThatThrownBy(() -> anchored.with(SetupPath.root().key("c").key("b"), figure("2")))
        .isInstanceOf(InvalidFile.class)
        .hasMessage(
            "setup.yaml: c.b cannot be changed from a form, for an anchor (&) repeats what stands"
                + " there: change it in the text of the setup");
    assertThatThrownBy(() -> anchored.without(SetupPath.root().key("a")))
        .isInstanceOf(InvalidFile.class);
    assertThatThrownBy(() -> anchored.with(SetupPath.root().key("e"), figure("2")))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining("a text in lines of its own");
    assertThatThrownBy(() -> text().with(TANK.key("length").key("deeper"), figure("1")))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining("another value stands where this belongs");
  }

  @Test
  @DisplayName("texts of any letters read back as they were, and never as numbers")
  void anyText() {
    SetupText text = text();
    for (String odd :
        List.of(
            "",
            " ",
            "1",
            "1e3",
            "true",
            "Null",
            "~",
            "- a",
            "a: b",
            "a #b",
            "it's",
            "\"",
            "\\",
            "{x}",
            "[",
            "*a",
            "&a",
            "!a",
            "|",
            "%",
            "@",
            "a,b",
            "tab\there",
            "line\nbreak",
            "ä Ö ∞",
            "𝄞",
            "\u0085",
            "\u2028",
            "-",
            "?",
            ":",
            "a:",
            "#")) {
      assertThat(text.with(TANK.key("my key"), new SetupValue.Text(odd)).value(TANK.key("my key")))
          .as(odd)
          .hasValue(new SetupValue.Text(odd));
      if (!odd.isEmpty()) {
        assertThat(text.renamed(RIGS.name("low"), odd).names(RIGS)).containsExactly(odd, "empty");
      }
    }
  }

  /** A document laid out by chance, with the comments in it and what each is about. */
  private static final class Layout {
    private final SplittableRandom random;
    private final String lineBreak;
    private final Map<String, SetupPath> comments = new LinkedHashMap<>();
    private final List<SetupPath> places = new ArrayList<>();
    private final StringBuilder out = new StringBuilder();

    Layout(SplittableRandom random) {
      this.random = random;
      this.lineBreak = random.nextInt(4) == 0 ? "\r\n" : "\n";
      block(tree(0, true), SetupPath.root(), 0, true);
      if (random.nextInt(5) == 0) {
        out.setLength(out.length() - lineBreak.length());
      }
    }

    private boolean chance(int of) {
      return random.nextInt(of) == 0;
    }

    private SetupValue tree(int depth, boolean collection) {
      if (!collection && (depth > 3 || chance(2))) {
        return switch (random.nextInt(6)) {
          case 0 -> new SetupValue.Nothing();
          case 1 -> new SetupValue.Text("word " + random.nextInt(100));
          case 2 -> new SetupValue.Text("it's: {odd}, #" + random.nextInt(100));
          case 3 -> figure(random.nextInt(1000) + "." + random.nextInt(10));
          case 4 -> figure("true");
          default -> figure(String.valueOf(random.nextInt(-50, 50)));
        };
      }
      int count = 1 + random.nextInt(4);
      if (depth > 0 && chance(2)) {
        List<SetupValue> elements = new ArrayList<>();
        for (int i = 0; i < count; i++) {
          elements.add(tree(depth + 1, false));
        }
        return new SetupValue.Items(elements);
      }
      Map<String, SetupValue> entries = new LinkedHashMap<>();
      for (int i = 0; i < count; i++) {
        entries.put(chance(4) ? "odd: " + i : "k" + i, tree(depth + 1, false));
      }
      return new SetupValue.Fields(entries);
    }

    private String comment(SetupPath about) {
      String comment = "# c" + comments.size() + "; {about}";
      comments.put(comment, about);
      return comment;
    }

    private void end(SetupPath about) {
      out.append(chance(3) ? "  " + comment(about) : "").append(lineBreak);
    }

    private void between(SetupPath holder, int indent) {
      if (chance(6)) {
        out.append(" ".repeat(indent)).append(comment(holder)).append(lineBreak);
      }
      if (chance(8)) {
        out.append(lineBreak);
      }
    }

    /** Entries in lines of their own; the first may stand where the writer is. */
    private void block(SetupValue value, SetupPath path, int indent, boolean atLineStart) {
      boolean first = !atLineStart;
      if (value instanceof SetupValue.Fields fields) {
        for (Map.Entry<String, SetupValue> entry : fields.entries().entrySet()) {
          if (!first) {
            between(path, indent);
            out.append(" ".repeat(indent));
          }
          first = false;
          SetupPath below = path.name(entry.getKey());
          places.add(below);
          out.append(SetupValue.key(entry.getKey())).append(chance(6) ? " :" : ":");
          body(entry.getValue(), below, indent + 1 + random.nextInt(3), false);
        }
      } else {
        List<SetupValue> elements = ((SetupValue.Items) value).elements();
        for (int i = 0; i < elements.size(); i++) {
          if (!first) {
            between(path, indent);
            out.append(" ".repeat(indent));
          }
          first = false;
          SetupPath below = path.at(i);
          places.add(below);
          out.append('-');
          body(elements.get(i), below, indent + 2, true);
        }
      }
    }

    private void body(SetupValue value, SetupPath path, int indent, boolean inList) {
      if (value instanceof SetupValue.Nothing) {
        end(path);
        return;
      }
      boolean collection = value instanceof SetupValue.Fields || value instanceof SetupValue.Items;
      if (collection && chance(2)) {
        if (inList && value instanceof SetupValue.Fields) {
          out.append(' ');
          block(value, path, indent, false);
        } else {
          end(path);
          block(value, path, indent, true);
        }
        return;
      }
      out.append(' ');
      flow(value, path);
      end(path);
    }

    private void flow(SetupValue value, SetupPath path) {
      if (value instanceof SetupValue.Fields fields) {
        out.append('{');
        String separator = chance(4) ? " " : "";
        for (Map.Entry<String, SetupValue> entry : fields.entries().entrySet()) {
          SetupPath below = path.name(entry.getKey());
          places.add(below);
          out.append(separator).append(SetupValue.key(entry.getKey()));
          if (!(entry.getValue() instanceof SetupValue.Nothing)) {
            out.append(": ");
            flow(entry.getValue(), below);
          } else if (chance(2)) {
            out.append(":");
          }
          separator = separator(path);
        }
        out.append(chance(4) ? ",}" : chance(4) ? " }" : "}");
      } else if (value instanceof SetupValue.Items items) {
        out.append('[');
        String separator = "";
        for (int i = 0; i < items.elements().size(); i++) {
          places.add(path.at(i));
          out.append(separator);
          flow(items.elements().get(i), path.at(i));
          separator = separator(path);
        }
        out.append(']');
      } else {
        out.append(value.inline());
      }
    }

    private String separator(SetupPath holder) {
      if (chance(10)) {
        return "," + lineBreak + " ".repeat(20);
      }
      return chance(14) ? ", " + comment(holder) + lineBreak + " ".repeat(20) : ", ";
    }
  }

  private static boolean below(SetupPath path, SetupPath holder) {
    return path.steps().size() >= holder.steps().size()
        && path.steps().subList(0, holder.steps().size()).equals(holder.steps());
  }

  @Test
  @DisplayName("in documents laid out by chance a change is that change and no other")
  void property() {
    long seed = Long.getLong("seed", 20261130L);
    SplittableRandom seeds = new SplittableRandom(seed);
    int changes = 0;
    for (int round = 0; round < 600; round++) {
      long own = seeds.nextLong();
      SplittableRandom random = new SplittableRandom(own);
      Layout layout = new Layout(random);
      String document = layout.out.toString();
      // A comment that was drawn for a separator after the last element was not written.
      layout.comments.keySet().removeIf(comment -> !document.contains(comment));
      SetupText text = SetupText.of("chance.yaml", document);
      for (int i = 0; i < 8; i++) {
        SetupPath path = layout.places.get(random.nextInt(layout.places.size()));
        String told =
            "seed " + seed + ", round " + round + ", at " + path.text() + " of\n" + document;
        int kind = random.nextInt(5);
        boolean inside = false;
        SetupText changed;
        try {
          if (kind == 0) {
            if (path.steps().size() == 1 && text.names(SetupPath.root()).size() == 1) {
              continue;
            }
            changed = text.without(path);
            inside = true;
            if (!(path.steps().get(path.steps().size() - 1) instanceof SetupPath.At)) {
              assertThat(changed.value(path)).as(told).isEmpty();
            }
          } else if (kind == 1
              && !(path.steps().get(path.steps().size() - 1) instanceof SetupPath.At)) {
            changed = text.renamed(path, "new 'name'");
            assertThat(changed.names(path.parent())).as(told).contains("new 'name'");
          } else if (kind == 2 && text.value(path).get() instanceof SetupValue.Fields) {
            changed = text.with(path.name("added"), layout.tree(2, false));
          } else if (kind == 2 && text.value(path).get() instanceof SetupValue.Items items) {
            changed = text.with(path.at(items.elements().size()), layout.tree(2, false));
          } else {
            SetupValue value = layout.tree(2, false);
            changed = text.with(path, value);
            inside = true;
            assertThat(changed.value(path)).as(told).hasValue(value);
          }
        } catch (InvalidFile e) {
          throw new AssertionError(told, e);
        }
        changes++;
        // Every line without anything of this path in it is still there; so are the comments.
        for (Map.Entry<String, SetupPath> comment : layout.comments.entrySet()) {
          boolean may = inside && below(comment.getValue(), path);
          if (!may) {
            assertThat(changed.text()).as(told).contains(comment.getKey());
          }
        }
        for (SetupPath other : layout.places) {
          if (!below(other, path) && !below(path, other) && kind != 0) {
            assertThat(changed.value(other)).as(told).isEqualTo(text.value(other));
          }
        }
        assertThat(changed.text().replace("\r\n", "").contains("\r")).as(told).isFalse();
        if (layout.lineBreak.equals("\r\n") && document.contains("\r\n")) {
          assertThat(changed.text().replace("\r\n", "")).as(told).doesNotContain("\n");
        }
      }
    }
    assertThat(changes).isGreaterThan(4_000);
  }
}
