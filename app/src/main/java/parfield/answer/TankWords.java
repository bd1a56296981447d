package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import parfield.aquascape.Bounds;
import parfield.aquascape.Box;
import parfield.aquascape.Ellipsoid;
import parfield.aquascape.Mesh;
import parfield.aquascape.Rock;
import parfield.aquascape.Shape;
import parfield.formats.Room;
import parfield.optics.Reflectance;
import parfield.optics.Scattering;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Side;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.units.LengthUnit;

/** A tank in words. */
public final class TankWords {
  private TankWords() {}

  /**
   * A line about a tank.
   *
   * @param what it is about; empty where the line before tells
   * @param words with units
   */
  public record Row(String what, String words) {}

  /** The tank, its panes, opening, water and rocks, one line each. */
  static String lines(Tank tank, Room room, LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    rows(tank, room, unit)
        .forEach(
            row -> text.append(String.format(Locale.ROOT, "%-10s  %s\n", row.what(), row.words())));
    return text.toString();
  }

  /** The tank, its panes, opening, water and rocks. */
  public static List<Row> rows(Tank tank, Room room, LengthUnit unit) {
    List<String> panes = new ArrayList<>();
    for (Side side : Side.values()) {
      panes.add(side.name().toLowerCase(Locale.ROOT) + " " + condition(tank.walls().on(side)));
    }
    List<Row> text = new ArrayList<>();
    line(
        text,
        "tank",
        String.format(
            Locale.ROOT,
            "%s × %s %s inside, water %s deep",
            Numbers.length(tank.length(), unit),
            Numbers.length(tank.width(), unit),
            unit.symbol(),
            Numbers.withUnit(tank.depth(), unit)));
    line(text, "panes", String.join(", ", panes));
    line(
        text,
        "bottom",
        "reflects " + Numbers.percent(tank.bottomReflectance()) + " % of the light");
    line(text, "opening", opening(tank.opening(), unit));
    line(
        text,
        "water",
        String.format(
            Locale.ROOT,
            "refractive index %s, yellowing %s 1/m at 440 nm, %ssurface %s",
            Numbers.plain(tank.water().refractiveIndex(), 3),
            Numbers.plain(tank.water().yellowing(), 3),
            scattering(tank.water().scattering()),
            tank.surface().name().toLowerCase(Locale.ROOT)));
    List<Rock> rocks = tank.aquascape().rocks();
    for (int i = 0; i < rocks.size(); i++) {
      line(text, i > 0 ? "" : rocks.size() == 1 ? "rock" : "rocks", rock(rocks.get(i), tank, unit));
    }
    if (!room.equals(Room.unbounded())) {
      line(text, "room above", room(room, unit));
    }
    return List.copyOf(text);
  }

  private static void line(List<Row> rows, String what, String words) {
    rows.add(new Row(what, words));
  }

  private static String rock(Rock rock, Tank tank, LengthUnit unit) {
    Bounds bounds = rock.shape().bounds();
    return String.format(
        Locale.ROOT,
        "%s: %s, x %s to %s, y %s to %s, %s to %s above the bottom, reflects %s %% of the light",
        rock.name(),
        shape(rock.shape(), unit),
        Numbers.length(bounds.fromX(), unit),
        Numbers.length(bounds.toX(), unit),
        Numbers.length(bounds.fromY(), unit),
        Numbers.length(bounds.toY(), unit),
        Numbers.length(tank.depth() - bounds.toDepth(), unit),
        Numbers.withUnit(tank.depth() - bounds.fromDepth(), unit),
        reflected(rock.reflectance()));
  }

  private static String shape(Shape shape, LengthUnit unit) {
    if (shape instanceof Box box) {
      return sizes("box", box.sizeX(), box.sizeY(), box.sizeZ(), unit);
    }
    if (shape instanceof Ellipsoid ellipsoid) {
      return sizes(
          "ellipsoid", 2 * ellipsoid.semiX(), 2 * ellipsoid.semiY(), 2 * ellipsoid.semiZ(), unit);
    }
    return String.format(Locale.ROOT, "mesh of %d triangles", ((Mesh) shape).triangles());
  }

  private static String sizes(String what, double x, double y, double z, LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "%s of %s × %s × %s",
        what,
        Numbers.length(x, unit),
        Numbers.length(y, unit),
        Numbers.withUnit(z, unit));
  }

  private static String reflected(Reflectance reflectance) {
    String least = Numbers.percent(reflectance.least());
    return reflectance.isGray() ? least : least + " to " + Numbers.percent(reflectance.greatest());
  }

  private static String condition(Wall wall) {
    if (wall.equals(Wall.clean())) {
      return "clean";
    } else if (wall.equals(Wall.film())) {
      return "film";
    } else if (wall.equals(Wall.coralline())) {
      return "coralline";
    } else if (wall.equals(Wall.painted())) {
      return "painted";
    } else if (wall.equals(Wall.opaque())) {
      return "opaque";
    }
    return String.format(
        Locale.ROOT,
        "%s %% clear, its cover reflecting %s %%",
        Numbers.percent(wall.clear()),
        Numbers.percent(wall.diffuse()));
  }

  private static String opening(Opening opening, LengthUnit unit) {
    List<String> parts = new ArrayList<>();
    if (opening.rim() > 0) {
      parts.add("rim of " + Numbers.withUnit(opening.rim(), unit));
    }
    if (!opening.opaque().isEmpty()) {
      parts.add(
          opening.opaque().size() == 1
              ? "1 brace or cover"
              : opening.opaque().size() + " braces or covers");
    }
    if (opening.lid() instanceof Lid.Mesh mesh) {
      parts.add("mesh lid, " + Numbers.percent(mesh.openFraction()) + " % open");
    } else if (opening.lid() instanceof Lid.Clear) {
      parts.add("clear lid");
    }
    if (opening.freeboard() > 0) {
      parts.add(Numbers.withUnit(opening.freeboard(), unit) + " above the water line");
    }
    return parts.isEmpty() ? "free" : String.join(", ", parts);
  }

  private static String scattering(Scattering scattering) {
    return scattering.coefficient() == 0
        ? ""
        : String.format(
            Locale.ROOT,
            "scattering %s 1/m at 550 nm, ",
            Numbers.plain(scattering.coefficient(), 3));
  }

  private static String room(Room room, LengthUnit unit) {
    List<String> parts = new ArrayList<>();
    add(parts, room.height(), "high", unit);
    add(parts, room.length(), "long", unit);
    add(parts, room.width(), "wide", unit);
    return String.join(", ", parts);
  }

  private static void add(List<String> parts, OptionalDouble length, String how, LengthUnit unit) {
    if (length.isPresent()) {
      parts.add(Numbers.withUnit(length.getAsDouble(), unit) + " " + how);
    }
  }
}
