package parfield.formats;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.RadiantSpectrum;
import parfield.spectrum.Wavelengths;

/** A spectrum as a file holds it, its numbers in SI: what was read, and how far to trust it. */
public final class MeasuredSpectrum {
  private final String name;
  private final SpectralUnit unit;
  private final double[] nm;
  private final double[] values;
  private final List<String> cautions;

  /**
   * Makes a spectrum of sound samples.
   *
   * @param name of it, empty if the file gives none
   * @param unit what its values count
   * @param nm wavelengths [nm], ascending, at least two, copied
   * @param values in W or µmol s⁻¹ per nm (and per m² where of a place), or relative; copied
   * @param cautions what it may suffer from, one plain sentence each
   * @throws IllegalArgumentException if the arrays differ in length or are too short
   */
  MeasuredSpectrum(
      String name, SpectralUnit unit, double[] nm, double[] values, List<String> cautions) {
    this.name = Objects.requireNonNull(name, "name");
    this.unit = Objects.requireNonNull(unit, "unit");
    this.nm = nm.clone();
    this.values = values.clone();
    this.cautions = List.copyOf(cautions);
    if (nm.length != values.length || nm.length < 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a spectrum needs two or more samples; got %d wavelengths and %d values",
              nm.length,
              values.length));
    }
  }

  /** Its name, empty if the file gives none. */
  public String name() {
    return name;
  }

  /** What its values count. */
  public SpectralUnit unit() {
    return unit;
  }

  /** The same spectrum under another name. */
  public MeasuredSpectrum named(String newName) {
    return new MeasuredSpectrum(newName, unit, nm, values, cautions);
  }

  /** Its first wavelength [nm]. */
  public double fromNm() {
    return nm[0];
  }

  /** Its last wavelength [nm]. */
  public double toNm() {
    return nm[nm.length - 1];
  }

  /**
   * Photons per nm; energy is converted (λ/119.6266 µmol J⁻¹), counts are taken as photons of
   * unknown scale.
   */
  public PhotonSpectrum photons() {
    if (unit.quantity() == SpectralUnit.Quantity.ENERGY) {
      return radiant().toPhotons();
    }
    return new PhotonSpectrum(Wavelengths.of(nm), values, unit.scale());
  }

  /** Power per nm; photons are converted, counts are taken as photons of unknown scale. */
  public RadiantSpectrum radiant() {
    if (unit.quantity() == SpectralUnit.Quantity.ENERGY) {
      return new RadiantSpectrum(Wavelengths.of(nm), values, unit.scale());
    }
    return photons().toRadiant();
  }

  /** What it may suffer from, one plain sentence each. */
  public List<String> cautions() {
    return cautions;
  }
}
