package parfield.field;

import java.util.Arrays;
import parfield.optics.Attenuation;

/**
 * Sums irradiance by channel over the paths it is given.
 *
 * <p>Everything that depends on the horizontal distance alone is multiplied into one table a
 * channel, so that a path costs a look-up and an addition.
 */
final class FluxCollector implements PathCollector {
  private final IntensityTable intensities;
  private final Radials radials;
  private final Receivers receivers;
  private final PatchFacing facing;
  private final double[][] sums;

  private final double[] here;
  private final double[] lamp;
  private PointSource source;
  private PathTable table;
  private double[] radial;
  private boolean folded;
  private int owner;

  /** All that depends on distance alone. */
  interface Radials {
    /**
     * Weight, transmittance of water and, where they depend on distance alone, intensities.
     *
     * @param table paths from a lamp's height to a depth
     * @param level whether the lamp hangs level
     * @return by position in the table, the channels of one position side by side
     */
    double[] of(PathTable table, boolean level);
  }

  /**
   * Prepares a sum.
   *
   * @param intensities of the fixture
   * @param radials what depends on distance alone
   * @param receivers what the receiver numbers mean
   * @param facing how receivers face, or null where all face up
   * @param sums irradiance by channel and owner; added to
   */
  FluxCollector(
      IntensityTable intensities,
      Radials radials,
      Receivers receivers,
      PatchFacing facing,
      double[][] sums) {
    this.intensities = intensities;
    this.radials = radials;
    this.receivers = receivers;
    this.facing = facing;
    this.sums = sums;
    here = new double[intensities.channels()];
    lamp = new double[intensities.channels()];
  }

  @Override
  public void from(PointSource newSource, PathTable newTable) {
    source = newSource;
    table = newTable;
    folded = source.level() && intensities.axial();
    radial = radials.of(table, source.level());
  }

  /** Computes what {@link Radials} gives. */
  static double[] radial(
      PathTable table, boolean level, IntensityTable intensities, Attenuation[] attenuations) {
    int channels = intensities.channels();
    double[] radial = new double[channels * (table.steps() + 1)];
    double[] lamp = new double[channels];
    for (int i = 0; i <= table.steps(); i++) {
      if (level && intensities.axial()) {
        intensities.at(table.gammaAt(i), 1, 0, lamp);
      } else {
        Arrays.fill(lamp, 1);
      }
      for (int c = 0; c < channels; c++) {
        radial[i * channels + c] =
            table.weightAt(i) * attenuations[c].transmittance(table.lengthAt(i)) * lamp[c];
      }
    }
    return radial;
  }

  @Override
  public void to(int receiver) {
    owner = receivers.owner()[receiver];
  }

  @Override
  public void path(
      double reflectance,
      int step,
      double part,
      double dx,
      double dy,
      double distance,
      int orderX,
      int orderY) {
    double factor = reflectance;
    if (facing != null) {
      factor *= facing.factor(owner, table, step, part, dx, dy, distance, orderX, orderY);
      if (factor == 0) {
        return;
      }
    }
    int channels = here.length;
    int below = step * channels;
    int above = below + channels;
    if (folded) {
      double upper = factor * part;
      double lower = factor - upper;
      for (int c = 0; c < channels; c++) {
        here[c] += lower * radial[below + c] + upper * radial[above + c];
      }
      return;
    }
    if (source.level() && source.yaw() == 0) {
      intensities.at(table.gamma(step, part), dx, dy, lamp);
    } else {
      double share = table.crossingRatio(step, part);
      double[] direction = source.direction(share * dx, share * dy, source.height());
      intensities.at(direction[0], Math.cos(direction[1]), Math.sin(direction[1]), lamp);
    }
    for (int c = 0; c < channels; c++) {
      double value = radial[below + c] + part * (radial[above + c] - radial[below + c]);
      here[c] += factor * value * lamp[c];
    }
  }

  @Override
  public void done() {
    double share = source.share() * receivers.share();
    for (int c = 0; c < here.length; c++) {
      sums[c][owner] += share * here[c];
      here[c] = 0;
    }
  }
}
