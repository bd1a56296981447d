package parfield.survey;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import parfield.field.Places;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * The figures of PPFD values at places, each value with the same weight.
 *
 * @param count number of values
 * @param mean arithmetic mean [µmol m⁻² s⁻¹]
 * @param min the least and where
 * @param max the greatest and where
 * @param evenness U₀ = min / mean, as in EN 12464-1; 0 in the dark
 * @param variation coefficient of variation: sample standard deviation (n − 1) over mean; 0 for one
 *     value and in the dark
 * @param endsToCentre ends against centre; none if either holds no value
 * @param regions means by named region, in the order asked for
 */
public record Statistics(
    int count,
    double mean,
    Spot min,
    Spot max,
    double evenness,
    double variation,
    Optional<EndsToCentre> endsToCentre,
    List<RegionMean> regions) {
  public Statistics {
    Objects.requireNonNull(min, "min");
    Objects.requireNonNull(max, "max");
    Objects.requireNonNull(endsToCentre, "endsToCentre");
    regions = List.copyOf(regions);
  }

  /**
   * The figures of values at places; permuting both together changes nothing.
   *
   * @param tank the tank that the places lie in
   * @param places at least one
   * @param ppfd one value a place [µmol m⁻² s⁻¹], finite; left unchanged
   * @param regions parts of the tank to take means of, may be empty
   * @throws IllegalArgumentException if there is no value, the lengths differ, or a value is not
   *     finite
   */
  public static Statistics of(Tank tank, Places places, double[] ppfd, List<Region> regions) {
    requireOneValueAPlace(places, ppfd);
    double mean = mean(ppfd);
    Spot min = firstOf(places, ppfd, Arrays.stream(ppfd).min().orElseThrow());
    Spot max = firstOf(places, ppfd, Arrays.stream(ppfd).max().orElseThrow());
    return new Statistics(
        ppfd.length,
        mean,
        min,
        max,
        mean == 0 ? 0 : min.ppfd() / mean,
        mean == 0 ? 0 : standardDeviation(ppfd, mean) / mean,
        EndsToCentre.of(tank, places, ppfd),
        regions.stream().map(region -> RegionMean.of(region, places, ppfd)).toList());
  }

  private static void requireOneValueAPlace(Places places, double[] ppfd) {
    if (ppfd.length == 0) {
      throw new IllegalArgumentException("statistics need at least one value; got none");
    }
    if (places.size() != ppfd.length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "statistics need one value a place; got %d values at %d places",
              ppfd.length,
              places.size()));
    }
    for (int i = 0; i < ppfd.length; i++) {
      if (!Double.isFinite(ppfd[i])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "statistics need finite values; got %s at x %.3f, y %.3f, depth %.3f m",
                ppfd[i],
                places.x(i),
                places.y(i),
                places.depth(i)));
      }
    }
  }

  /** Of all places with a value, the shallowest, then the nearest, then the leftmost. */
  private static Spot firstOf(Places places, double[] ppfd, double value) {
    return IntStream.range(0, ppfd.length)
        .filter(i -> ppfd[i] == value)
        .mapToObj(places::get)
        .min(
            Comparator.comparingDouble(Place::depth)
                .thenComparingDouble(Place::y)
                .thenComparingDouble(Place::x))
        .map(place -> new Spot(place, value))
        .orElseThrow();
  }

  /** Arithmetic mean of at least one value, the same in whatever order they come. */
  static double mean(double[] values) {
    return orderless(Arrays.stream(values)) / values.length;
  }

  private static double standardDeviation(double[] values, double mean) {
    if (values.length == 1) {
      return 0;
    }
    double squares = orderless(Arrays.stream(values).map(value -> (value - mean) * (value - mean)));
    return Math.sqrt(squares / (values.length - 1));
  }

  /** Sum in ascending order, so that it does not depend on the order of the readings. */
  private static double orderless(DoubleStream values) {
    return values.sorted().sum();
  }
}
