package parfield.survey;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The sentences of suspicions. Values are as the meter would show them. */
final class Reasons {
  private Reasons() {}

  /**
   * Where the neighbours speak.
   *
   * @param explanation what happened
   * @param shown what was read [one a reading of the explanation]
   * @param expected what the neighbours say there
   */
  static String ofNeighbours(Explanation explanation, double[] shown, double[] expected) {
    String others =
        "its neighbours suggest "
            + Arrays.stream(expected).mapToObj(Reasons::about).collect(Collectors.joining(", "));
    return of(explanation, shown, others);
  }

  /**
   * Where a model speaks.
   *
   * @param explanation what happened
   * @param shown what was read [one a reading of the explanation]
   * @param predicted what the model says there
   * @param sigma standard error of reading against prediction
   */
  static String ofModel(
      Explanation explanation, double[] shown, double[] predicted, double[] sigma) {
    String others =
        IntStream.range(0, predicted.length)
                .mapToObj(k -> about(predicted[k]) + " ± " + about(sigma[k]))
                .collect(Collectors.joining(", "))
            + (predicted.length == 1 ? " is predicted" : " are predicted");
    return explanation.kind() == Suspicion.Kind.UNEXPLAINED
        ? String.format(
            Locale.ROOT,
            "%s read where %s, %.1f standard errors away: read it again",
            Digits.typed(shown[0]),
            others,
            Math.abs(shown[0] - predicted[0]) / sigma[0])
        : of(explanation, shown, others);
  }

  private static String of(Explanation explanation, double[] shown, String others) {
    String read = Digits.typed(shown[0]);
    List<Double> repaired = explanation.repaired();
    return switch (explanation.kind()) {
      case DECIMAL_SLIP ->
          String.format(
              "%s read where %s; %s would fit: a slip of the decimal point?",
              read, others, Digits.typed(repaired.get(0)));
      case DIGITS_SWAPPED ->
          String.format(
              "%s read where %s; %s would fit: two digits exchanged?",
              read, others, Digits.typed(repaired.get(0)));
      case PLACES_SWAPPED ->
          String.format(
              "%s and %s read where %s: each would fit at the other's place; exchanged?",
              read, Digits.typed(shown[1]), others);
      case ROWS_SWAPPED -> exchanged("rows", shown);
      case COLUMNS_SWAPPED -> exchanged("columns", shown);
      case STUCK ->
          String.format(
              Locale.ROOT,
              "%s read %d times in succession where %s: did the display stick?",
              read,
              shown.length + 1,
              others);
      case UNEXPLAINED -> String.format("%s read where %s: read it again", read, others);
      case NEGATIVE ->
          throw new IllegalArgumentException("a negative reading needs no other's word");
    };
  }

  private static String exchanged(String lines, double[] shown) {
    int half = shown.length / 2;
    return String.format(
        "%s %s and %s of one depth fit much better at each other's place: exchanged?",
        lines, typed(shown, 0, half), typed(shown, half, shown.length));
  }

  private static String typed(double[] shown, int from, int to) {
    return Arrays.stream(shown, from, to)
        .mapToObj(Digits::typed)
        .collect(Collectors.joining(" ", "(", ")"));
  }

  /** Below zero once the ambient is subtracted. */
  static String negative(double shown, Meter meter) {
    return String.format(
        "%s read, less than the ambient of %s that is subtracted: read it or the ambient again",
        Digits.typed(shown), Digits.typed(meter.ambient()));
  }

  /** Three digits are enough for an expectation. */
  private static String about(double value) {
    return String.format(Locale.ROOT, value < 10 ? "%.1f" : "%.0f", value);
  }
}
