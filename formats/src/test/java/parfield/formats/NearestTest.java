package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class NearestTest {
  @Test
  void countsInsertionsDeletionsReplacementsAndSwaps() {
    assertThat(Nearest.distance("", "")).isZero();
    assertThat(Nearest.distance("width", "width")).isZero();
    assertThat(Nearest.distance("widt", "width")).isEqualTo(1);
    assertThat(Nearest.distance("widtth", "width")).isEqualTo(1);
    assertThat(Nearest.distance("wisth", "width")).isEqualTo(1);
    assertThat(Nearest.distance("widht", "width")).isEqualTo(1);
    assertThat(Nearest.distance("", "width")).isEqualTo(5);
    // The textbook pairs of Levenshtein's distance; and the one that tells the restricted form
    // (3) from the unrestricted one (2). From memory.
    assertThat(Nearest.distance("kitten", "sitting")).isEqualTo(3);
    assertThat(Nearest.distance("saturday", "sunday")).isEqualTo(3);
    assertThat(Nearest.distance("ca", "abc")).isEqualTo(3);
  }

  @Test
  void isTheSameBothWays() {
    SplittableRandom random = new SplittableRandom(3);
    for (int i = 0; i < 2000; i++) {
      String a = word(random);
      String b = word(random);
      assertThat(Nearest.distance(a, b)).as("%s, %s", a, b).isEqualTo(Nearest.distance(b, a));
    }
  }

  private static String word(SplittableRandom random) {
    StringBuilder word = new StringBuilder();
    for (int length = random.nextInt(7); length > 0; length--) {
      word.append((char) ('a' + random.nextInt(3)));
    }
    return word.toString();
  }

  @Test
  void namesTheNearestOnlyIfItIsNear() {
    List<String> known = List.of("length", "width", "water");
    assertThat(Nearest.of("lenght", known)).contains("length");
    assertThat(Nearest.of("WIDTH", known)).contains("width");
    assertThat(Nearest.of("watre", known)).contains("water");
    assertThat(Nearest.of("colour", known)).isEmpty();
    assertThat(Nearest.of("z", List.of("x"))).isEmpty();
    assertThat(Nearest.of("w".repeat(1000), known)).isEmpty();
  }

  @Test
  void readsNumbersStrictly() {
    for (String number : List.of("0", "-1", "+2.5", ".5", "5.", "1e3", "1.5E-2", "007")) {
      assertThat(NumberText.parse(number)).as(number).isEqualTo(Double.parseDouble(number));
    }
    for (String none :
        List.of(
            "",
            ".",
            "-",
            "e3",
            "1e",
            "1e+",
            "1d",
            "1f",
            "0x10",
            "NaN",
            "Infinity",
            "1e999",
            "1_0",
            "1 0",
            " 1",
            "١",
            "1.2.3",
            "--1")) {
      assertThat(NumberText.parse(none)).as(none).isNaN();
    }
    assertThat(NumberText.parse("1,5", ',')).isEqualTo(1.5);
    assertThat(NumberText.parse("1.5", ',')).isNaN();
    assertThat(NumberText.shown(100_000)).isEqualTo("100000");
    assertThat(NumberText.shown(1 / 3.0)).isEqualTo("0.333333");
    assertThat(NumberText.shown(-0.5)).isEqualTo("-0.5");
    assertThat(NumberText.shown(1e-9)).isEqualTo("1.00000e-09");
  }
}
