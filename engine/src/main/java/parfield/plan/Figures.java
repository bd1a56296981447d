package parfield.plan;

import java.util.List;
import java.util.Objects;
import parfield.survey.Band;
import parfield.units.Estimate;

/**
 * The figures of one extent under one option, each with its 5–95 % interval. All intervals include
 * the meter's own scale error: PPFD here is true PPFD, not what the bench's meter would show.
 *
 * @param extent what they are figures of
 * @param mean PPFD [µmol m⁻² s⁻¹]
 * @param hotSpot greatest PPFD of a cell [µmol m⁻² s⁻¹]
 * @param evenness U₀: least over mean
 * @param endsToCentre mean of the outer sixths over mean of the middle third, along the length
 * @param retention mean over mean at the lowest height considered, everything else alike
 * @param coverage share of the extent in each band
 */
public record Figures(
    Extent extent,
    Estimate mean,
    Estimate hotSpot,
    Estimate evenness,
    Estimate endsToCentre,
    Estimate retention,
    List<BandCoverage> coverage) {
  public Figures {
    Objects.requireNonNull(extent, "extent");
    coverage = List.copyOf(coverage);
  }

  /**
   * Share of the extent in one band.
   *
   * @throws IllegalArgumentException if the plan knows no such band
   */
  public Estimate coverageOf(Band band) {
    return coverage.stream()
        .filter(c -> c.band().equals(band))
        .map(BandCoverage::share)
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    String.format(
                        "the plan reports on bands %s, not on %s",
                        coverage.stream().map(c -> c.band().name()).toList(), band.name())));
  }
}
