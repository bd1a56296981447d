package parfield.field;

import java.util.List;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;

/**
 * The fields of every channel of every hanging at full output; any setting is a weighted sum.
 *
 * <p>Immutable.
 */
public final class UnitFields {
  private final Rig rig;
  private final Places places;
  private final double[][][] values;

  /**
   * Wraps computed fields.
   *
   * @param rig the scene
   * @param places where
   * @param values E_d at full output [hanging][channel][place] [µmol m⁻² s⁻¹]; kept, not copied
   */
  public UnitFields(Rig rig, Places places, double[][][] values) {
    this.rig = rig;
    this.places = places;
    this.values = values;
  }

  /** Returns the places. */
  public Places places() {
    return places;
  }

  /** E_d of one channel of one hanging at full output, at place {@code place}. */
  public double unit(int hanging, int channel, int place) {
    return values[hanging][channel][place];
  }

  /**
   * E_d of one channel of all hangings together, each at full output.
   *
   * @param channel index in the order of every fixture's channels; fixtures alike
   * @return one value a place [µmol m⁻² s⁻¹], a copy
   */
  public double[] ofChannel(int channel) {
    double[] sum = new double[places.size()];
    for (double[][] hanging : values) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += hanging[channel][i];
      }
    }
    return sum;
  }

  /**
   * These fields with the light at each place multiplied.
   *
   * @param factors one a place
   */
  public UnitFields times(double[] factors) {
    double[][][] scaled = new double[values.length][][];
    for (int h = 0; h < scaled.length; h++) {
      scaled[h] = new double[values[h].length][places.size()];
      for (int c = 0; c < scaled[h].length; c++) {
        for (int i = 0; i < factors.length; i++) {
          scaled[h][c][i] = factors[i] * values[h][c][i];
        }
      }
    }
    return new UnitFields(rig, places, scaled);
  }

  /** The field at the setting that the rig's hangings carry. */
  public LightField atRigSetting() {
    List<Hanging> hangings = rig.hangings();
    double[] sum = new double[places.size()];
    for (int h = 0; h < hangings.size(); h++) {
      add(sum, h, hangings.get(h).setting());
    }
    return new LightField(places, sum);
  }

  /** The field with every fixture at one setting. */
  public LightField at(Setting setting) {
    double[] sum = new double[places.size()];
    for (int h = 0; h < rig.hangings().size(); h++) {
      add(sum, h, setting);
    }
    return new LightField(places, sum);
  }

  /**
   * The sum of all channels of all hangings, each times a weight.
   *
   * @param weights [hanging][channel], such as output fractions, or seconds at full output
   * @return one value a place [µmol m⁻² s⁻¹ times the weights' unit]
   */
  public double[] weighted(double[][] weights) {
    double[] sum = new double[places.size()];
    for (int h = 0; h < weights.length; h++) {
      add(sum, h, weights[h]);
    }
    return sum;
  }

  private void add(double[] sum, int hanging, Setting setting) {
    add(sum, hanging, rig.hangings().get(hanging).fixture().outputs(setting));
  }

  private void add(double[] sum, int hanging, double[] outputs) {
    for (int c = 0; c < outputs.length; c++) {
      double[] unit = values[hanging][c];
      double output = outputs[c];
      for (int i = 0; i < sum.length; i++) {
        sum[i] += output * unit[i];
      }
    }
  }
}
