package parfield.survey;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.field.LightField;
import parfield.tank.Tank;

/**
 * The figures of one depth plane of a solved field: each cell stands for the same area; what is in
 * rock is no part of it.
 *
 * @param depth of the plane [m]
 * @param statistics its figures
 * @param coverageOfPlane share of the plane's area in each band, in the order asked for
 * @param histogram share of the plane's area by PPFD
 */
public record PlaneStatistics(
    double depth, Statistics statistics, List<Coverage> coverageOfPlane, Histogram histogram) {
  public PlaneStatistics {
    Objects.requireNonNull(statistics, "statistics");
    coverageOfPlane = List.copyOf(coverageOfPlane);
    Objects.requireNonNull(histogram, "histogram");
  }

  /**
   * The figures of a field on the equal cells of one plane.
   *
   * @param tank the tank that the field was solved in
   * @param field solved at {@code Places.plane(tank, depth, columns, rows)}
   * @param bands ranges to take the coverage of, may be empty
   * @param regions parts of the tank to take means of, may be empty
   * @throws IllegalArgumentException if the places are not the centres of equal cells of one plane
   */
  public static PlaneStatistics of(
      Tank tank, LightField field, List<Band> bands, List<Region> regions) {
    int layers = EqualCells.of(tank, field.places()).layers();
    if (layers != 1) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "plane statistics need one depth; the field has %d", layers));
    }
    return ofCells(tank, field, bands, regions);
  }

  /** The figures of a field that is known to lie on the equal cells of one plane. */
  static PlaneStatistics ofCells(
      Tank tank, LightField field, List<Band> bands, List<Region> regions) {
    double[] ppfd = field.ppfd();
    return new PlaneStatistics(
        field.places().depth(0),
        Statistics.of(tank, field.places(), ppfd, regions),
        Coverage.ofEach(ppfd, bands),
        Histogram.of(ppfd));
  }

  /** The brightest cell. */
  public Spot hotSpot() {
    return statistics.max();
  }
}
