package parfield.plot;

import java.util.List;
import java.util.Optional;

/** How every place of a plane stands to what is wanted there. */
interface Verdicts {
  /** Those that there can be, in the order of the key, {@link Verdict#OPEN} the last. */
  List<Verdict> all();

  /** The verdict at a point, both coordinates as shares of the plane's span. */
  Verdict at(double u, double v);

  /** A field that is 0 or more exactly where one verdict holds. */
  Lattice margin(Verdict verdict);

  /** What a verdict says, the fullest wording first, each shorter than the one before. */
  List<String> wordings(Verdict verdict);

  /** The words of a verdict in the key; empty where it is not named there. */
  Optional<String> inKey(Verdict verdict, double share);

  /** Places along the first axis at which the plane is looked at. */
  int columns();

  /** Places along the second. */
  int rows();

  /** The share of the plane's area that has a verdict, 0 to 1; what is rock is no part of it. */
  default double share(Verdict verdict, Regions.Part rock) {
    int count = 0;
    int water = 0;
    for (int row = 0; row < rows(); row++) {
      for (int column = 0; column < columns(); column++) {
        // Middles of equal cells, so that edges count no more than the rest.
        double u = (column + 0.5) / columns();
        double v = (row + 0.5) / rows();
        if (!rock.contains(u, v)) {
          water++;
          count += at(u, v) == verdict ? 1 : 0;
        }
      }
    }
    return water == 0 ? 0 : count / (double) water;
  }
}
