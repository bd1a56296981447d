package parfield.plot;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.units.Estimate;

/**
 * An intensity distribution in polar form: angle from straight down, intensity as distance.
 *
 * @param caption title and summary
 * @param unit of the intensities
 * @param lobes the planes through the lamp, one or two
 */
public record PolarChartSpec(Caption caption, String unit, List<Lobe> lobes) {
  public PolarChartSpec {
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(unit, "unit");
    lobes = List.copyOf(lobes);
    if (lobes.isEmpty() || lobes.size() > 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a polar chart shows one or two planes; got %d", lobes.size()));
    }
  }

  /**
   * The intensity in one plane through the lamp.
   *
   * @param name of the plane
   * @param angles from straight down [rad], ascending; negative to the left
   * @param intensities at each angle, with interval
   */
  public record Lobe(String name, List<Double> angles, List<Estimate> intensities) {
    public Lobe {
      angles = List.copyOf(angles);
      intensities = List.copyOf(intensities);
      if (angles.size() != intensities.size() || angles.size() < 2) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a plane needs an intensity at each of two angles or more; got %d and %d",
                angles.size(),
                intensities.size()));
      }
    }
  }
}
