package parfield.survey;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import parfield.field.Cells;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * The figures of a solved field in the whole water volume: each cell stands for the same volume;
 * what is in rock is no part of it.
 *
 * @param statistics its figures
 * @param coverageOfVolume share of the water volume in each band, in the order asked for
 * @param histogram share of the water volume by PPFD
 * @param layers the figures of each layer's middle plane, the shallowest first; layers all of rock
 *     have none
 */
public record VolumeStatistics(
    Statistics statistics,
    List<Coverage> coverageOfVolume,
    Histogram histogram,
    List<PlaneStatistics> layers) {
  public VolumeStatistics {
    Objects.requireNonNull(statistics, "statistics");
    coverageOfVolume = List.copyOf(coverageOfVolume);
    Objects.requireNonNull(histogram, "histogram");
    layers = List.copyOf(layers);
  }

  /**
   * The figures of a field on the equal cells of the water volume.
   *
   * @param tank the tank that the field was solved in
   * @param field solved at {@code Places.volume(tank, columns, rows, layers)}
   * @param bands ranges to take the coverage of, may be empty
   * @param regions parts of the tank to take means of, may be empty
   * @throws IllegalArgumentException if the places are not the centres of equal cells, or the
   *     layers do not fill the water
   */
  public static VolumeStatistics of(
      Tank tank, LightField field, List<Band> bands, List<Region> regions) {
    Cells cells = EqualCells.of(tank, field.places());
    EqualCells.requireLayersFillWater(tank, field.places(), cells);
    double[] ppfd = field.ppfd();
    return new VolumeStatistics(
        Statistics.of(tank, field.places(), ppfd, regions),
        Coverage.ofEach(ppfd, bands),
        Histogram.of(ppfd),
        IntStream.range(0, cells.layers())
            .filter(k -> cells.first(k + 1) > cells.first(k))
            .mapToObj(k -> layer(field, cells.first(k), cells.first(k + 1) - cells.first(k)))
            .map(layer -> PlaneStatistics.ofCells(tank, layer, bands, regions))
            .toList());
  }

  /** The brightest cell. */
  public Spot hotSpot() {
    return statistics.max();
  }

  private static LightField layer(LightField field, int from, int count) {
    List<Place> places = IntStream.range(from, from + count).mapToObj(field.places()::get).toList();
    double[] ppfd = new double[count];
    for (int i = 0; i < count; i++) {
      ppfd[i] = field.ppfd(from + i);
    }
    return new LightField(Places.of(places), ppfd);
  }
}
