package parfield.web.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.tank.Place;
import parfield.units.LengthUnit;
import parfield.web.measure.PastedBlock.Comma;

/** Blocks from spreadsheets, laid over a grid of 3 columns and 2 rows. */
class PastedBlockTest {
  private static final UUID SURVEY = new UUID(1, 2);
  private static final List<GridPoint> POINTS = points();

  private static List<GridPoint> points() {
    List<GridPoint> points = new ArrayList<>();
    for (double y : new double[] {0.1, 0.3}) {
      for (double x : new double[] {0.15, 0.45, 0.75}) {
        points.add(GridPoint.of(SURVEY, new Place(x, y, 0.25), points.size() + 1));
      }
    }
    return points;
  }

  private static PastedBlock.Onto onto() {
    return onto(Optional.empty(), false);
  }

  private static PastedBlock.Onto onto(Optional<UUID> start, boolean frontFirst) {
    return new PastedBlock.Onto(
        POINTS,
        0.25,
        LengthUnit.CM,
        POINTS.stream().map(GridPoint::reading).toList(),
        start,
        frontFirst);
  }

  private static List<String> placed(PastedBlock block) {
    return block.cells().stream().map(cell -> cell.point().order() + "=" + cell.value()).toList();
  }

  @Test
  @DisplayName("a list goes where its rows say, decimal commas and units included")
  void list() {
    PastedBlock block =
        PastedBlock.of(
            "X (cm);Y (cm);Depth (cm);PAR\n15;10;25;71,5\n75;30;25;93 µmol\n50;10;25;80\n15;30;25;\n",
            Comma.AUTO,
            onto());

    assertThat(placed(block)).containsExactly("1=71.5", "6=93.0");
    assertThat(block.problems())
        .containsExactly("row 4: the grid has no place at x 50, y 10, depth 25 cm");
    assertThat(block.layout()).startsWith("A list with a row of names");
  }

  @Test
  void gridWithPositions() {
    PastedBlock block =
        PastedBlock.of("y\\x\t15\t45\t75\n30\t1\t2\t3\n10\t4\t\tfive\n", Comma.AUTO, onto());

    assertThat(placed(block)).containsExactly("4=1.0", "5=2.0", "6=3.0", "1=4.0");
    assertThat(block.problems())
        .containsExactly("row 3, column 4: five is no number: type one as in 71.5 or 71,5");
  }

  @Test
  @DisplayName("numbers below each other go along the way")
  void way() {
    PastedBlock block = PastedBlock.of("PAR\n71,5\n80\n90", Comma.AUTO, onto());

    assertThat(placed(block)).containsExactly("1=71.5", "2=80.0", "3=90.0");
    assertThat(block.layout()).endsWith("The first line is a heading.");
  }

  @Test
  void moreNumbersThanPlaces() {
    PastedBlock block = PastedBlock.of("1\n2\n3\n4\n5\n6\n7\n", Comma.AUTO, onto());

    assertThat(block.cells()).hasSize(6);
    assertThat(block.problems()).containsExactly("line 7: no place is left to read at this depth");
  }

  @Test
  @DisplayName("a block without positions lies as in the tank from above, or front first")
  void table() {
    String text = "1\t2\t3\n4\t5\t6";

    assertThat(placed(PastedBlock.of(text, Comma.AUTO, onto())))
        .containsExactly("4=1.0", "5=2.0", "6=3.0", "1=4.0", "2=5.0", "3=6.0");
    assertThat(placed(PastedBlock.of(text, Comma.AUTO, onto(Optional.empty(), true))))
        .containsExactly("1=1.0", "2=2.0", "3=3.0", "4=4.0", "5=5.0", "6=6.0");
  }

  @Test
  void fromACellOn() {
    PastedBlock block =
        PastedBlock.of("1\t2\t3", Comma.AUTO, onto(Optional.of(POINTS.get(1).reading()), false));

    assertThat(placed(block)).containsExactly("2=1.0", "3=2.0");
    assertThat(block.problems()).containsExactly("row 1, column 3: beyond the edge of the table");
  }

  @Test
  @DisplayName("commas are read as a person says where they may mean two things")
  void commas() {
    assertThat(placed(PastedBlock.of("71,5\n80,2", Comma.AUTO, onto())))
        .containsExactly("1=71.5", "2=80.2");
    assertThat(placed(PastedBlock.of("71,5\n80,2", Comma.SEPARATOR, onto())))
        .containsExactly("4=71.0", "5=5.0", "1=80.0", "2=2.0");
    assertThat(placed(PastedBlock.of("71.5,60,50", Comma.AUTO, onto())))
        .containsExactly("4=71.5", "5=60.0", "6=50.0");
    assertThat(PastedBlock.commasMayMeanTwoThings("71,5\n80,2")).isTrue();
    assertThat(PastedBlock.commasMayMeanTwoThings("71,5\t80,2")).isFalse();
  }

  @Test
  void tooMuch() {
    assertThat(PastedBlock.of("1".repeat(200_001), Comma.AUTO, onto()).problems())
        .containsExactly(
            "The block has 200001 characters; at most 200000 are taken: paste it in parts");
    assertThat(
            PastedBlock.of(String.join("\n", Collections.nCopies(10_001, "1")), Comma.AUTO, onto())
                .problems())
        .containsExactly("The block has 10001 cells; at most 10000 are taken: paste it in parts");
    assertThat(PastedBlock.of(" \n", Comma.AUTO, onto()).problems())
        .containsExactly("There is nothing in the block: copy the cells, then paste them here");
  }
}
