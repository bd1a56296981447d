package parfield.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parfield.tank.Place;

/**
 * A part of the readings, spread as they are over the tank, where there are more than a fit gains
 * from: beyond some thousand, the meter's own scale error and the model's own error decide, which
 * no number of readings averages out.
 */
public final class Thinning {
  /** Places within one cell are taken as neighbours [m]. */
  private static final double CELL = 0.05;

  private Thinning() {}

  /**
   * Surveys with at most a number of readings together: small ones are left whole, larger ones
   * share what is left evenly.
   *
   * @param surveys any
   * @param most readings together, at least one for each survey
   * @return the surveys in their order, each with a part of its readings in their order
   */
  public static List<Survey> together(List<Survey> surveys, int most) {
    if (most < Math.max(1, surveys.size())) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "each of %d surveys must keep a reading; got %d readings to keep",
              surveys.size(),
              most));
    }
    int each = share(surveys, most);
    return surveys.stream().map(survey -> of(survey, each)).toList();
  }

  /** The number that, as a limit on every survey, keeps all together within {@code most}. */
  private static int share(List<Survey> surveys, int most) {
    int[] ascending = surveys.stream().mapToInt(s -> s.readings().size()).sorted().toArray();
    int left = most;
    for (int i = 0; i < ascending.length; i++) {
      int share = left / (ascending.length - i);
      if (ascending[i] > share) {
        return share;
      }
      left -= ascending[i];
    }
    return Integer.MAX_VALUE;
  }

  /** A survey with at most {@code most} readings: evenly many of each part of the tank. */
  private static Survey of(Survey survey, int most) {
    int n = survey.readings().size();
    if (n <= most) {
      return survey;
    }
    List<Integer> byPlace = new ArrayList<>(IntStream.range(0, n).boxed().toList());
    byPlace.sort(
        Comparator.comparingLong((Integer i) -> cell(place(survey, i).depth()))
            .thenComparingLong(i -> cell(place(survey, i).y()))
            .thenComparingLong(i -> cell(place(survey, i).x())));
    return survey.withReadings(
        IntStream.range(0, most)
            .map(k -> byPlace.get((int) ((k + 0.5) * n / most)))
            .sorted()
            .mapToObj(survey.readings()::get)
            .toList());
  }

  private static Place place(Survey survey, int reading) {
    return survey.readings().get(reading).place();
  }

  private static long cell(double metres) {
    return (long) Math.floor(metres / CELL);
  }
}
