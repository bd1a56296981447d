package parfield.field;

import java.util.ArrayList;
import java.util.List;
import parfield.lamp.Emitter;
import parfield.rig.Hanging;

/**
 * A point that light leaves from, with the frame its intensities are given in.
 *
 * <p>An emitter of finite aperture becomes several points of equal share: the two-point Gauss rule
 * along each side, three-point where the aperture is wide for its height.
 *
 * @param hanging index of the hanging it belongs to
 * @param x along the tank's length [m]
 * @param y front to back [m]
 * @param height above the still surface [m]
 * @param share of the emitter's intensity that this point carries
 * @param yaw of the lamp frame [rad]
 * @param tilt of the lamp frame about its length axis [rad]
 */
record PointSource(
    int hanging, double x, double y, double height, double share, double yaw, double tilt) {
  private static final double LOWEST = 1e-3;

  /** An aperture wider than this share of its height is sampled with three points a side. */
  private static final double WIDE = 0.5;

  static List<PointSource> of(int index, Hanging hanging) {
    List<PointSource> sources = new ArrayList<>();
    for (Emitter emitter : hanging.fixture().emitters()) {
      double[][] rule = rule(emitter.aperture(), hanging.height());
      for (int i = 0; i < rule[0].length; i++) {
        for (int j = 0; j < rule[0].length; j++) {
          double u = emitter.x() + rule[0][i];
          double v = emitter.y() + rule[0][j];
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
                  rule[1][i] * rule[1][j],
                  hanging.yaw(),
                  hanging.tilt()));
        }
      }
    }
    return sources;
  }

  /** Gauss–Legendre nodes [m] and weights over one side of the aperture. */
  private static double[][] rule(double aperture, double height) {
    if (aperture == 0) {
      return new double[][] {{0}, {1}};
    }
    double half = aperture / 2;
    if (aperture > WIDE * height) {
      double node = half * Math.sqrt(0.6);
      return new double[][] {{-node, 0, node}, {5.0 / 18, 8.0 / 18, 5.0 / 18}};
    }
    double node = half / Math.sqrt(3);
    return new double[][] {{-node, node}, {0.5, 0.5}};
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
