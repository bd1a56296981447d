package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Rock;
import parfield.optics.Reflectance;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

class GridPlanTest {
  @Test
  void greatestSpacingOfEn12464() {
    // EN 12464-1, p = 0.2 · 5^(log10 d), from memory: 1.2 m gives 0.23 m; 1 m gives 0.2 m and 10 m
    // gives 1 m by the formula's own form.
    assertThat(GridPlan.greatestSpacing(1.2)).isCloseTo(0.23, within(0.005));
    assertThat(GridPlan.greatestSpacing(1)).isEqualTo(0.2);
    assertThat(GridPlan.greatestSpacing(10)).isEqualTo(1.0);
  }

  @Test
  void readsCentresCornersAndWallMiddlesOfAMetricTank() {
    GridPlan plan = GridPlan.of(Tank.of(0.9, 0.6, 0.5), List.of(0.15), LengthUnit.CM);
    assertThat(centimetres(plan))
        .containsExactly(
            "2.0 2.0",
            "45.0 2.0",
            "88.0 2.0", //
            "82.5 7.5",
            "67.5 7.5",
            "52.5 7.5",
            "37.5 7.5",
            "22.5 7.5",
            "7.5 7.5", //
            "2.0 30.0",
            "7.5 22.5",
            "22.5 22.5",
            "37.5 22.5",
            "52.5 22.5",
            "67.5 22.5", //
            "82.5 22.5",
            "88.0 30.0", //
            "82.5 37.5",
            "67.5 37.5",
            "52.5 37.5",
            "37.5 37.5",
            "22.5 37.5",
            "7.5 37.5", //
            "7.5 52.5",
            "22.5 52.5",
            "37.5 52.5",
            "52.5 52.5",
            "67.5 52.5",
            "82.5 52.5", //
            "88.0 58.0",
            "45.0 58.0",
            "2.0 58.0");
  }

  @Test
  void usesWholeQuartersOfAnInch() {
    Tank tank = Tank.of(LengthUnit.INCH.toMetres(36), LengthUnit.INCH.toMetres(24), 0.5);
    GridPlan plan = GridPlan.of(tank, List.of(0.15), LengthUnit.INCH);
    for (Place place : plan.places()) {
      assertThat(4 * LengthUnit.INCH.fromMetres(place.x()) % 1).satisfies(GridPlanTest::isWhole);
      assertThat(4 * LengthUnit.INCH.fromMetres(place.y()) % 1).satisfies(GridPlanTest::isWhole);
    }
    assertThat(LengthUnit.INCH.fromMetres(plan.places().get(0).x())).isCloseTo(0.75, within(1e-9));
  }

  private static void isWhole(double remainder) {
    assertThat(Math.min(remainder, 1 - remainder)).isLessThan(1e-9);
  }

  @Test
  void staysHandyFromCubeToLongTank() {
    // Cells no wider than EN 12464-1 asks for and than common practice (15 cm, no source).
    assertThat(count(0.45, 0.45)).isEqualTo(4 * 4 + 8);
    assertThat(count(0.6, 0.45)).isEqualTo(5 * 4 + 8);
    assertThat(count(0.9, 0.6)).isEqualTo(6 * 4 + 8);
    assertThat(count(1.2, 0.6)).isEqualTo(8 * 4 + 8);
    assertThat(count(2.4, 0.75)).isEqualTo(16 * 5 + 8);
  }

  private static int count(double length, double width) {
    return GridPlan.of(Tank.of(length, width, 0.5), List.of(0.15), LengthUnit.CM).places().size();
  }

  @Test
  void mergesPlacesThatASensorCannotTellApart() {
    // A tank 9 cm wide: its wall middles lie on its one row, 2.5 cm from the panes' corners.
    GridPlan plan = GridPlan.of(Tank.of(0.05, 0.05, 0.3), List.of(0.1), LengthUnit.CM, 1, 1);
    for (int i = 0; i < plan.places().size(); i++) {
      for (int j = 0; j < i; j++) {
        Place a = plan.places().get(i);
        Place b = plan.places().get(j);
        assertThat(Math.hypot(a.x() - b.x(), a.y() - b.y())).isGreaterThanOrEqualTo(0.02 - 1e-9);
      }
    }
    assertThat(plan.places()).hasSizeLessThan(9);
  }

  @Test
  void everyPlanIsInsideMirrorSymmetricWithoutDoublesAndShortToWalk() {
    long seed = 20260101;
    SplittableRandom random = new SplittableRandom(seed);
    for (int round = 0; round < 200; round++) {
      Tank tank =
          Tank.of(
              0.3 + 2.1 * random.nextDouble(),
              0.3 + 0.6 * random.nextDouble(),
              0.3 + 0.5 * random.nextDouble());
      LengthUnit unit = random.nextBoolean() ? LengthUnit.CM : LengthUnit.INCH;
      GridPlan plan = GridPlan.of(tank, List.of(0.1, 0.25), unit);
      Set<String> seen = new HashSet<>();
      for (Place place : plan.places()) {
        assertThat(tank.contains(place)).as("seed %d, %s in %s", seed, place, tank).isTrue();
        assertThat(seen.add(key(place.x(), place.y(), place.depth())))
            .as("seed %d, double of %s", seed, place)
            .isTrue();
      }
      for (Place place : plan.places()) {
        assertThat(seen)
            .as("seed %d, mirror image of %s in %s", seed, place, tank)
            .contains(key(tank.length() - place.x(), tank.width() - place.y(), place.depth()));
      }
      double way = 0;
      for (int i = 1; i < plan.places().size(); i++) {
        Place a = plan.places().get(i - 1);
        Place b = plan.places().get(i);
        way += Math.hypot(a.x() - b.x(), a.y() - b.y());
      }
      int rows = (int) plan.places().stream().mapToDouble(Place::y).distinct().count();
      assertThat(way)
          .as("seed %d, way through %s", seed, tank)
          .isLessThan(2 * ((rows + 1) * tank.length() + 2 * tank.width()));
    }
  }

  private static String key(double x, double y, double depth) {
    return Math.round(x * 1e6) + " " + Math.round(y * 1e6) + " " + Math.round(depth * 1e6);
  }

  @Test
  void readsTheNextDepthOnTheWayBack() {
    List<Place> places =
        GridPlan.of(Tank.of(0.9, 0.6, 0.5), List.of(0.15, 0.3), LengthUnit.CM).places();
    Place last = places.get(places.size() / 2 - 1);
    assertThat(places.get(places.size() / 2)).isEqualTo(new Place(last.x(), last.y(), 0.3));
  }

  @Test
  void takesAPersonsOwnGridAsItIs() {
    List<Place> own = List.of(new Place(0.31, 0.2, 0.1), new Place(0.1, 0.2, 0.4));
    assertThat(GridPlan.own(Tank.of(0.9, 0.6, 0.5), own).places()).isEqualTo(own);
  }

  @Test
  void saysWhatIsWrong() {
    Tank tank = Tank.of(0.9, 0.6, 0.5);
    assertThatThrownBy(() -> GridPlan.of(tank, List.of(), LengthUnit.CM))
        .hasMessage("a grid needs at least one depth to read at; got none");
    assertThatThrownBy(() -> GridPlan.of(tank, List.of(0.15, 0.6), LengthUnit.CM))
        .hasMessage("a depth to read at must lie above 0 and within the water's 0.5 m; got 0.6 m");
    assertThatThrownBy(() -> GridPlan.of(tank, List.of(Double.NaN), LengthUnit.CM))
        .hasMessageContaining("got NaN m");
    assertThatThrownBy(() -> GridPlan.of(tank, List.of(0.15), LengthUnit.CM, 0, 4))
        .hasMessage("a grid needs at least one cell each way; got 0 x 4");
    assertThatThrownBy(() -> GridPlan.of(tank, List.of(0.15), LengthUnit.CM, 60, 4))
        .hasMessage(
            "cells of a grid must be at least as wide as a sensor, 0.02 m; 60 x 4 cells are 0.015 m"
                + " wide");
    assertThatThrownBy(() -> GridPlan.own(tank, List.of()))
        .hasMessage("a grid needs at least one place to read; got none");
    assertThatThrownBy(
            () ->
                GridPlan.own(
                    tank,
                    List.of(
                        new Place(0.95, 0.2, 0.1),
                        new Place(0.5, 0.2, 0.1),
                        new Place(0.5, 0.2, 0.7))))
        .hasMessage(
            "places of a grid must lie in the water, 0.9 x 0.6 m and 0.5 m deep, and in no rock; outside: x 0.950, y"
                + " 0.200, depth 0.100 m; x 0.500, y 0.200, depth 0.700 m");
    assertThatThrownBy(() -> GridPlan.greatestSpacing(0))
        .hasMessage("an area's side must be above 0 m; got 0.0 m");
  }

  private static List<String> centimetres(GridPlan plan) {
    return plan.places().stream()
        .map(
            place ->
                Math.round(place.x() * 1000) / 10.0 + " " + Math.round(place.y() * 1000) / 10.0)
        .toList();
  }

  @Test
  void placesInRockAreNotRead() {
    Tank clear = Tank.of(0.9, 0.6, 0.5);
    Tank rocky =
        clear.withAquascape(
            Aquascape.of(
                List.of(
                    new Rock(
                        "block", new Box(0.2, 0.3, 0.4, 0.4, 2, 0.2, 0), Reflectance.gray(0.2)))));
    List<Double> depths = List.of(0.1, 0.4);
    List<Place> all = GridPlan.of(clear, depths, LengthUnit.CM).places();
    assertThat(GridPlan.of(rocky, depths, LengthUnit.CM).places())
        .isEqualTo(all.stream().filter(place -> place.depth() < 0.3 || place.x() >= 0.4).toList())
        .hasSizeLessThan(all.size());
    assertThatThrownBy(() -> GridPlan.own(rocky, List.of(new Place(0.1, 0.1, 0.4))))
        .hasMessage(
            "places of a grid must lie in the water, 0.9 x 0.6 m and 0.5 m deep, and in no rock;"
                + " outside: x 0.100, y 0.100, depth 0.400 m");
  }
}
