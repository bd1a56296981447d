package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import parfield.field.FastSolver;
import parfield.field.PathBundle;
import parfield.field.Places;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * All readings of several surveys in one order, and the light paths that lead to them.
 *
 * <p>The order is that of the surveys, within each that of its readings.
 */
final class Observations {
  /** Distance over which the field's gradient is taken [m]: about one sensor. */
  private static final double GRADIENT_STEP = 0.01;

  private final FastSolver solver;
  private final List<Survey> surveys;
  private final List<LampGroups.Group> groups;
  private final double[] ppfd;
  private final int[] surveyOf;

  Observations(FastSolver solver, List<Survey> surveys, List<LampGroups.Group> groups) {
    this.solver = solver;
    this.surveys = surveys;
    this.groups = groups;
    int n = surveys.stream().mapToInt(survey -> survey.readings().size()).sum();
    ppfd = new double[n];
    surveyOf = new int[n];
    int at = 0;
    for (int s = 0; s < surveys.size(); s++) {
      for (double value : surveys.get(s).ppfd()) {
        surveyOf[at] = s;
        ppfd[at++] = value;
      }
    }
  }

  int size() {
    return ppfd.length;
  }

  double ppfd(int i) {
    return ppfd[i];
  }

  Survey survey(int i) {
    return surveys.get(surveyOf[i]);
  }

  /** Index of reading {@code i} within its survey. */
  int indexInSurvey(int i) {
    int index = i;
    for (int s = 0; s < surveyOf[i]; s++) {
      index -= surveys.get(s).readings().size();
    }
    return index;
  }

  /** Where reading {@code i} was taken. */
  Place place(int i) {
    return survey(i).readings().get(indexInSurvey(i)).place();
  }

  /**
   * Light paths of one group of channels to the readings of one survey.
   *
   * @param survey index of the survey
   * @param group index of the group
   * @param bundle the paths
   * @param output of the group's channels, by hanging
   */
  record Beam(int survey, int group, PathBundle bundle, double[] output) {}

  /** All beams at the readings, under given conditions. */
  List<Beam> beams(Conditions conditions, double[] z, int from) {
    return beams(conditions, z, from, 0, 0);
  }

  private List<Beam> beams(Conditions conditions, double[] z, int from, double dx, double dy) {
    List<Beam> beams = new ArrayList<>();
    for (int s = 0; s < surveys.size(); s++) {
      Rig rig = conditions.applyTo(surveys.get(s).rig(), z, from);
      Places places = displaced(surveys.get(s), dx, dy);
      for (int g = 0; g < groups.size(); g++) {
        LampGroups.Group group = groups.get(g);
        List<Hanging> own =
            rig.hangings().stream().filter(hanging -> group.output(hanging) > 0).toList();
        if (own.isEmpty()) {
          continue;
        }
        double[] output = own.stream().mapToDouble(group::output).toArray();
        PathBundle bundle =
            solver.paths(new Rig(rig.name(), rig.tank(), own), places, group.spectrum());
        beams.add(new Beam(s, g, bundle, output));
      }
    }
    return beams;
  }

  private static Places displaced(Survey survey, double dx, double dy) {
    Tank tank = survey.rig().tank();
    return Places.of(
        survey.readings().stream()
            .map(reading -> reading.place())
            .map(
                place ->
                    new Place(
                        Math.max(0, Math.min(tank.length(), place.x() + dx)),
                        Math.max(0, Math.min(tank.width(), place.y() + dy)),
                        place.depth()))
            .toList());
  }

  /** Number of the first reading of a survey. */
  int first(int survey) {
    int first = 0;
    for (int s = 0; s < survey; s++) {
      first += surveys.get(s).readings().size();
    }
    return first;
  }

  /**
   * Size of the horizontal gradient of ln E at each reading [1/m].
   *
   * @param lamps gives E at all readings for some beams
   */
  double[] logGradient(
      Conditions conditions,
      double[] z,
      int from,
      java.util.function.Function<List<Beam>, double[]> lamps) {
    double[] east = lamps.apply(beams(conditions, z, from, GRADIENT_STEP, 0));
    double[] west = lamps.apply(beams(conditions, z, from, -GRADIENT_STEP, 0));
    double[] north = lamps.apply(beams(conditions, z, from, 0, GRADIENT_STEP));
    double[] south = lamps.apply(beams(conditions, z, from, 0, -GRADIENT_STEP));
    double[] gradient = new double[size()];
    for (int i = 0; i < gradient.length; i++) {
      double along = Math.log(east[i] / west[i]) / (2 * GRADIENT_STEP);
      double across = Math.log(north[i] / south[i]) / (2 * GRADIENT_STEP);
      gradient[i] = Math.hypot(along, across);
    }
    return gradient;
  }
}
