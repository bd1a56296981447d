package parfield.field;

import java.util.Arrays;
import parfield.optics.Attenuation;

/**
 * All light paths of one rig to some places: E_d as a linear function of the lamps' intensities.
 *
 * <p>A path ends at a place, or at a diffuse patch whose light a matrix carries on to the places.
 * Immutable.
 */
public final class PathBundle {
  private final int places;
  private final int size;
  private final double[] weight;
  private final double[] gamma;
  private final double[] azimuth;
  private final int[] hanging;
  private final int[] end;
  private final double[][] fromPatches;

  private PathBundle(Builder builder) {
    places = builder.places;
    size = builder.size;
    weight = Arrays.copyOf(builder.weight, size);
    gamma = Arrays.copyOf(builder.gamma, size);
    azimuth = Arrays.copyOf(builder.azimuth, size);
    hanging = Arrays.copyOf(builder.hanging, size);
    end = Arrays.copyOf(builder.end, size);
    fromPatches = builder.fromPatches;
  }

  /** Returns the number of paths. */
  public int size() {
    return size;
  }

  /** Returns the number of places. */
  public int places() {
    return places;
  }

  /** Returns the emission angle γ of path {@code i} in its lamp's frame [rad]. */
  public double gamma(int i) {
    return gamma[i];
  }

  /** Returns the emission azimuth C of path {@code i} in its lamp's frame [rad]. */
  public double azimuth(int i) {
    return azimuth[i];
  }

  /** Returns E_d at its end per unit intensity along path {@code i} [sr m⁻²]. */
  public double weight(int i) {
    return weight[i];
  }

  /** Returns the index of the hanging that path {@code i} leaves. */
  public int hanging(int i) {
    return hanging[i];
  }

  /**
   * E_d at each place for given intensities.
   *
   * @param intensity photon intensity along each path [µmol s⁻¹ sr⁻¹], or any multiple of it
   * @return E_d [µmol m⁻² s⁻¹], or that multiple, one a place
   */
  public double[] gather(double[] intensity) {
    double[] sum = new double[places];
    double[] onPatches = new double[fromPatches.length == 0 ? 0 : fromPatches[0].length];
    for (int i = 0; i < size; i++) {
      double value = weight[i] * intensity[i];
      if (end[i] < places) {
        sum[end[i]] += value;
      } else {
        onPatches[end[i] - places] += value;
      }
    }
    for (int i = 0; i < fromPatches.length; i++) {
      double[] row = fromPatches[i];
      double value = 0;
      for (int p = 0; p < row.length; p++) {
        value += row[p] * onPatches[p];
      }
      sum[i] += value;
    }
    return sum;
  }

  /** Collects paths; single-threaded. */
  static final class Builder implements PathCollector {
    private final int places;
    private final Attenuation attenuation;
    private Receivers receivers;
    private PatchFacing facing;
    private int size;
    private double[] weight = new double[1024];
    private double[] gamma = new double[1024];
    private double[] azimuth = new double[1024];
    private int[] hanging = new int[1024];
    private int[] end = new int[1024];
    private double[][] fromPatches = new double[0][];
    private PointSource source;
    private PathTable table;
    private int owner;

    Builder(int places, Attenuation attenuation) {
      this.places = places;
      this.attenuation = attenuation;
    }

    /** The receivers that follow stand for places, or for patches where {@code facing} is given. */
    Builder receivers(Receivers newReceivers, PatchFacing newFacing) {
      receivers = newReceivers;
      facing = newFacing;
      return this;
    }

    /** What each place gets from direct light on each patch: [place][patch]. */
    Builder fromPatches(double[][] matrix) {
      fromPatches = matrix;
      return this;
    }

    PathBundle build() {
      return new PathBundle(this);
    }

    @Override
    public void from(PointSource newSource, PathTable newTable) {
      source = newSource;
      table = newTable;
    }

    @Override
    public void to(int receiver) {
      owner = receivers.owner()[receiver];
    }

    @Override
    public void path(
        double reflectance,
        int step,
        double part,
        double dx,
        double dy,
        double distance,
        int orderX,
        int orderY) {
      double factor = reflectance;
      if (facing != null) {
        factor *= facing.factor(owner, table, step, part, dx, dy, distance, orderX, orderY);
      }
      if (factor == 0) {
        return;
      }
      grow();
      double share = table.crossingRatio(step, part);
      double[] direction = source.direction(share * dx, share * dy, source.height());
      weight[size] =
          factor
              * receivers.share()
              * source.share()
              * table.weight(step, part)
              * attenuation.transmittance(table.length(step, part));
      gamma[size] = direction[0];
      azimuth[size] = direction[1];
      hanging[size] = source.hanging();
      end[size++] = facing == null ? owner : places + owner;
    }

    private void grow() {
      if (size < weight.length) {
        return;
      }
      int capacity = size * 2;
      weight = Arrays.copyOf(weight, capacity);
      gamma = Arrays.copyOf(gamma, capacity);
      azimuth = Arrays.copyOf(azimuth, capacity);
      hanging = Arrays.copyOf(hanging, capacity);
      end = Arrays.copyOf(end, capacity);
    }
  }
}
