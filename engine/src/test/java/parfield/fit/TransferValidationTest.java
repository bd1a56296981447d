package parfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.lamp.Setting;
import parfield.photon.Effort;
import parfield.photon.PhotonTracer;
import parfield.photon.TracedField;
import parfield.photon.Wanted;
import parfield.photon.Watch;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.units.Estimate;

/**
 * Light models fitted to noisy readings in one tank and applied to others: the light there, counted
 * by the reference solver, lies within the stated transfer error.
 *
 * <p>Everything is invented and drawn by seeds: the first bench, its readings and its meter's
 * scale, anew for each two tanks; the other tanks, what is stated of them, how wrong that is, and
 * another specimen of the fixture. {@code -Dparfield.transfer=200} takes 200 tanks instead of
 * eight.
 */
class TransferValidationTest {
  private static final long SEED = 20_261_130;

  /** From so many tanks on it is a proof, and the reference counts as closely as for one. */
  private static final int PROOF = 100;

  /** Standard error of the counted light at each place: for a proof, and in haste. */
  private static final double COUNTED_TO = 0.015;

  private static final double COUNTED_IN_HASTE = 0.03;

  /** Side of the squares over which the reference solver counts [m]. */
  private static final double SENSOR = 0.05;

  private static final int TANKS_OF_ONE_MODEL = 2;

  /** What became of one tank. */
  private record Line(
      double meanError, Estimate stated, boolean held, int placesHeld, int places, double error) {}

  @Test
  void theLightInOtherTanksLiesWithinTheStatedTransferError() {
    int tanks = Integer.getInteger("parfield.transfer", 8);
    List<Line> lines = new ArrayList<>();
    LightModel model = null;
    for (int n = 0; n < tanks; n++) {
      if (n % TANKS_OF_ONE_MODEL == 0) {
        model = model(SEED + 1_000L + n);
      }
      Line line = line(model, SEED + n, tanks >= PROOF ? COUNTED_TO : COUNTED_IN_HASTE);
      lines.add(line);
      System.out.printf(
          Locale.ROOT,
          "tank %3d: mean %+6.1f %% (%+.1f to %+.1f %%)%s, %d of %d places, counted to %.1f %%%n",
          n,
          100 * line.meanError,
          100 * line.stated.low(),
          100 * line.stated.high(),
          line.held ? "" : " OUTSIDE",
          line.placesHeld,
          line.places,
          100 * line.error);
    }
    long held = lines.stream().filter(Line::held).count();
    int placesHeld = lines.stream().mapToInt(Line::placesHeld).sum();
    int places = lines.stream().mapToInt(Line::places).sum();
    System.out.printf(
        Locale.ROOT,
        "seed %d: the mean of %d of %d tanks (%.1f %%) and %.1f %% of %d places lie within; median"
            + " size of the error of the mean %.1f %%%n",
        SEED,
        held,
        tanks,
        100.0 * held / tanks,
        100.0 * placesHeld / places,
        places,
        100 * median(lines.stream().mapToDouble(l -> Math.abs(l.meanError)).toArray()));
    // Nine in ten of 200; of eight, chance puts three outside in one of 27 cases at that rate, so
    // that five must lie within: seeds are fixed, what is asked is what they give.
    assertThat(held / (double) tanks).isGreaterThanOrEqualTo(tanks >= PROOF ? 0.9 : 5 / 8.0);
    assertThat(placesHeld / (double) places).isGreaterThanOrEqualTo(tanks >= PROOF ? 0.88 : 0.7);
    assertThat(lines).allMatch(line -> line.stated.high() - line.stated.low() < 0.5);
  }

  private static Line line(LightModel model, long seed, double countedTo) {
    OtherTank other = OtherTank.of(seed);
    Places places = Places.of(other.places());
    TracedField counted =
        new PhotonTracer(Effort.until(countedTo, seed))
            .trace(other.real(), Wanted.at(places).withSensor(SENSOR), Watch.patient());
    FastSolver solver = new FastSolver();
    LightModel there =
        Transfer.to(
                other.stated().tank(), model, List.of(other.stated().hangings().get(0).fixture()))
            .model();
    PredictedField field = there.predict(solver, other.stated(), places);
    Estimate[] stated = field.withMeterScale();
    double sum = 0;
    int held = 0;
    for (int i = 0; i < stated.length; i++) {
      double truth = counted.downwelling(i);
      sum += truth;
      held += truth >= stated[i].low() && truth <= stated[i].high() ? 1 : 0;
    }
    double meanError = sum / Arrays.stream(field.best()).sum() - 1;
    Estimate ofMean = TransferError.of(field, other.stated().name()).mean();
    return new Line(
        meanError,
        ofMean,
        meanError >= ofMean.low() && meanError <= ofMean.high(),
        held,
        stated.length,
        counted.worstError());
  }

  /** A model of readings at two heights, taken with a meter whose scale is off. */
  private static LightModel model(long seed) {
    SimulatedBench bench = SimulatedBench.worn(seed);
    Meter meter = SimulatedBench.METER;
    double shown = 1 / (1 + meter.scaleError() * new SplittableRandom(seed + 7).nextGaussian());
    List<Survey> surveys = new ArrayList<>();
    for (double height : new double[] {0.15, 0.3}) {
      Survey survey =
          bench.survey(
              "at " + height,
              SimulatedBench.oval(),
              meter,
              height,
              Setting.full(),
              6,
              4,
              0.15,
              0.35);
      surveys.add(
          survey.withReadings(
              survey.readings().stream()
                  .map(r -> new Reading(r.line(), r.place(), Math.rint(r.value() * shown)))
                  .toList()));
    }
    return LightModelFit.with(new FastSolver()).fit(surveys);
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    return Estimate.quantile(values, 0.5);
  }
}
