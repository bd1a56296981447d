package parfield.spectrum;

import java.util.List;

/**
 * A peak of a spectrum.
 *
 * @param centreNm where it is highest [nm]
 * @param height value per nm there, in the spectrum's unit per nm
 * @param prominence how far it rises above the higher of the valleys beside it, same unit
 * @param widthNm full width at half of {@code height} [nm]; not defined where a flank does not fall
 *     that far before another peak rises or the spectrum ends
 */
public record Peak(double centreNm, double height, double prominence, Finding<Double> widthNm) {
  /** The peaks of photon flux per nm, the highest first; see {@link #of(RadiantSpectrum)}. */
  public static List<Peak> of(PhotonSpectrum spectrum) {
    return new PeakSearch(spectrum.samples()).peaks();
  }

  /**
   * The peaks of power per nm, the highest first.
   *
   * <p>A peak is a sample higher than its neighbours whose prominence is at least 5 % of the
   * highest sample and at least six standard deviations of the noise. The noise is taken from the
   * median size of third differences, in which smooth light cancels. Centre and height are those of
   * a parabola through the samples of its upmost 15 %, by least squares, at least three; so they
   * lie between samples and average noise. The width is that between the two places where straight
   * lines between samples first fall to half the height.
   */
  public static List<Peak> of(RadiantSpectrum spectrum) {
    return new PeakSearch(spectrum.samples()).peaks();
  }
}
