package parfield.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import parfield.spectrum.Chromaticity;

/** What the pictures of spectra show beyond what every picture keeps to. */
class SpectrumChartTest {
  private static final Caption CAPTION = new Caption("t", "");
  private static final Axis AXIS =
      new Axis("photons per nm", "", 1, Optional.empty(), Optional.empty());

  private static List<String> fills(String svg) {
    return Parsed.of(svg).all("path").stream()
        .map(path -> path.getAttribute("fill"))
        .filter(fill -> fill.startsWith("#"))
        .toList();
  }

  @Test
  @DisplayName("a filled spectrum is blue at 450 nm, green at 530 nm, red at 640 nm")
  void fillsWithVisibleColours() {
    for (double at : new double[] {450, 530, 640}) {
      List<String> fills =
          fills(
              SpectrumChart.svg(
                  SpectrumChartSpec.of(
                      CAPTION,
                      AXIS,
                      SpectrumSamples.line("x", 400, 700, nm -> Math.abs(nm - at) < 2 ? 1 : 0))));
      assertThat(fills).isNotEmpty();
      int rgb = Integer.parseInt(fills.get(fills.size() / 2).substring(1), 16);
      int red = rgb >> 16;
      int green = rgb >> 8 & 255;
      int blue = rgb & 255;
      int most = Math.max(red, Math.max(green, blue));
      assertThat(at < 500 ? blue : at < 600 ? green : red).as("%s nm", at).isEqualTo(most);
    }
  }

  @Test
  void severalSpectraAreToldApartByDashAndKeyWithoutFill() {
    String svg = SpectrumChart.svg(SpectrumSamples.overlay());
    Parsed chart = Parsed.of(svg);

    assertThat(fills(svg)).isEmpty();
    assertThat(chart.texts())
        .contains("bar, mixed", "reference", "difference: bar, mixed, less reference")
        .contains("share of photons per nm, %", "wavelength, nm");
    List<String> dashes =
        chart.all("path").stream()
            .filter(path -> path.getAttribute("stroke-width").equals("1.8"))
            .map(path -> path.getAttribute("stroke-dasharray"))
            .toList();
    assertThat(dashes).contains(Style.SOLID.dashes, Style.DASHED.dashes, Style.SHORT.dashes);
  }

  @Test
  void noiseBelowZeroIsDrawnBelowZero() {
    Parsed chart = Parsed.of(SpectrumChart.svg(SpectrumSamples.noisy()));
    double zero =
        chart.all("text").stream()
            .filter(text -> text.getTextContent().equals("0"))
            .mapToDouble(text -> Double.parseDouble(text.getAttribute("y")) - 4)
            .findFirst()
            .orElseThrow();
    Element line =
        chart.all("path").stream()
            .filter(path -> path.getAttribute("stroke-width").equals("1.8"))
            .findFirst()
            .orElseThrow();
    double lowest = 0;
    for (String point : line.getAttribute("d").substring(1).split("L")) {
      lowest = Math.max(lowest, Double.parseDouble(point.split(" ")[1]));
    }
    assertThat(lowest).isGreaterThan(zero + 1);
  }

  @Test
  void sharesStandOverTheirBandsWhereThereIsRoom() {
    assertThat(Parsed.of(SpectrumChart.svg(SpectrumSamples.one())).texts())
        .contains("14 %", "46 %", "27 %");
  }

  @Test
  void refusesWhatCannotBeDrawn() {
    SpectrumLine line = SpectrumSamples.line("x", 400, 410, nm -> 1);
    assertThatThrownBy(
            () ->
                new SpectrumChartSpec(
                    CAPTION,
                    AXIS,
                    Collections.nCopies(7, line),
                    false,
                    List.of(),
                    Optional.empty()))
        .hasMessage("a chart shows 1 to 6 spectra; got 7: draw several charts");
    assertThatThrownBy(() -> new SpectrumLine("x", new double[] {400, 400}, new double[] {1, 1}))
        .hasMessage("sample 2 of x must be finite and run upward; got 1.0 at 400.0 nm");
    assertThatThrownBy(() -> new SpectrumLine("", new double[] {400}, new double[] {1}))
        .hasMessage(
            "a drawn spectrum needs a name and two or more samples; got \"\" with 1 wavelengths and"
                + " 1 values");
    assertThatThrownBy(() -> new SpectrumChartSpec.Span(500, 400, ""))
        .hasMessage("a span of wavelengths must run upward; got 500.0 to 400.0 nm");
    assertThatThrownBy(() -> new ChromaticityChartSpec(CAPTION, List.of()))
        .hasMessage("a diagram of colours shows 1 to 20 lights; got 0: draw several");
    assertThatThrownBy(
            () ->
                new BlendChartSpec(
                    CAPTION,
                    List.of(new BlendChartSpec.Column("a", 1, 1, true)),
                    List.of(new BlendChartSpec.Place("p", "#ffffff", List.of())),
                    0.1))
        .hasMessage("place p needs a difference for each of 1 columns; got 0");
  }

  @Test
  @DisplayName("a light stands in u′v′ where CIE 1976 puts it: D65 at 0.1978, 0.4683")
  void lightsStandWhereTheyBelong() {
    // u' = 4x/(−2x+12y+3), v' = 9y/(−2x+12y+3), CIE 15; x, y of D65 0.3127, 0.3290.
    Parsed chart =
        Parsed.of(
            ChromaticityChart.svg(
                new ChromaticityChartSpec(
                    CAPTION,
                    List.of(
                        new ChromaticityChartSpec.Light(
                            "D65", new Chromaticity(0.3127, 0.3290))))));
    Element dot =
        chart.all("circle").stream()
            .filter(circle -> circle.getAttribute("r").equals("6.5"))
            .findFirst()
            .orElseThrow();
    double left = tick(chart, "0.1", "middle", "x");
    double right = tick(chart, "0.2", "middle", "x");
    double u = 0.1 + 0.1 * (Double.parseDouble(dot.getAttribute("cx")) - left) / (right - left);
    assertThat(u).isCloseTo(0.1978, within(5e-4));
    double low = tick(chart, "0.4", "end", "y");
    double high = tick(chart, "0.5", "end", "y");
    double v = 0.4 + 0.1 * (Double.parseDouble(dot.getAttribute("cy")) - (low - 4)) / (high - low);
    assertThat(v).isCloseTo(0.4683, within(5e-4));
    assertThat(chart.texts()).contains("D65", "6500", "460", "u′", "v′");
  }

  private static double tick(Parsed chart, String text, String anchor, String axis) {
    return chart.all("text").stream()
        .filter(one -> one.getTextContent().equals(text))
        .filter(one -> one.getAttribute("text-anchor").equals(anchor))
        .mapToDouble(one -> Double.parseDouble(one.getAttribute(axis)))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aBlendShowsSignAndTintOfEachDifference() {
    Parsed chart =
        Parsed.of(
            BlendChart.svg(
                new BlendChartSpec(
                    CAPTION,
                    List.of(
                        new BlendChartSpec.Column("a\npoints", 2, 1, true),
                        new BlendChartSpec.Column("b", 10, 0, false)),
                    List.of(
                        new BlendChartSpec.Place("left", "#112233", List.of(-2.0, 4.0)),
                        new BlendChartSpec.Place("right", "#445566", List.of(0.04, 10.0))),
                    0.1)));
    assertThat(chart.texts())
        .contains("left", "right", "\u22122.0", "0.0", "4", "10", "a", "points")
        .contains("less than the mean of all places", "more");
    List<String> tints =
        chart.all("rect").stream()
            .map(rect -> rect.getAttribute("fill-opacity"))
            .filter(tint -> !tint.isEmpty())
            .toList();
    assertThat(tints).contains("0.5", "0.25").hasSize(5);
  }

  @Test
  @DisplayName("a line is thinned, but stays within the distance allowed")
  void linesAreThinnedWithinADistance() {
    int n = 500;
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = i;
      y[i] = 40 * Math.sin(i / 40.0);
    }
    Line thin = new Line(x, y).within(0.3);

    assertThat(thin.size()).isLessThan(n / 4);
    int next = 1;
    for (int i = 0; i < n; i++) {
      while (thin.x()[next] < x[i]) {
        next++;
      }
      double share = (x[i] - thin.x()[next - 1]) / (thin.x()[next] - thin.x()[next - 1]);
      double there = thin.y()[next - 1] * (1 - share) + thin.y()[next] * share;
      assertThat(there).isCloseTo(y[i], within(0.3 * Math.hypot(1, 1) + 1e-9));
    }
  }
}
