package parfield.field;

import parfield.tank.Lid;

/**
 * All light paths from one height to one depth, tabulated by horizontal distance.
 *
 * <p>Receivers of one depth plane and sources of one height share it, whatever their channels. The
 * table runs evenly in w = r / (r + s), s = h + d / n, in which every quantity is smooth from
 * straight down to grazing; linear interpolation errs by less than 2e-5 of the value at nadir
 * (tested against {@link SurfacePath}).
 */
final class PathTable {
  /** Steps from r = 0 to infinity. */
  static final int STEPS = 1024;

  /** Distance scale s [m]. */
  final double scale;

  /** Crossing distance over horizontal distance, by position. */
  final double[] crossingRatio;

  /** Spread times surface and lid transmittance [sr/m²], by position. */
  final double[] weight;

  /** Emission angle γ of a level lamp [rad], by position. */
  final double[] gamma;

  /** Sine of the zenith angle in water, by position. */
  final double[] sineWater;

  /** Path length in water [m], by position. */
  final double[] length;

  private PathTable(double scale) {
    this.scale = scale;
    crossingRatio = new double[STEPS + 1];
    weight = new double[STEPS + 1];
    gamma = new double[STEPS + 1];
    sineWater = new double[STEPS + 1];
    length = new double[STEPS + 1];
  }

  static PathTable of(double height, double depth, double index, Lid lid) {
    PathTable table = new PathTable(height + depth / index);
    LiddedSurface surface = new LiddedSurface(index, lid);
    for (int i = 0; i < STEPS; i++) {
      double w = (double) i / STEPS;
      double distance = table.scale * w / (1 - w);
      SurfacePath path = SurfacePath.solve(height, depth, distance, index);
      table.crossingRatio[i] = distance < 1e-9 ? height / table.scale : path.crossing() / distance;
      table.weight[i] = path.spread() * surface.transmittance(path.cosineAir());
      table.gamma[i] = Math.atan2(path.sineAir(), path.cosineAir());
      table.sineWater[i] = path.sineWater();
      table.length[i] = path.lengthInWater();
    }
    // At infinite distance the ray grazes the surface.
    table.crossingRatio[STEPS] = 1;
    table.weight[STEPS] = 0;
    table.gamma[STEPS] = Math.PI / 2;
    table.sineWater[STEPS] = 1 / index;
    table.length[STEPS] = depth / Math.sqrt(1 - 1 / (index * index));
    return table;
  }

  /** Position in the table of a horizontal distance [m], 0 to below {@link #STEPS}. */
  double position(double distance) {
    return distance / (distance + scale) * STEPS;
  }

  /** Linear interpolation in one of the table's columns. */
  static double at(double[] column, double position) {
    int i = (int) position;
    double below = column[i];
    return below + (position - i) * (column[i + 1] - below);
  }
}
