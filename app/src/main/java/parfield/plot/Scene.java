package parfield.plot;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
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
 * @param depth of a level plane [m], at which its rocks are cut; empty for an upright one, which
 *     cuts them in the middle of the tank, and for a level one without rocks
 */
public record Scene(
    Tank tank,
    LengthUnit length,
    List<Hanging> fixtures,
    List<Spot> readings,
    Optional<Rectangle> measured,
    OptionalDouble depth) {
  public Scene {
    Objects.requireNonNull(tank, "tank");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(measured, "measured");
    Objects.requireNonNull(depth, "depth");
    fixtures = List.copyOf(fixtures);
    readings = List.copyOf(readings);
  }

  /** The bare tank. */
  public static Scene of(Tank tank, LengthUnit length) {
    return new Scene(tank, length, List.of(), List.of(), Optional.empty(), OptionalDouble.empty());
  }

  /** This scene under fixtures. */
  public Scene withFixtures(List<Hanging> newFixtures) {
    return new Scene(tank, length, newFixtures, readings, measured, depth);
  }

  /** This scene with measured places. */
  public Scene withReadings(List<Spot> newReadings) {
    return new Scene(tank, length, fixtures, newReadings, measured, depth);
  }

  /** This scene with everything outside a rectangle hatched. */
  public Scene withMeasured(Rectangle newMeasured) {
    return new Scene(tank, length, fixtures, readings, Optional.of(newMeasured), depth);
  }

  /** This scene with nothing hatched. */
  Scene withoutMeasured() {
    return new Scene(tank, length, fixtures, readings, Optional.empty(), depth);
  }

  /** This scene on the level plane at a depth [m]. */
  public Scene atDepth(double newDepth) {
    return new Scene(tank, length, fixtures, readings, measured, OptionalDouble.of(newDepth));
  }
}
