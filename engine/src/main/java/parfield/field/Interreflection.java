package parfield.field;

import java.util.Arrays;
import java.util.List;
import parfield.optics.Attenuation;
import parfield.parallel.SideBySide;
import parfield.tank.Side;
import parfield.tank.Tank;

/**
 * What comes back from bottom and covered panes: radiosity between patches, in water with
 * absorption, the surface's underside and the panes mirroring.
 *
 * <p>Geometry and mean paths are computed once a tank, at clear shares of the panes near the stated
 * ones, together with their derivatives: panes a little clearer or duller are reached by a straight
 * line, which errs by up to 3 % of the diffuse light where several panes are off by 0.2. Each
 * channel's absorption enters along the mean path of each pair, which errs by the path's variance
 * times a²/2, below 0.1 % of the diffuse part in clear water. The diffuse field is smooth: it is
 * computed on a lattice and interpolated.
 */
final class Interreflection {
  private static final int NODES_X = 7;
  private static final int NODES_Y = 5;
  private static final int NODES_Z = 4;

  /** The lattice keeps this far from the panes [m], where a covered pane's near field jumps. */
  private static final double MARGIN = 0.01;

  /** Bounces are followed until so much is left; from there on all fall off alike. */
  private static final double ALIKE = 5e-3;

  private static final int MOST_BOUNCES = 200;

  /** Rounds after which light has settled enough to tell what a bounce leaves of it. */
  private static final int SETTLED = 3;

  private final Tank tank;
  private final List<Patch> patches;
  private final DiffuseViews between;
  private final DiffuseViews toNodes;

  private Interreflection(
      Tank tank, List<Patch> patches, DiffuseViews between, DiffuseViews toNodes) {
    this.tank = tank;
    this.patches = patches;
    this.between = between;
    this.toNodes = toNodes;
  }

  /**
   * Computes a room.
   *
   * @param tank its geometry and the clear shares of the panes about which it is computed
   * @param panes reflectances of its panes
   * @param reachFactor how far images are taken, as a multiple of the usual
   */
  static Interreflection of(Tank tank, PaneReflectances panes, double reachFactor) {
    List<Patch> patches = Patch.of(tank);
    DiffuseKernel kernel = new DiffuseKernel(tank, panes, reachFactor);
    int n = patches.size();
    DiffuseViews between = new DiffuseViews(n, n);
    SideBySide.each(n, i -> addViewsBetween(between, patches, i, kernel));
    DiffuseViews toNodes = new DiffuseViews(n == 0 ? 0 : NODES_X * NODES_Y * NODES_Z, n);
    SideBySide.each(
        toNodes.receivers(),
        node -> {
          double x = onAxis(node % NODES_X, NODES_X, tank.length());
          double y = onAxis(node / NODES_X % NODES_Y, NODES_Y, tank.width());
          int layer = node / (NODES_X * NODES_Y);
          double z = tank.depth() * layer / (NODES_Z - 1);
          for (int p = 0; p < n; p++) {
            toNodes.set(node, p, kernel.transfer(patches.get(p), x, y, z, 0, 0, -1));
          }
        });
    return new Interreflection(tank, patches, between, toNodes);
  }

  /** Coordinate of a node of the lattice [m]. */
  private static double onAxis(int node, int nodes, double span) {
    return MARGIN + (span - 2 * MARGIN) * node / (nodes - 1);
  }

  /** What a patch and those that follow it see of each other. */
  private static void addViewsBetween(
      DiffuseViews between, List<Patch> patches, int i, DiffuseKernel kernel) {
    Patch to = patches.get(i);
    for (int j = i; j < patches.size(); j++) {
      Patch from = patches.get(j);
      double[] images = kernel.images(from, to.x(), to.y(), to.z(), to.nx(), to.ny(), to.nz());
      between.set(i, j, withStraight(images, kernel, from, to));
      if (j > i) {
        for (int k = 0; k < images.length; k++) {
          images[k] *= to.area() / from.area();
        }
        between.set(j, i, withStraight(images, kernel, to, from));
      }
    }
  }

  private static double[] withStraight(
      double[] images, DiffuseKernel kernel, Patch from, Patch to) {
    double[] view = images.clone();
    kernel.addStraight(view, from, to.x(), to.y(), to.z(), to.nx(), to.ny(), to.nz());
    return view;
  }

  List<Patch> patches() {
    return patches;
  }

  /**
   * The operator of one channel: from direct irradiance on the patches to E_d on the lattice.
   *
   * @param stated the tank with its real reflectances
   * @param attenuation of the channel in its water
   */
  Return attenuated(Tank stated, Attenuation attenuation) {
    int n = patches.size();
    double[] reflectances = new double[n];
    for (int i = 0; i < n; i++) {
      reflectances[i] = patches.get(i).reflectance(stated);
    }
    double[] moved = new double[Side.values().length];
    for (Side side : Side.values()) {
      moved[side.ordinal()] = stated.walls().on(side).clear() - tank.walls().on(side).clear();
    }
    float[][] step = between.through(moved, attenuation, reflectances);
    float[][] toLattice = toNodes.through(moved, attenuation);
    return new Return(reflectances, step, toLattice);
  }

  /** One channel's return of diffuse light. Immutable. */
  static final class Return {
    private final double[] reflectances;
    private final float[][] step;
    private final float[][] toLattice;
    private final int bounces;

    /** All further bounces over the last that is followed. */
    private final double tail;

    private Return(double[] reflectances, float[][] step, float[][] toLattice) {
      this.reflectances = reflectances;
      this.step = step;
      this.toLattice = toLattice;
      double left = left();
      bounces =
          left > 0
              ? (int)
                  Math.min(
                      MOST_BOUNCES, Math.ceil(Math.log(ALIKE) / Math.log(Math.min(left, 0.999))))
              : 0;
      tail = bounces < MOST_BOUNCES ? left / (1 - left) : 0;
    }

    /** Share that a bounce leaves of diffuse light that has settled. */
    private double left() {
      double[] light = reflectances;
      double before = 0;
      double after = Arrays.stream(light).sum();
      for (int round = 0; round < SETTLED; round++) {
        light = bounced(light);
        before = after;
        after = Arrays.stream(light).sum();
      }
      return before > 0 ? after / before : 0;
    }

    private double[] bounced(double[] light) {
      double[] next = new double[light.length];
      for (int i = 0; i < next.length; i++) {
        next[i] = dot(step[i], light);
      }
      return next;
    }

    /**
     * E_d on the lattice from direct light on the patches.
     *
     * @param direct irradiance on each patch [µmol m⁻² s⁻¹]
     */
    double[] lattice(double[] direct) {
      int n = direct.length;
      double[] bounce = new double[n];
      for (int i = 0; i < n; i++) {
        bounce[i] = direct[i] * reflectances[i];
      }
      double[] radiosity = bounce.clone();
      for (int round = 1; round <= bounces; round++) {
        bounce = bounced(bounce);
        double further = round == bounces ? 1 + tail : 1;
        for (int i = 0; i < n; i++) {
          radiosity[i] += further * bounce[i];
        }
      }
      double[] lattice = new double[toLattice.length];
      for (int node = 0; node < lattice.length; node++) {
        lattice[node] = dot(toLattice[node], radiosity);
      }
      return lattice;
    }

    /** Four sums at a time: a single one would wait for itself at every addition. */
    private static double dot(float[] a, double[] b) {
      double first = 0;
      double second = 0;
      double third = 0;
      double fourth = 0;
      int i = 0;
      for (; i + 3 < a.length; i += 4) {
        first += a[i] * b[i];
        second += a[i + 1] * b[i + 1];
        third += a[i + 2] * b[i + 2];
        fourth += a[i + 3] * b[i + 3];
      }
      for (; i < a.length; i++) {
        first += a[i] * b[i];
      }
      return first + second + (third + fourth);
    }

    /**
     * Rows of the transport from direct patch irradiance to E_d at places: the adjoint of {@link
     * #lattice}, for many right-hand sides.
     *
     * @return [lattice node][patch]
     */
    double[][] rows() {
      int n = reflectances.length;
      double[][] columns = new double[n][];
      for (int p = 0; p < n; p++) {
        double[] unit = new double[n];
        unit[p] = 1;
        columns[p] = lattice(unit);
      }
      double[][] rows = new double[toLattice.length][n];
      for (int node = 0; node < rows.length; node++) {
        for (int p = 0; p < n; p++) {
          rows[node][p] = columns[p][node];
        }
      }
      return rows;
    }
  }

  /**
   * Trilinear weights of a place in the lattice.
   *
   * @param nodes takes the eight nodes
   * @param weights takes their weights
   */
  void locate(double x, double y, double z, int[] nodes, double[] weights) {
    double u = position((x - MARGIN) / (tank.length() - 2 * MARGIN), NODES_X);
    double v = position((y - MARGIN) / (tank.width() - 2 * MARGIN), NODES_Y);
    double w = position(z / tank.depth(), NODES_Z);
    int i = Math.min((int) u, NODES_X - 2);
    int j = Math.min((int) v, NODES_Y - 2);
    int k = Math.min((int) w, NODES_Z - 2);
    double fx = u - i;
    double fy = v - j;
    double fz = w - k;
    for (int corner = 0; corner < 8; corner++) {
      int a = corner & 1;
      int b = corner >> 1 & 1;
      int c = corner >> 2;
      nodes[corner] = ((k + c) * NODES_Y + j + b) * NODES_X + i + a;
      weights[corner] = (a == 0 ? 1 - fx : fx) * (b == 0 ? 1 - fy : fy) * (c == 0 ? 1 - fz : fz);
    }
  }

  /** Adds the diffuse field of one plane to a sum: the same interpolation, axis by axis. */
  void addInterpolated(double[] lattice, DepthPlane plane, double[] sum) {
    double w = position(plane.depth() / tank.depth(), NODES_Z);
    int k = Math.min((int) w, NODES_Z - 2);
    double fz = w - k;
    int layer = NODES_X * NODES_Y;
    double[][] rows = new double[plane.y().length][NODES_X];
    for (int row = 0; row < rows.length; row++) {
      double v = position((plane.y()[row] - MARGIN) / (tank.width() - 2 * MARGIN), NODES_Y);
      int j = Math.min((int) v, NODES_Y - 2);
      double fy = v - j;
      for (int i = 0; i < NODES_X; i++) {
        int at = k * layer + j * NODES_X + i;
        double front = lattice[at] + fz * (lattice[at + layer] - lattice[at]);
        at += NODES_X;
        double back = lattice[at] + fz * (lattice[at + layer] - lattice[at]);
        rows[row][i] = front + fy * (back - front);
      }
    }
    int[] cells = new int[plane.x().length];
    double[] shares = new double[plane.x().length];
    for (int column = 0; column < cells.length; column++) {
      double u = position((plane.x()[column] - MARGIN) / (tank.length() - 2 * MARGIN), NODES_X);
      cells[column] = Math.min((int) u, NODES_X - 2);
      shares[column] = u - cells[column];
    }
    int[] members = plane.members();
    for (int m = 0; m < members.length; m++) {
      double[] row = rows[plane.yIndex()[m]];
      int column = plane.xIndex()[m];
      int i = cells[column];
      sum[members[m]] += row[i] + shares[column] * (row[i + 1] - row[i]);
    }
  }

  private static double position(double share, int nodes) {
    return Math.max(0, Math.min(1, share)) * (nodes - 1);
  }
}
