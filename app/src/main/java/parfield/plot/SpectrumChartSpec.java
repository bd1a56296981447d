package parfield.plot;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * Spectra over one axis of wavelengths.
 *
 * @param caption title and summary
 * @param vertical what the values are
 * @param lines the spectra, one to six; more cannot be told apart without colour
 * @param filled whether the first is filled with the colours of its wavelengths
 * @param spans ranges of wavelength named along the top, ascending; may be empty
 * @param difference a line of its own below, on a scale of its own; empty for none
 */
public record SpectrumChartSpec(
    Caption caption,
    Axis vertical,
    List<SpectrumLine> lines,
    boolean filled,
    List<Span> spans,
    Optional<SpectrumLine> difference) {
  public SpectrumChartSpec {
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(vertical, "vertical");
    Objects.requireNonNull(difference, "difference");
    lines = List.copyOf(lines);
    spans = List.copyOf(spans);
    if (lines.isEmpty() || lines.size() > CurvesSpec.MOST_SERIES) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a chart shows 1 to %d spectra; got %d: draw several charts",
              CurvesSpec.MOST_SERIES,
              lines.size()));
    }
  }

  /**
   * A range of wavelengths with a word about it.
   *
   * @param from [nm]
   * @param to [nm], above {@code from}
   * @param word short: a share, a name
   */
  public record Span(double from, double to, String word) {
    public Span {
      Objects.requireNonNull(word, "word");
      if (!(to > from)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "a span of wavelengths must run upward; got %s to %s nm", from, to));
      }
    }
  }

  /** One spectrum, filled. */
  public static SpectrumChartSpec of(Caption caption, Axis vertical, SpectrumLine line) {
    return new SpectrumChartSpec(
        caption, vertical, List.of(line), true, List.of(), Optional.empty());
  }

  /** With ranges named along the top. */
  public SpectrumChartSpec withSpans(List<Span> newSpans) {
    return new SpectrumChartSpec(caption, vertical, lines, filled, newSpans, difference);
  }
}
