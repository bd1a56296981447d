package parfield.field;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Points at which direct light is gathered, grouped by depth, each on behalf of an owner.
 *
 * @param planes the points by depth
 * @param owner for each point the index of what it stands for: a place or a patch
 * @param share that each point contributes to its owner
 * @param steps of the path tables that are fine enough for them
 */
record Receivers(List<DepthPlane> planes, int[] owner, double share, int steps) {
  private static final double GAUSS = 1 / Math.sqrt(3);

  /** The places themselves. */
  static Receivers at(Places places) {
    int n = places.size();
    double[] x = new double[n];
    double[] y = new double[n];
    double[] depth = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = places.x(i);
      y[i] = places.y(i);
      depth[i] = places.depth(i);
    }
    return new Receivers(
        DepthPlane.of(x, y, depth), IntStream.range(0, n).toArray(), 1, PathTable.STEPS);
  }

  /**
   * Two Gauss points on every patch, one above the other on panes and one behind the other on the
   * bottom, along which light changes fastest: two by two move the light at a place by less than
   * 0.1 %.
   */
  static Receivers onPatches(List<Patch> patches) {
    int n = patches.size() * 2;
    double[] x = new double[n];
    double[] y = new double[n];
    double[] depth = new double[n];
    int[] owner = new int[n];
    for (int i = 0; i < n; i++) {
      owner[i] = i / 2;
      double[] point = patches.get(owner[i]).point(0, (i & 1) == 0 ? -GAUSS : GAUSS);
      x[i] = point[0];
      y[i] = point[1];
      depth[i] = point[2];
    }
    return new Receivers(DepthPlane.of(x, y, depth), owner, 0.5, PathTable.DIFFUSE_STEPS);
  }
}
