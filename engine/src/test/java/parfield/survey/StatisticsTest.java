package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Rock;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.optics.Reflectance;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;

class StatisticsTest {
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5);
  private static final Band SOFT = new Band("soft", 75, 150);
  private static final Band STONY = new Band("stony", 200, 350);

  @Test
  void smallGridByHand() {
    // Three columns, two rows: 100 200 120 / 80 260 140; mean 150, squares about it sum to 23200.
    double[] ppfd = {100, 200, 120, 80, 260, 140};
    Region left = new Region("left", new Rectangle(0, 0.3, 0, 0.6));
    Region nowhere = new Region("nowhere", new Rectangle(0.16, 0.2, 0, 0.1));
    Statistics statistics =
        Statistics.of(TANK, Places.plane(TANK, 0.2, 3, 2), ppfd, List.of(left, nowhere));
    assertThat(statistics.count()).isEqualTo(6);
    assertThat(statistics.mean()).isEqualTo(150);
    assertThat(statistics.min().ppfd()).isEqualTo(80);
    assertThat(statistics.min().place().y()).isCloseTo(0.45, within(1e-12));
    assertThat(statistics.max().ppfd()).isEqualTo(260);
    assertThat(statistics.evenness()).isCloseTo(80 / 150.0, within(1e-15));
    double squares = 50 * 50 + 50 * 50 + 30 * 30 + 70 * 70 + 110 * 110 + 10 * 10;
    assertThat(statistics.variation()).isCloseTo(Math.sqrt(squares / 5) / 150, within(1e-15));
    assertThat(statistics.regions().get(0).mean()).hasValue(90);
    assertThat(statistics.regions().get(0).count()).isEqualTo(2);
    assertThat(statistics.regions().get(1).mean()).isEmpty();
    EndsToCentre ends = statistics.endsToCentre().orElseThrow();
    assertThat(ends.ratio()).hasValue(110 / 230.0);
    assertThat(ends.leftEnd()).isCloseTo(0.15, within(1e-15));
    assertThat(ends.centreFrom()).isCloseTo(0.3, within(1e-15));
    assertThat(ends.centreTo()).isCloseTo(0.6, within(1e-15));
    assertThat(ends.rightEnd()).isCloseTo(0.75, within(1e-15));
  }

  @Test
  void oneReadingHasNoSpreadAndNoEnds() {
    Statistics one =
        Statistics.of(TANK, Places.plane(TANK, 0.2, 1, 1), new double[] {120}, List.of());
    assertThat(one.evenness()).isEqualTo(1);
    assertThat(one.variation()).isEqualTo(0);
    assertThat(one.endsToCentre()).isEmpty();
  }

  @Test
  void darknessIsNotEven() {
    Statistics dark = Statistics.of(TANK, Places.plane(TANK, 0.2, 6, 4), new double[24], List.of());
    assertThat(dark.evenness()).isEqualTo(0);
    assertThat(dark.variation()).isEqualTo(0);
    assertThat(dark.endsToCentre().orElseThrow().ratio()).isEmpty();
  }

  @Test
  void permutingReadingsChangesNothing() {
    for (long seed = 1; seed <= 20; seed++) {
      Survey survey = new SimulatedSurvey(seed).clean();
      List<Reading> shuffled = new ArrayList<>(survey.readings());
      Collections.shuffle(shuffled, new Random(seed));
      List<Band> bands = List.of(SOFT, STONY);
      List<Region> regions = List.of(new Region("front", new Rectangle(0, 2.4, 0, 0.2)));
      SurveyStatistics expected = SurveyStatistics.of(survey, bands, regions);
      SurveyStatistics actual = SurveyStatistics.of(survey.withReadings(shuffled), bands, regions);
      assertThat(actual).as("seed %d", seed).isEqualTo(expected);
    }
  }

  @Test
  void readingsByDepth() {
    Survey simulated = new SimulatedSurvey(1).clean();
    Survey survey =
        simulated.withReadings(
            List.of(
                new Reading(1, new Place(0.1, 0.1, 0.3), 200),
                new Reading(2, new Place(0.1, 0.1, 0.15), 100),
                new Reading(3, new Place(0.2, 0.1, 0.3), 300)));
    SurveyStatistics statistics = SurveyStatistics.of(survey, List.of(SOFT, STONY), List.of());
    assertThat(statistics.all().mean()).isEqualTo(200);
    assertThat(statistics.depths()).hasSize(2);
    assertThat(statistics.depths().get(0).depth()).isEqualTo(0.15);
    assertThat(statistics.depths().get(1).statistics().mean()).isEqualTo(250);
    assertThat(statistics.coverageOfReadings().get(0).inside()).isCloseTo(1 / 3.0, within(1e-15));
    assertThat(statistics.coverageOfReadings().get(0).above()).isCloseTo(2 / 3.0, within(1e-15));
    assertThat(statistics.depths().get(1).coverageOfReadings().get(1).inside()).isEqualTo(1);
  }

  @Test
  void coverageOfAPlaneConvergesToTheExactArea() {
    // PPFD rises evenly from 0 to 450 along x: 75-150 holds exactly a sixth of the area.
    assertThat(rampPlane(90).coverageOfPlane().get(0).inside()).isCloseTo(1 / 6.0, within(0.012));
    assertThat(rampPlane(9000).coverageOfPlane().get(0).inside())
        .isCloseTo(1 / 6.0, within(0.00012));
    Coverage soft = rampPlane(90).coverageOfPlane().get(0);
    assertThat(soft.below() + soft.inside() + soft.above()).isCloseTo(1, within(1e-12));
    assertThat(rampPlane(90).hotSpot().place().x()).isCloseTo(0.9 * 89.5 / 90, within(1e-9));
  }

  private static PlaneStatistics rampPlane(int columns) {
    Places places = Places.plane(TANK, 0.2, columns, 2);
    double[] ppfd = new double[places.size()];
    for (int i = 0; i < ppfd.length; i++) {
      ppfd[i] = 500 * places.x(i);
    }
    return PlaneStatistics.of(TANK, new LightField(places, ppfd), List.of(SOFT), List.of());
  }

  @Test
  void histogramSharesAddUp() {
    Histogram histogram = rampPlane(90).histogram();
    // 20 bins of a maximum near 447 are 22 wide, rounded up to 50.
    assertThat(histogram.width()).isEqualTo(50);
    assertThat(histogram.shares()).hasSize(9);
    assertThat(histogram.shares().get(4)).isCloseTo(1 / 9.0, within(1e-12));
    assertThat(histogram.shares().stream().mapToDouble(d -> d).sum()).isCloseTo(1, within(1e-12));
  }

  @Test
  void volumeIsTheMeanOfItsLayers() {
    Places places = Places.volume(TANK, 6, 4, 5);
    double[] ppfd = new double[places.size()];
    for (int i = 0; i < ppfd.length; i++) {
      ppfd[i] = 400 * places.depth(i);
    }
    VolumeStatistics volume =
        VolumeStatistics.of(TANK, new LightField(places, ppfd), List.of(SOFT), List.of());
    // Layers at 5, 15, 25, 35, 45 cm: PPFD 20, 60, 100, 140, 180.
    assertThat(volume.statistics().mean()).isCloseTo(100, within(1e-9));
    assertThat(volume.coverageOfVolume().get(0).inside()).isCloseTo(0.4, within(1e-12));
    assertThat(volume.layers()).hasSize(5);
    assertThat(volume.layers().get(3).coverageOfPlane().get(0).inside()).isEqualTo(1);
    assertThat(volume.layers().get(3).statistics().mean()).isCloseTo(140, within(1e-9));
  }

  @Test
  void refusesAreaFiguresOfScatteredPlaces() {
    Places scattered = Places.of(List.of(new Place(0.2, 0.1, 0.1), new Place(0.25, 0.1, 0.1)));
    assertThatThrownBy(
            () ->
                PlaneStatistics.of(
                    TANK, new LightField(scattered, new double[2]), List.of(), List.of()))
        .hasMessage(
            "area and volume figures need a field on equal cells (a plane or a volume of places);"
                + " place 0 at x 0.200, y 0.100, depth 0.100 m is not the centre of one");
    Places volume = Places.volume(TANK, 3, 2, 2);
    assertThatThrownBy(
            () ->
                PlaneStatistics.of(
                    TANK, new LightField(volume, new double[12]), List.of(), List.of()))
        .hasMessage("plane statistics need one depth; the field has 2");
    Places plane = Places.plane(TANK, 0.1, 3, 2);
    assertThatThrownBy(
            () ->
                VolumeStatistics.of(
                    TANK, new LightField(plane, new double[6]), List.of(), List.of()))
        .hasMessage(
            "volume figures need layers that fill the water evenly; layer 1 of 1 is at depth 0.100"
                + " m where its middle is 0.250 m");
    assertThatThrownBy(
            () ->
                PlaneStatistics.of(
                    TANK,
                    new LightField(Places.of(List.of()), new double[0]),
                    List.of(),
                    List.of()))
        .hasMessage("area and volume figures need a field; got no place");
  }

  @Test
  void saysWhatIsWrong() {
    Places places = Places.plane(TANK, 0.2, 3, 2);
    assertThatThrownBy(() -> Statistics.of(TANK, places, new double[0], List.of()))
        .hasMessage("statistics need at least one value; got none");
    assertThatThrownBy(() -> Statistics.of(TANK, places, new double[5], List.of()))
        .hasMessage("statistics need one value a place; got 5 values at 6 places");
    double[] withNan = {1, 2, 3, 4, 5, Double.NaN};
    assertThatThrownBy(() -> Statistics.of(TANK, places, withNan, List.of()))
        .hasMessage("statistics need finite values; got NaN at x 0.750, y 0.450, depth 0.200 m");
  }

  @Test
  void whatIsInRockIsNoPartOfPlaneAndVolume() {
    Tank rocky =
        TANK.withAquascape(
            Aquascape.of(
                List.of(
                    new Rock(
                        "block",
                        new Box(
                            TANK.length() / 4,
                            TANK.width() / 2,
                            TANK.depth(),
                            TANK.length() / 2,
                            2,
                            TANK.depth(),
                            0),
                        Reflectance.gray(0.1)))));
    Places places = Places.volume(rocky, 4, 2, 2);
    assertThat(places.size()).isEqualTo(12);
    double[] ppfd = new double[12];
    for (int i = 0; i < 12; i++) {
      ppfd[i] = i < 8 ? 300 : 100;
    }
    VolumeStatistics volume =
        VolumeStatistics.of(rocky, new LightField(places, ppfd), List.of(SOFT), List.of());
    assertThat(volume.statistics().mean()).isCloseTo((8 * 300 + 4 * 100) / 12.0, within(1e-12));
    assertThat(volume.coverageOfVolume().get(0).inside()).isEqualTo(4 / 12.0);
    assertThat(volume.layers()).hasSize(2);
    assertThat(volume.layers().get(0).statistics().mean()).isEqualTo(300);
    assertThat(volume.layers().get(1).coverageOfPlane().get(0).inside()).isEqualTo(1);

    Places plane = Places.plane(rocky, 0.9 * TANK.depth(), 4, 2);
    PlaneStatistics statistics =
        PlaneStatistics.of(
            rocky, new LightField(plane, new double[] {1, 2, 3, 6}), List.of(), List.of());
    assertThat(statistics.statistics().mean()).isEqualTo(3);
    // Places that leave cells out without being told to are no plane.
    List<Place> listed = List.of(plane.get(0), plane.get(1), plane.get(2), plane.get(3));
    assertThatThrownBy(
            () ->
                PlaneStatistics.of(
                    rocky, new LightField(Places.of(listed), new double[4]), List.of(), List.of()))
        .hasMessageContaining("is not the centre of one");
  }
}
