package parfield.spectrum;

import java.util.Optional;

/**
 * What a spectrum's values are measured in, beside "per nanometre".
 *
 * <p>A spectrum of unknown scale has no unit: only ratios within it mean anything, and nothing may
 * print a unit beside its sums.
 */
public enum Scale {
  /** Unknown: only ratios mean something. */
  RELATIVE(null, null),
  /** What a lamp gives off: µmol s⁻¹ of photons, W of power. */
  FLUX("µmol s⁻¹", "W"),
  /** What falls on a surface: µmol m⁻² s⁻¹ of photons, W m⁻² of power. */
  IRRADIANCE("µmol m⁻² s⁻¹", "W m⁻²");

  private final String photons;
  private final String power;

  Scale(String photons, String power) {
    this.photons = photons;
    this.power = power;
  }

  /** The unit of a sum of photons; empty where the scale is unknown. */
  public Optional<String> photonUnit() {
    return Optional.ofNullable(photons);
  }

  /** The unit of a sum of radiant power; empty where the scale is unknown. */
  public Optional<String> radiantUnit() {
    return Optional.ofNullable(power);
  }
}
