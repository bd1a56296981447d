package parfield.plot;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import parfield.spectrum.Chromaticity;

/** Invented pictures of spectra. */
final class SpectrumSamples {
  private static final Axis FLUX =
      new Axis("photons per nm", "µmol m⁻² s⁻¹ nm⁻¹", 1, Optional.empty(), Optional.empty());

  private SpectrumSamples() {}

  static Map<String, String> all() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("spectrum", SpectrumChart.svg(one()));
    all.put("spectrum-noisy", SpectrumChart.svg(noisy()));
    all.put("spectrum-overlay", SpectrumChart.svg(overlay()));
    all.put("chromaticity", ChromaticityChart.svg(colours()));
    all.put("blend", BlendChart.svg(blend()));
    return all;
  }

  static double bell(double nm, double at, double width) {
    return Math.exp(-0.5 * Math.pow((nm - at) / width, 2));
  }

  private static double mix(double nm) {
    return bell(nm, 452, 10) + 0.3 * bell(nm, 412, 8) + 0.4 * bell(nm, 555, 48);
  }

  static SpectrumLine line(String name, double from, double to, DoubleUnaryOperator of) {
    int n = (int) (to - from) + 1;
    double[] nm = new double[n];
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      nm[i] = from + i;
      values[i] = of.applyAsDouble(nm[i]);
    }
    return new SpectrumLine(name, nm, values);
  }

  static SpectrumChartSpec one() {
    double[] edges = {380, 400, 430, 480, 510, 600, 700};
    String[] words = {"2 %", "14 %", "46 %", "6 %", "27 %", "5 %"};
    List<SpectrumChartSpec.Span> spans = new ArrayList<>();
    for (int b = 0; b < words.length; b++) {
      spans.add(new SpectrumChartSpec.Span(edges[b], edges[b + 1], words[b]));
    }
    return SpectrumChartSpec.of(
            new Caption("Bar at full, 15 cm deep", "Sample, invented: PPFD 212 µmol m⁻² s⁻¹."),
            FLUX,
            line("bar", 380, 780, SpectrumSamples::mix))
        .withSpans(spans);
  }

  static SpectrumChartSpec noisy() {
    SplittableRandom random = new SplittableRandom(3);
    return SpectrumChartSpec.of(
        new Caption("A dim channel, noise kept", ""),
        new Axis("relative photons per nm", "", 1000 / 12.0, Optional.empty(), Optional.empty()),
        line(
            "violet",
            340,
            850,
            nm -> 0.012 * bell(nm, 412, 8) + 0.0005 * (random.nextDouble() - 0.5)));
  }

  static SpectrumChartSpec overlay() {
    SpectrumLine light = line("bar, mixed", 380, 780, nm -> 0.011 * mix(nm));
    SpectrumLine reference =
        line("reference", 380, 780, nm -> 0.012 * (bell(nm, 447, 11) + 0.5 * bell(nm, 530, 60)));
    return new SpectrumChartSpec(
        new Caption("Bar, mixed, beside the reference", "At equal PPFD. Overlap 81 %."),
        Axis.percent("share of photons per nm"),
        List.of(light, reference),
        false,
        List.of(),
        Optional.of(
            line(
                "difference: bar, mixed, less reference",
                380,
                780,
                nm -> light.at(nm) - reference.at(nm))));
  }

  static ChromaticityChartSpec colours() {
    return new ChromaticityChartSpec(
        new Caption("Colours of four lights", "Sample, invented."),
        List.of(
            new ChromaticityChartSpec.Light("blue", new Chromaticity(0.155, 0.03)),
            new ChromaticityChartSpec.Light("bar, mixed", new Chromaticity(0.2146, 0.1786)),
            new ChromaticityChartSpec.Light("daylight", new Chromaticity(0.3127, 0.329)),
            new ChromaticityChartSpec.Light("candle", new Chromaticity(0.52, 0.41))));
  }

  static BlendChartSpec blend() {
    List<BlendChartSpec.Column> columns = new ArrayList<>();
    for (String name : List.of("380–400", "400–430", "430–480", "480–510", "510–600", "600–700")) {
      columns.add(new BlendChartSpec.Column(name + "\npoints", 3, 1, true));
    }
    columns.add(new BlendChartSpec.Column("Δu′v′\n×1000", 20, 1, false));
    SplittableRandom random = new SplittableRandom(11);
    List<BlendChartSpec.Place> places = new ArrayList<>();
    for (int p = 1; p <= 10; p++) {
      List<Double> differences = new ArrayList<>();
      for (int b = 0; b < 6; b++) {
        differences.add(4 * (random.nextDouble() - 0.5));
      }
      differences.add(12 * random.nextDouble());
      places.add(new BlendChartSpec.Place("place " + p, "#5c6cf0", differences));
    }
    return new BlendChartSpec(
        new Caption("Ten places under one bar", "Sample, invented."), columns, places, 0.1);
  }
}
