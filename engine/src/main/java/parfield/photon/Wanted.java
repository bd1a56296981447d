package parfield.photon;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.field.Places;

/**
 * What the reference solver shall count.
 *
 * @param places where E_d and E_u are wanted
 * @param sensor side of the level square over which they are averaged [m], above 0; what reaches
 *     beyond the panes is cut off
 * @param voxels boxes in which E_o is wanted
 * @param placements where what arrives on a coral is wanted
 */
public record Wanted(
    Places places, double sensor, Optional<VoxelGrid> voxels, List<Placement> placements) {
  /** About the size of a quantum sensor's diffuser [m]; common practice, no source. */
  public static final double SENSOR = 0.016;

  public Wanted {
    Objects.requireNonNull(places, "places");
    Objects.requireNonNull(voxels, "voxels");
    placements = List.copyOf(placements);
    if (!(sensor > 0) || Double.isInfinite(sensor)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a sensor's side must be above 0 m and finite; got %s m", sensor));
    }
  }

  /** E_d and E_u at places, with a sensor of common size. */
  public static Wanted at(Places places) {
    return new Wanted(places, SENSOR, Optional.empty(), List.of());
  }

  /** E_o in voxels alone. */
  public static Wanted in(VoxelGrid voxels) {
    return new Wanted(Places.of(List.of()), SENSOR, Optional.of(voxels), List.of());
  }

  /** The same with another sensor [m]. */
  public Wanted withSensor(double newSensor) {
    return new Wanted(places, newSensor, voxels, placements);
  }

  /** The same with placements. */
  public Wanted withPlacements(List<Placement> newPlacements) {
    return new Wanted(places, sensor, voxels, newPlacements);
  }
}
