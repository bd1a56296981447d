package parfield.optics;

import java.util.List;
import java.util.Locale;
import parfield.spectrum.Finding;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.WaveBands;

/**
 * What water makes of a light's spectrum on its way down: E(λ) e^(−a(λ) L), absorption alone.
 *
 * <p>Light straight down has a path as long as the depth; slanted and reflected light a longer one,
 * so these are the least changes. The spreading of light with distance and the loss at the surface
 * leave the spectrum as it is and are not counted here.
 */
public final class Underwater {
  private Underwater() {}

  /**
   * The spectrum after a path in water.
   *
   * @param justBelowSurface the spectrum where the path begins
   * @param water the water; its table of absorption ends at 380 and 750 nm, beyond it the end
   *     values are used
   * @param metres length of the path [m], 0 or more
   * @throws IllegalArgumentException if {@code metres} is negative or NaN, or nothing is left
   */
  public static PhotonSpectrum spectrum(
      PhotonSpectrum justBelowSurface, Water water, double metres) {
    if (!(metres >= 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a path in water must be 0 m or longer; got %s m", metres));
    }
    return justBelowSurface.through(nm -> Math.exp(-water.absorption(nm) * metres));
  }

  /**
   * How the shares of wavebands shift from top to bottom.
   *
   * @param justBelowSurface the spectrum just below the surface
   * @param water the water
   * @param bands the division into wavebands
   * @param depths depths below the surface [m], 0 or more, light going straight down
   * @return one entry for each depth, in their order
   * @throws IllegalArgumentException as {@link #spectrum}
   */
  public static List<AtDepth> shift(
      PhotonSpectrum justBelowSurface, Water water, WaveBands bands, List<Double> depths) {
    return depths.stream()
        .map(
            depth -> {
              PhotonSpectrum there = spectrum(justBelowSurface, water, depth);
              double par = justBelowSurface.parPhotons();
              return new AtDepth(
                  depth,
                  bands.shares(there),
                  par > 0
                      ? Finding.of(there.parPhotons() / par)
                      : Finding.notDefined("no photons within 400 to 700 nm"));
            })
        .toList();
  }

  /**
   * A light at a depth.
   *
   * @param depth below the surface [m]
   * @param shares of photons by waveband there
   * @param parLeft PPFD there over that just below the surface, by absorption alone
   */
  public record AtDepth(double depth, Finding<List<Double>> shares, Finding<Double> parLeft) {}
}
