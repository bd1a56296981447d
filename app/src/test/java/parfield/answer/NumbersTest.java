package parfield.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parfield.tank.Place;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** Numbers, tables and JSON as answers write them. */
class NumbersTest {
  @Test
  void figuresAreRoundedToWhatTheyMean() {
    assertThat(Numbers.ppfd(391.6)).isEqualTo("392");
    assertThat(Numbers.ppfd(new Estimate(391.6, 371.2, 415.4))).isEqualTo("392 (371–415)");
    assertThat(Numbers.percent(0.7149)).isEqualTo("71");
    assertThat(Numbers.percent(new Estimate(0.71, 0.66, 0.754))).isEqualTo("71 (66–75)");
    assertThat(Numbers.ratio(new Estimate(0.866, 0.84, 0.9))).isEqualTo("0.87 (0.84–0.90)");
    assertThat(Numbers.ratio(OptionalDouble.empty())).isEqualTo("–");
    assertThat(Numbers.finePercent(-0.0001)).isEqualTo("0.0");
  }

  @Test
  void anIntervalThatBeginsBelowZeroIsReadable() {
    assertThat(Numbers.plain(new Estimate(0.123, -0.51, 0.7101), 3))
        .isEqualTo("0.123 (-0.51 to 0.71)");
  }

  @Test
  void lengthsAreToTheMillimetreOrTheHundredthOfAnInch() {
    assertThat(Numbers.withUnit(0.15, LengthUnit.CM)).isEqualTo("15 cm");
    assertThat(Numbers.withUnit(0.1234, LengthUnit.CM)).isEqualTo("12.3 cm");
    assertThat(Numbers.withUnit(0.1524, LengthUnit.INCH)).isEqualTo("6 in");
    assertThat(Numbers.withUnit(0.15, LengthUnit.INCH)).isEqualTo("5.91 in");
    assertThat(Numbers.spot(new Place(0.075, 0.3, 0.1), LengthUnit.CM)).isEqualTo("7.5, 30");
  }

  @Test
  void tablesAlignTheirColumnsAndEndTheirLinesCleanly() {
    Table table = new Table("lrl", "band", "U₀", "of").row("soft", "0.5", "").row("a", "12", "b");

    assertThat(table.text())
        .isEqualTo(
            """
            band   U₀  of
            soft  0.5
            a      12  b
            """);
  }

  @Test
  void aRowHasACellForEachColumn() {
    assertThatThrownBy(() -> new Table("lr", "a", "b").row("1"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a row of this table has 2 cells; got 1");
  }

  @Test
  void jsonNamesUnitsAndKeepsWhatIsNotKnownApart() {
    ObjectNode json = Json.object();
    Json.length(json, "height", 0.1);
    Json.length(json, "x", 0.07 * 3);
    Json.ppfd(json, "mean", new Estimate(391.648, 371, 415));
    Json.number(json, "share", 1 / 3.0);
    Json.number(json, "zero", -1e-9);
    Json.number(json, "unknown", OptionalDouble.empty());
    Json.number(json, "endless", Double.POSITIVE_INFINITY);

    assertThat(json.toString())
        .isEqualTo(
            "{\"height_cm\":10.0,\"x_cm\":21.0,\"mean_umol_m2_s\":{\"value\":391.65,\"low\":371.0,"
                + "\"high\":415.0},\"share\":0.3333,\"zero\":0.0,\"unknown\":null,"
                + "\"endless\":null}");
  }

  @Test
  void sectionsWithoutEntriesAreLeftOut() {
    assertThat(Lines.section("Assumed", List.of())).isEmpty();
    assertThat(Lines.section("Assumed", List.of("a.", "b.")))
        .isEqualTo("\nAssumed\n  - a.\n  - b.\n");
  }
}
