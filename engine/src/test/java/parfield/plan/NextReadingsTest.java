package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.field.InverseSquareSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.PredictedField;
import parfield.lamp.CosinePower;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

class NextReadingsTest {
  private static final long SEED = Long.getLong("seed", 20_260_105L);

  /** Conditioning a normal vector on one noisy reading: C − c cᵀ / (v + σ²), any textbook. */
  @Test
  void whatIsLeftIsTheConditionalCovariance() {
    SplittableRandom random = new SplittableRandom(SEED);
    int places = 6;
    int draws = 40;
    double[][] deviation = new double[places][draws];
    for (double[] place : deviation) {
      for (int d = 0; d < draws; d++) {
        place[d] = 0.05 * random.nextGaussian();
      }
    }
    for (int i = 1; i < places; i++) {
      for (int d = 0; d < draws; d++) {
        deviation[i][d] += 0.8 * deviation[0][d];
      }
    }
    double[][] before = covariance(deviation);
    int read = 2;
    NextReadings.condition(deviation, read);
    double[][] after = covariance(deviation);
    double noise = NextReadings.READING_ERROR * NextReadings.READING_ERROR;
    for (int i = 0; i < places; i++) {
      for (int j = 0; j < places; j++) {
        double expected =
            before[i][j] - before[read][i] * before[read][j] / (before[read][read] + noise);
        assertThat(after[i][j]).as("seed %d", SEED).isCloseTo(expected, within(1e-12));
      }
    }
  }

  private static double[][] covariance(double[][] deviation) {
    double[][] covariance = new double[deviation.length][deviation.length];
    for (int i = 0; i < deviation.length; i++) {
      for (int j = 0; j < deviation.length; j++) {
        for (int d = 0; d < deviation[i].length; d++) {
          covariance[i][j] += deviation[i][d] * deviation[j][d] / deviation[i].length;
        }
      }
    }
    return covariance;
  }

  @Test
  void readingsAreFewReachableAndSharpen() {
    LightModel model = Benches.uncertain(60, 2, 0.2, 40, 3);
    Rig rig = Benches.rig(Benches.fixture(new CosinePower(60, 2)), 1, 0, 0.2);
    List<NextReading> readings = NextReadings.choose(model, new InverseSquareSolver(), rig, 0.2);
    assertThat(readings).hasSizeBetween(3, 5);
    double left = 1;
    for (NextReading reading : readings) {
      Place place = reading.place();
      assertThat(Benches.TANK.contains(place)).isTrue();
      assertThat(100 * place.x()).isCloseTo(Math.rint(100 * place.x()), within(1e-9));
      assertThat(reading.spreadLeft()).isLessThan(left).isPositive();
      left = reading.spreadLeft();
      PredictedField there =
          model.predict(new InverseSquareSolver(), rig, Places.of(List.of(place)));
      assertThat(reading.shown().value()).isEqualTo(there.best()[0]);
      Estimate field = there.asShown()[0];
      assertThat(reading.shown().low()).isLessThanOrEqualTo(field.low());
      assertThat(reading.shown().high()).isGreaterThanOrEqualTo(field.high());
    }
    // The exponent moves light least straight below and most far out: there it is to be read.
    assertThat(Math.abs(readings.get(0).place().x() - 0.45)).isGreaterThan(0.3);
  }

  @Test
  void whereNothingIsUncertainNothingNeedsReading() {
    Rig rig = Benches.rig(Benches.fixture(new CosinePower(60, 2)), 1, 0, 0.2);
    assertThat(NextReadings.choose(Benches.certain(), new InverseSquareSolver(), rig, 0.2))
        .isEmpty();
  }

  @Test
  void aReadingReadsAsAnErrand() {
    assertThat(
            new NextReading(new Place(0.05, 0.55, 0.15), new Estimate(81.2, 74.6, 88.9), 0.4)
                .inWords(LengthUnit.CM))
        .isEqualTo("At x 5, y 55, depth 15 cm the meter should show 81 (75–89) µmol m⁻² s⁻¹.");
  }
}
