package parfield.plan;

import java.util.ArrayList;
import java.util.List;
import parfield.field.Places;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;

/**
 * Where a plan looks at the light: each extent filled evenly with places that all stand for the
 * same area or volume, so that counting places is measuring; and a few more where the least and the
 * greatest light is to be expected.
 *
 * <p>An extent is cut into layers, each layer carries a rank-1 lattice: n places equally spaced
 * along x, whose y advance by the golden ratio (Niederreiter 1992, Random Number Generation and
 * Quasi-Monte Carlo Methods, ch. 5); layers are shifted against each other. Fields of a symmetric
 * rig are symmetric, and cells in rows and columns would look at the same light four times: at
 * equal numbers, coverage from a lattice errs half as much (0.7 points root mean square with 500
 * places in the volume, 0.5 with 1,000). n is a multiple of six, so that ends (outer sixths) and
 * centre (middle third) hold whole numbers of places. Immutable.
 */
final class Sampling {
  /** A plane gets this part of the places of a volume. */
  private static final int PLANE_PART = 4;

  private static final int FEWEST_LAYERS = 3;

  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  /** Shift between layers: the reciprocal of the plastic number. */
  private static final double SHIFT = 0.7548776662466927;

  /** Corners are looked at this far from the edges, as a sensor would stand [m]. */
  private static final double FROM_EDGE = 0.02;

  /** Places along the line under the fixtures, where hot spots are. */
  private static final int ALONG_FIXTURES = 13;

  private final List<Extent> extents;
  private final int[] first;
  private final int[] counted;
  private final int[] aLayer;
  private final Places places;

  private Sampling(List<Extent> extents, int[] first, int[] counted, int[] aLayer, Places places) {
    this.extents = extents;
    this.first = first;
    this.counted = counted;
    this.aLayer = aLayer;
    this.places = places;
  }

  /**
   * Fills extents with places.
   *
   * @param tank that they lie in
   * @param extents distinct
   * @param number about how many places in a volume; a plane gets a quarter
   * @param underFixtures y of the line under the fixtures [m]
   */
  static Sampling of(Tank tank, List<Extent> extents, int number, double underFixtures) {
    List<Place> places = new ArrayList<>();
    int[] first = new int[extents.size() + 1];
    int[] counted = new int[extents.size()];
    int[] aLayer = new int[extents.size()];
    for (int e = 0; e < extents.size(); e++) {
      Box box = Box.of(tank, extents.get(e));
      int layers = box.layers(number);
      aLayer[e] = box.aLayer(number, layers);
      for (int k = 0; k < layers; k++) {
        box.addLattice(places, aLayer[e], k, layers);
      }
      counted[e] = layers * aLayer[e];
      box.addExtremes(places, layers, underFixtures);
      first[e + 1] = places.size();
    }
    return new Sampling(List.copyOf(extents), first, counted, aLayer, Places.of(places));
  }

  /** An extent as a box; a plane is one without height. */
  private record Box(Rectangle area, double top, double height) {
    static Box of(Tank tank, Extent extent) {
      Rectangle area =
          extent
              .zone()
              .map(zone -> within(tank, zone.area()))
              .orElse(new Rectangle(0, tank.length(), 0, tank.width()));
      if (extent instanceof Extent.Plane plane) {
        return new Box(area, plane.depth(), 0);
      }
      double top = extent.zone().map(Zone::fromDepth).orElse(0.0);
      double bottom = extent.zone().map(Zone::toDepth).orElse(tank.depth());
      return new Box(area, top, Math.min(bottom, tank.depth()) - top);
    }

    /** Takes off what rounding of converted lengths let stand over the edge. */
    private static Rectangle within(Tank tank, Rectangle area) {
      return new Rectangle(
          Math.max(0, area.fromX()),
          Math.min(tank.length(), area.toX()),
          Math.max(0, area.fromY()),
          Math.min(tank.width(), area.toY()));
    }

    double length() {
      return area.toX() - area.fromX();
    }

    double width() {
      return area.toY() - area.fromY();
    }

    /** As many as keep places as far apart downward as sideways. */
    int layers(int number) {
      double edge = Math.cbrt(length() * width() * height / number);
      return height == 0 ? 1 : Math.max(FEWEST_LAYERS, (int) Math.round(height / edge));
    }

    int aLayer(int number, int layers) {
      int all = height == 0 ? number / PLANE_PART : number;
      return 6 * Math.max(2, Math.round(all / (6f * layers)));
    }

    double depth(int layer, int layers) {
      return top + height * (layer + 0.5) / layers;
    }

    void addLattice(List<Place> places, int n, int layer, int layers) {
      for (int i = 0; i < n; i++) {
        double across = 0.5 + i * GOLDEN + layer * SHIFT;
        places.add(
            new Place(
                area.fromX() + length() * (i + 0.5) / n,
                area.fromY() + width() * (across - Math.floor(across)),
                depth(layer, layers)));
      }
    }

    /** Corners of the first and the last layer, and the line under the fixtures in the first. */
    void addExtremes(List<Place> places, int layers, double underFixtures) {
      double inX = Math.min(FROM_EDGE, length() / 4);
      double inY = Math.min(FROM_EDGE, width() / 4);
      for (int k = 0; k < layers; k += Math.max(1, layers - 1)) {
        for (double x : new double[] {area.fromX() + inX, area.toX() - inX}) {
          for (double y : new double[] {area.fromY() + inY, area.toY() - inY}) {
            places.add(new Place(x, y, depth(k, layers)));
          }
        }
      }
      double y = Math.max(area.fromY(), Math.min(area.toY(), underFixtures));
      for (int i = 0; i < ALONG_FIXTURES; i++) {
        double x = area.fromX() + length() * (i + 0.5) / ALONG_FIXTURES;
        places.add(new Place(x, y, depth(0, layers)));
      }
    }
  }

  List<Extent> extents() {
    return extents;
  }

  Places places() {
    return places;
  }

  /** Index of the first place of an extent; of the one after the last, the number of places. */
  int first(int extent) {
    return first[extent];
  }

  /** How many places of an extent count for means and shares: its first ones. */
  int counted(int extent) {
    return counted[extent];
  }

  /** Places of one layer of an extent, ascending in x, equally spaced; a multiple of six. */
  int aLayer(int extent) {
    return aLayer[extent];
  }
}
