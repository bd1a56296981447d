package parfield.field;

/**
 * Mirror images of receivers along one horizontal axis, as seen from one source: only those whose
 * light can come through the opening.
 *
 * <p>The share of the horizontal distance that lies in air grows with that distance, so the share
 * at the distance along this axis alone is a lower bound: an image whose crossing point already
 * misses the opening by it cannot be reached, whatever happens along the other axis.
 */
final class ImageAxis {
  /** Where the images of each coordinate begin; its last entry is where the last ones end. */
  final int[] first;

  /** Unfolded offsets from the source [m], by image. */
  final double[] offset;

  /** Image orders, by image. */
  final int[] order;

  private ImageAxis(int coordinates, int most) {
    first = new int[coordinates + 1];
    offset = new double[coordinates * most];
    order = new int[coordinates * most];
  }

  /**
   * Finds the reachable images.
   *
   * @param coordinates of the receivers along the axis [m]
   * @param source coordinate of the source [m]
   * @param span inner size of the tank along the axis [m]
   * @param from low end of the opening [m]
   * @param to high end of the opening [m]
   * @param beforeRim share of the way in air that lies above the opening
   * @param margin by which blurred edges may be overstepped [m]
   * @param reach farthest horizontal distance that light goes in water at this depth [m]
   * @param table paths from the source's height to the receivers' depth
   */
  static ImageAxis of(
      double[] coordinates,
      double source,
      double span,
      double from,
      double to,
      double beforeRim,
      double margin,
      double reach,
      PathTable table) {
    // The image of order k lies between k and k + 1 spans.
    int lowest = (int) Math.floor((from - margin - reach) / span);
    int highest = (int) Math.floor((to + margin + reach) / span);
    ImageAxis axis = new ImageAxis(coordinates.length, highest - lowest + 1);
    int found = 0;
    for (int c = 0; c < coordinates.length; c++) {
      for (int order = lowest; order <= highest; order++) {
        double image = image(coordinates[c], order, span);
        if (image > to + margin + reach || image < from - margin - reach) {
          continue;
        }
        double offset = image - source;
        double position = table.position(Math.abs(offset));
        int step = (int) position;
        double share = table.crossingRatio(step, position - step);
        double crossing = source + share * offset;
        double atRim = source + beforeRim * share * offset;
        boolean missed =
            offset > 0
                ? atRim > to + margin || crossing > span + margin
                : atRim < from - margin || crossing < -margin;
        if (!missed) {
          axis.offset[found] = offset;
          axis.order[found++] = order;
        }
      }
      axis.first[c + 1] = found;
    }
    return axis;
  }

  /** Coordinate of a mirror image [m]: even orders are shifted copies, odd ones mirrored. */
  static double image(double coordinate, int order, double span) {
    return (order & 1) == 0 ? order * span + coordinate : (order + 1) * span - coordinate;
  }
}
