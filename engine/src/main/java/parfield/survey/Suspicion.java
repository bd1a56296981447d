package parfield.survey;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Why some readings look wrong. They are named, never dropped: a person decides.
 *
 * @param kind what may have happened
 * @param readings indices of the readings in their survey, 0-based, ascending, at least one
 * @param reason one sentence with the numbers, for people
 */
public record Suspicion(Kind kind, List<Integer> readings, String reason) {
  /** What may have happened to a reading on its way from the sensor to the file. */
  public enum Kind {
    /** The decimal point slipped, or a zero too many or too few. */
    DECIMAL_SLIP,
    /** Two digits of the number changed places. */
    DIGITS_SWAPPED,
    /** The readings of two places were written at each other's. */
    PLACES_SWAPPED,
    /** Two rows (along x) of one depth were written at each other's. */
    ROWS_SWAPPED,
    /** Two columns (along y) of one depth were written at each other's. */
    COLUMNS_SWAPPED,
    /** The same number several times in succession where the light should change. */
    STUCK,
    /** Below zero once the ambient is subtracted. */
    NEGATIVE,
    /** Far from what is expected there, for no reason that the numbers show. */
    UNEXPLAINED
  }

  public Suspicion {
    Objects.requireNonNull(kind, "kind");
    readings = readings.stream().sorted().toList();
    Objects.requireNonNull(reason, "reason");
    if (readings.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a suspicion of kind %s names no reading", kind));
    }
  }
}
