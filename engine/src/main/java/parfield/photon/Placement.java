package parfield.photon;

import java.util.Locale;
import java.util.Objects;
import parfield.tank.Place;

/**
 * Where a coral sits: a place and the direction that it faces.
 *
 * @param place in the water
 * @param nx x component of the outward normal
 * @param ny its y component
 * @param nz its component downward; −1 faces the surface
 */
public record Placement(Place place, double nx, double ny, double nz) {
  private static final double UNIT = 1e-6;

  public Placement {
    Objects.requireNonNull(place, "place");
    if (!(Math.abs(nx * nx + ny * ny + nz * nz - 1) <= UNIT)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a placement's normal must be of length 1; got (%s, %s, %s)",
              nx,
              ny,
              nz));
    }
  }
}
