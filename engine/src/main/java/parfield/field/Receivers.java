package parfield.field;

import java.util.List;
import java.util.stream.IntStream;
import parfield.tank.Tank;

/**
 * Points at which direct light is gathered, grouped by depth, each on behalf of an owner.
 *
 * @param planes the points by depth
 * @param owner for each point the index of what it stands for: a place or a patch
 * @param share that each point contributes to its owner
 */
record Receivers(List<DepthPlane> planes, int[] owner, double share) {
  private static final double[][] STILL = {{0, 0}};
  private static final double[][] MOVING = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
  private static final double GAUSS = 1 / Math.sqrt(3);

  /**
   * The places themselves over still water, or displaced as a moving surface displaces their light.
   *
   * <p>A facet of slope s bends a ray by (1 − 1/n) s, which moves its foot by that times the depth;
   * points at ±√2 standard deviations along each axis have the displacement's covariance.
   */
  static List<Receivers> displaced(Tank tank, Places places) {
    double perAxis = Math.sqrt(tank.surface().slopeVariance() / 2);
    double bend = 1 - 1 / tank.water().refractiveIndex();
    double[][] stencil = perAxis == 0 ? STILL : MOVING;
    int n = places.size();
    int[] self = IntStream.range(0, n).toArray();
    return IntStream.range(0, stencil.length)
        .mapToObj(
            s -> {
              double[] x = new double[n];
              double[] y = new double[n];
              double[] depth = new double[n];
              for (int i = 0; i < n; i++) {
                depth[i] = places.depth(i);
                double step = Math.sqrt(2) * perAxis * bend * depth[i];
                x[i] = folded(places.x(i) + stencil[s][0] * step, tank.length());
                y[i] = folded(places.y(i) + stencil[s][1] * step, tank.width());
              }
              return new Receivers(DepthPlane.of(x, y, depth), self, 1.0 / stencil.length);
            })
        .toList();
  }

  /** Two-by-two Gauss points on every patch. */
  static Receivers onPatches(List<Patch> patches) {
    int n = patches.size() * 4;
    double[] x = new double[n];
    double[] y = new double[n];
    double[] depth = new double[n];
    int[] owner = new int[n];
    for (int i = 0; i < n; i++) {
      owner[i] = i / 4;
      double u = (i & 1) == 0 ? -GAUSS : GAUSS;
      double v = (i & 2) == 0 ? -GAUSS : GAUSS;
      double[] point = patches.get(owner[i]).point(u, v);
      x[i] = point[0];
      y[i] = point[1];
      depth[i] = point[2];
    }
    return new Receivers(DepthPlane.of(x, y, depth), owner, 0.25);
  }

  /** A point pushed through a pane comes back mirrored. */
  private static double folded(double coordinate, double span) {
    double inside = coordinate < 0 ? -coordinate : coordinate;
    return inside > span ? 2 * span - inside : inside;
  }
}
