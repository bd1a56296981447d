package parfield.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * A slip put into a clean survey.
 *
 * @param survey with the slip in it
 * @param readings that it changed, by index
 */
record Blunder(Survey survey, List<Integer> readings) {
  /** A slip that changes less could have been noise. */
  private static final double LEAST_FACTOR = 1.3;

  /** A zero too many or the point one place too far left, at a reading of 10 or more. */
  static Blunder decimal(Survey survey, SplittableRandom random) {
    while (true) {
      int i = random.nextInt(survey.readings().size());
      double value = survey.readings().get(i).value();
      if (value >= 10) {
        return with(survey, List.of(i), List.of(random.nextBoolean() ? value * 10 : value / 10));
      }
    }
  }

  /** Two neighbouring digits exchanged, the number changed by more than 30 %. */
  static Blunder digits(Survey survey, SplittableRandom random) {
    while (true) {
      int i = random.nextInt(survey.readings().size());
      double value = survey.readings().get(i).value();
      char[] typed = Digits.typed(value).toCharArray();
      if (typed.length < 2) {
        continue;
      }
      int at = random.nextInt(typed.length - 1);
      char first = typed[at];
      typed[at] = typed[at + 1];
      typed[at + 1] = first;
      double other = Double.parseDouble(new String(typed));
      if (other > 0 && factor(value, other) > LEAST_FACTOR) {
        return with(survey, List.of(i), List.of(other));
      }
    }
  }

  /** Two rows of one depth exchanged that differ by more than 30 % in the mean. */
  static Blunder rows(Survey survey, SplittableRandom random) {
    List<Integer> all = IntStream.range(0, survey.readings().size()).boxed().toList();
    double[] shown = survey.readings().stream().mapToDouble(Reading::value).toArray();
    List<Explanation> exchanges =
        GridLines.rows(survey.readings().stream().map(Reading::place).toList(), all, row -> true)
            .stream()
            .map(pair -> Explanation.exchanged(Suspicion.Kind.ROWS_SWAPPED, pair, shown))
            .filter(exchange -> meanFactor(exchange, shown) > LEAST_FACTOR)
            .toList();
    if (exchanges.isEmpty()) {
      return decimal(survey, random);
    }
    Explanation exchange = exchanges.get(random.nextInt(exchanges.size()));
    return with(survey, exchange.readings(), exchange.repaired());
  }

  /** One number four times in succession, where some other differs by more than 30 %. */
  static Blunder stuck(Survey survey, SplittableRandom random) {
    while (true) {
      int i = random.nextInt(survey.readings().size() - 3);
      double value = survey.readings().get(i).value();
      double greatest = 1;
      for (int k = 1; k <= 3; k++) {
        greatest = Math.max(greatest, factor(value, survey.readings().get(i + k).value()));
      }
      if (greatest > LEAST_FACTOR) {
        return with(survey, List.of(i + 1, i + 2, i + 3), List.of(value, value, value));
      }
    }
  }

  private static double meanFactor(Explanation exchange, double[] shown) {
    return Math.exp(
        IntStream.range(0, exchange.readings().size())
            .mapToDouble(
                k ->
                    Math.log(factor(shown[exchange.readings().get(k)], exchange.repaired().get(k))))
            .average()
            .orElseThrow());
  }

  /** How far apart two values are, zeros told from small numbers by one step of the display. */
  private static double factor(double a, double b) {
    return (Math.max(a, b) + 1) / (Math.min(a, b) + 1);
  }

  static Blunder with(Survey survey, List<Integer> readings, List<Double> values) {
    List<Reading> changed = new ArrayList<>(survey.readings());
    for (int k = 0; k < readings.size(); k++) {
      Reading was = changed.get(readings.get(k));
      changed.set(readings.get(k), new Reading(was.line(), was.place(), values.get(k)));
    }
    return new Blunder(survey.withReadings(changed), readings);
  }

  /** Whether a check names it: a suspicion within what was changed, or around all of it. */
  boolean isNamedIn(List<Suspicion> suspicions) {
    return suspicions.stream()
        .anyMatch(
            suspicion ->
                readings.containsAll(suspicion.readings())
                    || suspicion.readings().containsAll(readings));
  }
}
