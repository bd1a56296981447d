package parfield.field;

import parfield.tank.Lid;

/**
 * All light paths from one height to one depth, tabulated by horizontal distance.
 *
 * <p>Receivers of one depth plane and sources of one height share it, whatever their channels. The
 * table runs evenly in w = r / (r + s), s = h + d / n, in which every quantity is smooth from
 * straight down to grazing; with {@link #STEPS} linear interpolation errs by less than 2e-5 of the
 * value at nadir (tested against {@link SurfacePath}).
 */
final class PathTable {
  /** Steps from r = 0 to infinity, for places. */
  static final int STEPS = 768;

  /** For points on diffuse surfaces, of whose light a small part comes back. */
  static final int DIFFUSE_STEPS = 192;

  private static final int CROSSING = 0;
  private static final int GAMMA = 1;
  private static final int SINE_WATER = 2;

  /** What every path asks for lies side by side, so that one look at memory serves all of it. */
  private static final int COLUMNS = 3;

  private final double scale;
  private final int steps;
  private final double[] rows;
  private final double[] weight;
  private final double[] length;

  private PathTable(double scale, int steps) {
    this.scale = scale;
    this.steps = steps;
    rows = new double[(steps + 1) * COLUMNS];
    weight = new double[steps + 1];
    length = new double[steps + 1];
  }

  static PathTable of(double height, double depth, double index, Lid lid, int steps) {
    PathTable table = new PathTable(height + depth / index, steps);
    LiddedSurface surface = new LiddedSurface(index, lid);
    for (int i = 0; i < steps; i++) {
      double w = (double) i / steps;
      double distance = table.scale * w / (1 - w);
      SurfacePath path = SurfacePath.solve(height, depth, distance, index);
      table.weight[i] = path.spread() * surface.transmittance(path.cosineAir());
      table.length[i] = path.lengthInWater();
      table.row(
          i,
          distance < 1e-9 ? height / table.scale : path.crossing() / distance,
          Math.atan2(path.sineAir(), path.cosineAir()),
          path.sineWater());
    }
    // At infinite distance the ray grazes the surface.
    table.weight[steps] = 0;
    table.length[steps] = depth / Math.sqrt(1 - 1 / (index * index));
    table.row(steps, 1, Math.PI / 2, 1 / index);
    return table;
  }

  /** Returns how many steps there are. */
  int steps() {
    return steps;
  }

  private void row(int i, double crossing, double gamma, double sineWater) {
    rows[i * COLUMNS + CROSSING] = crossing;
    rows[i * COLUMNS + GAMMA] = gamma;
    rows[i * COLUMNS + SINE_WATER] = sineWater;
  }

  /**
   * Position in the table of a horizontal distance [m], 0 to below {@link #steps}: a step and a
   * part of the way to the next one.
   */
  double position(double distance) {
    return distance / (distance + scale) * steps;
  }

  /** Crossing distance over horizontal distance. */
  double crossingRatio(int step, double part) {
    return between(CROSSING, step, part);
  }

  /** Emission angle γ of a level lamp [rad]. */
  double gamma(int step, double part) {
    return between(GAMMA, step, part);
  }

  /** Sine of the zenith angle in water. */
  double sineWater(int step, double part) {
    return between(SINE_WATER, step, part);
  }

  /** Spread times surface and lid transmittance [sr/m²]. */
  double weight(int step, double part) {
    return weight[step] + part * (weight[step + 1] - weight[step]);
  }

  /** Path length in water [m]. */
  double length(int step, double part) {
    return length[step] + part * (length[step + 1] - length[step]);
  }

  /** {@link #weight} at a step of the table. */
  double weightAt(int step) {
    return weight[step];
  }

  /** {@link #length} at a step of the table. */
  double lengthAt(int step) {
    return length[step];
  }

  /** {@link #gamma} at a step of the table. */
  double gammaAt(int step) {
    return rows[step * COLUMNS + GAMMA];
  }

  private double between(int column, int step, double part) {
    int at = step * COLUMNS + column;
    double below = rows[at];
    return below + part * (rows[at + COLUMNS] - below);
  }
}
