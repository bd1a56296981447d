package parfield.plot;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import parfield.rig.Hanging;
import parfield.survey.Spot;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * What is drawn around and over the values of a plane.
 *
 * @param tank whose plane it is
 * @param length unit of the axes
 * @param fixtures that hang over it, outlined; may be empty
 * @param readings measured places of this plane with their PPFD; may be empty
 * @param measured the part of the plane that was measured: x and y [m], in a section x and depth;
 *     the rest is hatched. Empty hatches nothing.
 */
public record Scene(
    Tank tank,
    LengthUnit length,
    List<Hanging> fixtures,
    List<Spot> readings,
    Optional<Rectangle> measured) {
  public Scene {
    Objects.requireNonNull(tank, "tank");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(measured, "measured");
    fixtures = List.copyOf(fixtures);
    readings = List.copyOf(readings);
  }

  /** The bare tank. */
  public static Scene of(Tank tank, LengthUnit length) {
    return new Scene(tank, length, List.of(), List.of(), Optional.empty());
  }

  /** This scene under fixtures. */
  public Scene withFixtures(List<Hanging> newFixtures) {
    return new Scene(tank, length, newFixtures, readings, measured);
  }

  /** This scene with measured places. */
  public Scene withReadings(List<Spot> newReadings) {
    return new Scene(tank, length, fixtures, newReadings, measured);
  }

  /** This scene with everything outside a rectangle hatched. */
  public Scene withMeasured(Rectangle newMeasured) {
    return new Scene(tank, length, fixtures, readings, Optional.of(newMeasured));
  }
}
