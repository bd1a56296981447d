package parfield.workspace;

import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import parfield.tank.Place;

/**
 * What was entered for one reading.
 *
 * @param place where the sensor stood [m]
 * @param order in which the readings of a survey are listed; counts as one likes
 * @param typed the value as it was typed, pasted or sent; empty if it was withdrawn
 * @param value what the meter showed [µmol m⁻² s⁻¹], 0 or more; empty if it was withdrawn
 * @param origin where it came from
 * @param kind what it is for
 * @param kept whether somebody looked at the mark on it and kept it
 */
public record Entry(
    Place place,
    int order,
    String typed,
    OptionalDouble value,
    Origin origin,
    Kind kind,
    boolean kept) {

  private static final int LONGEST = 100;

  /** Where a reading came from. */
  public enum Origin {
    /** Typed by a person. */
    TYPED,
    /** Pasted as a block. */
    PASTED,
    /** Sent by a meter over a serial port. */
    SERIAL,
    /** Sent by a meter over HTTP. */
    POSTED,
    /** Read from a file. */
    IMPORTED
  }

  /** What a reading is for. */
  public enum Kind {
    /** A place of the survey. */
    GRID,
    /** The same place again and again, to see whether lamp or meter drift. */
    DRIFT
  }

  public Entry {
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(origin, "origin");
    Objects.requireNonNull(kind, "kind");
    Texts.check("a reading as typed", typed, LONGEST);
    double shown = value.orElse(0);
    if (!(shown >= 0) || Double.isInfinite(shown)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a PPFD reading must be 0 or more; got %s", shown));
    }
  }

  /** A grid reading that a person typed. */
  public static Entry typed(Place place, int order, String typed, double value) {
    return new Entry(place, order, typed, OptionalDouble.of(value), Origin.TYPED, Kind.GRID, false);
  }

  /** This entry without a value: the reading no longer counts, its earlier revisions stay. */
  public Entry withdrawn() {
    return new Entry(place, order, "", OptionalDouble.empty(), origin, kind, false);
  }

  /** This entry with another value. */
  public Entry withValue(String newTyped, double newValue, Origin newOrigin) {
    return new Entry(place, order, newTyped, OptionalDouble.of(newValue), newOrigin, kind, false);
  }

  /** This entry, its mark looked at and kept. */
  public Entry withKept() {
    return new Entry(place, order, typed, value, origin, kind, true);
  }
}
