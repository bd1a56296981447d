package parfield.photon;

/**
 * Photons on one path: where they are, where they go, and how much of each waveband is left.
 *
 * <p>Mutable and single-threaded: one is used for all paths of a batch. A packet carries all
 * channels of its lamp at once, since these differ only in how strongly each leaves in the sampled
 * direction ({@link #factor}) and in what wavebands it consists of ({@link #shares}).
 */
final class Packet {
  double x;
  double y;

  /** Depth below the still surface [m]; negative in air. */
  double z;

  double dx;
  double dy;
  double dz;

  /** Share of the launched photons left in each waveband. */
  final double[] weight;

  /** Index of the first channel of the lamp among all channels of all lamps. */
  int firstChannel;

  /** Photon flux that each channel of the lamp launched in this direction [µmol s⁻¹]. */
  double[] factor;

  /** Share of each channel's photons in each waveband: [channel][band]. */
  double[][] shares;

  /** Whether it has been in the water. */
  boolean entered;

  private final double[] mixture;
  private final double[] ahead;
  private Layer layer;

  Packet(int bands) {
    weight = new double[bands];
    mixture = new double[bands];
    ahead = new double[bands];
  }

  /** Starts a path: position and direction are set, all photons are there. */
  void launch(int channel, double[] newFactor, double[][] newShares) {
    firstChannel = channel;
    factor = newFactor;
    shares = newShares;
    entered = false;
    java.util.Arrays.fill(weight, 1);
    java.util.Arrays.fill(mixture, 0);
    for (int c = 0; c < newFactor.length; c++) {
      double[] share = newShares[c];
      double q = newFactor[c];
      for (int k = 0; k < mixture.length; k++) {
        mixture[k] += q * share[k];
      }
    }
  }

  /** Photon flux of all channels that is left [µmol s⁻¹]. */
  double energy() {
    return dot(mixture, weight);
  }

  /** Says which water the packet is in, before {@link #fluxes}. */
  void in(Layer newLayer) {
    layer = newLayer;
  }

  /**
   * Photon flux of each channel some way ahead on the present straight path.
   *
   * @param distance along it [m]
   * @param fluxes takes one value a channel [µmol s⁻¹]
   */
  void fluxes(double distance, double[] fluxes) {
    System.arraycopy(weight, 0, ahead, 0, ahead.length);
    layer.attenuate(ahead, distance);
    for (int c = 0; c < factor.length; c++) {
      fluxes[c] = factor[c] * dot(shares[c], ahead);
    }
  }

  void move(double distance) {
    x += distance * dx;
    y += distance * dy;
    z += distance * dz;
  }

  void scale(double[] factors) {
    for (int k = 0; k < weight.length; k++) {
      weight[k] *= factors[k];
    }
  }

  void scale(double by) {
    for (int k = 0; k < weight.length; k++) {
      weight[k] *= by;
    }
  }

  /** Turns about the present direction by a polar and an azimuthal angle. */
  void turn(double cosine, double cosAzimuth, double sinAzimuth) {
    double sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
    double u = dx;
    double v = dy;
    double w = dz;
    double flat = u * u + v * v;
    if (flat < 1e-20) {
      dx = sine * cosAzimuth;
      dy = sine * sinAzimuth;
      dz = w > 0 ? cosine : -cosine;
      return;
    }
    double root = Math.sqrt(flat);
    dx = sine * (u * w * cosAzimuth - v * sinAzimuth) / root + u * cosine;
    dy = sine * (v * w * cosAzimuth + u * sinAzimuth) / root + v * cosine;
    dz = -sine * cosAzimuth * root + w * cosine;
    normalise();
  }

  void normalise() {
    double scale = 1 / Math.sqrt(dx * dx + dy * dy + dz * dz);
    dx *= scale;
    dy *= scale;
    dz *= scale;
  }

  /** Four sums side by side: the processor need not wait for one addition after another. */
  static double dot(double[] a, double[] b) {
    int n = a.length;
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    int i = 0;
    for (; i + 3 < n; i += 4) {
      s0 += a[i] * b[i];
      s1 += a[i + 1] * b[i + 1];
      s2 += a[i + 2] * b[i + 2];
      s3 += a[i + 3] * b[i + 3];
    }
    for (; i < n; i++) {
      s0 += a[i] * b[i];
    }
    return s0 + s1 + (s2 + s3);
  }
}
