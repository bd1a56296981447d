package parfield.tank;

import java.util.Locale;
import java.util.Objects;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Bounds;
import parfield.aquascape.Rock;
import parfield.optics.Agitation;
import parfield.optics.Water;

/**
 * A rectangular tank filled with water; all dimensions are inner ones.
 *
 * @param length along x [m]
 * @param width along y, front to back [m]
 * @param depth of the water [m]
 * @param walls the four panes
 * @param bottomReflectance diffuse reflectance of the bottom, 0 to below 1
 * @param opening where light may enter
 * @param water its refractive index and absorption
 * @param surface how much it moves
 * @param aquascape the rocks in it; each lies in the water at least in part
 */
public record Tank(
    double length,
    double width,
    double depth,
    Walls walls,
    double bottomReflectance,
    Opening opening,
    Water water,
    Agitation surface,
    Aquascape aquascape) {
  public Tank {
    if (!(length > 0) || !(width > 0) || !(depth > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a tank's length, width and water depth must be above 0 m; got %s, %s, %s m",
              length,
              width,
              depth));
    }
    if (!(bottomReflectance >= 0 && bottomReflectance < 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a bottom's reflectance runs from 0 to below 1; got %s",
              bottomReflectance));
    }
    Objects.requireNonNull(walls, "walls");
    Objects.requireNonNull(opening, "opening");
    Objects.requireNonNull(water, "water");
    Objects.requireNonNull(surface, "surface");
    if (!(2 * opening.rim() < Math.min(length, width))) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a rim of %s m leaves no opening in a tank of %s x %s m",
              opening.rim(),
              length,
              width));
    }
    Objects.requireNonNull(aquascape, "aquascape");
    for (Rock rock : aquascape.rocks()) {
      requireInWater(rock, length, width, depth);
    }
  }

  private static void requireInWater(Rock rock, double length, double width, double depth) {
    Bounds bounds = rock.shape().bounds();
    boolean touches =
        bounds.toX() > 0
            && bounds.fromX() < length
            && bounds.toY() > 0
            && bounds.fromY() < width
            && bounds.toDepth() > 0
            && bounds.fromDepth() < depth;
    if (!touches) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "rock %s lies outside the water: x %.3f to %.3f, y %.3f to %.3f, depth %.3f to %.3f m"
                  + " in a tank of %s x %s x %s m; move it so that it stands in the water at least"
                  + " in part",
              rock.name(),
              bounds.fromX(),
              bounds.toX(),
              bounds.fromY(),
              bounds.toY(),
              bounds.fromDepth(),
              bounds.toDepth(),
              length,
              width,
              depth));
    }
  }

  /** A tank without rocks. */
  public Tank(
      double length,
      double width,
      double depth,
      Walls walls,
      double bottomReflectance,
      Opening opening,
      Water water,
      Agitation surface) {
    this(length, width, depth, walls, bottomReflectance, opening, water, surface, Aquascape.none());
  }

  /**
   * An open tank with clean walls, a black bottom, no rock and still water of the default index.
   */
  public static Tank of(double length, double width, double depth) {
    return new Tank(
        length,
        width,
        depth,
        Walls.all(Wall.clean()),
        0,
        Opening.free(),
        Water.seaWater(0),
        Agitation.STILL);
  }

  /**
   * Checks that a place lies in the water.
   *
   * @throws IllegalArgumentException if it does not; the message names the place and the tank
   */
  public void requireInWater(Place place) {
    if (!contains(place)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a place lies outside the water: x %s, y %s, depth %s m in a tank of %s x %s x %s m",
              place.x(),
              place.y(),
              place.depth(),
              length,
              width,
              depth));
    }
  }

  /** Returns whether a place lies in the water, panes, bottom and surface included. */
  public boolean contains(Place place) {
    return place.x() >= 0
        && place.x() <= length
        && place.y() >= 0
        && place.y() <= width
        && place.depth() >= 0
        && place.depth() <= depth;
  }

  /** This tank with other walls. */
  public Tank withWalls(Walls newWalls) {
    return new Tank(
        length, width, depth, newWalls, bottomReflectance, opening, water, surface, aquascape);
  }

  /** This tank with another bottom reflectance. */
  public Tank withBottomReflectance(double newReflectance) {
    return new Tank(
        length, width, depth, walls, newReflectance, opening, water, surface, aquascape);
  }

  /** This tank with other water. */
  public Tank withWater(Water newWater) {
    return new Tank(
        length, width, depth, walls, bottomReflectance, opening, newWater, surface, aquascape);
  }

  /** This tank with another opening. */
  public Tank withOpening(Opening newOpening) {
    return new Tank(
        length, width, depth, walls, bottomReflectance, newOpening, water, surface, aquascape);
  }

  /** This tank with another surface. */
  public Tank withSurface(Agitation newSurface) {
    return new Tank(
        length, width, depth, walls, bottomReflectance, opening, water, newSurface, aquascape);
  }

  /** This tank with other rocks. */
  public Tank withAquascape(Aquascape newAquascape) {
    return new Tank(
        length, width, depth, walls, bottomReflectance, opening, water, surface, newAquascape);
  }
}
