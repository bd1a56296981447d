package parfield.web.recommend;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.Refusal;
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

  /**
   * The search.
   *
   * @throws Refusal if a field cannot be read; the message names it
   */
  Search search(Bench bench, LengthUnit unit) {
    double plane = depth.isEmpty() ? bench.usualDepth() : unit.toMetres(number("depth", depth));
    bench.checkDepths(List.of(plane), unit);
    try {
      Search search = Advice.search(bench, plane);
      if (!counts.isEmpty()) {
        search = search.withCounts(whole(counts));
      }
      if (!heights.isEmpty()) {
        search = search.withHeights(metres("heights", heights, unit));
      }
      if (!spacings.isEmpty()) {
        search = search.withSpacings(metres("spacings", spacings, unit));
      }
      return freeMix ? search.withMix(Mix.FREE) : search;
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage(), "change the fields of the search, or leave them empty");
    }
  }

  private static List<Integer> whole(String text) {
    List<Integer> all = new ArrayList<>();
    for (double value : list("number of fixtures", text)) {
      if (value != Math.rint(value)) {
        throw Refusal.of("number of fixtures: got " + value, "type whole numbers, as in 1, 2");
      }
      all.add((int) value);
    }
    return all;
  }

  private static List<Double> metres(String what, String text, LengthUnit unit) {
    return list(what, text).stream().map(unit::toMetres).toList();
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
