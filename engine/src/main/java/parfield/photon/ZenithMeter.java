package parfield.photon;

/**
 * Radiance that goes straight up through level planes, in layers of one refractive index: mean over
 * a cone of 8° about the vertical.
 *
 * <p>Hardly any light goes just there, so that counting it would take very long. Instead every
 * straight path counts what it may be expected to scatter there, dimmed on its way to each plane,
 * and the floor what it sends back: the local estimate (Marchuk, Mikhailov, Nazaraliev et al. 1980,
 * The Monte Carlo Methods in Atmospheric Optics; from memory). Single-threaded.
 */
final class ZenithMeter implements Detector {
  /** A path that ends at the floor may miss it by this much [m]. */
  private static final double ROUNDING = 1e-12;

  private final double[] depths;
  private final int first;
  private final Layer[] layers;
  private final PhaseIntoCone[] phases;
  private final double floorReflectance;

  /** Optical depth (∫ c dz) of each layer's upper face, and of the end of all. */
  private final double[] opticalTop;

  /** Optical depth of each plane, and e to its power. */
  private final double[] optical;

  private final double[] growth;

  private final double[] flux = new double[1];

  /**
   * A meter.
   *
   * @param depths of the planes
   * @param scene with layers of one waveband
   * @param phases of the layers, into the cone
   * @param first slot that is free
   */
  ZenithMeter(double[] depths, Scene scene, PhaseIntoCone[] phases, int first) {
    this.depths = depths;
    this.first = first;
    layers = scene.layers();
    this.phases = phases;
    floorReflectance = scene.floor() == null ? 0 : scene.floor().most;
    opticalTop = new double[layers.length + 1];
    for (int i = 0; i < layers.length; i++) {
      double thickness = layers[i].bottom - layers[i].top;
      opticalTop[i + 1] = opticalTop[i] + layers[i].beamAttenuation(0) * thickness;
    }
    optical = new double[depths.length];
    growth = new double[depths.length];
    for (int i = 0; i < depths.length; i++) {
      int layer = 0;
      while (layer < layers.length - 1 && depths[i] > layers[layer].bottom) {
        layer++;
      }
      optical[i] = opticalDepth(layer, depths[i]);
      growth[i] = Math.exp(optical[i]);
    }
  }

  private double opticalDepth(int layer, double depth) {
    return opticalTop[layer] + layers[layer].beamAttenuation(0) * (depth - layers[layer].top);
  }

  @Override
  public int slots() {
    return depths.length;
  }

  @Override
  public void pass(Packet packet, double length, double[] totals) {
    expectScattered(packet, length, totals);
    expectFromFloor(packet, length, totals);
  }

  private void expectScattered(Packet packet, double length, double[] totals) {
    int layer = layerAt(packet, length);
    Layer water = layers[layer];
    if (water.scattering == 0) {
      return;
    }
    packet.fluxes(0, flux);
    double attenuation = water.beamAttenuation(0);
    double absorption = attenuation - water.scattering;
    double source = flux[0] * water.scattering * phases[layer].value(-packet.dz);
    double fall = absorption + attenuation * packet.dz;
    double start = opticalDepth(layer, packet.z);
    double whole = source * Math.exp(-start) * integral(fall, length);
    for (int i = 0; i < depths.length; i++) {
      double above = packet.z - depths[i];
      double end = above + (packet.dz == 0 ? 0 : length * packet.dz);
      if (above >= 0 && end >= 0) {
        totals[first + i] += whole * growth[i];
      } else if (above > 0) {
        totals[first + i] +=
            source * Math.exp(optical[i] - start) * integral(fall, above / -packet.dz);
      } else if (end > 0) {
        double from = -above / packet.dz;
        totals[first + i] += source * Math.exp(-absorption * from) * integral(fall, length - from);
      }
    }
  }

  /** ∫ e^(−k s) ds from 0 to a length. */
  private static double integral(double k, double length) {
    return k == 0 ? length : -Math.expm1(-k * length) / k;
  }

  private void expectFromFloor(Packet packet, double length, double[] totals) {
    int last = layers.length - 1;
    boolean meetsFloor =
        floorReflectance > 0
            && packet.dz > 0
            && packet.z + length * packet.dz >= layers[last].bottom - ROUNDING;
    if (!meetsFloor) {
      return;
    }
    packet.fluxes(length, flux);
    for (int i = 0; i < depths.length; i++) {
      totals[first + i] +=
          flux[0] * floorReflectance / Math.PI * Math.exp(optical[i] - opticalTop[last + 1]);
    }
  }

  /** The layer that a path runs through: a path ends where its layer does. */
  private int layerAt(Packet packet, double length) {
    double middle =
        length == Double.POSITIVE_INFINITY ? packet.z : packet.z + length / 2 * packet.dz;
    int layer = 0;
    while (layer < layers.length - 1 && middle > layers[layer].bottom) {
      layer++;
    }
    return layer;
  }
}
