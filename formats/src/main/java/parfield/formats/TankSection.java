package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.aquascape.Aquascape;
import parfield.optics.Agitation;
import parfield.optics.Pane;
import parfield.optics.Scattering;
import parfield.optics.Water;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/** The setup's {@code tank}: inner dimensions, panes, bottom, opening, water, rocks, room above. */
final class TankSection {
  /** Taken where no reflectance of the bottom is stated: pale sand; common practice, no source. */
  private static final double BOTTOM_REFLECTANCE = 0.3;

  /** Taken where no yellowing is stated [1/m]; common practice, no source. */
  private static final double YELLOWING = 0.05;

  /** Refractive index of cast acrylic, handbook value at 589 nm, from memory. */
  private static final double ACRYLIC = 1.49;

  /** Water that stands deeper than this under the rim is a slip of the unit [m]. */
  private static final double HIGHEST_FREEBOARD = 1;

  private static final Map<String, Agitation> SURFACES =
      Map.of("still", Agitation.STILL, "gentle", Agitation.GENTLE, "strong", Agitation.STRONG);

  private final Section tank;
  private final Lengths lengths;
  private final Sources sources;

  private TankSection(Section tank, Lengths lengths, Sources sources) {
    this.tank = tank;
    this.lengths = lengths;
    this.sources = sources;
  }

  /**
   * A tank and what is above it.
   *
   * @param tank empty if anything about it is wrong
   * @param room free space above
   */
  record Read(Optional<Tank> tank, Room room) {}

  static Read read(Entry entry, Lengths lengths, Sources sources) {
    int faults = entry.notes().count();
    Optional<Section> section =
        entry.section(
            "length",
            "width",
            "water",
            "walls",
            "bottom",
            "rim",
            "braces",
            "opaque",
            "lid",
            "surface",
            "yellowing",
            "yellowing slope",
            "refractive index",
            "scattering",
            "freeboard",
            "aquascape",
            "room");
    if (section.isEmpty()) {
      return new Read(Optional.empty(), Room.unbounded());
    }
    try (Section open = section.get()) {
      TankSection reader = new TankSection(open, lengths, sources);
      Room room = reader.room();
      return new Read(reader.tank(faults), room);
    }
  }

  private Optional<Tank> tank(int faultsBefore) {
    double length =
        tank.number("length", lengths.positive(), "state the inner length of the tank, along x");
    double width =
        tank.number("width", lengths.positive(), "state the inner width, from front to back");
    double water = tank.number("water", lengths.positive(), "state the depth of the water");
    Walls walls = walls();
    double reflectance = bottom();
    double rim =
        tank.optional("rim")
            .map(
                entry ->
                    entry.number(
                        rimLimit(length, width), "state the width of the opaque rim of one pane"))
            .orElse(0.0);
    List<Rectangle> opaque = opaque(length, width);
    Lid lid = tank.optional("lid").map(TankSection::lid).orElse(new Lid.None());
    if (!tank.has("rim") && !tank.has("braces") && !tank.has("opaque") && !tank.has("lid")) {
      tank.taken("opening", "free (no rim, brace or lid)");
    }
    Agitation surface = surface();
    Water waterState = water();
    double freeboard = freeboard();
    Aquascape aquascape =
        tank.optional("aquascape")
            .map(
                new AquascapeSection(
                        lengths,
                        sources,
                        metresOrLongest(length),
                        metresOrLongest(width),
                        metresOrLongest(water))
                    ::read)
            .orElse(Aquascape.none());
    if (tank.at().notes().count() > faultsBefore) {
      return Optional.empty();
    }
    return Optional.of(
        new Tank(
            lengths.metres(length),
            lengths.metres(width),
            lengths.metres(water),
            walls,
            reflectance,
            new Opening(lengths.metres(rim), opaque, lid, lengths.metres(freeboard)),
            waterState,
            surface,
            aquascape));
  }

  /** Where a dimension is wrong, the longest that is allowed: its rocks are still looked at. */
  private double metresOrLongest(double length) {
    return lengths.metres(Double.isNaN(length) ? lengths.positive().high() : length);
  }

  private Limit rimLimit(double length, double width) {
    double half = Math.min(length, width) / 2;
    return Double.isNaN(half)
        ? lengths.notNegative()
        : new Limit(0, true, half, false, lengths.unit().symbol());
  }

  private double freeboard() {
    Optional<Entry> stated = tank.optional("freeboard");
    if (stated.isEmpty()) {
      tank.taken("freeboard", "none");
      return 0;
    }
    return stated
        .get()
        .number(
            lengths.between(0, lengths.unit().fromMetres(HIGHEST_FREEBOARD)),
            "state how far panes, rim, braces and lid stand above the water line");
  }

  private Walls walls() {
    Optional<Entry> stated = tank.optional("walls");
    if (stated.isEmpty()) {
      tank.taken("walls", "clean");
      return Walls.all(Wall.clean());
    }
    if (!stated.get().isMap()) {
      return Walls.all(WallEntry.read(stated.get()));
    }
    try (Section sides = stated.get().section("left", "right", "front", "back").orElseThrow()) {
      return new Walls(
          wall(sides, "left"), wall(sides, "right"), wall(sides, "front"), wall(sides, "back"));
    }
  }

  private static Wall wall(Section sides, String side) {
    Optional<Entry> stated = sides.optional(side);
    if (stated.isEmpty()) {
      sides.taken(side, "clean");
      return Wall.clean();
    }
    return WallEntry.read(stated.get());
  }

  private double bottom() {
    Optional<Section> bottom =
        tank.optional("bottom").flatMap(entry -> entry.section("reflectance"));
    if (!tank.has("bottom")) {
      tank.taken("bottom", "reflectance " + NumberText.shown(BOTTOM_REFLECTANCE));
    }
    return bottom
        .map(
            section ->
                section.number(
                    "reflectance",
                    Limit.below(0, 1),
                    "state the share of light that the bottom throws back: pale sand about 0.35,"
                        + " dark rubble about 0.1"))
        .orElse(BOTTOM_REFLECTANCE);
  }

  private List<Rectangle> opaque(double length, double width) {
    List<Rectangle> rectangles = new ArrayList<>();
    Optional<Entry> braces = tank.optional("braces");
    if (braces.isPresent()) {
      for (Entry entry : braces.get().list("write braces: [{from: 43, to: 47}]")) {
        entry
            .section("from", "to", "along")
            .ifPresent(
                brace -> {
                  Optional<String> along =
                      brace.has("along")
                          ? brace.optional("along").get().word(List.of("length", "width"))
                          : Optional.of("length");
                  boolean alongWidth = along.filter("width"::equals).isPresent();
                  double end = alongWidth ? width : length;
                  double from = brace.number("from", upTo(end), "state where the brace begins");
                  double to = brace.number("to", upTo(end), "state where the brace ends");
                  if (ascending(entry, from, to)) {
                    add(
                        rectangles,
                        alongWidth ? 0 : from,
                        alongWidth ? length : to,
                        alongWidth ? from : 0,
                        alongWidth ? to : width);
                  }
                });
      }
    }
    Optional<Entry> others = tank.optional("opaque");
    if (others.isPresent()) {
      for (Entry entry : others.get().list("write opaque: [{x: [0, 10], y: [0, 5]}]")) {
        entry
            .section("x", "y")
            .ifPresent(
                rectangle -> {
                  double[] x = Span.read(rectangle, "x", upTo(length));
                  double[] y = Span.read(rectangle, "y", upTo(width));
                  add(rectangles, x[0], x[1], y[0], y[1]);
                });
      }
    }
    return rectangles;
  }

  private Limit upTo(double end) {
    return Double.isNaN(end) ? lengths.notNegative() : lengths.between(0, end);
  }

  private static boolean ascending(Entry entry, double from, double to) {
    if (from >= to) {
      entry.fault(
          "from " + NumberText.shown(from) + " to " + NumberText.shown(to),
          "from below to",
          "write the smaller first");
      return false;
    }
    return true;
  }

  private void add(List<Rectangle> rectangles, double x0, double x1, double y0, double y1) {
    if (x0 < x1 && y0 < y1) {
      rectangles.add(
          new Rectangle(
              lengths.metres(x0), lengths.metres(x1), lengths.metres(y0), lengths.metres(y1)));
    }
  }

  private static Lid lid(Entry entry) {
    if (!entry.isMap()) {
      if (!entry.shown().equals("none")) {
        entry.fault(
            entry.shown(),
            "none, or a map of mesh or clear",
            "write none, {mesh: 0.7} or {clear: glass}");
      }
      return new Lid.None();
    }
    Section lid = entry.section("mesh", "clear").orElseThrow();
    if (lid.has("mesh") == lid.has("clear")) {
      entry.fault(
          lid.has("mesh") ? "mesh and clear" : "neither mesh nor clear",
          "one of them",
          "write {mesh: 0.7} or {clear: glass}");
      return new Lid.None();
    }
    if (lid.has("mesh")) {
      double open =
          lid.number("mesh", Limit.between(0, 1), "state the open share of the mesh's area");
      return Double.isNaN(open) ? new Lid.None() : new Lid.Mesh(open);
    }
    String sheet =
        lid.optional("clear").orElseThrow().word(List.of("glass", "acrylic")).orElse("glass");
    return new Lid.Clear(sheet.equals("glass") ? Pane.GLASS : ACRYLIC);
  }

  private Agitation surface() {
    Optional<Entry> stated = tank.optional("surface");
    if (stated.isEmpty()) {
      tank.taken("surface", "still");
      return Agitation.STILL;
    }
    return stated
        .get()
        .word(List.of("still", "gentle", "strong"))
        .map(SURFACES::get)
        .orElse(Agitation.STILL);
  }

  private Water water() {
    double yellowing =
        tank.number(
            "yellowing",
            YELLOWING,
            Limit.between(0, 10, "1/m"),
            "state the absorption of yellow substance at 440 nm: clear water 0.02, yellow 0.5");
    double slope =
        tank.number(
            "yellowing slope",
            Water.DEFAULT_SPECTRAL_SLOPE,
            Limit.between(0, 0.1, "1/nm"),
            "0.014 to 0.018 is common; leave it out if you do not know it");
    double index =
        tank.number(
            "refractive index",
            Water.SEA_WATER_INDEX,
            Limit.inside(1, 2, ""),
            "sea water is 1.34, fresh water 1.33; leave it out if you do not know it");
    double scattering =
        tank.number(
            "scattering",
            0,
            Limit.between(0, 10, "1/m"),
            "state the scattering coefficient at 550 nm: clear water 0, hazy water 0.05 to 0.2");
    return Double.isNaN(yellowing)
            || Double.isNaN(slope)
            || Double.isNaN(index)
            || Double.isNaN(scattering)
        ? Water.seaWater(0)
        : new Water(index, yellowing, slope, scattering(scattering));
  }

  private static Scattering scattering(double coefficient) {
    return coefficient == 0 ? Scattering.none() : Scattering.particles(coefficient);
  }

  private Room room() {
    return tank.optional("room")
        .flatMap(entry -> entry.section("height", "length", "width"))
        .map(
            room ->
                new Room(
                    free(room, "height", "state the free height above the water"),
                    free(room, "length", "state the free length above the water"),
                    free(room, "width", "state the free width above the water")))
        .orElse(Room.unbounded());
  }

  private OptionalDouble free(Section room, String key, String cure) {
    Optional<Entry> stated = room.optional(key);
    if (stated.isEmpty()) {
      return OptionalDouble.empty();
    }
    double length = stated.get().number(lengths.positive(), cure);
    return Double.isNaN(length)
        ? OptionalDouble.empty()
        : OptionalDouble.of(lengths.metres(length));
  }
}
