package parfield.plot;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.care.CoralGroup;

/**
 * Where a plane is home for a group of corals, and where the intervals of the prediction leave that
 * open.
 *
 * @param caption title and summary
 * @param scene the tank and what is drawn over the plane
 * @param peakLow lower ends of the highest PPFD of the day [µmol m⁻² s⁻¹]
 * @param peakHigh upper ends, on the same cells, nowhere below {@code peakLow}
 * @param doseLow lower ends of the daily light integral, on the same cells [mol m⁻² d⁻¹]
 * @param doseHigh upper ends, on the same cells, nowhere below {@code doseLow}
 * @param group who
 */
public record HomeMapSpec(
    Caption caption,
    Scene scene,
    Raster peakLow,
    Raster peakHigh,
    Raster doseLow,
    Raster doseHigh,
    CoralGroup group) {
  public HomeMapSpec {
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(scene, "scene");
    Objects.requireNonNull(group, "group");
    for (Raster raster : List.of(peakHigh, doseLow, doseHigh)) {
      if (raster.columns() != peakLow.columns() || raster.rows() != peakLow.rows()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "peaks and doses need the same cells; got %d x %d and %d x %d",
                peakLow.columns(),
                peakLow.rows(),
                raster.columns(),
                raster.rows()));
      }
    }
    ascending("peak", peakLow, peakHigh);
    ascending("dose", doseLow, doseHigh);
  }

  private static void ascending(String what, Raster low, Raster high) {
    for (int row = 0; row < low.rows(); row++) {
      for (int column = 0; column < low.columns(); column++) {
        if (!(low.value(column, row) <= high.value(column, row))) {
          throw new IllegalArgumentException(
              String.format(
                  Locale.ROOT,
                  "the interval of a %s must run from low to high; got %s to %s in column %d of row"
                      + " %d",
                  what,
                  low.value(column, row),
                  high.value(column, row),
                  column,
                  row));
        }
      }
    }
  }
}
