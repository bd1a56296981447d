package parfield.survey;

import java.util.Objects;
import java.util.OptionalDouble;
import parfield.field.Places;

/**
 * Mean PPFD of the values that lie in a region.
 *
 * @param region which part of the tank
 * @param count values inside, edges included
 * @param mean mean PPFD of them [µmol m⁻² s⁻¹]; none if no value lies inside
 */
public record RegionMean(Region region, int count, OptionalDouble mean) {
  public RegionMean {
    Objects.requireNonNull(region, "region");
    Objects.requireNonNull(mean, "mean");
  }

  static RegionMean of(Region region, Places places, double[] ppfd) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < ppfd.length; i++) {
      if (region.rectangle().contains(places.x(i), places.y(i))) {
        sum += ppfd[i];
        count++;
      }
    }
    return new RegionMean(
        region, count, count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count));
  }
}
