package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parfield.lamp.HarmonicIntensity;
import parfield.lamp.IntensityDistribution;

/**
 * Truths as vectors in which they may be added and averaged: shares by their logit, positive
 * figures by their logarithm, offsets as they are, lamps by the logarithm of their intensity.
 *
 * <p>A weighted mean of such vectors, weights of sum 1, is again a truth: its lamps are the
 * weighted geometric means of the intensities. Harmonic lamps of one size are taken node by node;
 * any other kind keeps its shape, and only its level moves. Immutable.
 */
final class TruthVector {
  private static final int CLEAR = 0;
  private static final int BOTTOM = 4;
  private static final int YELLOWING = 5;
  private static final int OFFSET_X = 6;
  private static final int OFFSET_Y = 7;
  private static final int HEIGHT = 8;
  private static final int APERTURE = 9;
  private static final int SCALE = 10;
  private static final int LAMPS = 11;

  /** Shares are kept this far from 0 and 1, where their logit ends. */
  private static final double EDGE = 1e-6;

  private static final double LEAST = 1e-9;

  /**
   * How one channel of one fixture lies in the vector.
   *
   * @param orders rows of cosines, and of sines where {@code sines}; 0 where only a level lies
   *     there
   */
  private record Lamp(String fixture, int channel, int from, int orders, int nodes, boolean sines) {
    int length() {
      return orders == 0 ? 1 : orders * nodes * (sines ? 2 : 1);
    }
  }

  private final List<Lamp> lamps = new ArrayList<>();
  private final int size;

  /**
   * The vectors of some truths.
   *
   * @param truths of the same fixtures, at least one
   */
  TruthVector(List<Truth> truths) {
    int at = LAMPS;
    for (Map.Entry<String, List<IntensityDistribution>> entry :
        truths.get(0).distributions().entrySet()) {
      for (int c = 0; c < entry.getValue().size(); c++) {
        Lamp lamp = lamp(truths, entry.getKey(), c, at);
        lamps.add(lamp);
        at += lamp.length();
      }
    }
    size = at;
  }

  private static Lamp lamp(List<Truth> truths, String fixture, int channel, int from) {
    int orders = -1;
    int nodes = 0;
    boolean sines = false;
    for (Truth truth : truths) {
      IntensityDistribution lamp = truth.distributions().get(fixture).get(channel);
      if (!(lamp instanceof HarmonicIntensity harmonic)) {
        return new Lamp(fixture, channel, from, 0, 0, false);
      }
      double[][] cosine = harmonic.cosine();
      if (orders >= 0 && (cosine.length != orders || cosine[0].length != nodes)) {
        return new Lamp(fixture, channel, from, 0, 0, false);
      }
      orders = cosine.length;
      nodes = cosine[0].length;
      sines |= harmonic.sine().length > 0;
    }
    return new Lamp(fixture, channel, from, orders, nodes, sines);
  }

  /** Length of the vectors. */
  int size() {
    return size;
  }

  /** Index of the logarithm of the meter's scale. */
  static int scale() {
    return SCALE;
  }

  /** A truth as a vector; levels of lamps without nodes are 0, about the truth's own. */
  double[] of(Truth truth) {
    double[] vector = new double[size];
    for (int side = 0; side < BOTTOM; side++) {
      vector[CLEAR + side] = logit(truth.clear().get(side));
    }
    vector[BOTTOM] = logit(truth.bottomReflectance());
    vector[YELLOWING] = Math.log(Math.max(LEAST, truth.yellowing()));
    vector[OFFSET_X] = truth.offsetX();
    vector[OFFSET_Y] = truth.offsetY();
    vector[HEIGHT] = truth.heightOffset();
    vector[APERTURE] = Math.log(Math.max(LEAST, truth.aperture()));
    vector[SCALE] = Math.log(truth.meterScale());
    for (Lamp lamp : lamps) {
      IntensityDistribution own = truth.distributions().get(lamp.fixture).get(lamp.channel);
      if (lamp.orders == 0) {
        // The level about which it moves: that straight down, or none where it is dark there.
        vector[lamp.from] = Math.log(Math.max(LEAST, own.intensity(0, 0)));
        continue;
      }
      HarmonicIntensity harmonic = (HarmonicIntensity) own;
      put(harmonic.cosine(), vector, lamp.from, lamp.nodes);
      put(harmonic.sine(), vector, lamp.from + lamp.orders * lamp.nodes, lamp.nodes);
    }
    return vector;
  }

  /**
   * The truth of a vector.
   *
   * @param own the truth that moved there: gives the shape of lamps of which only the level moves
   * @param vector where to
   */
  Truth truth(Truth own, double[] vector) {
    Map<String, List<IntensityDistribution>> distributions = new TreeMap<>();
    for (Lamp lamp : lamps) {
      distributions
          .computeIfAbsent(lamp.fixture, name -> new ArrayList<>())
          .add(moved(own.distributions().get(lamp.fixture).get(lamp.channel), lamp, vector));
    }
    List<Double> clear = new ArrayList<>();
    for (int side = 0; side < BOTTOM; side++) {
      clear.add(sigmoid(vector[CLEAR + side]));
    }
    return new Truth(
        distributions,
        clear,
        sigmoid(vector[BOTTOM]),
        Math.exp(vector[YELLOWING]),
        vector[OFFSET_X],
        vector[OFFSET_Y],
        vector[HEIGHT],
        Math.exp(vector[APERTURE]),
        Math.exp(vector[SCALE]));
  }

  private static IntensityDistribution moved(
      IntensityDistribution own, Lamp lamp, double[] vector) {
    if (lamp.orders == 0) {
      double before = Math.log(Math.max(LEAST, own.intensity(0, 0)));
      return Lamps.scaled(own, Math.exp(vector[lamp.from] - before));
    }
    double[][] cosine = rows(vector, lamp.from, lamp);
    double[][] sine =
        lamp.sines ? rows(vector, lamp.from + lamp.orders * lamp.nodes, lamp) : new double[0][];
    return new HarmonicIntensity(cosine, sine);
  }

  private static double[][] rows(double[] vector, int from, Lamp lamp) {
    double[][] rows = new double[lamp.orders][lamp.nodes];
    for (int k = 0; k < lamp.orders; k++) {
      System.arraycopy(vector, from + k * lamp.nodes, rows[k], 0, lamp.nodes);
    }
    return rows;
  }

  private static void put(double[][] rows, double[] vector, int from, int nodes) {
    for (int k = 0; k < rows.length; k++) {
      System.arraycopy(rows[k], 0, vector, from + k * nodes, nodes);
    }
  }

  private static double logit(double share) {
    double inside = Math.min(1 - EDGE, Math.max(EDGE, share));
    return Math.log(inside / (1 - inside));
  }

  private static double sigmoid(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }
}
