package parfield.plot;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * A chart of curves over one pair of axes.
 *
 * @param caption title and summary
 * @param horizontal the axis of x
 * @param vertical the axis of y
 * @param series the curves, one to six: more cannot be told apart without colour
 * @param thresholds levels drawn across; may be empty
 */
public record CurvesSpec(
    Caption caption,
    Axis horizontal,
    Axis vertical,
    List<Series> series,
    List<Threshold> thresholds) {
  /** The most curves one chart tells apart by dash and marker. */
  public static final int MOST_SERIES = 6;

  public CurvesSpec {
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(horizontal, "horizontal");
    Objects.requireNonNull(vertical, "vertical");
    series = List.copyOf(series);
    thresholds = List.copyOf(thresholds);
    if (series.isEmpty() || series.size() > MOST_SERIES) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a chart shows 1 to %d curves; got %d: draw several charts",
              MOST_SERIES,
              series.size()));
    }
  }
}
