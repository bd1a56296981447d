package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parfield.survey.Reading;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

class ReadingsFileTest {
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5);

  private final Notes notes = new Notes();

  private List<Reading> read(String text) {
    return read(text, LengthUnit.CM, OptionalDouble.empty());
  }

  private List<Reading> read(String text, LengthUnit unit, OptionalDouble depth) {
    List<Reading> readings =
        ReadingsFile.read(
            "low.csv",
            text.getBytes(StandardCharsets.UTF_8),
            new ReadingsFile.Context(unit, depth, Optional.of(TANK)),
            notes);
    notes.throwIfFaulty();
    return readings;
  }

  private static Reading reading(int line, double x, double y, double depth, double value) {
    return new Reading(line, new Place(x, y, depth), value);
  }

  @Test
  void takesColumnsInAnyOrderWithTheirUnits() {
    assertThat(
            read(
                """
                # a comment
                PAR [µmol/m²/s], Depth (in) ,station,y [cm],X_cm

                120,6,A1,20,10
                # another

                130,8,A2,40,90
                """))
        .containsExactly(
            reading(4, 10 * 0.01, 20 * 0.01, 6 * 0.0254, 120),
            reading(7, 0.9, 40 * 0.01, 8 * 0.0254, 130));
    assertThat(notes.assumptions()).containsExactly("low.csv: the column station is not used");
  }

  @Test
  void takesTheSetupsUnitWhereNoneIsStatedAndSaysSo() {
    assertThat(
            read("x,y_in,depth,ppfd_umol\n10,10,5,100\n", LengthUnit.INCH, OptionalDouble.empty()))
        .containsExactly(reading(2, 10 * 0.0254, 10 * 0.0254, 5 * 0.0254, 100));
    assertThat(notes.assumptions())
        .containsExactly("low.csv states no unit for depth, x: in taken, as in the setup");
  }

  @Test
  void takesSemicolonsTabsAndDecimalCommas() {
    List<Reading> expected =
        List.of(
            reading(2, 7.5 * 0.01, 10 * 0.01, 15 * 0.01, 1200.5),
            reading(3, 10 * 0.01, 10 * 0.01, 15 * 0.01, 1.234));
    assertThat(read("x_cm;y_cm;depth_cm;ppfd\n7,5;10;15;1200,5\n10;10;15;1,234\n"))
        .isEqualTo(expected);
    assertThat(read("x_cm\ty_cm\tdepth_cm\tppfd\n7,5\t10\t15\t1200,5\n10\t10\t15\t1,234\n"))
        .isEqualTo(expected);
    assertThat(notes.assumptions())
        .containsExactly("low.csv: commas within numbers are taken as decimal commas");
    assertThat(read("x_cm;y_cm;depth_cm;ppfd\n7.5;10;15;1200.5\n10;10;15;1.234\n"))
        .isEqualTo(expected);
    assertThat(read("x_cm,y_cm,depth_cm,ppfd\n7.5,10,15,1.2005e3\n10,+10,15.,\"1.234\"\n"))
        .isEqualTo(expected);
  }

  @Test
  void takesTheDepthOfAListFromAStatementOrFromTheSurvey() {
    List<Reading> stated = read("# Depth: 15 cm\nx_cm,y_cm,ppfd\n10,10,100\n");
    assertThat(stated).containsExactly(reading(3, 0.1, 0.1, 0.15, 100));
    assertThat(read("x_cm,y_cm,ppfd\n10,10,100\n", LengthUnit.CM, OptionalDouble.of(15)))
        .containsExactly(reading(2, 0.1, 0.1, 0.15, 100));
  }

  @Test
  void takesAGridAsATable() {
    assertThat(
            read(
                """
                # depth 15 cm
                y\\x (cm),10,20,30
                40,1,,3
                20,4,5,6
                """))
        .containsExactly(
            reading(3, 10 * 0.01, 40 * 0.01, 15 * 0.01, 1),
            reading(3, 30 * 0.01, 40 * 0.01, 15 * 0.01, 3),
            reading(4, 10 * 0.01, 20 * 0.01, 15 * 0.01, 4),
            reading(4, 20 * 0.01, 20 * 0.01, 15 * 0.01, 5),
            reading(4, 30 * 0.01, 20 * 0.01, 15 * 0.01, 6));
    assertThat(notes.assumptions())
        .containsExactly("low.csv: empty cells of its grids, taken as places not measured: 1");
  }

  @Test
  void takesTheDepthOfAGridWhereverAPersonPutsIt() {
    List<Reading> expected = List.of(reading(3, 0.1, 0.2, 0.15, 7));
    assertThat(read("# depth = 15 cm\n,10\n20,7\n")).isEqualTo(expected);
    assertThat(read("depth 15 cm,\n,10\n20,7\n")).isEqualTo(expected);
    assertThat(read("depth,15,cm\n,10\n20,7\n")).isEqualTo(expected);
    assertThat(read("Depth;15\n;10\n20;7\n")).isEqualTo(expected);
    assertThat(read("\ndepth 15 cm,10,20\n20,7,\n")).isEqualTo(expected);
    assertThat(read("\n,10,\n20,7\n", LengthUnit.CM, OptionalDouble.of(15))).isEqualTo(expected);
  }

  @Test
  void takesSeveralGridsAndListsOneAfterTheOther() {
    assertThat(
            read(
                """
                # depth 15 cm
                cm,10,20
                10,1,2
                ,,
                # depth 6 in
                in,10,20
                10,3,4

                x_cm,y_cm,depth_cm,ppfd
                5,5,20,5
                """))
        .containsExactly(
            reading(3, 10 * 0.01, 10 * 0.01, 15 * 0.01, 1),
            reading(3, 20 * 0.01, 10 * 0.01, 15 * 0.01, 2),
            reading(7, 10 * 0.0254, 10 * 0.0254, 6 * 0.0254, 3),
            reading(7, 20 * 0.0254, 10 * 0.0254, 6 * 0.0254, 4),
            reading(10, 5 * 0.01, 5 * 0.01, 20 * 0.01, 5));
    assertThat(notes.assumptions()).isEmpty();
  }

  @Test
  void takesAPlaceOnAPaneThatRoundingPutsOutside() {
    // 35.433071 in is 0.9000000034 m, in a tank 0.9 m long.
    assertThat(read("x_in,y_in,depth_in,ppfd\n35.433071,0,0,100\n"))
        .containsExactly(reading(2, 0.9, 0, 0, 100));
  }

  @Test
  void readsAHundredThousandReadings() {
    StringBuilder text = new StringBuilder("x_cm,y_cm,depth_cm,ppfd\n");
    for (int i = 0; i < 100_000; i++) {
      text.append(i % 90).append(".5,").append(i % 60).append(",15,").append(i % 1000).append('\n');
    }
    List<Reading> readings = read(text.toString());

    assertThat(readings).hasSize(100_000);
    assertThat(readings.get(99_999).line()).isEqualTo(100_001);
    assertThat(readings.get(99_999).value()).isEqualTo(999);
  }

  @Test
  void refusesMoreThanAMillionRows() {
    String text = "x_cm,y_cm,depth_cm,ppfd\n" + "1,1,1,1\n".repeat(1_000_000);
    List<String> messages = new ArrayList<>();
    try {
      read(text);
    } catch (InvalidFile e) {
      e.faults().forEach(fault -> messages.add(fault.message()));
    }
    assertThat(messages)
        .containsExactly(
            "low.csv:1000001: number of rows: got more, allowed 1000000; split the file into"
                + " several surveys");
  }

  @Test
  void countsFaultsBeyondTheFirstFifty() {
    List<String> messages = new ArrayList<>();
    try {
      read("x_cm,y_cm,depth_cm,ppfd\n" + "1,1,1,-1\n".repeat(5000));
    } catch (InvalidFile e) {
      e.faults().forEach(fault -> messages.add(fault.message()));
    }
    assertThat(messages).hasSize(51);
    assertThat(messages.get(50)).isEqualTo("low.csv: 4950 more faults: mend those above first");
  }
}
