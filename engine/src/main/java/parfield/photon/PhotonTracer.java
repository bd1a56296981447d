package parfield.photon;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.lamp.Channel;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Tank;

/**
 * The light field by Monte Carlo: the reference for every faster solver.
 *
 * <p>Finite apertures, any intensity distribution, opening with rim, braces and lid at any height
 * above the water, a moving surface with both ways through it, panes as glass slabs with film,
 * growth or paint, a diffuse bottom, rock, scattering, and thirty-two wavebands at once. Left out:
 * polarisation, the sideways shift of a ray within a pane or lid, light that bounces back from the
 * lamp or the room, and focusing by waves, which averages out in time. Immutable and thread-safe.
 *
 * <p>After Mobley 1994, Light and Water, chapter 6, and Wang, Jacques and Zheng 1995 (Comput.
 * Methods Programs Biomed. 47:131); checked against both in the tests.
 */
public final class PhotonTracer implements FieldSolver {
  private static final double FAINT = 0.02;

  private final Effort effort;
  private final boolean lossless;

  /**
   * A solver of some effort.
   *
   * @param effort seed, threads, and when to stop
   */
  public PhotonTracer(Effort effort) {
    this(effort, false);
  }

  private PhotonTracer(Effort effort, boolean lossless) {
    this.effort = effort;
    this.lossless = lossless;
  }

  /** A solver whose panes reflect everything and whose water takes nothing: for flux checks. */
  public static PhotonTracer lossless(Effort effort) {
    return new PhotonTracer(effort, true);
  }

  @Override
  public UnitFields unitFields(Rig rig, Places places) {
    return trace(rig, Wanted.at(places), Watch.patient()).unitFields();
  }

  /**
   * Counts the light of a rig.
   *
   * @param rig the scene; every channel of every fixture must carry a distribution
   * @param wanted what to count
   * @param watch told of the progress; may stop it, and what is known then is the answer
   * @return the field with its standard errors
   * @throws IllegalArgumentException if a channel has no distribution or a place lies outside the
   *     tank; the message names it
   */
  public TracedField trace(Rig rig, Wanted wanted, Watch watch) {
    Tank tank = rig.tank();
    requireDistributions(rig);
    Places places = wanted.places();
    for (int i = 0; i < places.size(); i++) {
      tank.requireInWater(places.get(i));
    }
    wanted.placements().forEach(placement -> tank.requireInWater(placement.place()));
    Wavebands bands = new Wavebands(spectra(rig), tank.water());
    Scene scene = lossless ? Scene.lossless(tank, bands) : Scene.of(tank, bands);
    List<DirectionTable> tables = RigEmission.tables(rig);
    double[] outputs = outputs(rig);
    int voxels = wanted.voxels().map(VoxelGrid::size).orElse(0);
    int slots = 2 * places.size() + voxels + wanted.placements().size();
    Batches batches = new Batches(slots, outputs, new Ledger(1).size(), kinds(wanted, voxels));
    Supplier<Trial> trials =
        () ->
            new PacketTrial(
                scene,
                Wavebands.COUNT,
                new RigEmission(rig, tables, bands),
                channels -> detectors(tank, wanted, channels),
                FAINT,
                batches.packetsPerBatch());
    batches.run(trials, effort, watch);
    double[] scales = scales(tank, wanted, voxels);
    return new TracedField(
        batches,
        unitFields(rig, places, batches, scales),
        scales,
        places.size(),
        voxels,
        firstChannels(rig));
  }

  private static Detector[] detectors(Tank tank, Wanted wanted, int channels) {
    List<Detector> detectors = new ArrayList<>();
    int slot = 0;
    if (wanted.places().size() > 0) {
      detectors.add(new PlaceSensors(wanted.places(), wanted.sensor(), slot, channels));
      slot += 2 * wanted.places().size();
    }
    if (wanted.voxels().isPresent()) {
      VoxelGrid grid = wanted.voxels().orElseThrow();
      detectors.add(new Voxels(grid, tank.length(), tank.width(), tank.depth(), slot, channels));
      slot += grid.size();
    }
    if (!wanted.placements().isEmpty()) {
      detectors.add(new Discs(wanted.placements(), wanted.sensor() / 2, slot, channels));
    }
    return detectors.toArray(Detector[]::new);
  }

  /** The kinds of figures whose errors decide when to stop; E_u may be nothing at all. */
  private static List<int[]> kinds(Wanted wanted, int voxels) {
    List<int[]> kinds = new ArrayList<>();
    int places = wanted.places().size();
    if (places > 0) {
      kinds.add(new int[] {0, places});
    }
    if (voxels > 0) {
      kinds.add(new int[] {2 * places, voxels});
    }
    if (!wanted.placements().isEmpty()) {
      kinds.add(new int[] {2 * places + voxels, wanted.placements().size()});
    }
    return kinds;
  }

  /** What turns flux per packet into irradiance: one over area or volume. */
  private static double[] scales(Tank tank, Wanted wanted, int voxels) {
    Places places = wanted.places();
    double[] scales = new double[2 * places.size() + voxels + wanted.placements().size()];
    double half = wanted.sensor() / 2;
    for (int i = 0; i < places.size(); i++) {
      double scale =
          1 / (within(places.x(i), half, tank.length()) * within(places.y(i), half, tank.width()));
      scales[i] = scale;
      scales[places.size() + i] = scale;
    }
    double volume = tank.length() * tank.width() * tank.depth();
    for (int i = 0; i < voxels; i++) {
      scales[2 * places.size() + i] = voxels / volume;
    }
    for (int i = 2 * places.size() + voxels; i < scales.length; i++) {
      scales[i] = 1 / (Math.PI * half * half);
    }
    return scales;
  }

  private static double within(double centre, double half, double end) {
    return Math.min(end, centre + half) - Math.max(0, centre - half);
  }

  private static UnitFields unitFields(Rig rig, Places places, Batches batches, double[] scales) {
    double[][][] values = new double[rig.hangings().size()][][];
    int channel = 0;
    for (int h = 0; h < values.length; h++) {
      values[h] = new double[rig.hangings().get(h).fixture().channels().size()][places.size()];
      for (double[] unit : values[h]) {
        for (int i = 0; i < unit.length; i++) {
          unit[i] = batches.unit(i, channel) * scales[i];
        }
        channel++;
      }
    }
    return new UnitFields(rig, places, values);
  }

  private static int[] firstChannels(Rig rig) {
    int[] first = new int[rig.hangings().size()];
    for (int h = 1; h < first.length; h++) {
      first[h] = first[h - 1] + rig.hangings().get(h - 1).fixture().channels().size();
    }
    return first;
  }

  private static double[] outputs(Rig rig) {
    return rig.hangings().stream()
        .flatMapToDouble(
            hanging -> java.util.Arrays.stream(hanging.fixture().outputs(hanging.setting())))
        .toArray();
  }

  private static List<PhotonSpectrum> spectra(Rig rig) {
    return rig.hangings().stream()
        .flatMap(hanging -> hanging.fixture().channels().stream())
        .map(Channel::spectrumOrFlat)
        .toList();
  }

  private static void requireDistributions(Rig rig) {
    for (Hanging hanging : rig.hangings()) {
      for (Channel channel : hanging.fixture().channels()) {
        if (channel.distribution().isEmpty()) {
          throw new IllegalArgumentException(
              String.format(
                  Locale.ROOT,
                  "fixture %s: channel %s has no intensity distribution yet; fit a survey first",
                  hanging.fixture().name(),
                  channel.name()));
        }
      }
    }
  }
}
