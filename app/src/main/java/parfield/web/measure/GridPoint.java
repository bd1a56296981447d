package parfield.web.measure;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import parfield.tank.Place;

/**
 * A place of a survey's grid.
 *
 * @param reading id of the reading taken there: the same for whoever takes it, so that two people
 *     who read one place write one reading
 * @param place where [m]
 * @param order in which it is visited, from 1
 */
public record GridPoint(UUID reading, Place place, int order) {
  /** Places nearer than this are one place [m]. */
  private static final double SAME = 1e-3;

  public GridPoint {
    Objects.requireNonNull(reading, "reading");
    Objects.requireNonNull(place, "place");
  }

  /** A place of a survey that nobody has read yet. */
  public static GridPoint of(UUID survey, Place place, int order) {
    String key =
        String.format(
            Locale.ROOT,
            "%s %d %d %d",
            survey,
            Math.round(place.x() / SAME),
            Math.round(place.y() / SAME),
            Math.round(place.depth() / SAME));
    return new GridPoint(
        UUID.nameUUIDFromBytes(key.getBytes(StandardCharsets.UTF_8)), place, order);
  }

  /** Whether a place is this one. */
  public boolean at(Place other) {
    return Math.abs(place.x() - other.x()) < SAME
        && Math.abs(place.y() - other.y()) < SAME
        && Math.abs(place.depth() - other.depth()) < SAME;
  }
}
