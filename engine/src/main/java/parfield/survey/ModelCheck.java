package parfield.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parfield.survey.Suspicion.Kind;
import parfield.tank.Place;

/**
 * Looks for readings that a model contradicts, and for what would explain them.
 *
 * <p>A reading is in doubt when it is more than three standard errors from its prediction. The
 * explanations that cover most readings are tried first; what none explains is named all the same.
 */
final class ModelCheck {
  /** Standard errors beyond which a reading is in doubt. */
  private static final double DOUBT = 3;

  /** Share of the readings of an exchanged or stuck set that must be in doubt. */
  private static final double DOUBTED_SHARE = 0.34;

  /** With more readings in doubt the model is at fault, and pairs would fit by chance. */
  private static final int MOST_EXCHANGED = 60;

  private final Survey survey;
  private final double[] shown;
  private final double[] predicted;
  private final double[] sigma;
  private final TreeSet<Integer> doubted = new TreeSet<>();

  ModelCheck(Survey survey, double[] predicted, double[] sigma) {
    this.survey = survey;
    this.shown = survey.readings().stream().mapToDouble(Reading::value).toArray();
    this.predicted = predicted;
    this.sigma = sigma;
    IntStream.range(0, shown.length)
        .filter(i -> survey.meter().ppfd(shown[i]) >= 0 && !fits(i, shown[i]))
        .forEach(doubted::add);
  }

  /** What the search finds; the check is spent afterwards. */
  List<Suspicion> suspicions() {
    List<Suspicion> found = new ArrayList<>();
    List<Explanation> likeliestFirst =
        several().sorted(Comparator.comparingDouble(this::gain).reversed()).toList();
    for (Explanation explanation : likeliestFirst) {
      if (inDoubt(explanation)) {
        explanation.readings().forEach(doubted::remove);
        found.add(suspicion(explanation));
      }
    }
    for (int i : doubted) {
      found.add(suspicion(slip(i).orElseGet(() -> Explanation.unexplained(i))));
    }
    return found;
  }

  /** Explanations of several readings at once that would make them fit. */
  private Stream<Explanation> several() {
    List<Place> places = survey.readings().stream().map(Reading::place).toList();
    List<Integer> all = IntStream.range(0, shown.length).boxed().toList();
    Stream<Explanation> rows =
        GridLines.rows(places, all, this::mostlyDoubted).stream()
            .map(pair -> Explanation.exchanged(Kind.ROWS_SWAPPED, pair, shown));
    Stream<Explanation> columns =
        GridLines.columns(places, all, this::mostlyDoubted).stream()
            .map(pair -> Explanation.exchanged(Kind.COLUMNS_SWAPPED, pair, shown));
    Stream<Explanation> exchanges =
        pairsInDoubt().map(pair -> Explanation.exchanged(Kind.PLACES_SWAPPED, pair, shown));
    Stream<Explanation> stuck =
        Explanation.stuck(all, shown, IntStream.range(0, shown.length).toArray()).stream();
    return Stream.of(rows, columns, exchanges, stuck)
        .flatMap(explanations -> explanations)
        .filter(explanation -> inDoubt(explanation) && explains(explanation));
  }

  /** Whether readings are still without an explanation: both of a pair, many of a set. */
  private boolean inDoubt(Explanation explanation) {
    return explanation.kind() == Kind.PLACES_SWAPPED
        ? doubted.containsAll(explanation.readings())
        : mostlyDoubted(explanation.readings());
  }

  private boolean mostlyDoubted(List<Integer> readings) {
    long count = readings.stream().filter(doubted::contains).count();
    return count >= DOUBTED_SHARE * readings.size();
  }

  private Stream<GridLines.Pair> pairsInDoubt() {
    if (doubted.size() > MOST_EXCHANGED) {
      return Stream.empty();
    }
    return doubted.stream()
        .flatMap(
            i ->
                doubted.tailSet(i, false).stream()
                    .map(j -> new GridLines.Pair(List.of(i), List.of(j))));
  }

  /** Whether the repaired readings fit, or at least most of many do. */
  private boolean explains(Explanation explanation) {
    if (explanation.repaired().isEmpty()) {
      return true;
    }
    long misfits =
        IntStream.range(0, explanation.readings().size())
            .filter(k -> !fits(explanation.readings().get(k), explanation.repaired().get(k)))
            .count();
    return misfits <= explanation.readings().size() / 8;
  }

  /** Half the fall of the squared standard errors; a lost value is taken out whole. */
  private double gain(Explanation explanation) {
    double gain = 0;
    for (int k = 0; k < explanation.readings().size(); k++) {
      int i = explanation.readings().get(k);
      gain += square(errors(i, shown[i]));
      if (!explanation.repaired().isEmpty()) {
        gain -= square(errors(i, explanation.repaired().get(k)));
      }
    }
    return gain / 2;
  }

  private Optional<Explanation> slip(int reading) {
    return Explanation.slips(reading, shown[reading]).stream()
        .filter(slip -> fits(reading, slip.repaired().get(0)))
        .min(Comparator.comparingDouble(slip -> errors(reading, slip.repaired().get(0))));
  }

  private boolean fits(int reading, double value) {
    return errors(reading, value) <= DOUBT;
  }

  /** Standard errors that a shown value is away from the prediction. */
  private double errors(int reading, double value) {
    return Math.abs(survey.meter().ppfd(value) - predicted[reading]) / sigma[reading];
  }

  private static double square(double value) {
    return value * value;
  }

  private Suspicion suspicion(Explanation explanation) {
    Meter meter = survey.meter();
    int[] at = explanation.readings().stream().mapToInt(Integer::intValue).toArray();
    return new Suspicion(
        explanation.kind(),
        explanation.readings(),
        Reasons.ofModel(
            explanation,
            IntStream.of(at).mapToDouble(i -> shown[i]).toArray(),
            IntStream.of(at).mapToDouble(i -> meter.shown(predicted[i])).toArray(),
            IntStream.of(at).mapToDouble(i -> meter.shown(sigma[i]) - meter.shown(0)).toArray()));
  }
}
