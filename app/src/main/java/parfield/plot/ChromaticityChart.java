package parfield.plot;

import java.util.ArrayList;
import java.util.List;
import parfield.spectrum.Chromaticity;
import parfield.spectrum.DisplayColour;
import parfield.spectrum.PlanckianLocus;

/**
 * The u′v′ diagram of CIE 1976: the line of single wavelengths, the line of black bodies, and
 * lights. Equal distances are about equal differences of colour.
 */
public final class ChromaticityChart {
  private static final double LEFT = Look.MARGIN + 46;
  private static final Scale U = new Scale(-0.05, 0.65);
  private static final Scale V = new Scale(0, 0.6);
  private static final double FIRST_NM = 400;
  private static final double LAST_NM = 700;
  private static final double[] MARKED_NM = {
    420, 440, 450, 460, 470, 480, 490, 500, 520, 550, 580, 600, 620, 650
  };
  private static final double[] KELVIN = {
    1500, 1750, 2000, 2300, 2700, 3000, 3500, 4000, 5000, 6500, 8000, 10_000, 15_000, 25_000,
    100_000
  };
  private static final double[] MARKED_KELVIN = {2700, 4000, 6500, 25_000};

  private ChromaticityChart() {}

  /**
   * Draws a diagram.
   *
   * @param spec what to show
   * @return one SVG document
   */
  public static String svg(ChromaticityChartSpec spec) {
    Sheet sheet = new Sheet(spec.caption());
    Svg svg = sheet.body();
    double width = Look.WIDTH - Look.MARGIN - LEFT;
    double height = width * (V.high() - V.low()) / (U.high() - U.low());
    Curves.Axes axes = new Curves.Axes(LEFT, sheet.bottom() + 6, width, height, U, V);
    grid(svg, axes);
    Placement placement = new Placement();
    locus(svg, axes, placement);
    blackBodies(svg, axes, placement);
    boolean crowded = spec.lights().size() > 6;
    for (ChromaticityChartSpec.Light light : spec.lights()) {
      placement.take(axes.x(light.colour().u()), axes.y(light.colour().vPrime()), 7);
    }
    for (int i = 0; i < spec.lights().size(); i++) {
      light(svg, axes, placement, spec.lights().get(i), crowded);
    }
    sheet.fillTo(axes.bottom() + 40);
    sheet.key(
        List.of(
            new Sheet.Sign("single wavelengths, nm", (out, x, y) -> sign(out, x, y, "none")),
            new Sheet.Sign("black bodies, K", (out, x, y) -> sign(out, x, y, "5 3"))),
        LEFT);
    return sheet.finished();
  }

  private static void sign(Svg svg, double x, double y, String dashes) {
    path(svg, new Line(new double[] {x - 9, x + 9}, new double[] {y, y}), dashes);
  }

  private static void path(Svg svg, Line line, String dashes) {
    svg.empty(
        "path",
        "d",
        line.straight(),
        "fill",
        "none",
        "stroke",
        Look.INK,
        "stroke-width",
        1.3,
        "stroke-dasharray",
        dashes);
  }

  private static void grid(Svg svg, Curves.Axes axes) {
    for (double u : Ticks.within(0, U.high(), 0.1)) {
      rule(svg, axes.x(u), axes.top(), axes.x(u), axes.bottom());
      label(svg, Ticks.text(u), axes.x(u), axes.bottom() + 18, "middle");
    }
    for (double v : Ticks.within(0, V.high(), 0.1)) {
      rule(svg, axes.left(), axes.y(v), axes.right(), axes.y(v));
      label(svg, Ticks.text(v), axes.left() - 8, axes.y(v) + 4, "end");
    }
    svg.element(
        "text",
        "u′",
        "x",
        axes.left() + axes.width() / 2,
        "y",
        axes.bottom() + 36,
        "font-size",
        Look.SMALL,
        "fill",
        Look.QUIET,
        "text-anchor",
        "middle");
    svg.element(
        "text",
        "v′",
        "x",
        Look.MARGIN,
        "y",
        axes.top() + axes.height() / 2,
        "font-size",
        Look.SMALL,
        "fill",
        Look.QUIET);
  }

  private static void rule(Svg svg, double fromX, double fromY, double toX, double toY) {
    svg.empty(
        "path",
        "d",
        new Line(new double[] {fromX, toX}, new double[] {fromY, toY}).straight(),
        "fill",
        "none",
        "stroke",
        Look.RULE);
  }

  private static void label(Svg svg, String text, double x, double y, String anchor) {
    svg.element("text", text, "x", x, "y", y, "font-size", Look.SMALL, "text-anchor", anchor);
  }

  private static void locus(Svg svg, Curves.Axes axes, Placement placement) {
    List<Chromaticity> line = new ArrayList<>();
    for (double nm = FIRST_NM; nm <= LAST_NM; nm += 2) {
      line.add(WavelengthColour.chromaticity(nm));
    }
    Line around = on(axes, line).within(0.2);
    // The straight side: purples, which are no single wavelength.
    path(svg, around, "none");
    path(
        svg,
        new Line(
            new double[] {around.x()[0], around.x()[around.size() - 1]},
            new double[] {around.y()[0], around.y()[around.size() - 1]}),
        "1 4");
    for (double nm : MARKED_NM) {
      Chromaticity at = WavelengthColour.chromaticity(nm);
      Chromaticity before = WavelengthColour.chromaticity(nm - 2);
      Chromaticity after = WavelengthColour.chromaticity(nm + 2);
      double alongX = axes.x(after.u()) - axes.x(before.u());
      double alongY = axes.y(after.vPrime()) - axes.y(before.vPrime());
      double length = Math.max(1e-9, Math.hypot(alongX, alongY));
      // Outward lies to the left of the way from violet to red.
      double outX = alongY / length;
      double outY = -alongX / length;
      double x = axes.x(at.u());
      double y = axes.y(at.vPrime());
      svg.empty(
          "circle", "cx", x, "cy", y, "r", 3, "fill", WavelengthColour.hex(nm), "stroke", Look.INK);
      String text = Ticks.text(nm);
      double width = Look.width(text, Look.SMALL);
      double labelX = x + outX * (8 + width / 2);
      double labelY = y + outY * 13;
      if (placement.takeIfFree(labelX, labelY, width, 11, 0)) {
        label(svg, text, labelX, labelY + 4, "middle");
      }
    }
  }

  private static Line on(Curves.Axes axes, List<Chromaticity> line) {
    return new Line(
        line.stream().mapToDouble(colour -> axes.x(colour.u())).toArray(),
        line.stream().mapToDouble(colour -> axes.y(colour.vPrime())).toArray());
  }

  private static void blackBodies(Svg svg, Curves.Axes axes, Placement placement) {
    List<Chromaticity> line = new ArrayList<>();
    for (double kelvin : KELVIN) {
      line.add(PlanckianLocus.chromaticity(kelvin));
    }
    path(svg, on(axes, line), "5 3");
    for (double kelvin : MARKED_KELVIN) {
      Chromaticity at = PlanckianLocus.chromaticity(kelvin);
      double x = axes.x(at.u());
      double y = axes.y(at.vPrime());
      path(svg, new Line(new double[] {x - 3, x + 3}, new double[] {y - 3, y + 3}), "none");
      String text = Ticks.text(kelvin);
      double width = Look.width(text, Look.SMALL);
      if (placement.takeIfFree(x + 6 + width / 2, y + 9, width, 11, 0)) {
        svg.element(
            "text", text, "x", x + 6, "y", y + 13, "font-size", Look.SMALL, "fill", Look.QUIET);
      }
    }
  }

  /** A light in its own colour, with its name where there is room. */
  private static void light(
      Svg svg,
      Curves.Axes axes,
      Placement placement,
      ChromaticityChartSpec.Light light,
      boolean crowded) {
    double x = axes.x(light.colour().u());
    double y = axes.y(light.colour().vPrime());
    svg.empty(
        "circle",
        "cx",
        x,
        "cy",
        y,
        "r",
        crowded ? 4.5 : 6.5,
        "fill",
        DisplayColour.of(light.colour()).hex(),
        "stroke",
        Look.INK,
        "stroke-width",
        1.6);
    double width = Look.width(light.name(), Look.SMALL) * Look.STRONG;
    for (double away = 12; away < 60; away += 8) {
      for (double[] side : new double[][] {{1, 0}, {-1, 0}, {0.6, -1}, {0.6, 1}, {-0.6, 1}}) {
        double labelX = x + side[0] * (away + width / 2);
        double labelY = y + side[1] * away;
        boolean inside = labelX - width / 2 > axes.left() && labelX + width / 2 < axes.right();
        if (inside && placement.takeIfFree(labelX, labelY, width + 4, 13, 0)) {
          if (away > 12) {
            rule(svg, x, y, labelX - Math.signum(side[0]) * width / 2, labelY);
          }
          svg.haloed(
              light.name(),
              3,
              "x",
              labelX,
              "y",
              labelY + 4,
              "font-size",
              Look.SMALL,
              "font-weight",
              "600",
              "text-anchor",
              "middle");
          return;
        }
      }
    }
  }
}
