package parfield.web.recommend;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.Numbers;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.plan.Arrangement;
import parfield.plan.Mix;
import parfield.plan.Search;
import parfield.units.LengthUnit;

/**
 * Where the planner shall look, as typed; an empty field leaves it to the bench.
 *
 * @param counts numbers of fixtures, as in {@code 1, 2}
 * @param heights mounting heights, as in {@code 15, 20, 30} or {@code 15:40:5}
 * @param spacings centre to centre
 * @param depth of the plane to report on
 * @param freeMix whether every channel is dialled by itself
 */
public record Asked(String counts, String heights, String spacings, String depth, boolean freeMix) {
  /** Nothing hangs higher over a tank here [m]. */
  private static final double HIGHEST = 20;

  /** More numbers than this in one list are no choice that a person makes. */
  private static final int MOST = 60;

  static Asked typed(Context context) {
    return new Asked(
        field(context, "counts"),
        field(context, "heights"),
        field(context, "spacings"),
        field(context, "depth"),
        context.formParam("free-mix") != null);
  }

  private static String field(Context context, String name) {
    return Optional.ofNullable(context.formParam(name)).orElse("").strip();
  }

  /** What a bench's planner would look at by itself, in words. */
  static Asked byItself(Bench bench, LengthUnit unit) {
    Search search = Advice.search(bench, bench.usualDepth());
    return new Asked(
        search.counts().stream().map(String::valueOf).collect(Collectors.joining(", ")),
        lengths(search.heights(), unit),
        "",
        length(bench.usualDepth(), unit),
        false);
  }

  private static String lengths(List<Double> metres, LengthUnit unit) {
    return metres.stream().map(at -> length(at, unit)).collect(Collectors.joining(", "));
  }

  private static String length(double metres, LengthUnit unit) {
    double rounded = Math.round(unit.fromMetres(metres) * 100) / 100.0;
    return rounded == Math.rint(rounded)
        ? String.format(Locale.ROOT, "%.0f", rounded)
        : String.valueOf(rounded);
  }

  /** What is wrong with it, by field; empty if it can be looked for. */
  Map<String, String> faults(Bench bench, LengthUnit unit) {
    Map<String, String> faults = new LinkedHashMap<>();
    check(faults, "counts", () -> whole(counts));
    check(faults, "heights", () -> mounting(bench, unit));
    check(faults, "spacings", () -> spacings(bench, unit));
    check(faults, "depth", () -> plane(bench, unit));
    return faults;
  }

  private static void check(Map<String, String> faults, String field, Runnable read) {
    try {
      read.run();
    } catch (Refusal e) {
      String cure =
          e.problem().hints().stream().map(Problem.Hint::message).collect(Collectors.joining("; "));
      faults.put(field, e.problem().title() + "; " + cure);
    }
  }

  /**
   * The search.
   *
   * @throws Refusal if a field cannot be read; the message names it
   */
  Search search(Bench bench, LengthUnit unit) {
    Search search = Advice.search(bench, plane(bench, unit));
    if (!counts.isEmpty()) {
      search = search.withCounts(whole(counts));
    }
    if (!heights.isEmpty()) {
      search = search.withHeights(mounting(bench, unit));
    }
    if (!spacings.isEmpty()) {
      search = search.withSpacings(spacings(bench, unit));
    }
    return freeMix ? search.withMix(Mix.FREE) : search;
  }

  private double plane(Bench bench, LengthUnit unit) {
    double plane =
        depth.isEmpty() ? bench.usualDepth() : unit.toMetres(number("depth of the plane", depth));
    bench.checkDepths(List.of(plane), unit);
    return plane;
  }

  private List<Double> mounting(Bench bench, LengthUnit unit) {
    OptionalDouble ceiling = bench.setup().room().height();
    return metres(
        "mounting heights",
        heights,
        unit,
        ceiling.orElse(HIGHEST),
        ceiling.isPresent() ? "the room over the water ends at " : "type at most ");
  }

  private List<Double> spacings(Bench bench, LengthUnit unit) {
    double length = bench.setup().tank().length();
    return metres("spacings", spacings, unit, length, "the tank's length is ");
  }

  private static List<Integer> whole(String text) {
    List<Integer> all = new ArrayList<>();
    for (double value : text.isEmpty() ? List.<Double>of() : list("number of fixtures", text)) {
      if (value != Math.rint(value) || value < 1 || value > Arrangement.MOST_FIXTURES) {
        throw Refusal.of(
            "number of fixtures: got " + Numbers.plain(value, 2),
            "type whole numbers from 1 to " + Arrangement.MOST_FIXTURES + ", as in 1, 2");
      }
      all.add((int) value);
    }
    return all;
  }

  private static List<Double> metres(
      String what, String text, LengthUnit unit, double most, String why) {
    List<Double> all = new ArrayList<>();
    for (double value : text.isEmpty() ? List.<Double>of() : list(what, text)) {
      double metres = unit.toMetres(value);
      if (!(metres > 0 && metres <= most)) {
        throw Refusal.of(
            what + ": got " + Numbers.withUnit(metres, unit),
            metres > most ? why + Numbers.withUnit(most, unit) : "type lengths above 0");
      }
      all.add(metres);
    }
    return all;
  }

  /** Numbers apart by blanks, commas or semicolons; {@code from:to:step} stands for a row. */
  static List<Double> list(String what, String text) {
    List<Double> all = new ArrayList<>();
    for (String part : text.split("[;\\s]+|,\\s*(?=\\S)")) {
      String[] row = part.split(":");
      if (row.length == 3) {
        double from = number(what, row[0]);
        double to = number(what, row[1]);
        double step = number(what, row[2]);
        if (!(step > 0) || (to - from) / step > MOST) {
          throw Refusal.of(
              what + ": got " + part, "write from:to:step with few steps, as in 15:40:5");
        }
        for (int i = 0; from + i * step <= to + 1e-9; i++) {
          all.add(from + i * step);
        }
      } else if (!part.isBlank()) {
        all.add(number(what, part));
      }
    }
    if (all.isEmpty() || all.size() > MOST) {
      throw Refusal.of(
          what + ": got " + all.size() + " numbers; 1 to " + MOST + " can be looked at",
          "type fewer numbers");
    }
    return all;
  }

  private static double number(String what, String text) {
    return Double.parseDouble(DemandForm.typedNumber(what, text));
  }
}
