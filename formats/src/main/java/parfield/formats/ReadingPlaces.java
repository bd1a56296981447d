package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import parfield.aquascape.Rock;
import parfield.survey.Reading;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/** Turns places and values of one file into readings, each checked against the tank. */
final class ReadingPlaces {
  /** Brighter than any lamp held to the sensor: a slip [µmol m⁻² s⁻¹]. */
  static final double BRIGHTEST = 100_000;

  /** A place may miss a pane by as much as rounding does [m]. */
  private static final double ROUNDING = 1e-6;

  private final String file;
  private final Notes notes;
  private final LengthUnit unit;
  private final OptionalDouble statedDepth;
  private final Optional<Tank> tank;
  private final List<Reading> readings = new ArrayList<>();
  private final TreeSet<String> unitless = new TreeSet<>();
  private int unmeasured;

  /** Starts a file or sheet; {@code file} is its name. */
  ReadingPlaces(String file, Notes notes, ReadingsFile.Context context) {
    this.file = file;
    this.notes = notes;
    this.unit = context.unit();
    this.statedDepth = context.depth();
    this.tank = context.tank();
  }

  String file() {
    return file;
  }

  Notes notes() {
    return notes;
  }

  int count() {
    return readings.size();
  }

  OptionalDouble statedDepth() {
    return statedDepth;
  }

  void fault(int line, String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, line, 0, what, value, limit, cure));
  }

  /** The unit of a column or statement: as stated, or else the setup's, which is noted. */
  LengthUnit unit(int line, String what, String stated) {
    if (stated.isEmpty()) {
      unitless.add(what);
      return unit;
    }
    Optional<LengthUnit> known = Column.lengthUnit(stated);
    if (known.isEmpty()) {
      fault(line, "unit of " + what, Notes.shown(stated), "cm or in", "convert the lengths");
    }
    return known.orElse(unit);
  }

  LengthUnit unit() {
    return unit;
  }

  /** A depth statement as a number in a unit; empty with a fault if it is wrong. */
  Optional<Length> depth(DepthStatement statement, Decimals decimals) {
    double depth = decimals.parse(statement.line(), statement.number());
    LengthUnit depthUnit = unit(statement.line(), "depth", statement.unit());
    if (Double.isNaN(depth)) {
      fault(
          statement.line(),
          "depth",
          statement.number(),
          "a number",
          decimals.cure(statement.number()));
      return Optional.empty();
    }
    return Optional.of(new Length(depth, depthUnit));
  }

  /**
   * A length as written.
   *
   * @param number as written
   * @param unit it is in
   */
  record Length(double number, LengthUnit unit) {
    double metres() {
      return unit.toMetres(number);
    }
  }

  /** A cell of a grid that holds nothing. */
  void unmeasured() {
    unmeasured++;
  }

  /** An x within the tank [m], NaN with a fault if it is not. */
  double x(int line, Length x) {
    return inside(line, "x", x, tank.map(Tank::length), "x runs from the left pane");
  }

  /** A y within the tank [m], NaN with a fault if it is not. */
  double y(int line, Length y) {
    return inside(line, "y", y, tank.map(Tank::width), "y runs from the front pane");
  }

  /** A depth within the water [m], NaN with a fault if it is not. */
  double depth(int line, Length depth) {
    return inside(line, "depth", depth, tank.map(Tank::depth), "depth runs down from the surface");
  }

  /**
   * Adds a reading, or faults if its value cannot be; its place was checked, and is left out where
   * that went wrong.
   *
   * @param line of its file
   * @param x along the length [m], or NaN
   * @param y from front to back [m], or NaN
   * @param depth below the surface [m], or NaN
   * @param value what the meter showed [µmol m⁻² s⁻¹]
   */
  void add(int line, double x, double y, double depth, double value) {
    if (!(value >= 0 && value <= BRIGHTEST)) {
      fault(
          line,
          "ppfd",
          NumberText.shown(value),
          "0 to " + NumberText.shown(BRIGHTEST) + " µmol/m²/s",
          value < 0
              ? "no light is negative: correct the reading, or leave it out"
              : "correct the reading, or leave it out");
      return;
    }
    if (!Double.isNaN(x)
        && !Double.isNaN(y)
        && !Double.isNaN(depth)
        && inWater(line, x, y, depth)) {
      readings.add(new Reading(line, new Place(x, y, depth), value));
    }
  }

  private boolean inWater(int line, double x, double y, double depth) {
    Optional<Rock> rock = tank.flatMap(known -> known.aquascape().at(x, y, depth));
    rock.ifPresent(
        found ->
            fault(
                line,
                "place",
                String.format(
                    Locale.ROOT,
                    "x %s, y %s, depth %s %s, inside rock %s",
                    shown(x),
                    shown(y),
                    shown(depth),
                    unit.symbol(),
                    found.name()),
                "a place in the water",
                "correct the place, or make the rock smaller where it is not so big"));
    return rock.isEmpty();
  }

  private String shown(double metres) {
    return NumberText.shown(unit.fromMetres(metres));
  }

  private double inside(int line, String what, Length length, Optional<Double> end, String axis) {
    double metres = length.metres();
    double limit = end.orElse(Double.POSITIVE_INFINITY);
    if (metres >= -ROUNDING && metres <= limit + ROUNDING) {
      return Math.max(0, Math.min(metres, limit));
    }
    LengthUnit in = length.unit();
    fault(
        line,
        what,
        String.format(Locale.ROOT, "%s %s", NumberText.shown(length.number()), in.symbol()),
        end.isPresent()
            ? Limit.between(0, in.fromMetres(limit), in.symbol()).text() + ", inside the tank"
            : "0 or more",
        axis + ": correct the reading or the tank");
    return Double.NaN;
  }

  /** Ends the file: tells what was assumed. */
  List<Reading> close() {
    if (!unitless.isEmpty()) {
      notes.assume(
          String.format(
              Locale.ROOT,
              "%s states no unit for %s: %s taken, as in the setup",
              file,
              String.join(", ", unitless),
              unit.symbol()));
    }
    if (unmeasured > 0) {
      notes.assume(
          String.format(
              Locale.ROOT,
              "%s: empty cells of its grids, taken as places not measured: %d",
              file,
              unmeasured));
    }
    return List.copyOf(readings);
  }
}
