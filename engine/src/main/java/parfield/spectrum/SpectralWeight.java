package parfield.spectrum;

/**
 * What light of each wavelength counts for: a published weight, tabulated, zero outside its table.
 *
 * <p>Immutable.
 */
public final class SpectralWeight {
  /** What runs between the rows of a table. */
  enum Between {
    /** Straight lines. */
    LINES,
    /** Straight lines of the logarithm. */
    LOG_LINES,
    /**
     * Sprague's interpolation of fifth order, which CIE 15 recommends for colour-matching
     * functions; the rows must be evenly spaced. At the table's ends its last value is taken to go
     * on.
     */
    SPRAGUE
  }

  private final Wavelengths wavelengths;
  private final double[] values;
  private final Between between;

  SpectralWeight(Wavelengths wavelengths, double[] values, Between between) {
    this.wavelengths = wavelengths;
    this.values = values;
    this.between = between;
  }

  /** Where the weight begins [nm]. */
  public double fromNm() {
    return wavelengths.first();
  }

  /** Where the weight ends [nm]. */
  public double toNm() {
    return wavelengths.last();
  }

  /**
   * The weight at a wavelength.
   *
   * @param wavelengthNm wavelength [nm]; zero is returned outside the table
   */
  public double at(double wavelengthNm) {
    if (!(wavelengthNm >= fromNm() && wavelengthNm <= toNm())) {
      return 0;
    }
    int found = wavelengths.find(wavelengthNm);
    if (found >= 0) {
      return values[found];
    }
    int above = -found - 1;
    double from = wavelengths.nm(above - 1);
    double share = (wavelengthNm - from) / (wavelengths.nm(above) - from);
    return switch (between) {
      case LINES -> values[above - 1] * (1 - share) + values[above] * share;
      case LOG_LINES ->
          Math.exp(Math.log(values[above - 1]) * (1 - share) + Math.log(values[above]) * share);
      case SPRAGUE -> sprague(above - 1, share);
    };
  }

  /** Sprague 1880 as in CIE 15 and ISO 23603; between row {@code i} and the next. */
  private double sprague(int i, double x) {
    double a = row(i - 2);
    double b = row(i - 1);
    double c = row(i);
    double d = row(i + 1);
    double e = row(i + 2);
    double f = row(i + 3);
    double a1 = 2 * a - 16 * b + 16 * d - 2 * e;
    double a2 = -a + 16 * b - 30 * c + 16 * d - e;
    double a3 = -9 * a + 39 * b - 70 * c + 66 * d - 33 * e + 7 * f;
    double a4 = 13 * a - 64 * b + 126 * c - 124 * d + 61 * e - 12 * f;
    double a5 = -5 * a + 25 * b - 50 * c + 50 * d - 25 * e + 5 * f;
    return c + x * (a1 + x * (a2 + x * (a3 + x * (a4 + x * a5)))) / 24;
  }

  private double row(int i) {
    return values[Math.max(0, Math.min(values.length - 1, i))];
  }

  /**
   * What each sample of a spectrum on {@code wavelengths} counts for in a weighted sum, from {@code
   * fromNm} to {@code toNm}: weight times the width the sample stands for.
   */
  double[] on(Wavelengths wavelengths, double fromNm, double toNm) {
    double[] weights = new double[wavelengths.size()];
    for (int i = 0; i < weights.length; i++) {
      double nm = wavelengths.nm(i);
      weights[i] = nm >= fromNm && nm <= toNm ? at(nm) * wavelengths.width(i) : 0;
    }
    return weights;
  }

  double[] on(Wavelengths wavelengths) {
    return on(wavelengths, fromNm(), toNm());
  }
}
