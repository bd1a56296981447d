package parfield.lamp;

import java.util.Locale;

/**
 * A lobe that falls off with a power of the cosine: I(γ) = I(0) cos^m γ, nothing above horizontal.
 *
 * @param peak intensity straight down I(0) [µmol s⁻¹ sr⁻¹], 0 or more
 * @param exponent the power m, 0 (isotropic below the horizon) or more; 1 is Lambert's law
 */
public record CosinePower(double peak, double exponent) implements IntensityDistribution {
  public CosinePower {
    if (!(peak >= 0) || !(exponent >= 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a cosine-power lobe needs peak and exponent of 0 or more; got %s and %s",
              peak,
              exponent));
    }
  }

  /**
   * The lobe with a given beam angle: the full angle between the two directions of half peak
   * intensity (CIE e-ILV 17-27-077).
   *
   * @param peak intensity straight down [µmol s⁻¹ sr⁻¹]
   * @param beamAngle full beam angle [rad], above 0 and below π
   */
  public static CosinePower ofBeamAngle(double peak, double beamAngle) {
    if (!(beamAngle > 0 && beamAngle < Math.PI)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a beam angle must lie between 0 and 180 degrees; got %s",
              Math.toDegrees(beamAngle)));
    }
    return new CosinePower(peak, Math.log(0.5) / Math.log(Math.cos(beamAngle / 2)));
  }

  /** Photon flux of the whole lobe [µmol s⁻¹]: 2π I(0) / (m + 1). */
  public double photonFlux() {
    return 2 * Math.PI * peak / (exponent + 1);
  }

  @Override
  public double intensity(double gamma, double azimuth) {
    double cosine = Math.cos(gamma);
    return cosine <= 0 ? 0 : peak * Math.pow(cosine, exponent);
  }

  @Override
  public boolean axiallySymmetric() {
    return true;
  }
}
