package parfield.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import parfield.survey.Suspicion.Kind;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * Looks for readings that their neighbours contradict, with no model of the light.
 *
 * <p>Every explanation is weighed by how much likelier it makes the whole grid under {@link
 * Kriging} of the logarithms, the parameters chosen anew; the best one is taken if that outweighs
 * how rare such a slip is, then the search begins again on the mended grid.
 */
final class NeighbourCheck {
  /** Fewer readings say too little about each other. */
  static final int LEAST_READINGS = 12;

  /** What changes the readings by less is not worth a person's time. */
  private static final double LEAST_CHANGE = Math.log(1.2);

  /** Explanations that are weighed with the parameters chosen anew. */
  private static final int FINALISTS = 6;

  /** How far a finalist may lag before the parameters are chosen anew [nat]. */
  private static final double FINALIST_LAG = 6;

  /** Density of a reading that says nothing: even over a factor of 150 [per nat]. */
  private static final double LOST_DENSITY = 1 / 5.0;

  /** Steps of the display that the logarithm's floor is above zero. */
  private static final double FLOOR_STEPS = 10;

  /** The same floor as a share of the median PPFD. */
  private static final double FLOOR_SHARE = 0.02;

  private final Meter meter;
  private final Tank tank;
  private final int[] order;
  private final List<Place> places;
  private final double[] shown;
  private final double step;
  private final double floor;
  private final double median;

  private List<Integer> trusted;
  private Kriging kriging;
  private Kriging.Fit fit;

  /**
   * A check of some readings of a survey.
   *
   * @param survey the survey
   * @param readings indices of the readings to look at, ascending, at least {@link
   *     #LEAST_READINGS}, none of them below 0 after the meter's corrections
   */
  NeighbourCheck(Survey survey, List<Integer> readings) {
    this.meter = survey.meter();
    this.tank = survey.rig().tank();
    this.order = readings.stream().mapToInt(Integer::intValue).toArray();
    this.places = readings.stream().map(i -> survey.readings().get(i).place()).toList();
    this.shown = readings.stream().mapToDouble(i -> survey.readings().get(i).value()).toArray();
    this.step = ppfdStep(Math.max(meter.resolution(), Digits.step(shown)));
    double[] ascending = Arrays.stream(shown).map(meter::ppfd).sorted().toArray();
    this.median = ascending[ascending.length / 2];
    this.floor = Math.max(FLOOR_STEPS * step, FLOOR_SHARE * median);
    this.trusted = IntStream.range(0, shown.length).boxed().toList();
  }

  /**
   * What an explanation must gain beyond the logarithm of its rivals' number [nat]: set on a
   * thousand simulated surveys so that fewer than one clean grid in fifty raises an alarm.
   */
  private static double required(Kind kind) {
    return switch (kind) {
      case ROWS_SWAPPED, COLUMNS_SWAPPED -> 7;
      case STUCK -> 7;
      case DIGITS_SWAPPED -> 8.5;
      case DECIMAL_SLIP -> 12;
      case UNEXPLAINED -> 20;
      case PLACES_SWAPPED, NEGATIVE -> Double.POSITIVE_INFINITY;
    };
  }

  /** An explanation, what it must gain, and its lead over that with the parameters as they are. */
  private record Candidate(Explanation explanation, double hurdle, double lead) {}

  /** An explanation, its lead with the parameters chosen anew, and what it leads to. */
  private record Weighed(
      Explanation explanation, double lead, List<Integer> trusted, Kriging.Fit fit) {}

  /** What the search finds; the check is spent afterwards. */
  List<Suspicion> suspicions() {
    List<Suspicion> found = new ArrayList<>();
    kriging = kriging(trusted);
    fit = kriging.fit(logs(trusted, shown));
    while (trusted.size() >= LEAST_READINGS) {
      Optional<Weighed> best = best();
      if (best.isEmpty()) {
        break;
      }
      found.add(accept(best.orElseThrow()));
    }
    return found;
  }

  private Suspicion accept(Weighed weighed) {
    Explanation explanation = weighed.explanation;
    int[] at = positions(explanation.readings());
    double[] was = explanation.readings().stream().mapToDouble(i -> shown[i]).toArray();
    double[] expected;
    if (explanation.repaired().isEmpty()) {
      expected = fit.expected(at);
      trusted = weighed.trusted;
      kriging = kriging(trusted);
    } else {
      expected = weighed.fit.expected(at);
      for (int k = 0; k < at.length; k++) {
        shown[explanation.readings().get(k)] = explanation.repaired().get(k);
      }
    }
    fit = weighed.fit;
    List<Integer> readings = explanation.readings().stream().map(i -> order[i]).toList();
    return new Suspicion(
        explanation.kind(),
        readings,
        Reasons.ofNeighbours(
            explanation, was, Arrays.stream(expected).map(this::shownAt).toArray()));
  }

  private Optional<Weighed> best() {
    List<Explanation> explanations = explanations();
    Map<Kind, Integer> rivals = new EnumMap<>(Kind.class);
    explanations.forEach(explanation -> rivals.merge(explanation.kind(), 1, Integer::sum));
    return explanations.stream()
        .map(
            explanation -> {
              double hurdle =
                  required(explanation.kind()) + Math.log(rivals.get(explanation.kind()));
              return new Candidate(explanation, hurdle, gain(explanation) - hurdle);
            })
        .filter(candidate -> candidate.lead > -FINALIST_LAG)
        .sorted(Comparator.comparingDouble((Candidate candidate) -> -candidate.lead))
        .limit(FINALISTS)
        .map(this::weigh)
        .filter(weighed -> weighed.lead > 0)
        .max(Comparator.comparingDouble(Weighed::lead));
  }

  private List<Explanation> explanations() {
    List<Explanation> explanations = new ArrayList<>();
    for (int i : trusted) {
      explanations.addAll(Explanation.slips(i, shown[i]));
      explanations.add(Explanation.unexplained(i));
    }
    for (GridLines.Pair pair : GridLines.rows(places, trusted, line -> true)) {
      explanations.add(Explanation.exchanged(Kind.ROWS_SWAPPED, pair, shown));
    }
    for (GridLines.Pair pair : GridLines.columns(places, trusted, line -> true)) {
      explanations.add(Explanation.exchanged(Kind.COLUMNS_SWAPPED, pair, shown));
    }
    explanations.addAll(Explanation.stuck(trusted, shown, order));
    explanations.removeIf(explanation -> change(explanation) < LEAST_CHANGE);
    return explanations;
  }

  /**
   * How much it matters, in logarithms: the mean change that a repair makes, or how far the worst
   * of lost values is from what the others say.
   */
  private double change(Explanation explanation) {
    List<Integer> readings = explanation.readings();
    if (explanation.repaired().isEmpty()) {
      double[] expected = fit.expected(positions(readings));
      return IntStream.range(0, readings.size())
          .mapToDouble(k -> Math.abs(expected[k] - log(shown[readings.get(k)])))
          .max()
          .orElseThrow();
    }
    double[] repaired = repaired(explanation);
    return IntStream.range(0, readings.size())
        .mapToDouble(k -> Math.abs(repaired[k] - log(shown[readings.get(k)])))
        .average()
        .orElseThrow();
  }

  /** Gain in log likelihood with the parameters as they are. */
  private double gain(Explanation explanation) {
    int[] at = positions(explanation.readings());
    return typing(explanation)
        + (explanation.repaired().isEmpty()
            ? -fit.conditional(at)
            : fit.gain(at, repaired(explanation)));
  }

  /** The explanation with the parameters chosen anew. */
  private Weighed weigh(Candidate candidate) {
    Explanation explanation = candidate.explanation;
    List<Integer> rest = trusted;
    Kriging.Fit refit;
    if (explanation.repaired().isEmpty()) {
      Set<Integer> lost = new HashSet<>(explanation.readings());
      rest = trusted.stream().filter(i -> !lost.contains(i)).toList();
      refit = kriging(rest).fit(logs(rest, shown), fit);
    } else {
      double[] mended = logs(trusted, shown);
      int[] at = positions(explanation.readings());
      double[] repaired = repaired(explanation);
      for (int k = 0; k < at.length; k++) {
        mended[at[k]] = repaired[k];
      }
      refit = kriging.fit(mended, fit);
    }
    double gain = refit.logPosterior() - fit.logPosterior() + typing(explanation);
    return new Weighed(explanation, gain - candidate.hurdle, rest, refit);
  }

  /** Log density of the numbers that were typed, given those that should have been. */
  private double typing(Explanation explanation) {
    return switch (explanation.kind()) {
      // Another number of the same digits: the step of the display is a smaller share of it.
      case DIGITS_SWAPPED ->
          log(shown[explanation.readings().get(0)]) - log(explanation.repaired().get(0));
      // The same number again is certain, where a live display would spread over many steps.
      case STUCK ->
          explanation.readings().stream()
              .mapToDouble(i -> -Math.log(step / (meter.ppfd(shown[i]) + floor)))
              .sum();
      case UNEXPLAINED -> Math.log(LOST_DENSITY);
      case DECIMAL_SLIP, PLACES_SWAPPED, ROWS_SWAPPED, COLUMNS_SWAPPED, NEGATIVE -> 0;
    };
  }

  private double[] repaired(Explanation explanation) {
    return explanation.repaired().stream().mapToDouble(this::log).toArray();
  }

  /** Where readings stand among the trusted ones. */
  private int[] positions(List<Integer> readings) {
    int[] at = new int[readings.size()];
    for (int k = 0; k < at.length; k++) {
      at[k] = Collections.binarySearch(trusted, readings.get(k));
    }
    return at;
  }

  private double[] logs(List<Integer> readings, double[] values) {
    return readings.stream().mapToDouble(i -> log(values[i])).toArray();
  }

  /** Logarithm of a PPFD above a floor, 0 at the median. */
  private double log(double value) {
    return Math.log((Math.max(0, meter.ppfd(value)) + floor) / (median + floor));
  }

  /** What the meter would show, the inverse of {@link #log}. */
  private double shownAt(double log) {
    return meter.shown(Math.max(0, Math.exp(log) * (median + floor) - floor));
  }

  private double ppfdStep(double shownStep) {
    return meter.ppfd(shownStep) - meter.ppfd(0);
  }

  private Kriging kriging(List<Integer> readings) {
    return new Kriging(readings.stream().map(places::get).toList(), tank);
  }
}
