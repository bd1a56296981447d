package parfield.plot;

import parfield.survey.Band;

/**
 * How every place of a plane stands to a band.
 *
 * @param low lower ends of the intervals
 * @param high upper ends, on the same nodes
 * @param band the wanted range
 */
record Verdicts(Lattice low, Lattice high, Band band) {

  /** A field that is 0 or more exactly where one verdict holds. */
  Lattice margin(Verdict verdict) {
    return low.with(high, (from, to) -> margin(verdict, from, to));
  }

  /** The verdict at a point, both coordinates as shares of the plane's span. */
  Verdict at(double u, double v) {
    return of(low.at(u, v), high.at(u, v));
  }

  /** The share of the plane's area that has a verdict, 0 to 1; what is rock is no part of it. */
  double share(Verdict verdict, Regions.Part rock) {
    int columns = low.x().length;
    int rows = low.y().length;
    int count = 0;
    int water = 0;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        // Middles of equal cells, so that edges count no more than the rest.
        double u = (column + 0.5) / columns;
        double v = (row + 0.5) / rows;
        if (!rock.contains(u, v)) {
          water++;
          count += at(u, v) == verdict ? 1 : 0;
        }
      }
    }
    return water == 0 ? 0 : count / (double) water;
  }

  private Verdict of(double from, double to) {
    for (Verdict verdict : new Verdict[] {Verdict.IN, Verdict.BELOW, Verdict.ABOVE}) {
      if (margin(verdict, from, to) >= 0) {
        return verdict;
      }
    }
    return Verdict.OPEN;
  }

  private double margin(Verdict verdict, double from, double to) {
    double inside = Math.min(from - band.from(), band.to() - to);
    return switch (verdict) {
      case IN -> inside;
      case BELOW -> band.from() - to;
      case ABOVE -> from - band.to();
      case OPEN -> -Math.max(inside, Math.max(band.from() - to, from - band.to()));
    };
  }
}
