package parfield.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.care.Certainty;
import parfield.care.CoralGroup;
import parfield.survey.Band;
import parfield.units.LengthUnit;

/** Maps of homes, held against arithmetic. */
class HomeMapTest {
  private static final CoralGroup SOFT =
      new CoralGroup(new Band("soft", 90, 180), 4, 6, Certainty.LOW, "invented");
  private static final Scene SCENE = Scene.of(Samples.TANK, LengthUnit.CM);

  /** PPFD falls from 300 to 0 along the tank, 10 to both sides; ten hours of it. */
  private static Raster falling(double off, double factor) {
    return Samples.raster(90, 20, .6, (x, y) -> factor * (300 * (1 - x / .9) + off));
  }

  private static HomeMapSpec spec(CoralGroup group) {
    return new HomeMapSpec(
        new Caption("Homes", "Sample, invented."),
        SCENE,
        falling(-10, 1),
        falling(10, 1),
        falling(-10, .036),
        falling(10, .036),
        group);
  }

  @Test
  @DisplayName("shares of the six classes by arithmetic, in words on plan and section")
  void sharesByArithmetic() {
    HomeMapSpec spec = spec(SOFT);
    HomeVerdicts verdicts =
        new HomeVerdicts(
            Lattice.of(spec.peakLow(), 300, 20),
            Lattice.of(spec.peakHigh(), 300, 20),
            Lattice.of(spec.doseLow(), 300, 20),
            Lattice.of(spec.doseHigh(), 300, 20),
            SOFT);
    // Ends of the classes as PPFD of the best estimate: .036 mol a µmol (.0036 a µmol and hour).
    Map<Verdict, Double> wanted = new EnumMap<>(Verdict.class);
    wanted.put(Verdict.ABOVE, (300 - 190) / 300.0);
    wanted.put(Verdict.BELOW, 80 / 300.0);
    wanted.put(Verdict.DOSE_ABOVE, (190 - (6 / .036 + 10)) / 300);
    wanted.put(Verdict.DOSE_BELOW, (4 / .036 - 10 - 80) / 300);
    wanted.put(Verdict.IN, ((6 / .036 - 10) - (4 / .036 + 10)) / 300);
    wanted.put(Verdict.OPEN, 40 / 300.0);
    assertThat(wanted.values().stream().mapToDouble(d -> d).sum()).isCloseTo(1, within(1e-12));
    wanted.forEach(
        (verdict, share) ->
            assertThat(verdicts.share(verdict, (u, v) -> false))
                .as(verdict.name())
                .isCloseTo(share, within(.005)));
    // Where a class holds its outline's field is 0 or more, and nowhere else.
    for (Verdict verdict : wanted.keySet()) {
      if (verdict != Verdict.OPEN) {
        Lattice margin = verdicts.margin(verdict);
        for (int i = 0; i < 300; i++) {
          assertThat(margin.value(i, 7) >= 0)
              .as(verdict + " at " + i)
              .isEqualTo(verdicts.at(i / 299.0, 7 / 19.0) == verdict);
        }
      }
    }
    for (String svg : List.of(HomeMap.plan(spec), HomeMap.section(spec))) {
      assertThat(Parsed.of(svg).texts())
          .contains(
              "home for soft",
              "too little: peak under 90",
              "too little: dose under 4",
              "too much: dose over 6",
              "too much: peak over 180",
              "too close to call");
      assertThat(svg).contains("<title>Homes</title>", "<desc>Sample, invented.</desc>");
    }
    assertThat(Parsed.of(HomeMap.section(spec)).texts()).contains("water line", "depth, cm");
  }

  @Test
  @DisplayName("classes are told apart without their tints: no two are hatched alike")
  void hatchedUnlike() {
    List<String> signs =
        Arrays.stream(Verdict.values())
            .map(
                verdict -> {
                  Svg svg = new Svg();
                  verdict.hatch(svg, new Frame(0, 0, 40, 40, 1, false), (u, v) -> true);
                  return svg.toString().replaceAll("stroke=\"[^\"]*\"", "");
                })
            .toList();
    assertThat(signs).doesNotHaveDuplicates();
  }

  @Test
  void aClassThatIsNowhereIsNotInTheKey() {
    CoralGroup all = new CoralGroup(new Band("any", 0, 1000), 0, 50, Certainty.LOW, "invented");
    assertThat(Parsed.of(HomeMap.plan(spec(all))).texts())
        .contains("home for any")
        .noneMatch(text -> text.contains("too little") || text.contains("too much"));
    CoralGroup none = new CoralGroup(new Band("none", 900, 1000), 30, 50, Certainty.LOW, "made up");
    assertThat(Parsed.of(HomeMap.plan(spec(none))).texts())
        .contains("home for none", "too little: peak under 900");
  }

  @Test
  void intervalsAreChecked() {
    Raster one = new Raster(2, 2, new double[] {1, 1, 1, 1});
    Raster two = new Raster(2, 2, new double[] {2, 2, 2, 0});
    Raster wide = new Raster(3, 2, new double[] {1, 1, 1, 1, 1, 1});
    Caption caption = new Caption("t", "");
    assertThatThrownBy(() -> new HomeMapSpec(caption, SCENE, one, one, one, two, SOFT))
        .hasMessage(
            "the interval of a dose must run from low to high; got 1.0 to 0.0 in column 1 of row"
                + " 1");
    assertThatThrownBy(() -> new HomeMapSpec(caption, SCENE, one, wide, one, one, SOFT))
        .hasMessage("peaks and doses need the same cells; got 2 x 2 and 3 x 2");
  }
}
