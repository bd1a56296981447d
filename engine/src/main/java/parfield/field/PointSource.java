package parfield.field;

import java.util.ArrayList;
import java.util.List;
import parfield.lamp.Emitter;
import parfield.rig.Hanging;

/**
 * A small square that light leaves from, with the frame its intensities are given in.
 *
 * <p>An emitter of finite aperture becomes several cells of equal share, the more the wider it is
 * for its height. Light is taken to leave each cell's centre; the size that is left blurs the edges
 * of shadows.
 *
 * @param hanging index of the hanging it belongs to
 * @param x along the tank's length [m]
 * @param y front to back [m]
 * @param height above the still surface [m]
 * @param share of the emitter's intensity that this cell carries
 * @param size side of the cell [m]
 * @param yaw of the lamp frame [rad]
 * @param tilt of the lamp frame about its length axis [rad]
 */
record PointSource(
    int hanging,
    double x,
    double y,
    double height,
    double share,
    double size,
    double yaw,
    double tilt) {
  private static final double LOWEST = 1e-3;

  /** A cell is no wider than this share of its height, as far as the cells go. */
  private static final double WIDEST_CELL = 0.25;

  private static final int MOST_CELLS = 4;

  static List<PointSource> of(int index, Hanging hanging) {
    List<PointSource> sources = new ArrayList<>();
    for (Emitter emitter : hanging.fixture().emitters()) {
      int cells = cells(emitter.aperture(), hanging.height());
      double size = emitter.aperture() / cells;
      for (int i = 0; i < cells; i++) {
        for (int j = 0; j < cells; j++) {
          double u = emitter.x() + (i + 0.5) * size - emitter.aperture() / 2;
          double v = emitter.y() + (j + 0.5) * size - emitter.aperture() / 2;
          double acrossTilted = v * Math.cos(hanging.tilt());
          double raised = v * Math.sin(hanging.tilt());
          double cosine = Math.cos(hanging.yaw());
          double sine = Math.sin(hanging.yaw());
          sources.add(
              new PointSource(
                  index,
                  hanging.x() + u * cosine - acrossTilted * sine,
                  hanging.y() + u * sine + acrossTilted * cosine,
                  Math.max(LOWEST, hanging.height() + raised),
                  1.0 / (cells * cells),
                  size,
                  hanging.yaw(),
                  hanging.tilt()));
        }
      }
    }
    return sources;
  }

  /** How many cells a side of an aperture is cut into. */
  private static int cells(double aperture, double height) {
    int needed = (int) Math.ceil(aperture / (WIDEST_CELL * height));
    return Math.max(1, Math.min(MOST_CELLS, needed));
  }

  /** Returns whether the lamp hangs level, so that γ is the zenith angle of the ray. */
  boolean level() {
    return tilt == 0;
  }

  /**
   * Emission direction in the lamp's own frame.
   *
   * @param dx horizontal x component of any vector along the ray in the tank's frame
   * @param dy its y component
   * @param down its downward component
   * @return {γ, C} [rad]
   */
  double[] direction(double dx, double dy, double down) {
    double cosYaw = Math.cos(yaw);
    double sinYaw = Math.sin(yaw);
    double along = dx * cosYaw + dy * sinYaw;
    double across = -dx * sinYaw + dy * cosYaw;
    // A positive tilt turns the lamp's axis from straight down toward +y.
    double cosTilt = Math.cos(tilt);
    double sinTilt = Math.sin(tilt);
    double lampAcross = across * cosTilt - down * sinTilt;
    double lampDown = across * sinTilt + down * cosTilt;
    double horizontal = Math.sqrt(along * along + lampAcross * lampAcross);
    return new double[] {Math.atan2(horizontal, lampDown), Math.atan2(lampAcross, along)};
  }
}
