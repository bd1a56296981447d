package parfield.plot;

import java.util.Locale;
import java.util.Objects;
import parfield.survey.Band;

/**
 * Where a plane lies below, in or above a band, and where the interval of the prediction leaves
 * that open.
 *
 * @param caption title and summary
 * @param scene the tank and what is drawn over the plane
 * @param low lower ends of the intervals [µmol m⁻² s⁻¹]
 * @param high upper ends, on the same cells, nowhere below {@code low}
 * @param band the wanted range
 */
public record BandMapSpec(Caption caption, Scene scene, Raster low, Raster high, Band band) {
  public BandMapSpec {
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(scene, "scene");
    Objects.requireNonNull(band, "band");
    if (low.columns() != high.columns() || low.rows() != high.rows()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "both ends of the intervals need the same cells; got %d x %d and %d x %d",
              low.columns(),
              low.rows(),
              high.columns(),
              high.rows()));
    }
    for (int row = 0; row < low.rows(); row++) {
      for (int column = 0; column < low.columns(); column++) {
        if (!(low.value(column, row) <= high.value(column, row))) {
          throw new IllegalArgumentException(
              String.format(
                  Locale.ROOT,
                  "an interval must run from low to high; got %s to %s in column %d of row %d",
                  low.value(column, row),
                  high.value(column, row),
                  column,
                  row));
        }
      }
    }
  }
}
