package parfield.field;

import parfield.optics.Attenuation;

/**
 * Sums irradiance by channel over the paths it is given.
 *
 * <p>Everything that depends on the horizontal distance alone is multiplied into one table a
 * channel, so that a path costs a look-up and an addition.
 */
final class FluxCollector implements PathCollector {
  private final IntensityTable[] intensities;
  private final Attenuation[] attenuations;
  private final Receivers receivers;
  private final PatchFacing facing;
  private final double[][] sums;
  private final double[][] radial;
  private final double[] here;
  private PointSource source;
  private PathTable table;
  private boolean generalDirection;
  private int owner;

  /**
   * Prepares a sum.
   *
   * @param intensities by channel
   * @param attenuations by channel
   * @param receivers what the receiver numbers mean
   * @param facing how receivers face, or null where all face up
   * @param sums irradiance by channel and owner; added to
   */
  FluxCollector(
      IntensityTable[] intensities,
      Attenuation[] attenuations,
      Receivers receivers,
      PatchFacing facing,
      double[][] sums) {
    this.intensities = intensities;
    this.attenuations = attenuations;
    this.receivers = receivers;
    this.facing = facing;
    this.sums = sums;
    radial = new double[intensities.length][PathTable.STEPS + 1];
    here = new double[intensities.length];
  }

  @Override
  public void from(PointSource newSource, PathTable newTable) {
    boolean same =
        newTable == table
            && source != null
            && source.level() == newSource.level()
            && source.share() == newSource.share();
    source = newSource;
    table = newTable;
    generalDirection = !source.level() || source.yaw() != 0;
    if (same) {
      return;
    }
    double share = source.share() * receivers.share();
    for (int c = 0; c < radial.length; c++) {
      double[] column = radial[c];
      boolean folded = intensities[c].axial() && source.level();
      for (int i = 0; i <= PathTable.STEPS; i++) {
        double value = table.weight[i] * share * attenuations[c].transmittance(table.length[i]);
        column[i] = folded ? value * intensities[c].at(table.gamma[i], 1, 0) : value;
      }
    }
  }

  @Override
  public void to(int receiver) {
    owner = receivers.owner()[receiver];
  }

  @Override
  public void path(
      double reflectance,
      double position,
      double dx,
      double dy,
      double distance,
      int orderX,
      int orderY) {
    double factor = reflectance;
    if (facing != null) {
      factor *= facing.factor(owner, table, position, dx, dy, distance, orderX, orderY);
      if (factor == 0) {
        return;
      }
    }
    int i = (int) position;
    double f = position - i;
    double gamma = 0;
    double lampX = dx;
    double lampY = dy;
    boolean level = source.level();
    if (generalDirection) {
      double share = PathTable.at(table.crossingRatio, position);
      double[] direction = source.direction(share * dx, share * dy, source.height());
      gamma = direction[0];
      lampX = Math.cos(direction[1]);
      lampY = Math.sin(direction[1]);
    } else {
      gamma = table.gamma[i] + f * (table.gamma[i + 1] - table.gamma[i]);
    }
    for (int c = 0; c < here.length; c++) {
      double[] column = radial[c];
      double value = column[i] + f * (column[i + 1] - column[i]);
      IntensityTable intensity = intensities[c];
      if (!(level && intensity.axial())) {
        value *= intensity.at(gamma, lampX, lampY);
      }
      here[c] += factor * value;
    }
  }

  @Override
  public void done() {
    for (int c = 0; c < here.length; c++) {
      sums[c][owner] += here[c];
      here[c] = 0;
    }
  }
}
