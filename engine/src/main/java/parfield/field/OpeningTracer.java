package parfield.field;

import java.util.List;
import parfield.tank.Opening;
import parfield.tank.Rectangle;
import parfield.tank.Side;
import parfield.tank.Tank;

/**
 * Finds every light path from a source through the opening to a place, panes unfolded, past rocks.
 */
final class OpeningTracer {
  /** Tangent of the steepest zenith angle in water is below this, times depth the reach. */
  private final double reachPerDepth;

  private final Tank tank;
  private final PaneReflectances panes;
  private final double fromX;
  private final double toX;
  private final double fromY;
  private final double toY;
  private final Rectangle[] opaque;
  private final double freeboard;
  private final RockShadows rocks;

  OpeningTracer(Tank tank, PaneReflectances panes) {
    this.tank = tank;
    this.panes = panes;
    Opening opening = tank.opening();
    fromX = opening.rim();
    toX = tank.length() - opening.rim();
    fromY = opening.rim();
    toY = tank.width() - opening.rim();
    List<Rectangle> rectangles = opening.opaque();
    opaque = rectangles.toArray(new Rectangle[0]);
    freeboard = opening.freeboard();
    double sine = 1 / tank.water().refractiveIndex();
    reachPerDepth = sine / Math.sqrt(1 - sine * sine);
    rocks = RockShadows.of(tank).orElse(null);
  }

  /** Blur of shadow edges at the surface between one source and one depth. */
  EdgeBlur blur(PointSource source, double depth) {
    return EdgeBlur.of(source.size(), depth, tank);
  }

  /** Share of the way from a source to the water that lies above the rim. */
  private double beforeRim(PointSource source) {
    return freeboard == 0 ? 1 : Math.max(0, 1 - freeboard / source.height());
  }

  ImageAxis imagesX(double[] coordinates, PointSource source, double depth, PathTable table) {
    return ImageAxis.of(
        coordinates,
        source.x(),
        tank.length(),
        fromX,
        toX,
        beforeRim(source),
        blur(source, depth).margin(),
        reachPerDepth * depth,
        table);
  }

  ImageAxis imagesY(double[] coordinates, PointSource source, double depth, PathTable table) {
    return ImageAxis.of(
        coordinates,
        source.y(),
        tank.width(),
        fromY,
        toY,
        beforeRim(source),
        blur(source, depth).margin(),
        reachPerDepth * depth,
        table);
  }

  /**
   * Hands every path that reaches one receiver to a sink.
   *
   * @param source where light leaves
   * @param depth of the receiver [m]
   * @param table paths for its height and the receiver's depth
   * @param imagesX images of the receivers along x
   * @param ix which of them
   * @param imagesY images along y
   * @param iy which of them
   * @param blur of shadow edges
   * @param sink takes the paths
   */
  void trace(
      PointSource source,
      double depth,
      PathTable table,
      ImageAxis imagesX,
      int ix,
      ImageAxis imagesY,
      int iy,
      EdgeBlur blur,
      PathSink sink) {
    double beforeRim = beforeRim(source);
    for (int a = imagesX.first[ix]; a < imagesX.first[ix + 1]; a++) {
      double dx = imagesX.offset[a];
      for (int b = imagesY.first[iy]; b < imagesY.first[iy + 1]; b++) {
        double dy = imagesY.offset[b];
        double distance = Math.sqrt(dx * dx + dy * dy);
        double position = table.position(distance);
        int step = (int) position;
        double part = position - step;
        double share = table.crossingRatio(step, part);
        double crossingX = source.x() + share * dx;
        double crossingY = source.y() + share * dy;
        double open =
            beforeRim == 1
                ? open(crossingX, crossingY, share, blur)
                : open(
                        source.x() + beforeRim * share * dx,
                        source.y() + beforeRim * share * dy,
                        beforeRim * share,
                        blur)
                    * betweenPanes(crossingX, crossingY, share, blur);
        if (open == 0) {
          continue;
        }
        int orderX = imagesX.order[a];
        int orderY = imagesY.order[b];
        if (rocks != null
            && rocks.block(
                crossingX, crossingY, (1 - share) * dx, (1 - share) * dy, depth, orderX, orderY)) {
          continue;
        }
        double reflectance = open;
        if ((orderX | orderY) != 0) {
          // Straight down along a pane: the ray grazes it.
          double sine = distance > 0 ? table.sineWater(step, part) / distance : 0;
          reflectance *=
              panes.along(orderX, Side.LEFT, Side.RIGHT, sine * Math.abs(dx))
                  * panes.along(orderY, Side.FRONT, Side.BACK, sine * Math.abs(dy));
        }
        sink.path(reflectance, step, part, dx, dy, distance, orderX, orderY);
      }
    }
  }

  /** Share of the light about a crossing point that is not outside the panes, 0 to 1. */
  private double betweenPanes(double x, double y, double airShare, EdgeBlur blur) {
    return blur.between(x, 0, tank.length(), airShare) * blur.between(y, 0, tank.width(), airShare);
  }

  /** Share of the light about a point of the rim's plane that finds the opening, 0 to 1. */
  private double open(double x, double y, double airShare, EdgeBlur blur) {
    double margin = blur.margin();
    if (x < fromX - margin || x > toX + margin || y < fromY - margin || y > toY + margin) {
      return 0;
    }
    boolean inside =
        x > fromX + margin && x < toX - margin && y > fromY + margin && y < toY - margin;
    if (inside && opaque.length == 0) {
      return 1;
    }
    double share = blur.between(x, fromX, toX, airShare) * blur.between(y, fromY, toY, airShare);
    for (Rectangle rectangle : opaque) {
      if (x > rectangle.fromX() - margin
          && x < rectangle.toX() + margin
          && y > rectangle.fromY() - margin
          && y < rectangle.toY() + margin) {
        share *=
            1
                - blur.between(x, rectangle.fromX(), rectangle.toX(), airShare)
                    * blur.between(y, rectangle.fromY(), rectangle.toY(), airShare);
      }
    }
    return share;
  }
}
