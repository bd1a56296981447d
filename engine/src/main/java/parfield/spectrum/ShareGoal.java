package parfield.spectrum;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;

/**
 * Wanted shares of photons in wavebands: least sum of squared deviations.
 *
 * <p>With y the channels' outputs, T their photons over the whole division and B those in the
 * wanted bands, shares are B y / T·y: a ratio. But it does not change with brightness, and for y of
 * T·y = 1 the deviation d = B y − w (T·y) is linear. Of all y = s v with T·v = 1, ‖d(y)‖² + (T·y −
 * 1)² is s² ‖d(v)‖² + (s − 1)², least at s = 1 / (1 + ‖d(v)‖²), where it is ‖d(v)‖² / (1 +
 * ‖d(v)‖²): it grows with ‖d(v)‖ alone. The convex least squares of those rows thus finds the best
 * shares.
 */
final class ShareGoal extends MixGoal {
  /** Shares of all bands may be rounded, and then miss a sum of 1 by this. */
  private static final double ROUNDING = 0.005;

  private final WaveBands division;
  private final Map<WaveBand, Double> wanted;

  ShareGoal(WaveBands division, Map<WaveBand, Double> wanted) {
    this.division = division;
    this.wanted = new LinkedHashMap<>();
    double sum = 0;
    for (WaveBand band : division.bands()) {
      Double share = wanted.get(band);
      if (share != null) {
        if (!(share >= 0 && share <= 1)) {
          throw new IllegalArgumentException(
              String.format(
                  Locale.ROOT,
                  "a wanted share lies within 0 to 1; got %s for %s",
                  share,
                  band.name()));
        }
        sum += share;
        this.wanted.put(band, share);
      }
    }
    requireKnown(wanted);
    requireWhole(sum);
  }

  private void requireKnown(Map<WaveBand, Double> named) {
    List<String> names = division.bands().stream().map(WaveBand::name).toList();
    for (WaveBand band : named.keySet()) {
      if (!division.bands().contains(band)) {
        throw new IllegalArgumentException(
            String.format("%s is none of the bands %s", band.name(), names));
      }
    }
    if (named.isEmpty()) {
      throw new IllegalArgumentException(
          String.format("a mix by shares needs a wanted share for one band or more of %s", names));
    }
  }

  private void requireWhole(double sum) {
    boolean all = wanted.size() == division.bands().size();
    for (int i = 1; all && i < division.bands().size(); i++) {
      all = division.bands().get(i).fromNm() == division.bands().get(i - 1).toNm();
    }
    if (sum > 1 + ROUNDING || (all && sum < 1 - ROUNDING)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "wanted shares must sum to %s1; got %s",
              all ? "" : "no more than ",
              (float) sum));
    }
  }

  @Override
  public Finding<Double> mismatch(PhotonSpectrum light) {
    return division.shares(light).map(this::deviation);
  }

  private double deviation(List<Double> shares) {
    double squares = 0;
    for (int k = 0; k < shares.size(); k++) {
      Double share = wanted.get(division.bands().get(k));
      if (share != null) {
        squares += (shares.get(k) - share) * (shares.get(k) - share);
      }
    }
    return Math.sqrt(squares / wanted.size());
  }

  @Override
  Problem problem(List<ChannelLight> channels) {
    double brightest = Double.MIN_NORMAL;
    for (ChannelLight channel : channels) {
      brightest = Math.max(brightest, whole(channel));
    }
    List<WaveBand> bands = new ArrayList<>(wanted.keySet());
    DMatrixRMaj a = new DMatrixRMaj(bands.size() + 1, channels.size());
    double[] b = new double[bands.size() + 1];
    for (int c = 0; c < channels.size(); c++) {
      double whole = whole(channels.get(c));
      for (int k = 0; k < bands.size(); k++) {
        double within = bands.get(k).photons(channels.get(c).spectrum());
        a.set(k, c, (within - wanted.get(bands.get(k)) * whole) / brightest);
      }
      a.set(bands.size(), c, whole / brightest);
    }
    b[bands.size()] = 1;
    return new Problem(a, b);
  }

  private double whole(ChannelLight channel) {
    return channel.spectrum().photons(division.fromNm(), division.toNm());
  }
}
