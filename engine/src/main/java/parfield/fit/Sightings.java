package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.survey.Meter;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * A few readings of several surveys in one order, as ln PPFD: what a truth says of them and how
 * they err. The readings of the first survey's meter are those that the model predicts; any other
 * meter shows true light by a scale of its own. Immutable.
 */
final class Sightings {
  /** Distance over which the field's gradient is taken [m]: about one sensor. */
  private static final double GRADIENT_STEP = 0.01;

  /** Least relative error of one reading, whatever its meter states; common practice, no source. */
  private static final double LEAST_ERROR = 0.005;

  private static final double LEAST_PPFD = 1e-6;

  private final FieldSolver solver;
  private final List<Survey> surveys;
  private final List<Integer> surveyOf = new ArrayList<>();
  private final List<Integer> indexOf = new ArrayList<>();

  Sightings(FieldSolver solver, List<Survey> surveys) {
    this.solver = solver;
    this.surveys = List.copyOf(surveys);
    for (int s = 0; s < surveys.size(); s++) {
      for (int i = 0; i < surveys.get(s).readings().size(); i++) {
        surveyOf.add(s);
        indexOf.add(i);
      }
    }
  }

  int size() {
    return surveyOf.size();
  }

  Survey survey(int i) {
    return surveys.get(surveyOf.get(i));
  }

  /** Index of reading {@code i} within its survey. */
  int index(int i) {
    return indexOf.get(i);
  }

  Place place(int i) {
    return survey(i).readings().get(index(i)).place();
  }

  /** After the meter's corrections [µmol m⁻² s⁻¹]. */
  double ppfd(int i) {
    return survey(i).meter().ppfd(survey(i).readings().get(index(i)).value());
  }

  /** ln PPFD that each meter would show where it was read, if this were the truth. */
  double[] log(Truth truth) {
    double[] log = log(truth, 0, 0);
    for (int i = 0; i < log.length; i++) {
      if (!ownMeter(i)) {
        log[i] += Math.log(truth.meterScale());
      }
    }
    return log;
  }

  /** The same of many truths, [truth][reading]. */
  double[][] log(List<Truth> truths) {
    return IntStream.range(0, truths.size())
        .parallel()
        .mapToObj(d -> log(truths.get(d)))
        .toArray(double[][]::new);
  }

  private boolean ownMeter(int i) {
    return survey(i).meter().name().equals(surveys.get(0).meter().name());
  }

  private double[] log(Truth truth, double dx, double dy) {
    double[] log = new double[size()];
    int at = 0;
    for (Survey survey : surveys) {
      Tank tank = survey.rig().tank();
      Places places =
          Places.of(
              survey.readings().stream()
                  .map(reading -> displaced(tank, reading.place(), dx, dy))
                  .toList());
      for (double ppfd : solver.solve(truth.applyTo(survey.rig()), places).ppfd()) {
        log[at++] = Math.log(Math.max(LEAST_PPFD, ppfd));
      }
    }
    return log;
  }

  private static Place displaced(Tank tank, Place place, double dx, double dy) {
    return new Place(
        Math.max(0, Math.min(tank.length(), place.x() + dx)),
        Math.max(0, Math.min(tank.width(), place.y() + dy)),
        place.depth());
  }

  /** Relative standard error of each reading by itself: repeat, place, display. */
  double[] errors(Truth truth) {
    double[] east = log(truth, GRADIENT_STEP, 0);
    double[] west = log(truth, -GRADIENT_STEP, 0);
    double[] north = log(truth, 0, GRADIENT_STEP);
    double[] south = log(truth, 0, -GRADIENT_STEP);
    double[] errors = new double[size()];
    for (int i = 0; i < errors.length; i++) {
      Meter meter = survey(i).meter();
      double gradient = Math.hypot(east[i] - west[i], north[i] - south[i]) / (2 * GRADIENT_STEP);
      double display = meter.resolution() / Math.sqrt(12) / Math.max(LEAST_PPFD, ppfd(i));
      errors[i] =
          Math.max(
              LEAST_ERROR,
              Math.hypot(
                  Math.hypot(meter.repeatError(), display), meter.positionError() * gradient));
    }
    return errors;
  }

  /**
   * Covariance of the readings' errors, what the model itself misses included.
   *
   * @param which numbers of the readings wanted
   * @param errors of all, as {@link #errors} gives them
   * @param discrepancy of the model
   */
  double[][] covariance(List<Integer> which, double[] errors, double discrepancy) {
    double[][] covariance = new double[which.size()][which.size()];
    for (int a = 0; a < covariance.length; a++) {
      for (int b = 0; b < covariance.length; b++) {
        int i = which.get(a);
        int j = which.get(b);
        double value = discrepancy * discrepancy * alike(place(i), place(j));
        if (!ownMeter(i) && survey(i).meter().name().equals(survey(j).meter().name())) {
          value += survey(i).meter().scaleError() * survey(j).meter().scaleError();
        }
        covariance[a][b] = value + (i == j ? errors[i] * errors[i] : 0);
      }
    }
    return covariance;
  }

  /** Correlation of the model's discrepancy, that of the waves of {@link Predictor}. */
  private static double alike(Place one, Place other) {
    double dx = one.x() - other.x();
    double dy = one.y() - other.y();
    double dz = one.depth() - other.depth();
    double length = Predictor.DISCREPANCY_LENGTH;
    return Math.exp(-(dx * dx + dy * dy + dz * dz) / (2 * length * length));
  }
}
