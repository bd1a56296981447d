package parfield.plan;

import java.util.Objects;
import parfield.survey.Band;
import parfield.units.Estimate;

/**
 * How much of an extent lies inside a band.
 *
 * @param band the range of PPFD
 * @param share inside, 0 to 1, of what the owner says
 */
public record BandCoverage(Band band, Estimate share) {
  public BandCoverage {
    Objects.requireNonNull(band, "band");
    Objects.requireNonNull(share, "share");
  }
}
