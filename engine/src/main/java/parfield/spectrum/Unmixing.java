package parfield.spectrum;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.SingularValueDecomposition_F64;

/**
 * A measured spectrum taken apart into its channels: the non-negative levels of least squares over
 * the measured samples.
 *
 * <p>Standard errors are those of White (1980, Econometrica 48:817) in the form HC3 of MacKinnon
 * and White (1985, J. Econometrics 29:305), which holds whether the noise is even or grows with the
 * light. They know the noise between neighbouring samples, not that a warm channel's peak stands
 * elsewhere than in its own file: that shows in {@code residual}.
 *
 * @param levels of the channels, in the order given
 * @param residual root mean square of what is left over the root mean square of the measured
 *     samples: 0 where the channels explain all of it
 * @param condition greatest over least singular value of the channels' spectra, each scaled to
 *     length 1: 1 where they do not overlap
 * @param alike names of the channels that can hardly be told apart; empty below a condition of
 *     {@link #MOST_CONDITION}
 */
public record Unmixing(List<Level> levels, double residual, double condition, List<String> alike) {
  /**
   * A condition beyond which single levels mean little; Belsley, Kuh and Welsch 1980, Regression
   * Diagnostics, ch. 3 (from memory).
   */
  public static final double MOST_CONDITION = 30;

  /** Share of the greatest part in the weakest direction from which a channel is named. */
  private static final double NAMED_PART = 0.3;

  public Unmixing {
    levels = List.copyOf(levels);
    alike = List.copyOf(alike);
  }

  /**
   * One channel's part.
   *
   * @param channel its name
   * @param level its light as a multiple of the spectrum given for it, 0 or more
   * @param standardError of the level; where the level is 0, of the level without that bound
   */
  public record Level(String channel, double level, double standardError) {}

  /** What to beware of, in a sentence; empty where the channels are well apart. */
  public Optional<String> warning() {
    return alike.isEmpty()
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT,
                "channels %s are nearly alike (condition %.0f, more than %.0f): their sum is known,"
                    + " their single levels hardly; measure them one by one",
                String.join(", ", alike),
                condition,
                MOST_CONDITION));
  }

  /**
   * Takes a spectrum apart.
   *
   * @param measured the spectrum of the mix
   * @param channels the spectra of its channels, at least one, each alone; where they and {@code
   *     measured} share one known scale, a level is the fraction of that channel's light
   * @throws IllegalArgumentException if no channel is given, there are not more samples than
   *     channels within the channels' wavelengths, or a channel holds no light at any sample
   */
  public static Unmixing of(PhotonSpectrum measured, List<ChannelLight> channels) {
    int rows = measured.size();
    int n = channels.size();
    if (n < 1 || rows <= n) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "taking a spectrum apart needs one channel or more, and more samples than channels;"
                  + " got %d channels and %d samples",
              n,
              rows));
    }
    DMatrixRMaj a = new DMatrixRMaj(rows, n);
    double[] b = measured.photonFluxes();
    for (int c = 0; c < n; c++) {
      double length = 0;
      for (int i = 0; i < rows; i++) {
        a.set(i, c, channels.get(c).spectrum().at(measured.wavelengthNm(i)));
        length = Math.hypot(length, a.get(i, c));
      }
      if (!(length > 0)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "channel %s has no light within the measured %s to %s nm; measure further",
                channels.get(c).name(),
                measured.wavelengths().first(),
                measured.wavelengths().last()));
      }
    }
    double[] none = new double[n];
    double[] open = new double[n];
    java.util.Arrays.fill(open, Double.POSITIVE_INFINITY);
    double[] levels = new BoundedLeastSquares(a, b).solve(none, open);
    double[] residuals = residuals(a, b, levels);
    Singular singular = Singular.of(a);
    double[] errors = singular.robustErrors(residuals);
    List<Level> found = new ArrayList<>();
    for (int c = 0; c < n; c++) {
      found.add(new Level(channels.get(c).name(), levels[c], errors[c]));
    }
    List<String> alike =
        singular.condition() > MOST_CONDITION
            ? IntStream.of(singular.weakest(NAMED_PART))
                .mapToObj(c -> channels.get(c).name())
                .sorted()
                .toList()
            : List.of();
    return new Unmixing(found, length(residuals) / length(b), singular.condition(), alike);
  }

  private static double length(double[] values) {
    double length = 0;
    for (double value : values) {
      length = Math.hypot(length, value);
    }
    return length;
  }

  private static double[] residuals(DMatrixRMaj a, double[] b, double[] x) {
    double[] residuals = b.clone();
    for (int i = 0; i < b.length; i++) {
      for (int j = 0; j < x.length; j++) {
        residuals[i] -= a.get(i, j) * x[j];
      }
    }
    return residuals;
  }

  /** A = U W Vᵀ with the columns of A scaled to length 1. */
  private record Singular(DMatrixRMaj u, double[] values, DMatrixRMaj v, double[] scale) {
    static Singular of(DMatrixRMaj a) {
      DMatrixRMaj scaled = a.copy();
      double[] scale = new double[a.numCols];
      for (int j = 0; j < a.numCols; j++) {
        for (int i = 0; i < a.numRows; i++) {
          scale[j] = Math.hypot(scale[j], a.get(i, j));
        }
        for (int i = 0; i < a.numRows; i++) {
          scaled.set(i, j, a.get(i, j) / scale[j]);
        }
      }
      SingularValueDecomposition_F64<DMatrixRMaj> svd =
          DecompositionFactory_DDRM.svd(a.numRows, a.numCols, true, true, true);
      if (!svd.decompose(scaled)) {
        throw new IllegalStateException("the channels' spectra could not be decomposed");
      }
      return new Singular(
          svd.getU(null, false), svd.getSingularValues().clone(), svd.getV(null, false), scale);
    }

    double condition() {
      double least = Double.POSITIVE_INFINITY;
      double most = 0;
      for (int k = 0; k < scale.length; k++) {
        least = Math.min(least, values[k]);
        most = Math.max(most, values[k]);
      }
      return most / least;
    }

    /** Indices of the columns that take part in the direction of the least singular value. */
    int[] weakest(double part) {
      int k = 0;
      for (int i = 1; i < scale.length; i++) {
        k = values[i] < values[k] ? i : k;
      }
      double most = 0;
      for (int j = 0; j < scale.length; j++) {
        most = Math.max(most, Math.abs(v.get(j, k)));
      }
      int direction = k;
      double least = part * most;
      return IntStream.range(0, scale.length)
          .filter(j -> Math.abs(v.get(j, direction)) >= least)
          .toArray();
    }

    /** Standard errors of all coefficients by HC3: each residual over 1 − its leverage. */
    double[] robustErrors(double[] residuals) {
      int n = scale.length;
      DMatrixRMaj inverse = new DMatrixRMaj(n, residuals.length);
      DMatrixRMaj weighted = CommonOps_DDRM.extract(v, 0, n, 0, n);
      for (int k = 0; k < n; k++) {
        for (int j = 0; j < n; j++) {
          weighted.set(j, k, weighted.get(j, k) / values[k]);
        }
      }
      DMatrixRMaj used = CommonOps_DDRM.extract(u, 0, residuals.length, 0, n);
      CommonOps_DDRM.multTransB(weighted, used, inverse);
      double[] errors = new double[n];
      for (int i = 0; i < residuals.length; i++) {
        double leverage = 0;
        for (int k = 0; k < n; k++) {
          leverage += used.get(i, k) * used.get(i, k);
        }
        double own = residuals[i] / Math.max(1e-9, 1 - leverage);
        for (int j = 0; j < n; j++) {
          errors[j] = Math.hypot(errors[j], inverse.get(j, i) * own / scale[j]);
        }
      }
      return errors;
    }
  }
}
