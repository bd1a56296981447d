package parfield.plan;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.PredictedField;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.Estimate;

/**
 * Which readings to take next: greedy, each the one that leaves least variance in the predicted
 * field, given those before it.
 *
 * <p>The draws are taken as a normal sample of the relative deviation from the best estimate; a
 * reading at place i with relative error σ takes cov(i, j)² / (var(i) + σ²) from the variance at
 * place j. The meter's scale is left out: no reading with the same meter can tell it.
 */
public final class NextReadings {
  /** At most and at least so many. */
  private static final int MOST = 5;

  private static final int FEWEST = 3;

  /**
   * A reading that takes less than this share of the variance is not worth the arm in the water.
   */
  private static final double WORTH = 0.05;

  /** Relative error of one reading: repeat and position together, common practice, no source. */
  static final double READING_ERROR = 0.03;

  /** Half width of a normal distribution's 90 % interval, in standard deviations. */
  private static final double NINETY_PERCENT = 1.645;

  /** Readings closer than this say the same [m]. */
  private static final double APART = 0.1;

  private static final int COLUMNS = 9;
  private static final int ROWS = 6;
  private static final int LAYERS = 3;

  private NextReadings() {}

  /**
   * Chooses readings.
   *
   * @param rig as recommended, at the recommended dials
   * @param planeDepth a plane to read on beside those that divide the water evenly [m]
   */
  public static List<NextReading> choose(
      LightModel model, FieldSolver solver, Rig rig, double planeDepth) {
    Places places = candidates(rig.tank(), planeDepth);
    PredictedField field = model.predict(solver, rig, places);
    double[] best = field.best();
    double[][] deviation = deviations(field, best);
    double[] all = totalVariance(deviation);
    double now = sum(all);
    List<NextReading> chosen = new ArrayList<>();
    double left = now;
    while (chosen.size() < MOST && left > 0) {
      int place = mostTelling(deviation, places, chosen);
      condition(deviation, place);
      double rest = sum(totalVariance(deviation));
      if (chosen.size() >= FEWEST && left - rest < WORTH * now) {
        break;
      }
      left = rest;
      chosen.add(new NextReading(places.get(place), shown(field, best, place), rest / now));
    }
    return chosen;
  }

  /** Places in the water that a person finds with a tape: whole centimetres, not at the panes. */
  private static Places candidates(Tank tank, double planeDepth) {
    Set<Double> depths = new LinkedHashSet<>();
    depths.add(Search.onTape(planeDepth));
    for (int k = 0; k < LAYERS; k++) {
      depths.add(Search.onTape(tank.depth() * (k + 0.5) / LAYERS));
    }
    List<Place> places = new ArrayList<>();
    for (double depth : depths) {
      for (int j = 0; j < ROWS; j++) {
        double y = Search.onTape(tank.width() * (j + 0.5) / ROWS);
        for (int i = 0; i < COLUMNS; i++) {
          Place place = new Place(Search.onTape(tank.length() * (i + 0.5) / COLUMNS), y, depth);
          if (tank.contains(place)
              && !tank.aquascape().inside(place.x(), place.y(), place.depth())) {
            places.add(place);
          }
        }
      }
    }
    return Places.of(places);
  }

  /** Relative deviation of each draw from the mean of all, [place][draw]; 0 where it is dark. */
  private static double[][] deviations(PredictedField field, double[] best) {
    double[][] deviation = new double[best.length][field.draws()];
    for (int d = 0; d < field.draws(); d++) {
      double[] draw = field.draw(d);
      for (int i = 0; i < best.length; i++) {
        deviation[i][d] = best[i] > 0 ? draw[i] / best[i] : 0;
      }
    }
    for (double[] place : deviation) {
      double mean = sum(place) / place.length;
      for (int d = 0; d < place.length; d++) {
        place[d] -= mean;
      }
    }
    return deviation;
  }

  private static int mostTelling(double[][] deviation, Places places, List<NextReading> chosen) {
    int best = 0;
    double greatest = -1;
    for (int i = 0; i < deviation.length; i++) {
      Place candidate = places.get(i);
      if (chosen.stream().anyMatch(reading -> near(reading.place(), candidate))) {
        continue;
      }
      double denominator = covariance(deviation[i], deviation[i]) + READING_ERROR * READING_ERROR;
      double taken = 0;
      for (double[] other : deviation) {
        double shared = covariance(deviation[i], other);
        taken += shared * shared / denominator;
      }
      if (taken > greatest) {
        greatest = taken;
        best = i;
      }
    }
    return best;
  }

  private static boolean near(Place a, Place b) {
    double dx = a.x() - b.x();
    double dy = a.y() - b.y();
    double dz = a.depth() - b.depth();
    return dx * dx + dy * dy + dz * dz < APART * APART;
  }

  /**
   * Takes from every place what a reading tells of it, so that the covariance of what is left is C
   * − c cᵀ / (v + σ²), with c the covariances with the place read and v its variance: the part
   * along the reading is shrunk by √(σ² / (v + σ²)), the rest stays.
   */
  static void condition(double[][] deviation, int place) {
    double[] read = deviation[place].clone();
    double variance = covariance(read, read);
    if (variance == 0) {
      return;
    }
    double noise = READING_ERROR * READING_ERROR;
    double keep = Math.sqrt(noise / (variance + noise));
    for (double[] other : deviation) {
      double slope = covariance(read, other) / variance * (1 - keep);
      for (int d = 0; d < other.length; d++) {
        other[d] -= slope * read[d];
      }
    }
  }

  private static double[] totalVariance(double[][] deviation) {
    double[] variance = new double[deviation.length];
    for (int i = 0; i < variance.length; i++) {
      variance[i] = covariance(deviation[i], deviation[i]);
    }
    return variance;
  }

  private static double covariance(double[] a, double[] b) {
    double sum = 0;
    for (int d = 0; d < a.length; d++) {
      sum += a[d] * b[d];
    }
    return sum / a.length;
  }

  private static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }

  private static Estimate shown(PredictedField field, double[] best, int place) {
    double[] sample = new double[field.draws()];
    for (int d = 0; d < sample.length; d++) {
      sample[d] = field.draw(d)[place];
    }
    Estimate ofField = Estimate.ofSample(best[place], sample);
    double noise = NINETY_PERCENT * READING_ERROR * best[place];
    return new Estimate(
        best[place],
        best[place] - Math.hypot(best[place] - Math.min(best[place], ofField.low()), noise),
        best[place] + Math.hypot(Math.max(best[place], ofField.high()) - best[place], noise));
  }
}
