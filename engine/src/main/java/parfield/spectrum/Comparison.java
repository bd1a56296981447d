package parfield.spectrum;

import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * A light beside a reference, both scaled to the same PPFD or the same energy of PAR. Immutable.
 *
 * <p>On equal PPFD all figures are of photons per nm, on equal energy of radiant power per nm; both
 * curves then have an integral of 1 over 400–700 nm. The spectra are joined on all samples of both,
 * so that nothing is resampled away.
 */
public final class Comparison {
  /** What is made equal before two lights are compared. */
  public enum Basis {
    /** Photons of 400–700 nm. */
    EQUAL_PPFD,
    /** Radiant power of 400–700 nm. */
    EQUAL_ENERGY
  }

  /**
   * One band of both lights.
   *
   * @param band the band
   * @param light share of the light within it, of all its light in the bands' whole range
   * @param reference the reference's share
   */
  public record Row(WaveBand band, double light, double reference) {
    /** The light's share less the reference's. */
    public double difference() {
      return light - reference;
    }
  }

  private static final WaveBand PAR =
      WaveBand.of(PhotonSpectrum.PAR_FROM_NM, PhotonSpectrum.PAR_TO_NM);

  private final Basis basis;
  private final Wavelengths wavelengths;
  private final Samples light;
  private final Samples reference;

  private Comparison(Basis basis, Samples light, Samples reference) {
    this.basis = basis;
    this.light = light;
    this.reference = reference;
    TreeSet<Double> places = new TreeSet<>();
    for (Samples samples : List.of(light, reference)) {
      for (int i = 0; i < samples.wavelengths().size(); i++) {
        places.add(samples.wavelengths().nm(i));
      }
    }
    wavelengths = Wavelengths.of(places.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /**
   * Compares a light with a reference.
   *
   * @param basis what is made equal
   * @param light any scale
   * @param reference any scale
   * @throws IllegalArgumentException if one of them holds no photons within 400–700 nm
   */
  public static Comparison of(Basis basis, PhotonSpectrum light, PhotonSpectrum reference) {
    return new Comparison(
        basis, shape(basis, light, "the light"), shape(basis, reference, "the reference"));
  }

  /** Values per nm, of photons or of power as the basis says, with an integral of 1 over PAR. */
  private static Samples shape(Basis basis, PhotonSpectrum spectrum, String which) {
    if (!(spectrum.parPhotons() > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%s holds no photons within 400 to 700 nm, so that no PPFD can be made equal",
              which));
    }
    Samples values;
    if (basis == Basis.EQUAL_PPFD) {
      values = spectrum.samples();
    } else {
      values = spectrum.toRadiant().samples();
    }
    return values.times(1 / values.integral(PAR.fromNm(), PAR.toNm()));
  }

  /** What was made equal. */
  public Basis basis() {
    return basis;
  }

  /** All wavelengths of both. */
  public Wavelengths wavelengths() {
    return wavelengths;
  }

  /** The light at wavelength {@code i} [nm⁻¹]; its integral over 400–700 nm is 1. */
  public double light(int i) {
    return light.at(wavelengths.nm(i));
  }

  /** The reference at wavelength {@code i} [nm⁻¹]; its integral over 400–700 nm is 1. */
  public double reference(int i) {
    return reference.at(wavelengths.nm(i));
  }

  /** The light less the reference at wavelength {@code i} [nm⁻¹]. */
  public double difference(int i) {
    return light(i) - reference(i);
  }

  /**
   * Spectral angle over 400–700 nm [rad]: arccos of ⟨f, g⟩ / (‖f‖ ‖g‖), 0 for lights of one shape,
   * π/2 for lights without a common wavelength (Kruse et al. 1993, Remote Sens. Environ. 44:145).
   */
  public double angle() {
    GaussNodes nodes = GaussNodes.of(PAR.fromNm(), PAR.toNm(), List.of(wavelengths));
    return nodes.angle(nodes.values(light::at), nodes.values(reference::at));
  }

  /**
   * Overlap: the share of the light that the reference has too, ∫ min(f, g) dλ over 400–700 nm, 1
   * for lights of one shape, 0 for lights without a common wavelength. It is 1 − ½ ∫|f − g| dλ, the
   * overlapping coefficient of two densities (Inman and Bradley 1989, Commun. Stat. 18:3851).
   */
  public double overlap() {
    double apart = 0;
    double from = PAR.fromNm();
    TreeSet<Double> knots = new TreeSet<>();
    for (int i = 0; i < wavelengths.size(); i++) {
      knots.add(wavelengths.nm(i));
    }
    knots.add(PAR.toNm());
    for (double to : knots.subSet(PAR.fromNm(), false, PAR.toNm(), true)) {
      // Inside an interval both are straight; their ends are taken from within, as a spectrum may
      // end there.
      double third = (to - from) / 3;
      double p = light.at(from + third) - reference.at(from + third);
      double q = light.at(to - third) - reference.at(to - third);
      apart += absolute(2 * p - q, 2 * q - p, to - from);
      from = to;
    }
    return 1 - apart / 2;
  }

  /** Integral of the size of a straight line from {@code p} to {@code q}. */
  private static double absolute(double p, double q, double width) {
    if (p * q >= 0) {
      return width * Math.abs(p + q) / 2;
    }
    return width * (p * p + q * q) / (2 * (Math.abs(p) + Math.abs(q)));
  }

  /**
   * Both lights band by band: shares of photons on equal PPFD, of power on equal energy.
   *
   * @param division the bands; shares are of all light from the first one's beginning to the last
   *     one's end
   */
  public List<Row> bands(WaveBands division) {
    double ofLight = whole(division, light, "the light");
    double ofReference = whole(division, reference, "the reference");
    return division.bands().stream()
        .map(
            band ->
                new Row(
                    band,
                    light.integral(band.fromNm(), band.toNm()) / ofLight,
                    reference.integral(band.fromNm(), band.toNm()) / ofReference))
        .toList();
  }

  private static double whole(WaveBands division, Samples samples, String which) {
    double whole = samples.integral(division.fromNm(), division.toNm());
    if (!(whole > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%s holds no light within %s to %s nm, so that it has no shares by band",
              which,
              division.fromNm(),
              division.toNm()));
    }
    return whole;
  }

  /**
   * How far the centre of the light's main peak stands from that of the reference's [nm], above 0
   * if at longer wavelengths; the main peak is the highest, of photons or of power as the basis
   * says (see {@link Peak}). Not defined where one of them has no peak.
   */
  public Finding<Double> peakShiftNm() {
    return mainPeak(light, "the light")
        .flatMap(here -> mainPeak(reference, "the reference").map(there -> here - there));
  }

  private static Finding<Double> mainPeak(Samples samples, String which) {
    List<Peak> peaks = new PeakSearch(samples).peaks();
    return peaks.isEmpty()
        ? Finding.notDefined(which + " has no peak")
        : Finding.of(peaks.get(0).centreNm());
  }
}
