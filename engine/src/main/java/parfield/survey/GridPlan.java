package parfield.survey;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * Where to read, in the order of visiting.
 *
 * <p>The default plan reads the centres of equal cells, the four corners and the middle of each
 * wall. Centres alone never see the corners: they overstate the minimum.
 *
 * @param places at least one, in the order of visiting
 */
public record GridPlan(List<Place> places) {
  /** Side of a cell in a large tank [cm]; common practice, no source. */
  private static final double USUAL_CELL_CM = 15;

  /** Side of a cell in a large tank [in]; common practice, no source. */
  private static final double USUAL_CELL_INCHES = 6;

  /** Distance of corner and wall readings from the pane [cm]: half a sensor's width. */
  private static final double INSET_CM = 2;

  /** The same in inches. */
  private static final double INSET_INCHES = 0.75;

  /** Finest step to which a person places a sensor [cm]. */
  private static final double STEP_CM = 0.5;

  /** The same in inches. */
  private static final double STEP_INCHES = 0.25;

  /** Places nearer to each other than this are one place [m]: the width of a sensor's head. */
  private static final double SAME_PLACE = 0.02;

  /** A cell may exceed the usual one by this share rather than add a whole row. */
  private static final double CELL_SLACK = 0.05;

  public GridPlan {
    places = List.copyOf(places);
    if (places.isEmpty()) {
      throw new IllegalArgumentException("a grid needs at least one place to read; got none");
    }
  }

  /**
   * The default plan: at each depth the centres of equal cells, the corners and the wall middles.
   *
   * <p>Cells are about 15 cm (or 6 in) wide, finer where EN 12464-1 asks for it (see {@link
   * #greatestSpacing}). Places are rounded to what a person can measure from the nearer pane, 0.5
   * cm or ¼ in; places within 2 cm of each other are merged. Places in rock are left out. The way
   * through a plane is a serpentine, and each further depth is read on the way back.
   *
   * @param tank the tank
   * @param depths of the planes to read [m], each above 0 and not below the bottom, at least one
   * @param unit what the person measures with
   * @throws IllegalArgumentException if there is no depth or one lies outside the water
   */
  public static GridPlan of(Tank tank, List<Double> depths, LengthUnit unit) {
    double greatest = greatestSpacing(Math.max(tank.length(), tank.width()));
    return of(
        tank,
        depths,
        unit,
        cells(tank.length(), greatest, unit),
        cells(tank.width(), greatest, unit));
  }

  /**
   * The default plan with a given number of cells.
   *
   * @param tank the tank
   * @param depths of the planes to read [m], each above 0 and not below the bottom, at least one
   * @param unit what the person measures with
   * @param columns cells along x, at least one
   * @param rows cells along y, at least one
   * @throws IllegalArgumentException if there is no depth, one lies outside the water, there is no
   *     cell, or a cell is narrower than a sensor, 2 cm
   */
  public static GridPlan of(
      Tank tank, List<Double> depths, LengthUnit unit, int columns, int rows) {
    if (columns < 1 || rows < 1) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a grid needs at least one cell each way; got %d x %d", columns, rows));
    }
    double narrowest = Math.min(tank.length() / columns, tank.width() / rows);
    if (narrowest < SAME_PLACE) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "cells of a grid must be at least as wide as a sensor, %s m; %d x %d cells are %.3f m"
                  + " wide",
              SAME_PLACE,
              columns,
              rows,
              narrowest));
    }
    if (depths.isEmpty()) {
      throw new IllegalArgumentException("a grid needs at least one depth to read at; got none");
    }
    List<double[]> way = serpentine(tank, unit, columns, rows);
    List<Place> places = new ArrayList<>();
    for (double depth : depths) {
      if (!(depth > 0 && depth <= tank.depth())) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a depth to read at must lie above 0 and within the water's %s m; got %s m",
                tank.depth(),
                depth));
      }
      way.stream()
          .filter(spot -> !tank.aquascape().inside(spot[0], spot[1], depth))
          .forEach(spot -> places.add(new Place(spot[0], spot[1], depth)));
      Collections.reverse(way);
    }
    return new GridPlan(places);
  }

  /**
   * A person's own grid, taken as it is.
   *
   * @param tank the tank
   * @param places in the order of visiting, at least one, all in the water
   * @throws IllegalArgumentException if there is no place or some lie outside the tank or in rock;
   *     the message names all that do
   */
  public static GridPlan own(Tank tank, List<Place> places) {
    List<String> outside =
        places.stream()
            .filter(
                place ->
                    !tank.contains(place)
                        || tank.aquascape().inside(place.x(), place.y(), place.depth()))
            .map(
                place ->
                    String.format(
                        Locale.ROOT,
                        "x %.3f, y %.3f, depth %.3f m",
                        place.x(),
                        place.y(),
                        place.depth()))
            .toList();
    if (!outside.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "places of a grid must lie in the water, %s x %s m and %s m deep, and in no rock; outside:"
                  + " %s",
              tank.length(),
              tank.width(),
              tank.depth(),
              String.join("; ", outside)));
    }
    return new GridPlan(places);
  }

  /**
   * Greatest spacing of readings over an area: p = 0.2 · 5^(log₁₀ d) (EN 12464-1:2021, annex on the
   * calculation grid; from memory), a floor under what a grid must resolve, not a recommendation.
   *
   * @param d longer side of the area [m], above 0
   * @return spacing p [m]
   */
  public static double greatestSpacing(double d) {
    if (!(d > 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "an area's side must be above 0 m; got %s m", d));
    }
    return 0.2 * Math.pow(5, Math.log10(d));
  }

  private static int cells(double side, double greatest, LengthUnit unit) {
    double usual = unit.toMetres(unit == LengthUnit.INCH ? USUAL_CELL_INCHES : USUAL_CELL_CM);
    double cell = Math.min(usual * (1 + CELL_SLACK), greatest);
    return (int) Math.ceil(side / cell - 1e-9);
  }

  /** Places of one plane: row by row from the front, every other row backwards. */
  private static List<double[]> serpentine(Tank tank, LengthUnit unit, int columns, int rows) {
    double[] x = cellCentres(tank.length(), columns, unit);
    double[] y = cellCentres(tank.width(), rows, unit);
    double insetX = inset(tank.length(), unit);
    double insetY = inset(tank.width(), unit);
    double[] across = {insetX, tank.length() / 2, tank.length() - insetX};

    List<List<double[]>> lines = new ArrayList<>();
    lines.add(line(across, insetY));
    for (double row : y) {
      lines.add(line(x, row));
    }
    lines.add(line(across, tank.width() - insetY));
    // The side walls' middles go with the cell row that is nearest, the front one of two.
    List<double[]> middle = lines.get((rows + 1) / 2);
    middle.add(new double[] {insetX, tank.width() / 2});
    middle.add(new double[] {tank.length() - insetX, tank.width() / 2});

    List<double[]> way = new ArrayList<>();
    boolean backwards = false;
    for (List<double[]> line : lines) {
      Comparator<double[]> byX = Comparator.comparingDouble(spot -> spot[0]);
      line.sort(backwards ? byX.reversed() : byX);
      for (double[] spot : line) {
        if (way.stream().allMatch(known -> apart(known, spot))) {
          way.add(spot);
        }
      }
      backwards = !backwards;
    }
    return way;
  }

  private static List<double[]> line(double[] x, double y) {
    List<double[]> line = new ArrayList<>();
    for (double at : x) {
      line.add(new double[] {at, y});
    }
    return line;
  }

  private static boolean apart(double[] a, double[] b) {
    return Math.hypot(a[0] - b[0], a[1] - b[1]) >= SAME_PLACE - 1e-9;
  }

  /** Cell centres, rounded to a step from the nearer pane; a middle one stays in the middle. */
  private static double[] cellCentres(double side, int cells, LengthUnit unit) {
    double step = unit.toMetres(unit == LengthUnit.INCH ? STEP_INCHES : STEP_CM);
    double[] centres = new double[cells];
    for (int i = 0; i < cells; i++) {
      int fromNearer = Math.min(i, cells - 1 - i);
      double exact = side * (fromNearer + 0.5) / cells;
      double measured = 2 * fromNearer == cells - 1 ? side / 2 : Math.round(exact / step) * step;
      centres[i] = i == fromNearer ? measured : side - measured;
    }
    return centres;
  }

  private static double inset(double side, LengthUnit unit) {
    return Math.min(unit.toMetres(unit == LengthUnit.INCH ? INSET_INCHES : INSET_CM), side / 4);
  }
}
