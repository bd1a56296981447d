package parfield.web.meter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which number of a line is the PPFD. The lines are invented after what meters print. */
class LineNumberTest {
  private static Heard read(String text) {
    return LineNumber.read(new LineReader.Line(text, Optional.empty()), OptionalInt.empty());
  }

  private static Heard read(String text, int field) {
    return LineNumber.read(new LineReader.Line(text, Optional.empty()), OptionalInt.of(field));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "123.4 | 123.4 | 0.1",
        "  123,4 | 123,4 | 0.1",
        "123 | 123 | 1",
        "0 | 0 | 1",
        "+12.50 | 12.50 | 0.01",
        "PAR: 123.4 umol | 123.4 | 0.1",
        "PAR=123 | 123 | 1",
        "PPFD 123.4 µmol m⁻² s⁻¹ | 123.4 | 0.1",
        "123.4 umol m-2 s-1 | 123.4 | 0.1",
        "123.4 µmol/m2/s | 123.4 | 0.1",
        "123.4umol/(m^2 s) | 123.4 | 0.1",
        "123.4 umol.m^-2.s^-1 | 123.4 | 0.1",
        "PAR (umol/m2/s): 123.4 | 123.4 | 0.1",
        "123.4 PAR | 123.4 | 0.1",
        "12:00:01 123.4 | 123.4 | 0.1",
        "2026-11-30T12:00:01Z PAR 123.4 umol 25.1 °C | 123.4 | 0.1",
        "25.1 °C; PPFD: 88,2 | 88,2 | 0.1",
        "Light: 71 | 71 | 1",
        "\"71.5\" | 71.5 | 0.1"
      })
  void oneNumberIsMeant(String line, String typed, double step) {
    assertThat(read(line))
        .isEqualTo(new Heard.Value(Double.parseDouble(typed.replace(',', '.')), typed, step));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "hello | it holds no number",
        "12:00:01 | it holds no number",
        "123.4 25.1 | it holds several numbers: say which field of the line the PPFD stands in",
        "PAR 71 umol, PAR 72 umol | it holds several numbers: say which field of the line the PPFD"
            + " stands in",
        "123.4123.5 | 123.4123.5 is no number",
        "12:00:01,123.4 | ,123.4 is no number",
        "12:00:01,5 | ,5 is no number",
        "1.2.3 | 1.2.3 is no number",
        "PAR: 123. umol | 123. is no number",
        "12x3.4 | 12 touches other characters",
        "PAR: 12x3.4 umol | 12 touches other characters",
        "#12 | 12 touches other characters",
        "1E3 | 1 touches other characters",
        "100-200 | 100 touches other characters",
        "25.1 °C | its unit is °, which is no PPFD",
        "25.1 C | its unit is C, which is no PPFD",
        "5300 lux | its unit is lux, which is no PPFD",
        "85 % | its unit is %, which is no PPFD",
        "Error 12 | it speaks of Error, which may be no PPFD: say which field of the line it stands"
            + " in",
        "Battery 85 | it speaks of Battery, which may be no PPFD: say which field of the line it"
            + " stands in",
        "412 umol/mol | it speaks of umol, which may be no PPFD: say which field of the line it"
            + " stands in",
        "1,234 | 1,234 may mean 1234 or 1.234: type the one you mean",
        "-3.2 umol | -3.2 is below 0, which no light is: if the meter shows it in the dark, type 0",
        "999999 | 999999 is above 100000, the most that is taken: look again"
      })
  @DisplayName("what is doubtful is not used, and the reason is told")
  void doubtful(String line, String why) {
    assertThat(read(line)).isEqualTo(new Heard.Ignored(line, why));
  }

  @Test
  @DisplayName("a field of the line may be named")
  void field() {
    assertThat(read("12:00:01,123.4,25.1", 2)).isEqualTo(new Heard.Value(123.4, "123.4", 0.1));
    assertThat(read("12:00:01;123,4;25,1", 2)).isEqualTo(new Heard.Value(123.4, "123,4", 0.1));
    assertThat(read("17 123.4 25.1", 3)).isEqualTo(new Heard.Value(25.1, "25.1", 0.1));
    assertThat(read("a\t5\t7 8", 3))
        .isEqualTo(
            new Heard.Ignored(
                "a 5 7 8",
                "it holds several numbers: say which field of the line the PPFD stands in"));
    assertThat(read("123.4", 2))
        .isEqualTo(new Heard.Ignored("123.4", "it has 1 fields, and field 2 was asked for"));
  }

  @Test
  @DisplayName(
      "a character spoilt by noise makes no other number, unless it is a digit or a separator")
  void noise() {
    long seed = Long.getLong("parfield.seed", 20261130);
    SplittableRandom random = new SplittableRandom(seed);
    for (int round = 0; round < 5000; round++) {
      char[] line = "PAR: 123.4 umol".toCharArray();
      int at = random.nextInt(line.length);
      char spoilt = (char) random.nextInt(33, 127);
      line[at] = spoilt;
      if (at >= 4 && at < 11 && (Character.isDigit(spoilt) || ".,:;=\"+".indexOf(spoilt) >= 0)) {
        continue; // what looks like a reading stands out among the others while it holds still
      }
      Heard heard = read(new String(line));
      if (heard instanceof Heard.Value number) {
        assertThat(number.typed()).as("%s, seed %d", new String(line), seed).isEqualTo("123.4");
      }
    }
  }
}
