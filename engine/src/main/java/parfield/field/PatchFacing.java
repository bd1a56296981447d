package parfield.field;

import java.util.List;
import parfield.tank.Side;

/**
 * Turns light that falls on a level receiver into light that falls on a patch.
 *
 * @param patches by index
 */
record PatchFacing(List<Patch> patches) {
  /**
   * Irradiance on the patch over irradiance on a level receiver at the same point.
   *
   * <p>A pane is lit by light that travels toward it; an odd image order means that the last leg
   * runs against the unfolded direction.
   */
  double factor(
      int patch,
      PathTable table,
      int step,
      double part,
      double dx,
      double dy,
      double distance,
      int orderX,
      int orderY) {
    Side side = patches.get(patch).side();
    if (side == null) {
      return 1;
    }
    boolean alongX = side == Side.LEFT || side == Side.RIGHT;
    double offset = alongX ? dx : dy;
    int order = alongX ? orderX : orderY;
    double travel = (order & 1) == 0 ? offset : -offset;
    boolean towardHigh = side == Side.RIGHT || side == Side.BACK;
    if (distance == 0 || (towardHigh ? travel <= 0 : travel >= 0)) {
      return 0;
    }
    double sine = table.sineWater(step, part);
    double cosine = Math.sqrt(1 - sine * sine);
    return sine * Math.abs(offset) / (distance * cosine);
  }
}
