package parfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.lamp.Fixture;
import parfield.lamp.HarmonicIntensity;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.tank.Tank;

/** Updates under a made-up law of light that costs nothing, so that many draws can be weighed. */
class ModelUpdateTest {
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5).withBottomReflectance(0.3);
  private static final Fixture LAMP = SimulatedBench.unknown(SimulatedBench.oval());
  private static final Rig RIG =
      new Rig("there", TANK, List.of(Hanging.level(LAMP, 0.45, 0.3, 0.2)));
  private static final Meter OTHER = new Meter("other", 1, true, 0, 0.06, 0.02, 0.003, 0);
  private static final List<Place> PLACES =
      List.of(new Place(0.2, 0.2, 0.4), new Place(0.45, 0.3, 0.1), new Place(0.8, 0.5, 0.25));

  /** Inverse squares, absorbed by yellowing and helped by clear panes and a pale bottom. */
  private static final FieldSolver LAW =
      (rig, places) -> {
        double[] ppfd = new double[places.size()];
        Tank tank = rig.tank();
        double clear = rig.tank().walls().left().clear() + rig.tank().walls().back().clear();
        for (Hanging hanging : rig.hangings()) {
          for (int i = 0; i < ppfd.length; i++) {
            double down = hanging.height() + places.depth(i);
            double aside = Math.hypot(places.x(i) - hanging.x(), places.y(i) - hanging.y());
            double gamma = Math.atan2(aside, down);
            double intensity =
                hanging
                    .fixture()
                    .channels()
                    .get(0)
                    .distribution()
                    .orElseThrow()
                    .intensity(gamma, 0);
            ppfd[i] +=
                intensity
                    * Math.cos(gamma)
                    / (down * down + aside * aside)
                    * Math.exp(-4 * tank.water().yellowing() * places.depth(i))
                    * (0.6 + 0.2 * clear * aside + 0.4 * tank.bottomReflectance());
          }
        }
        return new UnitFields(rig, places, new double[][][] {{ppfd}});
      };

  private static LightModel published(int draws) {
    SplittableRandom random = new SplittableRandom(5);
    List<Truth> truths = new ArrayList<>();
    for (int d = 0; d < draws; d++) {
      truths.add(
          truth(
              60 * Math.exp(0.05 * random.nextGaussian()),
              3 * Math.exp(0.1 * random.nextGaussian()),
              Math.exp(0.05 * random.nextGaussian())));
    }
    return new LightModel(
        truth(60, 3, 1),
        truths,
        0.01,
        new FitReport(List.of(), List.of(), List.of(), List.of(), 0.02));
  }

  private static Truth truth(double peak, double exponent, double scale) {
    return new Truth(
        Map.of("pendant", List.of(lobe(peak, exponent))),
        List.of(1.0, 1.0, 1.0, 1.0),
        0.3,
        0.05,
        0,
        0,
        0,
        0.03,
        scale);
  }

  /** A cosine-power lobe in the form that a fit leaves. */
  private static HarmonicIntensity lobe(double peak, double exponent) {
    double[] nodes = new double[LampBasis.NODES];
    for (int i = 0; i < nodes.length; i++) {
      double cosine = Math.cos(Math.PI / 2 * i / (nodes.length - 1));
      nodes[i] = Math.log(peak) + exponent * Math.log(Math.max(0.03, cosine));
    }
    return new HarmonicIntensity(new double[][] {nodes}, new double[0][]);
  }

  private static LightModel transferred(int draws) {
    return Transfer.to(TANK, published(draws), List.of(LAMP)).withMeter(OTHER).model();
  }

  private static double[] light(Truth truth, List<Place> places) {
    return LAW.solve(truth.applyTo(RIG), Places.of(places)).ppfd();
  }

  private static Survey survey(Meter meter, double... shown) {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < shown.length; i++) {
      readings.add(new Reading(0, PLACES.get(i), shown[i]));
    }
    return new Survey("check", RIG, meter, readings);
  }

  /** Readings that one draw would give, off by some shares. */
  private static double[] readings(LightModel model, int draw, double... off) {
    double[] shown = light(model.draws().get(draw), PLACES);
    for (int i = 0; i < shown.length; i++) {
      shown[i] *= 1 + off[i];
    }
    return shown;
  }

  /** Mean and deviation of ln true PPFD at some places, by weights. */
  private static double[][] lnTrue(LightModel model, double[] weights, List<Place> places) {
    double[] mean = new double[places.size()];
    double[] square = new double[places.size()];
    double all = 0;
    for (int d = 0; d < weights.length; d++) {
      Truth draw = model.draws().get(d);
      double[] light = light(draw, places);
      all += weights[d];
      for (int i = 0; i < light.length; i++) {
        double ln = Math.log(light[i] * draw.meterScale());
        mean[i] += weights[d] * ln;
        square[i] += weights[d] * ln * ln;
      }
    }
    for (int i = 0; i < mean.length; i++) {
      mean[i] /= all;
      square[i] = Math.sqrt(square[i] / all - mean[i] * mean[i]);
    }
    return new double[][] {mean, square};
  }

  /** Importance weights: what Bayes' rule makes of 20,000 draws, without linearising. */
  @Test
  void theUpdateIsThatOfBayesRuleOnManyDraws() {
    LightModel model = transferred(20_000);
    double[] shown = readings(model, 17, 0.02, -0.01, 0.015);
    Sightings sightings = new Sightings(LAW, List.of(survey(OTHER, shown)));
    double[] errors = sightings.errors(model.best());
    double[][] covariance = sightings.covariance(List.of(0, 1, 2), errors, model.discrepancy());
    Matrix precision = Matrix.of(covariance).inverse();
    double[] weights = new double[model.draws().size()];
    for (int d = 0; d < weights.length; d++) {
      double[] said = light(model.draws().get(d), PLACES);
      Matrix off = Matrix.zeros(3, 1);
      for (int i = 0; i < 3; i++) {
        off.set(i, 0, Math.log(shown[i] / said[i]));
      }
      weights[d] = Math.exp(-0.5 * off.transposed().times(precision).times(off).get(0, 0));
    }
    List<Place> elsewhere =
        List.of(new Place(0.45, 0.3, 0.4), new Place(0.1, 0.5, 0.2), new Place(0.7, 0.2, 0.1));
    double[][] exact = lnTrue(model, weights, elsewhere);
    double[][] before = lnTrue(model, ones(weights.length), elsewhere);

    LightModel few = transferred(400);
    LightModel after = ModelUpdate.of(few, LAW, List.of(survey(OTHER, shown))).model();
    double[][] found = lnTrue(after, ones(400), elsewhere);

    for (int i = 0; i < 3; i++) {
      assertThat(exact[1][i]).isLessThan(0.9 * before[1][i]);
      assertThat(found[0][i]).isCloseTo(exact[0][i], within(0.35 * exact[1][i]));
      assertThat(found[1][i]).isBetween(0.8 * exact[1][i], 1.25 * exact[1][i]);
    }
    assertThat(after.best().meterScale()).isEqualTo(1);
    assertThat(after.draws()).hasSize(400);
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    java.util.Arrays.fill(ones, 1);
    return ones;
  }

  @Test
  void aWildReadingIsSetAsideAndNamed() {
    LightModel model = transferred(96);
    double[] shown = readings(model, 3, 0, 0, 0.9);
    ModelUpdate update = ModelUpdate.of(model, LAW, List.of(survey(OTHER, shown)));

    assertThat(update.setAside()).hasSize(1);
    ModelUpdate.SetAside aside = update.setAside().get(0);
    assertThat(aside.place()).isEqualTo(PLACES.get(2));
    assertThat(aside.sigmas()).isGreaterThan(4);
    assertThat(aside.expected()).isCloseTo(shown[2] / 1.9, within(0.15 * shown[2]));
    assertThat(update.expected()).hasSize(2);
    assertThat(update.model().report().statements())
        .anyMatch(
            said ->
                said.startsWith("Reading 3 of survey check, at x 80, y 50, depth 25 cm, shows ")
                    && said.endsWith("it was set aside. Read it again."));
  }

  @Test
  void soundReadingsAreAllBelieved() {
    LightModel model = transferred(96);
    ModelUpdate update =
        ModelUpdate.of(model, LAW, List.of(survey(OTHER, readings(model, 3, 0.01, -0.02, 0.01))));
    assertThat(update.setAside()).isEmpty();
    assertThat(update.surprising()).isFalse();
    for (ModelUpdate.Expected expected : update.expected()) {
      assertThat(Math.abs(expected.after() / expected.ppfd() - 1)).isLessThanOrEqualTo(0.03);
    }
    assertThat(update.model().report().residuals()).hasSize(3);
  }

  @Test
  void readingsThatContradictTheModelAreCalledSo() {
    LightModel model = transferred(96);
    ModelUpdate update =
        ModelUpdate.of(model, LAW, List.of(survey(OTHER, readings(model, 3, 0.8, 0.8, 0.8))));
    assertThat(update.surprising()).isTrue();
    assertThat(update.model().report().statements())
        .anyMatch(said -> said.startsWith("The readings lie farther from what was expected"));
  }

  @Test
  void aReadingWithoutLightTellsNothing() {
    LightModel model = transferred(96);
    double[] shown = readings(model, 3, 0, 0, -1);
    ModelUpdate update = ModelUpdate.of(model, LAW, List.of(survey(OTHER, shown)));
    assertThat(update.setAside()).hasSize(1);
    assertThatThrownBy(() -> ModelUpdate.of(model, LAW, List.of(survey(OTHER, 0, 0))))
        .isInstanceOf(UnfittableException.class)
        .hasMessage(
            "every reading is 0 after the ambient is subtracted; check the meter and its ambient");
    assertThatThrownBy(() -> ModelUpdate.of(model, LAW, List.of()))
        .hasMessage("there is no reading to update the model by; enter one");
  }

  /** A common scale of another meter is no news of the light: the true light hardly moves. */
  @Test
  void anotherMetersScaleIsNotTakenForLight() {
    LightModel model = Transfer.to(TANK, published(400), List.of(LAMP)).model();
    Meter exact = new Meter("exact", 1, true, 0, 0, 0.005, 0, 0);
    Meter vague = new Meter("vague", 1, true, 0, 0.5, 0.005, 0, 0);
    double[] shown = light(model.best(), PLACES);
    for (int i = 0; i < shown.length; i++) {
      shown[i] *= 1.1;
    }
    Survey first = survey(exact, light(model.best(), PLACES)[0]);
    Survey second =
        new Survey(
            "second",
            RIG,
            vague,
            List.of(
                new Reading(0, PLACES.get(1), shown[1]), new Reading(0, PLACES.get(2), shown[2])));

    LightModel after = ModelUpdate.of(model, LAW, List.of(first, second)).model();

    double[] now = light(after.best(), PLACES);
    double[] before = light(model.best(), PLACES);
    assertThat(now[1] / before[1]).isBetween(0.97, 1.03);
  }
}
