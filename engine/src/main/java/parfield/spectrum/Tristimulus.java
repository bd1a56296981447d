package parfield.spectrum;

/**
 * Tristimulus values of the CIE 1931 observer, in the unit of the radiant spectrum they are of (W,
 * W m⁻² or none).
 *
 * @param x X
 * @param y Y; times {@link StandardObserver#LUMENS_PER_WATT} it is luminous flux or illuminance
 * @param z Z
 */
public record Tristimulus(double x, double y, double z) {
  /** The chromaticity; not defined for light that the eye does not see. */
  public Finding<Chromaticity> chromaticity() {
    double sum = x + y + z;
    if (!(y > 0) || !(sum > 0)) {
      return Finding.notDefined("no light that the eye sees, within 380 to 780 nm");
    }
    return Finding.of(new Chromaticity(x / sum, y / sum));
  }
}
