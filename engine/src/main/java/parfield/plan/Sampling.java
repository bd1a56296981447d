package parfield.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.aquascape.LivingSurface;
import parfield.field.Places;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

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
 * centre (middle third) hold whole numbers of places. Places in rock are left out: the others still
 * stand for equal shares of the water. The living surface brings its own places. Immutable.
 */
final class Sampling {
  /** A plane gets this part of the places of a volume. */
  private static final int PLANE_PART = 4;

  private static final int FEWEST_LAYERS = 3;

  /** The living surface gets this part of the places of a volume. */
  private static final int LIVING_PART = 2;

  /** A zone of the living surface is looked at more closely until it holds this part of them. */
  private static final int ZONE_PART = 4;

  /** But no more closely than with this many times the places. */
  private static final int CLOSEST = 16;

  /** A place in none of the two parts below. */
  static final byte BETWEEN = 0;

  /** A place in the outer sixths of its extent's length. */
  static final byte END = 1;

  /** A place in the middle third of its extent's length. */
  static final byte CENTRE = 2;

  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  /** Shift between layers: the reciprocal of the plastic number. */
  private static final double SHIFT = 0.7548776662466927;

  /** Corners are looked at this far from the edges, as a sensor would stand [m]. */
  private static final double FROM_EDGE = 0.02;

  /** Places along the line under the fixtures, where hot spots are. */
  private static final int ALONG_FIXTURES = 13;

  private final List<Extent> extents;
  private final int[] first;
  private final byte[][] parts;
  private final Places places;

  private Sampling(List<Extent> extents, int[] first, byte[][] parts, Places places) {
    this.extents = extents;
    this.first = first;
    this.parts = parts;
    this.places = places;
  }

  /**
   * Fills extents with places.
   *
   * @param tank that they lie in
   * @param extents distinct
   * @param number about how many places in a volume; a plane gets a quarter, the living surface
   *     half
   * @param underFixtures y of the line under the fixtures [m]
   * @throws IllegalArgumentException if an extent holds no water; the message names it
   */
  static Sampling of(Tank tank, List<Extent> extents, int number, double underFixtures) {
    List<Place> places = new ArrayList<>();
    int[] first = new int[extents.size() + 1];
    byte[][] parts = new byte[extents.size()][];
    for (int e = 0; e < extents.size(); e++) {
      Extent extent = extents.get(e);
      Filling filling = new Filling(tank, Box.of(tank, extent));
      if (extent instanceof Extent.Living living) {
        filling.addLiving(living, number / LIVING_PART);
      } else {
        filling.addLattices(number, underFixtures);
      }
      if (filling.counted.isEmpty()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "%s holds no %s; choose another one, or leave the demand out",
                extent.inWords(LengthUnit.CM),
                extent instanceof Extent.Living
                    ? "surface that coral could live on"
                    : "water: rocks fill it"));
      }
      places.addAll(filling.counted);
      places.addAll(filling.extremes);
      parts[e] = filling.parts();
      first[e + 1] = places.size();
    }
    return new Sampling(List.copyOf(extents), first, parts, Places.of(places));
  }

  /** The places of one extent in the making, those in rock left out. */
  private static final class Filling {
    private final Tank tank;
    private final Box box;
    private final List<Place> counted = new ArrayList<>();
    private final List<Place> extremes = new ArrayList<>();
    private final List<Byte> parts = new ArrayList<>();

    Filling(Tank tank, Box box) {
      this.tank = tank;
      this.box = box;
    }

    void addLattices(int number, double underFixtures) {
      int layers = box.layers(number);
      int n = box.aLayer(number, layers);
      for (int k = 0; k < layers; k++) {
        for (int i = 0; i < n; i++) {
          Place place = box.ofLattice(n, i, k, layers);
          if (inWater(place)) {
            counted.add(place);
            parts.add(part(6 * i / n));
          }
        }
      }
      box.extremes(layers, underFixtures).stream().filter(this::inWater).forEach(extremes::add);
    }

    void addLiving(Extent.Living living, int number) {
      for (int closely = 1;
          closely <= CLOSEST && counted.size() < number / ZONE_PART;
          closely *= 2) {
        counted.clear();
        parts.clear();
        LivingSurface surface =
            LivingSurface.of(
                tank.aquascape(), tank.length(), tank.width(), tank.depth(), closely * number);
        for (LivingSurface.Sample sample : surface.samples()) {
          Place place = new Place(sample.x(), sample.y(), sample.depth());
          if (living.zone().map(zone -> zone.contains(place)).orElse(true)) {
            counted.add(place);
            double share = (place.x() - box.area().fromX()) / box.length();
            parts.add(part((int) (6 * share)));
          }
        }
      }
    }

    private boolean inWater(Place place) {
      return !tank.aquascape().inside(place.x(), place.y(), place.depth());
    }

    /** Which part the sixths of a length belong to. */
    private static byte part(int sixth) {
      return sixth <= 0 || sixth >= 5 ? END : sixth == 2 || sixth == 3 ? CENTRE : BETWEEN;
    }

    byte[] parts() {
      byte[] all = new byte[parts.size()];
      for (int i = 0; i < all.length; i++) {
        all[i] = parts.get(i);
      }
      return all;
    }
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

    Place ofLattice(int n, int i, int layer, int layers) {
      double across = 0.5 + i * GOLDEN + layer * SHIFT;
      return new Place(
          area.fromX() + length() * (i + 0.5) / n,
          area.fromY() + width() * (across - Math.floor(across)),
          depth(layer, layers));
    }

    /** Corners of the first and the last layer, and the line under the fixtures in the first. */
    List<Place> extremes(int layers, double underFixtures) {
      List<Place> places = new ArrayList<>();
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
      return places;
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
    return parts[extent].length;
  }

  /** In which part of the extent's length each place that counts lies; not to be changed. */
  byte[] parts(int extent) {
    return parts[extent];
  }
}
