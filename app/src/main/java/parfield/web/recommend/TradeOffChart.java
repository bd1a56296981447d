package parfield.web.recommend;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.units.LengthUnit;

/**
 * The choice between options as points of a plane, each of which can be picked: light kept across,
 * coverage up.
 *
 * @param band whose coverage it is
 * @param aim its number among the bands of the figures
 * @param points each an option
 * @param left least retention shown
 * @param right greatest
 * @param bottom least coverage shown
 * @param top greatest
 */
public record TradeOffChart(
    String band,
    int aim,
    List<Point> points,
    double left,
    double right,
    double bottom,
    double top) {
  /** Width of the plane [px]. */
  public static final int WIDTH = 520;

  /** Height of the plane [px]. */
  public static final int HEIGHT = 300;

  /**
   * A point.
   *
   * @param choice it stands for
   * @param x on the plane [px]
   * @param y on the plane, downward [px]
   * @param label number of its fixtures
   * @param words what it is
   * @param sides corners of its sign, by the number of fixtures; 0 for a disc
   */
  public record Point(Choice choice, double x, double y, String label, String words, int sides) {}

  public TradeOffChart {
    points = List.copyOf(points);
  }

  static TradeOffChart of(KeptAdvice advice, LengthUnit unit) {
    int aim = advice.aim();
    List<Choice> choices = new ArrayList<>(advice.tradeOff());
    choices.add(0, advice.choice(null));
    String band =
        advice
            .answer()
            .path("options")
            .path(0)
            .path("figures")
            .path(0)
            .path("coverage")
            .path(aim)
            .path("band")
            .asText();
    double left = floor(choices.stream().mapToDouble(c -> c.figure("retention")).min().orElse(0));
    double right = ceil(choices.stream().mapToDouble(c -> c.figure("retention")).max().orElse(1));
    double bottom = floor(choices.stream().mapToDouble(c -> c.coverage(aim)).min().orElse(0));
    double top = ceil(choices.stream().mapToDouble(c -> c.coverage(aim)).max().orElse(1));
    List<Point> points = new ArrayList<>();
    for (Choice choice : choices) {
      int count = choice.json().path("count").asInt();
      points.add(
          new Point(
              choice,
              WIDTH * (choice.figure("retention") - left) / (right - left),
              HEIGHT * (1 - (choice.coverage(aim) - bottom) / (top - bottom)),
              String.valueOf(count),
              String.format(
                  Locale.ROOT,
                  "%s: %.0f %% of the water in %s, %.0f %% of the light kept, probability %s",
                  choice.inWords(unit),
                  100 * choice.coverage(aim),
                  band,
                  100 * choice.figure("retention"),
                  choice.probability().inWords()),
              count));
    }
    return new TradeOffChart(band, aim, points, left, right, bottom, top);
  }

  private static double floor(double value) {
    return Math.floor(value * 20 - 0.2) / 20;
  }

  private static double ceil(double value) {
    return Math.ceil(value * 20 + 0.2) / 20;
  }

  /** A coordinate as SVG writes it. */
  public String at(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  /** A share as percent. */
  public String percent(double share) {
    return String.format(Locale.ROOT, "%.0f", 100 * share);
  }
}
