package parfield.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.tank.Tank;

/** Invented benches for tests of this room. */
final class Benches {
  static final Band SOFT = new Band("soft", 75, 150);
  static final Band STONY = new Band("stony", 200, 350);
  static final Tank TANK = Tank.of(0.9, 0.6, 0.5);

  private Benches() {}

  /** One point of light with one channel for each intensity given. */
  static Fixture fixture(IntensityDistribution... channels) {
    List<Channel> list = new ArrayList<>();
    for (int c = 0; c < channels.length; c++) {
      list.add(Channel.of(c == 0 ? "blue" : "violet", channels[c]));
    }
    return new Fixture("pendant", 0, 0, List.of(new Emitter(0, 0, 0)), list, List.of());
  }

  /** A rig of some fixtures in a row about the middle of {@link #TANK}. */
  static Rig rig(Fixture fixture, int count, double spacing, double height) {
    return Arrangement.row(Hanging.level(fixture, 0.45, 0.3, height), count, spacing)
        .over(TANK, height);
  }

  static Search search(Fixture fixture, List<Double> heights) {
    return Search.around(List.of(Arrangement.single(pattern(fixture)).over(TANK, 0.2)), 0.2)
        .withHeights(heights);
  }

  static Hanging pattern(Fixture fixture) {
    return Hanging.level(fixture, 0.45, 0.3, 0.2);
  }

  /** A model in which every draw is the same truth: the fixture as it states itself. */
  static LightModel certain() {
    Truth truth = truth(Map.of(), 1);
    return model(truth, List.of(truth, truth));
  }

  /** A model of "pendant" whose draws differ in exponent (by ± spread) and meter scale (by 5 %). */
  static LightModel uncertain(double peak, double exponent, double spread, int draws, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Truth> truths = new ArrayList<>();
    for (int d = 0; d < draws; d++) {
      truths.add(
          truth(
              peak,
              exponent * Math.exp(spread * random.nextGaussian()),
              Math.exp(0.05 * random.nextGaussian())));
    }
    return model(truth(peak, exponent, 1), truths);
  }

  /** A truth in which "pendant" is one cosine-power lobe. */
  static Truth truth(double peak, double exponent, double meterScale) {
    return truth(Map.of("pendant", List.of(new CosinePower(peak, exponent))), meterScale);
  }

  static LightModel model(Truth best, List<Truth> draws) {
    return new LightModel(
        best, draws, 0, new FitReport(List.of(), List.of(), List.of(), List.of(), 0));
  }

  private static Truth truth(Map<String, List<IntensityDistribution>> lobes, double meterScale) {
    return new Truth(lobes, List.of(1.0, 1.0, 1.0, 1.0), 0, 0, 0, 0, 0, 0, meterScale);
  }
}
