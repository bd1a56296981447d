package parfield.photon;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import parfield.optics.PhaseFunction;

/**
 * Layers without end to the sides under even light: the setting of the published tables that the
 * solver is held against.
 *
 * <p>Any unit of length will do as long as depths and coefficients share it.
 *
 * @param layers from top to bottom, at least one; only the last may be infinitely thick
 * @param indexAbove refractive index above
 * @param indexBelow refractive index below, where there is no floor
 * @param floor diffuse reflectance of the bottom; empty where there is none
 * @param sky what falls on the first layer
 */
public record PlaneParallel(
    List<Medium> layers, double indexAbove, double indexBelow, OptionalDouble floor, Sky sky) {
  /**
   * Energy against what is common at the deepest plane, below which a packet plays for its life.
   */
  private static final double FAINT = 0.02;

  public PlaneParallel {
    layers = List.copyOf(layers);
    Objects.requireNonNull(floor, "floor");
    Objects.requireNonNull(sky, "sky");
    if (layers.isEmpty()) {
      throw new IllegalArgumentException("a plane-parallel medium needs a layer; got none");
    }
    if (!(indexAbove >= 1) || !(indexBelow >= 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "refractive indices must be 1 or more; got %s above and %s below",
              indexAbove,
              indexBelow));
    }
    if (floor.isPresent() && !(floor.getAsDouble() >= 0 && floor.getAsDouble() <= 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a bottom's reflectance runs from 0 to 1; got %s", floor.getAsDouble()));
    }
  }

  /**
   * One layer.
   *
   * @param thickness of the layer, above 0; may be infinite
   * @param index refractive index
   * @param absorption coefficient a, 0 or more
   * @param scattering coefficient b, 0 or more
   * @param phase how it scatters
   */
  public record Medium(
      double thickness, double index, double absorption, double scattering, PhaseFunction phase) {
    public Medium {
      Objects.requireNonNull(phase, "phase");
      if (!(thickness > 0) || !(index >= 1) || !(absorption >= 0) || !(scattering >= 0)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a layer needs a thickness above 0, an index of 1 or more and coefficients of 0 or"
                    + " more; got thickness %s, index %s, a %s, b %s",
                thickness,
                index,
                absorption,
                scattering));
      }
    }
  }

  /**
   * Light from above.
   *
   * @param irradiance on a level plane above the first layer
   * @param cosine of the angle from the zenith that a parallel beam comes from, above 0 to 1; empty
   *     for a sky that is equally bright everywhere
   */
  public record Sky(double irradiance, OptionalDouble cosine) {
    public Sky {
      Objects.requireNonNull(cosine, "cosine");
      if (!(irradiance > 0)) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "irradiance must be above 0; got %s", irradiance));
      }
      if (cosine.isPresent() && !(cosine.getAsDouble() > 0 && cosine.getAsDouble() <= 1)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the cosine of a beam lies above 0 and at most at 1; got %s",
                cosine.getAsDouble()));
      }
    }

    /** A parallel beam. */
    public static Sky beam(double irradiance, double cosine) {
      return new Sky(irradiance, OptionalDouble.of(cosine));
    }

    /** A sky that is equally bright everywhere. */
    public static Sky even(double irradiance) {
      return new Sky(irradiance, OptionalDouble.empty());
    }
  }

  /**
   * Counts the light at some depths.
   *
   * @param depths of level planes, each inside a layer or at the upper or lower end of all
   * @param effort seed, threads, packets; the target counts E_d at the depths
   */
  public PlaneParallelLight trace(List<Double> depths, Effort effort) {
    return trace(depths, effort, Watch.patient());
  }

  /**
   * Counts the light at some depths, watched.
   *
   * @param depths of level planes, each inside a layer or at the upper or lower end of all
   * @param effort seed, threads, packets; the target counts E_d at the depths
   * @param watch told of the progress; may stop it, and what is known then is the answer
   */
  public PlaneParallelLight trace(List<Double> depths, Effort effort, Watch watch) {
    double[] planes = depths.stream().mapToDouble(Double::doubleValue).toArray();
    Scene scene = scene();
    double faint = faint(depths.stream().mapToDouble(Double::doubleValue).max().orElse(0));
    Batches batches =
        new Batches(
            (PlaneMeters.KINDS + 1) * planes.length,
            new double[] {1},
            new Ledger(layers.size()).size(),
            planes.length == 0 ? List.of() : List.of(new int[] {0, planes.length}));
    PhaseIntoCone[] phases =
        layers.stream()
            .map(layer -> new PhaseIntoCone(layer.phase(), PlaneMeters.CAP))
            .toArray(PhaseIntoCone[]::new);
    batches.run(
        () ->
            new PacketTrial(
                scene,
                1,
                new SkyEmission(),
                channels -> meters(planes, scene, phases),
                faint,
                batches.packetsPerBatch()),
        effort,
        watch);
    return new PlaneParallelLight(batches, planes.length);
  }

  private static Detector[] meters(double[] planes, Scene scene, PhaseIntoCone[] phases) {
    return planes.length == 0
        ? new Detector[0]
        : new Detector[] {
          new PlaneMeters(planes),
          new ZenithMeter(planes, scene, phases, PlaneMeters.KINDS * planes.length)
        };
  }

  /** Light at a deep plane is faint: e^(−2 ∫a dz) is left where it has come down askew. */
  private double faint(double deepest) {
    double exponent = 0;
    double top = 0;
    for (Medium layer : layers) {
      double within = Math.min(layer.thickness(), Math.max(0, deepest - top));
      exponent += 2 * layer.absorption() * within;
      top += layer.thickness();
    }
    return FAINT * Math.exp(-exponent);
  }

  private Scene scene() {
    Layer[] stack = new Layer[layers.size()];
    double top = 0;
    for (int i = 0; i < stack.length; i++) {
      Medium medium = layers.get(i);
      double bottom = top + medium.thickness();
      stack[i] =
          new Layer(
              top,
              bottom,
              medium.index(),
              new double[] {medium.absorption()},
              new double[] {medium.scattering()},
              medium.phase(),
              0);
      top = bottom;
    }
    return Scene.planeParallel(
        stack,
        indexAbove,
        indexBelow,
        0,
        floor.isPresent() ? new Diffuser(new double[] {floor.getAsDouble()}) : null);
  }

  private final class SkyEmission implements Emission {
    private final double[] factor = {sky.irradiance()};
    private final double[][] shares = {{1}};

    @Override
    public void launch(Packet packet, double[] even, SplittableRandom random) {
      double cosine = sky.cosine().orElse(Math.sqrt(1 - even[0]));
      double sine = Math.sqrt(1 - cosine * cosine);
      double azimuth = sky.cosine().isPresent() ? 0 : 2 * Math.PI * even[1];
      packet.x = 0;
      packet.y = 0;
      packet.z = -1;
      packet.dx = sine * Math.cos(azimuth);
      packet.dy = sine * Math.sin(azimuth);
      packet.dz = cosine;
      packet.launch(0, factor, shares);
    }

    @Override
    public int channels() {
      return 1;
    }
  }
}
