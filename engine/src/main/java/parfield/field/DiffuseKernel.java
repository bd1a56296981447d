package parfield.field;

import parfield.tank.Side;
import parfield.tank.Tank;

/**
 * What a diffuse patch sends to a small receiver: straight, over the underside of the surface, and
 * by way of the panes.
 *
 * <p>Panes and surface are unfolded: mirror images of the patch in x and y, and in the surface,
 * where Fresnel's internal reflectance applies, with what a clear lid throws back. The straight
 * view is the exact polygon form factor; images are taken at the patch's centre.
 */
final class DiffuseKernel {
  /** Images farther away than this many times their height are left out. */
  private static final double REACH = 2.25;

  private static final int STEPS = 1024;

  private final Tank tank;
  private final PaneReflectances panes;
  private final double[] surface = new double[STEPS + 1];
  private final int ordersX;
  private final int ordersY;
  private final double reach;

  /**
   * Prepares a tank.
   *
   * @param reachFactor how far images are taken, as a multiple of the usual {@value #REACH}
   */
  DiffuseKernel(Tank tank, PaneReflectances panes, double reachFactor) {
    this.tank = tank;
    this.panes = panes;
    LiddedSurface lidded = new LiddedSurface(tank.water().refractiveIndex(), tank.opening().lid());
    for (int i = 0; i <= STEPS; i++) {
      surface[i] = lidded.internalReflectance((double) i / STEPS);
    }
    reach = REACH * reachFactor * 2 * tank.depth();
    ordersX = (int) Math.ceil(reach / tank.length());
    ordersY = (int) Math.ceil(reach / tank.width());
  }

  /**
   * Form factor from receiver to patch with all its images, and the mean path.
   *
   * @param patch the source of diffuse light
   * @param x of the receiver [m]
   * @param y of the receiver [m]
   * @param z depth of the receiver [m]
   * @param nx unit normal of the receiver
   * @param ny y component
   * @param nz z component, positive downward
   * @return what {@link DiffuseViews} keeps: E over the patch's radiosity without absorption, the
   *     same times its mean path [m], then by side what both gain per clear share of the pane
   */
  double[] transfer(Patch patch, double x, double y, double z, double nx, double ny, double nz) {
    double[] view = images(patch, x, y, z, nx, ny, nz);
    addStraight(view, patch, x, y, z, nx, ny, nz);
    return view;
  }

  /** Adds the straight view: the exact form factor of the patch. */
  void addStraight(
      double[] view, Patch patch, double x, double y, double z, double nx, double ny, double nz) {
    double direct =
        FormFactor.toPolygon(new double[] {x, y, z}, new double[] {nx, ny, nz}, patch.corners());
    double dx = patch.x() - x;
    double dy = patch.y() - y;
    double dz = patch.z() - z;
    view[0] += direct;
    view[1] += direct * Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /**
   * The images alone. Per area of the patch they are the same from its centre to the receiver and
   * back.
   */
  double[] images(Patch patch, double x, double y, double z, double nx, double ny, double nz) {
    double[] view = new double[DiffuseViews.WIDTH];
    for (int i = -ordersX; i <= ordersX; i++) {
      double px = ImageAxis.image(patch.x(), i, tank.length());
      double pnx = (i & 1) == 0 ? patch.nx() : -patch.nx();
      double dx = px - x;
      if (Math.abs(dx) > reach) {
        continue;
      }
      for (int j = -ordersY; j <= ordersY; j++) {
        double py = ImageAxis.image(patch.y(), j, tank.width());
        double pny = (j & 1) == 0 ? patch.ny() : -patch.ny();
        double dy = py - y;
        double horizontal = dx * dx + dy * dy;
        if (horizontal > reach * reach) {
          continue;
        }
        for (int mirror = 0; mirror < 2; mirror++) {
          double pz = mirror == 0 ? patch.z() : -patch.z();
          double pnz = mirror == 0 ? patch.nz() : -patch.nz();
          double dz = pz - z;
          double square = horizontal + dz * dz;
          if (i == 0 && j == 0 && mirror == 0) {
            continue;
          }
          double atReceiver = dx * nx + dy * ny + dz * nz;
          double atPatch = -(dx * pnx + dy * pny + dz * pnz);
          if (atReceiver <= 1e-12 || atPatch <= 1e-12) {
            continue;
          }
          double distance = Math.sqrt(square);
          double value = atReceiver * atPatch * patch.area() / (Math.PI * square * square);
          if (mirror == 1) {
            value *= at(Math.abs(dz) / distance);
          }
          double alongX = Math.abs(dx) / distance;
          double alongY = Math.abs(dy) / distance;
          value *=
              panes.along(i, Side.LEFT, Side.RIGHT, alongX)
                  * panes.along(j, Side.FRONT, Side.BACK, alongY);
          view[0] += value;
          view[1] += value * distance;
          addGains(view, i, Side.LEFT, Side.RIGHT, alongX, value, distance);
          addGains(view, j, Side.FRONT, Side.BACK, alongY, value, distance);
        }
      }
    }
    return view;
  }

  /** What one image gains per clear share of the panes that it goes by. */
  private void addGains(
      double[] view, int order, Side low, Side high, double cosine, double value, double distance) {
    if (order == 0) {
      return;
    }
    int count = Math.abs(order);
    addGain(view, order > 0 ? high : low, (count + 1) / 2, cosine, value, distance);
    if (count > 1) {
      addGain(view, order > 0 ? low : high, count / 2, cosine, value, distance);
    }
  }

  private void addGain(
      double[] view, Side side, int times, double cosine, double value, double distance) {
    double gain = times * panes.gain(side, cosine) * value;
    int at = 2 + 2 * side.ordinal();
    view[at] += gain;
    view[at + 1] += gain * distance;
  }

  private double at(double cosine) {
    double position = cosine * STEPS;
    int i = Math.min((int) position, STEPS - 1);
    return surface[i] + (position - i) * (surface[i + 1] - surface[i]);
  }
}
