package parfield.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parfield.tank.Place;

/**
 * Readings that look wrong: a slip of the decimal point, two digits exchanged, two rows or columns
 * exchanged, a display that stuck, a value below the ambient. They are named with the reason, never
 * dropped or changed.
 */
public final class SuspiciousReadings {
  /** More readings than this are checked in blocks of neighbours. */
  private static final int MOST_READINGS = 160;

  private SuspiciousReadings() {}

  /**
   * What the readings say about each other, with no model of the light.
   *
   * <p>Near a lamp a factor of three between neighbours 15 cm apart is normal; how steep the field
   * is, is learned from the grid itself, its other depths and its mirror image included. What can
   * not be found so: slips that leave the grid as smooth as before, such as two rows exchanged that
   * mirror each other. Fewer than twelve readings are only compared with the ambient.
   *
   * @param survey the readings
   * @return suspicions by their first reading; empty if nothing looks wrong
   */
  public static List<Suspicion> find(Survey survey) {
    double[] ppfd = survey.ppfd();
    List<Integer> lit = IntStream.range(0, ppfd.length).filter(i -> ppfd[i] >= 0).boxed().toList();
    Stream<Suspicion> contradicted =
        blocks(survey, lit).parallelStream()
            .filter(block -> block.size() >= NeighbourCheck.LEAST_READINGS)
            .flatMap(block -> new NeighbourCheck(survey, block).suspicions().stream());
    return inOrder(Stream.concat(negatives(survey), contradicted));
  }

  /**
   * What a model says about the readings: each that is more than three standard errors from its
   * prediction, with the slip that would explain it if there is one.
   *
   * @param survey the readings
   * @param predicted what the model says at each reading, in the survey's order, as the meter would
   *     give it after its corrections [µmol m⁻² s⁻¹]
   * @param sigma standard error of each reading against its prediction [µmol m⁻² s⁻¹], above 0
   * @return suspicions by their first reading; empty if all readings fit
   * @throws IllegalArgumentException if an array has not one entry a reading, or an entry is out of
   *     range
   */
  public static List<Suspicion> against(Survey survey, double[] predicted, double[] sigma) {
    requireOneAReading("predictions", survey, predicted);
    requireOneAReading("standard errors", survey, sigma);
    for (int i = 0; i < sigma.length; i++) {
      if (!Double.isFinite(predicted[i]) || !(sigma[i] > 0)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a prediction must be finite and its standard error above 0; got %s ± %s for"
                    + " reading %d of survey %s",
                predicted[i],
                sigma[i],
                i + 1,
                survey.name()));
      }
    }
    return inOrder(
        Stream.concat(
            negatives(survey),
            new ModelCheck(survey, predicted.clone(), sigma.clone()).suspicions().stream()));
  }

  private static void requireOneAReading(String what, Survey survey, double[] values) {
    if (values.length != survey.readings().size()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "survey %s has %d readings but got %d %s",
              survey.name(),
              survey.readings().size(),
              values.length,
              what));
    }
  }

  private static List<Suspicion> inOrder(Stream<Suspicion> suspicions) {
    return suspicions
        .sorted(Comparator.comparing(suspicion -> suspicion.readings().get(0)))
        .toList();
  }

  private static Stream<Suspicion> negatives(Survey survey) {
    double[] ppfd = survey.ppfd();
    return IntStream.range(0, ppfd.length)
        .filter(i -> ppfd[i] < 0)
        .mapToObj(
            i ->
                new Suspicion(
                    Suspicion.Kind.NEGATIVE,
                    List.of(i),
                    Reasons.negative(survey.readings().get(i).value(), survey.meter())));
  }

  /** Halves the readings along the longer side of their plan until each part is small enough. */
  private static List<List<Integer>> blocks(Survey survey, List<Integer> readings) {
    if (readings.size() <= MOST_READINGS) {
      return List.of(readings);
    }
    List<Place> places = survey.readings().stream().map(Reading::place).toList();
    double extentX = extent(readings.stream().map(i -> places.get(i).x()).toList());
    double extentY = extent(readings.stream().map(i -> places.get(i).y()).toList());
    Comparator<Integer> alongX = Comparator.comparing(i -> places.get(i).x());
    Comparator<Integer> alongY = Comparator.comparing(i -> places.get(i).y());
    List<Integer> sorted = readings.stream().sorted(extentX >= extentY ? alongX : alongY).toList();
    int half = sorted.size() / 2;
    List<List<Integer>> blocks = new ArrayList<>();
    blocks.addAll(blocks(survey, sorted.subList(0, half).stream().sorted().toList()));
    blocks.addAll(blocks(survey, sorted.subList(half, sorted.size()).stream().sorted().toList()));
    return blocks;
  }

  private static double extent(List<Double> values) {
    return values.stream().max(Double::compare).orElseThrow()
        - values.stream().min(Double::compare).orElseThrow();
  }
}
