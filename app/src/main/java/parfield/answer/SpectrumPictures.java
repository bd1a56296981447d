package parfield.answer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import parfield.optics.Underwater;
import parfield.plot.Axis;
import parfield.plot.BlendChart;
import parfield.plot.BlendChartSpec;
import parfield.plot.Caption;
import parfield.plot.ChromaticityChart;
import parfield.plot.ChromaticityChartSpec;
import parfield.plot.Curves;
import parfield.plot.CurvesSpec;
import parfield.plot.Series;
import parfield.plot.SpectrumChart;
import parfield.plot.SpectrumChartSpec;
import parfield.plot.SpectrumLine;
import parfield.spectrum.Blend;
import parfield.spectrum.Comparison;
import parfield.spectrum.DisplayColour;
import parfield.spectrum.LightFigures;
import parfield.spectrum.Scale;
import parfield.spectrum.WaveBand;
import parfield.spectrum.Wavelengths;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** Spectra as pictures. */
public final class SpectrumPictures {
  /** Bands that a chart of a blend has room for. */
  public static final int MOST_BLEND_BANDS = 7;

  /** Differences of shares and colour that take the strongest tint, at least. */
  private static final double STRONG_SHARE = 0.02;

  private SpectrumPictures() {}

  /** Places against their mean light. */
  public static String blend(BlendAnswer answer) {
    double share =
        answer.blend().rows().stream()
            .flatMap(
                row ->
                    IntStream.range(0, row.shares().size())
                        .mapToObj(
                            b ->
                                Math.abs(
                                    row.shares().get(b) - answer.blend().spreads().get(b).mean())))
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(0);
    List<BlendChartSpec.Column> columns = new ArrayList<>();
    for (WaveBand band : answer.bands().bands()) {
      columns.add(
          new BlendChartSpec.Column(
              Numbers.nm(band) + "\npoints", 100 * Math.max(share, STRONG_SHARE), 1, true));
    }
    columns.add(
        new BlendChartSpec.Column(
            "Δu′v′\n× 1000",
            1000 * Math.max(answer.blend().farthest().deviation(), Blend.EVEN),
            1,
            false));
    List<BlendChartSpec.Place> places = new ArrayList<>();
    for (Blend.Row row : answer.blend().rows()) {
      List<Double> differences = new ArrayList<>();
      for (int b = 0; b < row.shares().size(); b++) {
        differences.add(100 * (row.shares().get(b) - answer.blend().spreads().get(b).mean()));
      }
      differences.add(1000 * row.deviation());
      places.add(
          new BlendChartSpec.Place(
              row.name(), DisplayColour.of(row.chromaticity()).hex(), differences));
    }
    return BlendChart.svg(
        new BlendChartSpec(
            new Caption(
                Numbers.count(places.size(), "place") + " against their mean light",
                answer.blend().words()),
            columns,
            places,
            0.1));
  }

  /** A light over its reference, and their difference. */
  public static String overlay(CompareAnswer.Compared compared, Light reference) {
    Comparison comparison = compared.comparison();
    boolean photons = comparison.basis() == Comparison.Basis.EQUAL_PPFD;
    Caption caption =
        new Caption(
            compared.light().name() + " beside " + reference.name(),
            String.format(
                Locale.ROOT,
                "At equal %s. Overlap %s %%, spectral angle %s°.",
                photons ? "PPFD" : "energy",
                Numbers.percent(comparison.overlap()),
                Numbers.plain(Math.toDegrees(comparison.angle()), 1)));
    return SpectrumChart.svg(
        new SpectrumChartSpec(
            caption,
            Axis.percent(photons ? "share of photons per nm" : "share of energy per nm"),
            List.of(
                line(compared.light().name(), comparison.wavelengths(), comparison::light),
                line(reference.name(), comparison.wavelengths(), comparison::reference)),
            false,
            List.of(),
            Optional.of(
                line(
                    "difference: " + compared.light().name() + " less " + reference.name(),
                    comparison.wavelengths(),
                    comparison::difference))));
  }

  /** One spectrum filled with its colours and the shares of its bands, or several as lines. */
  public static String spectra(List<DescribeAnswer.Described> lights) {
    Scale scale = common(lights);
    double factor = scale == Scale.RELATIVE ? 0 : 1;
    List<SpectrumLine> lines =
        lights.stream().map(one -> factor > 0 ? line(one.light()) : atPeak(one.light())).toList();
    double highest =
        lights.stream()
            .flatMapToDouble(one -> DoubleStream.of(one.light().photons().photonFluxes()))
            .max()
            .orElseThrow();
    Axis axis = factor > 0 ? absolute(scale, highest) : bare("photons per nm, highest = 1");
    if (lights.size() > 1) {
      Caption caption = new Caption(Numbers.count(lights.size(), "spectrum", "spectra"), "");
      return SpectrumChart.svg(
          new SpectrumChartSpec(caption, axis, lines, false, List.of(), Optional.empty()));
    }
    LightFigures figures = lights.get(0).figures();
    List<SpectrumChartSpec.Span> spans = new ArrayList<>();
    figures
        .bandShares()
        .toOptional()
        .ifPresent(
            shares -> {
              for (int b = 0; b < shares.size(); b++) {
                WaveBand band = figures.bands().bands().get(b);
                spans.add(
                    new SpectrumChartSpec.Span(
                        band.fromNm(), band.toNm(), Numbers.percent(shares.get(b)) + " %"));
              }
            });
    Caption caption =
        new Caption(
            lights.get(0).light().name(),
            (scale == Scale.IRRADIANCE
                    ? "PPFD " + Numbers.ppfd(figures.parPhotons()) + " " + Numbers.PPFD + ". "
                    : "")
                + "On top: shares of photons by waveband.");
    return SpectrumChart.svg(SpectrumChartSpec.of(caption, axis, lines.get(0)).withSpans(spans));
  }

  /** The scale that all lights have; unknown if they differ. */
  private static Scale common(List<DescribeAnswer.Described> lights) {
    List<Scale> scales =
        lights.stream().map(one -> one.light().photons().scale()).distinct().toList();
    return scales.size() == 1 ? scales.get(0) : Scale.RELATIVE;
  }

  /** An axis whose numbers lie between about 1 and 1000. */
  static Axis absolute(Scale scale, double highest) {
    String rest = scale == Scale.FLUX ? "mol s⁻¹ nm⁻¹" : "mol m⁻² s⁻¹ nm⁻¹";
    boolean small = highest < 0.1;
    return new Axis(
        "photons per nm",
        (small ? "n" : "µ") + rest,
        small ? 1000 : 1,
        Optional.empty(),
        Optional.empty());
  }

  static Axis bare(String label) {
    return new Axis(label, "", 1, Optional.empty(), Optional.empty());
  }

  private static SpectrumLine atPeak(Light light) {
    double peak = DoubleStream.of(light.photons().photonFluxes()).max().orElseThrow();
    return line(
        light.name(), light.photons().wavelengths(), i -> light.photons().photonFlux(i) / peak);
  }

  /** Where lights stand among all colours. */
  public static String colours(List<DescribeAnswer.Described> lights) {
    List<ChromaticityChartSpec.Light> shown = new ArrayList<>();
    for (DescribeAnswer.Described one : lights) {
      one.figures()
          .chromaticity()
          .toOptional()
          .ifPresent(
              colour -> shown.add(new ChromaticityChartSpec.Light(one.light().name(), colour)));
    }
    return ChromaticityChart.svg(
        new ChromaticityChartSpec(
            new Caption(
                shown.size() == 1
                    ? "Colour of " + shown.get(0).name()
                    : Numbers.count(shown.size(), "colour"),
                "Dots have the light's own colour, as far as a screen can show it."),
            shown));
  }

  private static SpectrumLine line(
      String name, Wavelengths wavelengths, IntToDoubleFunction value) {
    return new SpectrumLine(
        name,
        wavelengths.toArray(),
        IntStream.range(0, wavelengths.size()).mapToDouble(value).toArray());
  }

  /** A mix, over the wanted light if that is a spectrum. */
  public static String mix(MixAnswer answer) {
    Light mixed = new Light("mix", answer.mix().spectrum(), List.of());
    return answer
        .comparison()
        .map(
            found ->
                overlay(new CompareAnswer.Compared(mixed, found), answer.reference().orElseThrow()))
        .orElseGet(
            () ->
                SpectrumChart.svg(
                    SpectrumChartSpec.of(
                        new Caption("The mix nearest to the wanted shares", ""),
                        bare("photons per nm, highest = 1"),
                        atPeak(mixed))));
  }

  /** Shares of wavebands by depth. */
  public static String depths(DepthsAnswer answer, LengthUnit unit) {
    List<Series> series = new ArrayList<>();
    for (int b = 0; b < answer.bands().bands().size(); b++) {
      int band = b;
      List<Series.Point> points =
          answer.depths().stream()
              .filter(at -> at.shares().toOptional().isPresent())
              .sorted(Comparator.comparingDouble(Underwater.AtDepth::depth))
              .map(
                  at ->
                      new Series.Point(
                          at.depth(),
                          Estimate.exact(at.shares().toOptional().orElseThrow().get(band))))
              .toList();
      series.add(new Series(Numbers.nm(answer.bands().bands().get(b)) + " nm", points));
    }
    return Curves.svg(
        new CurvesSpec(
            new Caption(
                answer.light().name() + " under water",
                String.format(
                    Locale.ROOT,
                    "Shares of photons by waveband, yellowing %s 1/m, absorption alone.",
                    Numbers.plain(answer.water().yellowing(), 4))),
            Axis.length("depth", unit),
            Axis.percent("share of photons"),
            series,
            List.of()));
  }

  private static SpectrumLine line(Light light) {
    return new SpectrumLine(
        light.name(), light.photons().wavelengths().toArray(), light.photons().photonFluxes());
  }
}
