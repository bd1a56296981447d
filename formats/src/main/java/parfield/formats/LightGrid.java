package parfield.formats;

import java.math.BigDecimal;
import java.util.Arrays;
import parfield.formats.CandelaTable.Symmetry;
import parfield.lamp.IntensityDistribution;

/**
 * A light sampled on angles just as fine as straight lines between them need, each value rounded as
 * a file holds it. Immutable.
 */
final class LightGrid {
  private static final double[] GAMMA_STEPS = {5, 2.5, 1, 0.5};
  private static final double[] AZIMUTH_STEPS = {22.5, 15, 10, 5, 2.5};

  /** How far straight lines may miss the light, over it, where it is a hundredth of its peak. */
  private static final double TOLERANCE = 0.001;

  private static final double DIM = 0.01;
  private static final double HORIZON = 90;

  private final Symmetry symmetry;
  private final double[] azimuths;
  private final double[] gammas;
  private final double[][] values;

  private LightGrid(Symmetry symmetry, double[] azimuths, double[] gammas, double[][] values) {
    this.symmetry = symmetry;
    this.azimuths = azimuths;
    this.gammas = gammas;
    this.values = values;
  }

  /** Samples a light. */
  static LightGrid of(IntensityDistribution light) {
    Symmetry symmetry =
        light.axiallySymmetric()
            ? Symmetry.AXIAL
            : light.quadrantSymmetric() ? Symmetry.QUADRANTS : Symmetry.NONE;
    double around =
        switch (symmetry) {
          case AXIAL -> 0;
          case QUADRANTS -> 90;
          default -> 360;
        };
    double top = upward(light) ? 2 * HORIZON : HORIZON;
    double finest = GAMMA_STEPS[GAMMA_STEPS.length - 1];
    double finestAround = AZIMUTH_STEPS[AZIMUTH_STEPS.length - 1];
    double[] gammas = angles(top, finest);
    double[] azimuths = angles(around, finestAround);
    double[][] fine = sampled(light, azimuths, gammas);
    int skip = 1;
    for (double step : GAMMA_STEPS) {
      int every = (int) Math.rint(step / finest);
      if (straight(fine, every, true)) {
        skip = every;
        break;
      }
    }
    int skipAround = 1;
    for (double step : AZIMUTH_STEPS) {
      int every = (int) Math.rint(step / finestAround);
      if (azimuths.length > 1 && straight(fine, every, false)) {
        skipAround = every;
        break;
      }
    }
    double[] coarse = angles(top, finest * skip);
    double[] coarseAround = angles(around, finestAround * skipAround);
    return new LightGrid(
        symmetry, coarseAround, coarse, rounded(sampled(light, coarseAround, coarse)));
  }

  private static boolean upward(IntensityDistribution light) {
    double[] turns = new double[36];
    Arrays.setAll(turns, i -> Math.toRadians(10 * i));
    for (double gamma = HORIZON + 1; gamma <= 2 * HORIZON; gamma++) {
      for (double intensity : light.around(Math.toRadians(gamma), turns)) {
        if (intensity > 0) {
          return true;
        }
      }
    }
    return false;
  }

  private static double[] angles(double last, double step) {
    double[] angles = new double[(int) Math.rint(last / step) + 1];
    Arrays.setAll(angles, i -> i * step);
    return angles;
  }

  private static double[][] sampled(
      IntensityDistribution light, double[] azimuths, double[] gammas) {
    double[] turns = new double[azimuths.length];
    // The last plane of a full turn is the first, to the last bit.
    Arrays.setAll(turns, i -> Math.toRadians(azimuths[i] == 360 ? 0 : azimuths[i]));
    double[][] values = new double[azimuths.length][gammas.length];
    for (int j = 0; j < gammas.length; j++) {
      double[] ring = light.around(Math.toRadians(gammas[j]), turns);
      for (int i = 0; i < turns.length; i++) {
        values[i][j] = ring[i];
      }
    }
    return values;
  }

  /** The same, each value to the digits that a file holds. */
  private static double[][] rounded(double[][] values) {
    for (double[] row : values) {
      for (int j = 0; j < row.length; j++) {
        row[j] = new BigDecimal(row[j]).round(PhotonKeywords.DIGITS).doubleValue();
      }
    }
    return values;
  }

  /** Whether each n-th of the fine samples, along γ or around, tells those between by lines. */
  private static boolean straight(double[][] fine, int every, boolean along) {
    int rows = fine.length;
    int columns = fine[0].length;
    double peak = Arrays.stream(fine).flatMapToDouble(Arrays::stream).max().orElse(0);
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < columns; j++) {
        int at = along ? j : i;
        int low = at / every * every;
        if (low == at) {
          continue;
        }
        double share = (double) (at - low) / every;
        double before = along ? fine[i][low] : fine[low][j];
        double after = along ? fine[i][low + every] : fine[low + every][j];
        double line = before * (1 - share) + after * share;
        if (Math.abs(line - fine[i][j]) > TOLERANCE * Math.max(fine[i][j], DIM * peak)) {
          return false;
        }
      }
    }
    return true;
  }

  /** Another light on the same angles. */
  LightGrid with(IntensityDistribution light) {
    return new LightGrid(symmetry, azimuths, gammas, rounded(sampled(light, azimuths, gammas)));
  }

  CandelaTable table() {
    return CandelaTable.onC(symmetry, azimuths, gammas, values);
  }

  /** The greatest relative difference of this times a factor from another, where that is bright. */
  double worst(LightGrid other, double factor, double from) {
    double worst = 0;
    for (int i = 0; i < values.length; i++) {
      for (int j = 0; j < gammas.length; j++) {
        if (other.values[i][j] >= from) {
          worst = Math.max(worst, Math.abs(values[i][j] * factor / other.values[i][j] - 1));
        }
      }
    }
    return worst;
  }

  Symmetry symmetry() {
    return symmetry;
  }

  int planes() {
    return azimuths.length;
  }

  int angles() {
    return gammas.length;
  }

  double azimuth(int i) {
    return azimuths[i];
  }

  double gamma(int j) {
    return gammas[j];
  }

  /** The value on plane {@code i} at angle {@code j}. */
  double value(int i, int j) {
    return values[i][j];
  }
}
