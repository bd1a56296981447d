package parfield.answer;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parfield.care.CoralGroup;
import parfield.care.DayLight;
import parfield.care.DayOutputs;
import parfield.care.Standing;
import parfield.field.Cells;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.plot.Raster;
import parfield.rig.Rig;
import parfield.tank.Tank;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * Peak and dose of a day on a plane of equal cells, those in rock left out.
 *
 * @param tank whose plane it is
 * @param depth of a level plane [m]; empty for the upright one through the middle of the tank
 * @param cells of the plane: columns along the length, rows from front to back, on an upright plane
 *     from the water line down
 * @param light of the day in each cell that is water
 */
public record DayPlane(Tank tank, OptionalDouble depth, Cells cells, DayLight light) {
  /** Parts of a plane in its table. */
  private static final int COLUMNS = 5;

  private static final int ROWS = 3;

  /** Words for a place where a group's peak and dose are surely in their ranges. */
  public static final String HOME = "home";

  /** Words for a place whose intervals leave open how a group stands. */
  public static final String OPEN = "too close to call";

  public DayPlane {
    Objects.requireNonNull(tank, "tank");
    Objects.requireNonNull(depth, "depth");
    Objects.requireNonNull(cells, "cells");
    Objects.requireNonNull(light, "light");
  }

  /**
   * A level plane.
   *
   * @param depth below the water line [m]
   * @param cell greatest side of its cells [m]
   */
  static DayPlane level(
      LightModel model,
      FieldSolver solver,
      Rig rig,
      DayOutputs outputs,
      double depth,
      double cell) {
    Places places = new FieldPrediction(model, solver, rig).cells(depth, cell);
    return of(model, solver, rig, outputs, OptionalDouble.of(depth), places);
  }

  /** The upright plane through the middle of the tank, in cells of at most {@code cell} [m]. */
  static DayPlane upright(
      LightModel model, FieldSolver solver, Rig rig, DayOutputs outputs, double cell) {
    Places places = new FieldPrediction(model, solver, rig).uprightCells(cell);
    return of(model, solver, rig, outputs, OptionalDouble.empty(), places);
  }

  private static DayPlane of(
      LightModel model,
      FieldSolver solver,
      Rig rig,
      DayOutputs outputs,
      OptionalDouble depth,
      Places places) {
    return new DayPlane(
        rig.tank(),
        depth,
        places.cells().orElseThrow(),
        DayLight.of(model.predict(solver, rig, places), outputs));
  }

  /** Mean dose of the plane [mol m⁻² d⁻¹]. */
  public Estimate mean() {
    return light.meanDli();
  }

  /** Share of the plane's area whose dose is in a group's range. */
  public Estimate dosed(CoralGroup group) {
    return light.share(group.dliFrom(), group.dliTo());
  }

  /** Where the plane is, in words: {@code 15 cm deep}. */
  public String where(LengthUnit unit) {
    return depth.isPresent()
        ? Numbers.withUnit(depth.getAsDouble(), unit) + " deep"
        : "section " + Numbers.withUnit(tank.width() / 2, unit) + " from the front pane";
  }

  /** The plane's doses, in a sentence. */
  public String doses() {
    return String.format(
        Locale.ROOT,
        "Mean %s, from %s to %s %s; intervals from 5 to 95 %%.",
        DayAnswer.dose(light.meanDli()),
        DayAnswer.dose(light.leastDli()),
        DayAnswer.dose(light.mostDli()),
        DayAnswer.MOL);
  }

  /** One end, or the best estimate, of a figure of all cells, for a picture. */
  Raster raster(Estimate[] figures, ToDoubleFunction<Estimate> of) {
    return new Raster(
        cells.columns(), cells.rows(), cells.whole(Stream.of(figures).mapToDouble(of).toArray()));
  }

  /**
   * How a group stands on the plane.
   *
   * @return share of the area by what is said of it: {@link #HOME}, {@link Standing#words}, or
   *     {@link #OPEN} where the intervals leave that open; all six in this order
   */
  public Map<String, Double> standings(CoralGroup group) {
    return shares(words(group), IntStream.range(0, light.places()).toArray());
  }

  private static Map<String, Double> shares(String[] words, int[] of) {
    Map<String, Double> shares = new LinkedHashMap<>();
    for (Standing standing :
        List.of(
            Standing.FITS,
            Standing.TOO_DIM,
            Standing.DAY_TOO_LITTLE,
            Standing.DAY_TOO_MUCH,
            Standing.TOO_BRIGHT)) {
      shares.put(words(standing), 0.0);
    }
    shares.put(OPEN, 0.0);
    for (int place : of) {
      shares.merge(words[place], 1.0 / of.length, Double::sum);
    }
    return Collections.unmodifiableMap(shares);
  }

  private static String words(Standing standing) {
    return standing == Standing.FITS ? HOME : standing.words();
  }

  private String[] words(CoralGroup group) {
    Estimate[] peak = light.peak();
    Estimate[] dli = light.dli();
    String[] words = new String[peak.length];
    for (int i = 0; i < words.length; i++) {
      Optional<Standing> standing =
          group.surely(peak[i].low(), peak[i].high(), dli[i].low(), dli[i].high());
      words[i] = standing.map(DayPlane::words).orElse(OPEN);
    }
    return words;
  }

  /** How a group stands on the plane, in a sentence: what is nowhere is not named. */
  public String standing(CoralGroup group) {
    List<String> parts = new ArrayList<>();
    standings(group)
        .forEach(
            (words, share) -> {
              if (share >= 0.005 || words.equals(HOME)) {
                parts.add(words + " " + Numbers.percent(share) + " %");
              }
            });
    return "For " + group.name() + ", by area: " + String.join("; ", parts) + ".";
  }

  /** Headings of the plane's tables: the parts of its length. */
  public List<String> columns(LengthUnit unit) {
    return spans(tank.length(), COLUMNS, unit);
  }

  /** Words for the rows of the plane's tables: from the front pane, or from the water line. */
  public List<String> rows(LengthUnit unit) {
    return spans(depth.isPresent() ? tank.width() : tank.depth(), ROWS, unit);
  }

  /** What rows count from. */
  public String rowsFrom() {
    return depth.isPresent() ? "y" : "depth";
  }

  private static List<String> spans(double side, int parts, LengthUnit unit) {
    return IntStream.range(0, parts)
        .mapToObj(
            k ->
                Numbers.length(side * k / parts, unit)
                    + "–"
                    + Numbers.length(side * (k + 1) / parts, unit))
        .toList();
  }

  /** The mean dose of each part of the plane, row by row; a dash where all is rock. */
  public List<List<String>> doseTable() {
    return table(some -> DayAnswer.dose(light.meanDli(some)));
  }

  /** What most of each part of the plane is for a group, row by row; a dash where all is rock. */
  public List<List<String>> homeTable(CoralGroup group) {
    String[] words = words(group);
    return table(
        some -> {
          Map.Entry<String, Double> most =
              shares(words, some).entrySet().stream()
                  .max(Map.Entry.comparingByValue())
                  .orElseThrow();
          return most.getKey() + " " + Numbers.percent(most.getValue()) + " %";
        });
  }

  private interface OfPart {
    String words(int... places);
  }

  private List<List<String>> table(OfPart figure) {
    List<List<String>> rows = new ArrayList<>();
    for (int row = 0; row < ROWS; row++) {
      List<String> cellsOfRow = new ArrayList<>();
      for (int column = 0; column < COLUMNS; column++) {
        int[] some = part(column, row);
        cellsOfRow.add(some.length == 0 ? Numbers.NONE : figure.words(some));
      }
      rows.add(List.copyOf(cellsOfRow));
    }
    return rows;
  }

  /** The cells whose centres lie in a part. */
  private int[] part(int column, int row) {
    return IntStream.range(0, cells.size())
        .filter(
            i -> {
              int along = cells.cell(i) % cells.columns();
              int down = cells.cell(i) / cells.columns();
              // Twice the centre's place in cells, so that whole numbers tell its part.
              return (2 * along + 1) * COLUMNS / (2 * cells.columns()) == column
                  && (2 * down + 1) * ROWS / (2 * cells.rows()) == row;
            })
        .toArray();
  }
}
