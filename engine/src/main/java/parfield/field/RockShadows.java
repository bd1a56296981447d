package parfield.field;

import java.util.Optional;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Bounds;
import parfield.tank.Tank;

/**
 * Whether rocks stand in the way of a straight path under water, panes folded back: each leg
 * between two reflections is tested where it really runs. Immutable.
 */
final class RockShadows {
  /** The end of a path does not count as in its own way [m]. */
  private static final double ENDS = 1e-9;

  /** Tests begin this far over the highest rock, so that rounding cannot start them inside [m]. */
  private static final double OVER = 1e-6;

  private final Aquascape rocks;
  private final double length;
  private final double width;
  private final double top;

  private RockShadows(Tank tank, Bounds bounds) {
    rocks = tank.aquascape();
    length = tank.length();
    width = tank.width();
    top = Math.max(0, bounds.fromDepth() - OVER);
  }

  /** The shadows in a tank; empty where there is no rock. */
  static Optional<RockShadows> of(Tank tank) {
    return tank.aquascape().bounds().map(bounds -> new RockShadows(tank, bounds));
  }

  /**
   * Whether a path is blocked between the surface and its end.
   *
   * @param crossingX where it crosses the surface [m]
   * @param crossingY where it crosses the surface [m]
   * @param alongX from there to the unfolded end [m]
   * @param alongY from there to the unfolded end [m]
   * @param depth of the end [m]
   * @param orderX image order of the end along x: how many panes it crosses, signed
   * @param orderY image order along y
   */
  boolean block(
      double crossingX,
      double crossingY,
      double alongX,
      double alongY,
      double depth,
      int orderX,
      int orderY) {
    if (depth <= top) {
      return false;
    }
    // Shares of the path, 0 at the surface; nothing is in the way above the highest rock.
    double clear = top / depth;
    double reached = 0;
    int cellX = 0;
    int cellY = 0;
    while (true) {
      double toX = cellX == orderX ? 1 : crossing(cellX, orderX, length, crossingX, alongX);
      double toY = cellY == orderY ? 1 : crossing(cellY, orderY, width, crossingY, alongY);
      double end = Math.max(reached, Math.min(1, Math.min(toX, toY)));
      double start = Math.max(reached, clear);
      if (end > start
          && legBlocked(crossingX, crossingY, alongX, alongY, depth, cellX, cellY, start, end)) {
        return true;
      }
      if (cellX == orderX && cellY == orderY) {
        return false;
      }
      boolean paneX = cellX != orderX && (cellY == orderY || toX <= toY);
      cellX += paneX ? Integer.signum(orderX) : 0;
      cellY += paneX ? 0 : Integer.signum(orderY);
      reached = end;
    }
  }

  /** Share of the path at which it leaves a cell toward the end's. */
  private static double crossing(int cell, int order, double span, double from, double along) {
    double pane = (order > 0 ? cell + 1 : cell) * span;
    // Straight down along the pane itself: the path is at it from the start.
    return along == 0 ? 0 : Math.max(0, (pane - from) / along);
  }

  private boolean legBlocked(
      double crossingX,
      double crossingY,
      double alongX,
      double alongY,
      double depth,
      int cellX,
      int cellY,
      double start,
      double end) {
    boolean mirroredX = (cellX & 1) != 0;
    boolean mirroredY = (cellY & 1) != 0;
    double x = folded(crossingX + start * alongX, cellX, length);
    double y = folded(crossingY + start * alongY, cellY, width);
    double path = Math.sqrt(alongX * alongX + alongY * alongY + depth * depth);
    return rocks.blocks(
        x,
        y,
        start * depth,
        (mirroredX ? -alongX : alongX) / path,
        (mirroredY ? -alongY : alongY) / path,
        depth / path,
        (end - start) * path - ENDS);
  }

  /** The coordinate in the tank of one in an image cell. */
  private static double folded(double coordinate, int cell, double span) {
    return (cell & 1) == 0 ? coordinate - cell * span : (cell + 1) * span - coordinate;
  }
}
