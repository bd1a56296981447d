package parfield.field;

import java.util.Arrays;
import parfield.optics.Attenuation;
import parfield.tank.Side;

/**
 * What receivers see of patches of a diffuse surface: shares and mean paths at some clear shares of
 * the panes, and how both change with these.
 *
 * <p>In single precision: many rooms are kept, and 1e-7 of the diffuse light is nothing to a meter.
 */
final class DiffuseViews {
  /**
   * Numbers that tell of one view: the share and the sum of its light's paths, then what a clear
   * share more on each side adds to both.
   */
  static final int WIDTH = 2 + 2 * Side.values().length;

  private final int patches;
  private final float[] views;

  /** Views of which nothing is known yet. */
  DiffuseViews(int receivers, int patches) {
    this.patches = patches;
    views = new float[receivers * patches * WIDTH];
  }

  /** Returns how many receivers there are. */
  int receivers() {
    return patches == 0 ? 0 : views.length / (patches * WIDTH);
  }

  /** Takes what {@link DiffuseKernel#transfer} found. */
  void set(int receiver, int patch, double[] view) {
    int at = (receiver * patches + patch) * WIDTH;
    for (int k = 0; k < WIDTH; k++) {
      views[at + k] = (float) view[k];
    }
  }

  /**
   * What each receiver sees through water.
   *
   * @param moved clear shares of the panes beyond those that the views were computed for, by side
   * @param attenuation of the water
   * @param factors of the receivers
   * @return [receiver][patch], E over the patch's radiosity times the receiver's factor
   */
  float[][] through(double[] moved, Attenuation attenuation, double[] factors) {
    float[][] rows = new float[factors.length][patches];
    int at = 0;
    for (int receiver = 0; receiver < rows.length; receiver++) {
      float[] row = rows[receiver];
      for (int p = 0; p < patches; p++, at += WIDTH) {
        double share = views[at];
        double path = views[at + 1];
        for (int side = 0; side < moved.length; side++) {
          share += moved[side] * views[at + 2 + 2 * side];
          path += moved[side] * views[at + 3 + 2 * side];
        }
        if (share > 0) {
          row[p] =
              (float)
                  (factors[receiver]
                      * share
                      * attenuation.transmittance(Math.max(0, path) / share));
        }
      }
    }
    return rows;
  }

  /** What each receiver sees through water, unweighted. */
  float[][] through(double[] moved, Attenuation attenuation) {
    double[] ones = new double[receivers()];
    Arrays.fill(ones, 1);
    return through(moved, attenuation, ones);
  }
}
