package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Bounds;
import parfield.aquascape.Box;
import parfield.aquascape.Ellipsoid;
import parfield.aquascape.MeshRepair;
import parfield.aquascape.Rock;
import parfield.aquascape.Shape;
import parfield.optics.Reflectance;

/** The tank's {@code aquascape}: rocks by their names, each a box, an ellipsoid or a mesh. */
final class AquascapeSection {
  /** Taken where no reflectance is stated: rock overgrown; common practice, no source. */
  private static final double REFLECTANCE = 0.15;

  /** A mesh smaller than this is a slip of its unit [m]. */
  private static final double SMALLEST = 0.005;

  /** A unit that makes a mesh at least this big is a likely one [m]. */
  private static final double LIKELY = 0.02;

  /** Meshes of more triangles are thinned to this many. */
  private static final int MOST_TRIANGLES = 200_000;

  private static final String HOW =
      "write {box: {length: 30, width: 20, height: 15}, x: 45, y: 30}, or ellipsoid or mesh in"
          + " place of box";

  private final Lengths lengths;
  private final Sources sources;
  private final double length;
  private final double width;
  private final double depth;

  /**
   * A reader of rocks.
   *
   * @param lengths in the unit of the file
   * @param sources of mesh and reflectance files
   * @param length of the tank [m], NaN if it is not known
   * @param width of the tank [m]
   * @param depth of its water [m]
   */
  AquascapeSection(Lengths lengths, Sources sources, double length, double width, double depth) {
    this.lengths = lengths;
    this.sources = sources;
    this.length = length;
    this.width = width;
    this.depth = depth;
  }

  /** The rocks here, without those that are wrong. */
  Aquascape read(Entry entry) {
    List<Rock> rocks = new ArrayList<>();
    entry
        .named("write names and rocks, as in arch: {…}")
        .forEach((name, rock) -> rock(name, rock).ifPresent(rocks::add));
    return Aquascape.of(rocks);
  }

  private Optional<Rock> rock(String name, Entry entry) {
    int faults = entry.notes().count();
    Optional<Section> section =
        entry.section(
            "box",
            "ellipsoid",
            "mesh",
            "unit",
            "up",
            "x",
            "y",
            "above bottom",
            "yaw",
            "reflectance");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    try (Section rock = section.get()) {
      List<String> kinds = Stream.of("box", "ellipsoid", "mesh").filter(rock::has).toList();
      if (kinds.size() != 1) {
        entry.fault(
            kinds.isEmpty() ? "no shape" : String.join(" and ", kinds),
            "one of box, ellipsoid, mesh",
            HOW);
      }
      for (String key : List.of("unit", "up")) {
        if (rock.has(key) && kinds.size() == 1 && !kinds.get(0).equals("mesh")) {
          rock.optional(key)
              .orElseThrow()
              .fault(
                  "a " + key + " for " + kinds.get(0),
                  "a " + key + " for a mesh only",
                  "delete it");
        }
      }
      double x = rock.number("x", lengths.signed(), "state the middle of the rock, along x");
      double y = rock.number("y", lengths.signed(), "state the middle of the rock, front to back");
      double above =
          rock.number(
              "above bottom",
              0,
              lengths.signed(),
              "state how far its foot is above the bottom; below 0 it is sunk into it");
      double yaw =
          rock.optional("yaw")
              .map(
                  turn ->
                      turn.number(
                          Limit.between(-360, 360, "degrees"),
                          "state the turn about the vertical, from +x toward +y"))
              .orElse(0.0);
      Reflectance reflectance = reflectance(rock);
      if (entry.notes().count() > faults) {
        return Optional.empty();
      }
      Place place =
          new Place(
              lengths.metres(x),
              lengths.metres(y),
              depth - lengths.metres(above),
              Math.toRadians(yaw));
      Optional<Shape> shape =
          switch (kinds.get(0)) {
            case "box" -> box(rock, place);
            case "ellipsoid" -> ellipsoid(rock, place);
            default -> mesh(rock, place);
          };
      return shape
          .filter(found -> touchesWater(entry, found.bounds()))
          .map(found -> new Rock(name, found, reflectance));
    }
  }

  /** Middle of a rock's foot [m] and its turn [rad]. */
  private record Place(double x, double y, double foot, double yaw) {}

  private Reflectance reflectance(Section rock) {
    Optional<Entry> stated = rock.optional("reflectance");
    if (stated.isEmpty()) {
      rock.taken("reflectance", NumberText.shown(REFLECTANCE));
      return Reflectance.gray(REFLECTANCE);
    }
    if (stated.get().isText()) {
      return sources.reflectance(stated.get()).orElse(Reflectance.gray(REFLECTANCE));
    }
    double value =
        stated
            .get()
            .number(
                Limit.below(0, 1),
                "state the share of light that it throws back: overgrown rock about 0.15, white"
                    + " rock about 0.5");
    return Reflectance.gray(Double.isNaN(value) ? REFLECTANCE : value);
  }

  /** Length, width and height [m]; empty with faults. */
  private Optional<double[]> sizes(Section rock, String key) {
    Optional<Section> stated =
        rock.optional(key).flatMap(entry -> entry.section("length", "width", "height"));
    if (stated.isEmpty()) {
      return Optional.empty();
    }
    double[] sizes = new double[3];
    String[] names = {"length", "width", "height"};
    for (int i = 0; i < 3; i++) {
      sizes[i] =
          lengths.metres(
              stated
                  .get()
                  .number(names[i], lengths.positive(), "state the whole " + names[i] + " of it"));
    }
    return Double.isNaN(sizes[0] + sizes[1] + sizes[2]) ? Optional.empty() : Optional.of(sizes);
  }

  private Optional<Shape> box(Section rock, Place at) {
    return sizes(rock, "box")
        .map(size -> new Box(at.x, at.y, at.foot - size[2] / 2, size[0], size[1], size[2], at.yaw));
  }

  private Optional<Shape> ellipsoid(Section rock, Place at) {
    return sizes(rock, "ellipsoid")
        .map(
            size ->
                new Ellipsoid(
                    at.x,
                    at.y,
                    at.foot - size[2] / 2,
                    size[0] / 2,
                    size[1] / 2,
                    size[2] / 2,
                    at.yaw));
  }

  private Optional<Shape> mesh(Section rock, Place at) {
    Entry entry = rock.optional("mesh").orElseThrow();
    Optional<Sources.MeshSource> source = sources.mesh(entry);
    if (source.isEmpty()) {
      return Optional.empty();
    }
    Triangles triangles = source.get().triangles();
    Optional<MeshUnit> unit = unit(rock, source.get());
    Optional<Triangles.Up> up = up(rock, source.get().kind());
    if (unit.isEmpty() || up.isEmpty()) {
      return Optional.empty();
    }
    double size = triangles.longest() * unit.get().metres();
    double most = Math.sqrt(length * length + width * width + depth * depth);
    if (size < SMALLEST || size > most) {
      entry.fault(
          String.format(
              Locale.ROOT,
              "a rock of %s, taking the file to be in %s",
              MeshUnit.length(size),
              unit.get().symbol()),
          String.format(
              Locale.ROOT,
              "from %s to %s, the tank's diagonal",
              MeshUnit.length(SMALLEST),
              MeshUnit.length(most)),
          MeshUnit.cure(triangles.longest(), LIKELY, most));
      return Optional.empty();
    }
    Triangles placed = triangles.aboutFoot(unit.get().metres(), up.get(), at.yaw);
    double[] vertices = placed.vertices();
    for (int i = 0; i < vertices.length; i += 3) {
      vertices[i] += at.x;
      vertices[i + 1] += at.y;
      vertices[i + 2] += at.foot;
    }
    try {
      MeshRepair.Repaired repaired = MeshRepair.repair(vertices, placed.corners(), MOST_TRIANGLES);
      tell(entry.notes(), source.get().name(), repaired);
      return Optional.of(repaired.mesh());
    } catch (IllegalArgumentException e) {
      entry.fault(
          source.get().name() + ": " + e.getMessage(),
          "a surface that encloses a body",
          "mend the mesh in the program that made it");
      return Optional.empty();
    }
  }

  private Optional<MeshUnit> unit(Section rock, Sources.MeshSource source) {
    Optional<Entry> stated = rock.optional("unit");
    if (stated.isPresent()) {
      return stated.get().word(MeshUnit.symbols()).flatMap(MeshUnit::of);
    }
    if (source.kind() == MeshFile.Kind.GLTF) {
      rock.taken("unit", "m, as glTF has it");
      return Optional.of(MeshUnit.M);
    }
    double longest = source.triangles().longest();
    double most = Math.sqrt(length * length + width * width + depth * depth);
    rock.missing(
        "unit",
        "the file does not say its unit, and its longest side is "
            + NumberText.shown(longest)
            + ": "
            + MeshUnit.cure(longest, LIKELY, most));
    return Optional.empty();
  }

  private static Optional<Triangles.Up> up(Section rock, MeshFile.Kind kind) {
    Optional<Entry> stated = rock.optional("up");
    if (stated.isPresent()) {
      return stated
          .get()
          .word(List.of("y", "z"))
          .map(word -> word.equals("y") ? Triangles.Up.Y : Triangles.Up.Z);
    }
    rock.taken("up", kind.up().name().toLowerCase(Locale.ROOT));
    return Optional.of(kind.up());
  }

  /** Tells what was repaired. */
  private static void tell(Notes notes, String file, MeshRepair.Repaired repaired) {
    MeshRepair.Report report = repaired.report();
    List<String> done = new ArrayList<>();
    if (report.dropped() > 0) {
      done.add(
          counted(report.dropped(), "triangle", "triangles")
              + " without an area or written twice left out");
    }
    if (report.turned() > 0) {
      done.add(counted(report.turned(), "triangle", "triangles") + " turned to face outward");
    }
    if (report.holes() > 0) {
      done.add(
          counted(report.holes(), "hole", "holes")
              + " closed, the widest "
              + MeshUnit.length(report.widestHole())
              + " across");
    }
    if (report.thinned() > 0) {
      done.add(
          String.format(
              Locale.ROOT,
              "thinned from %d to %d triangles, no point moved by more than %s",
              report.thinned(),
              repaired.mesh().triangles(),
              MeshUnit.length(report.moved())));
    }
    if (report.crossings() > 0) {
      done.add(
          "its surface passes through itself at "
              + counted(report.crossings(), "edge", "edges")
              + ": what any part of it encloses is taken as rock");
    }
    if (!done.isEmpty()) {
      notes.assume(file + " was repaired: " + String.join("; ", done));
    }
  }

  private static String counted(int count, String one, String many) {
    return count + " " + (count == 1 ? one : many);
  }

  private boolean touchesWater(Entry entry, Bounds bounds) {
    boolean touches =
        bounds.toX() > 0
            && bounds.fromX() < length
            && bounds.toY() > 0
            && bounds.fromY() < width
            && bounds.toDepth() > 0
            && bounds.fromDepth() < depth;
    if (!touches) {
      entry.fault(
          String.format(
              Locale.ROOT,
              "x %s to %s, y %s to %s, %s to %s above the bottom",
              shown(bounds.fromX()),
              shown(bounds.toX()),
              shown(bounds.fromY()),
              shown(bounds.toY()),
              shown(depth - bounds.toDepth()),
              shown(depth - bounds.fromDepth())),
          String.format(
              Locale.ROOT,
              "some of it within x 0 to %s, y 0 to %s, 0 to %s %s above the bottom",
              shown(length),
              shown(width),
              shown(depth),
              lengths.unit().symbol()),
          "move it into the water, or delete it");
    } else if (bounds.fromDepth() < 0) {
      entry
          .notes()
          .assume(
              String.format(
                  Locale.ROOT,
                  "%s rises %s %s out of the water: what is above the water casts no shadow",
                  entry.path(),
                  shown(-bounds.fromDepth()),
                  lengths.unit().symbol()));
    }
    return touches;
  }

  private String shown(double metres) {
    return NumberText.shown(Math.round(10 * lengths.unit().fromMetres(metres)) / 10.0);
  }
}
