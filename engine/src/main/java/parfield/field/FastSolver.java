package parfield.field;

import java.util.ArrayList;
import java.util.List;
import parfield.aquascape.Aquascape;
import parfield.lamp.Channel;
import parfield.lamp.IntensityDistribution;
import parfield.optics.Agitation;
import parfield.optics.Attenuation;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Side;
import parfield.tank.Tank;
import parfield.tank.Walls;

/**
 * The light field in closed form: exact refraction into still water, the opening, mirror images in
 * the panes, radiosity for what bottom and covered panes send back.
 *
 * <p>A moving surface bends each ray by (1 − 1/n) times the slope: that blurs the edges of shadows,
 * which is computed, and lets more light out of the tank, which is left out; so is scattering.
 *
 * <p>Rocks stop direct light and its mirror images, on its way to the places and to the bottom and
 * panes that send it on. What rocks send back themselves is left out, and so is what they keep of
 * the diffuse light that bottom and panes send back; edges of their shadows are as sharp as the
 * parts that an emitter is cut into make them. Where what is left out matters {@link Departure}
 * says so, with its size. Immutable to its callers and thread-safe; tables are kept between calls.
 */
public final class FastSolver implements FieldSolver {
  private final Memo<PathKey, PathTable> pathTables = new Memo<>(600);
  private final Memo<List<Identity<IntensityDistribution>>, IntensityTable> intensities =
      new Memo<>(400);
  private final Memo<AttenuationKey, Attenuation> attenuations = new Memo<>(4_000);
  private final Memo<RadialKey, double[]> radials = new Memo<>(200);
  private final Memo<Tank, Interreflection> rooms = new Memo<>(32);
  private final Memo<ReturnKey, Interreflection.Return> returns = new Memo<>(1_024);
  private final Memo<DiffuseKey, double[][]> diffuse = new Memo<>(2_048);
  private final Memo<PaneKey, PaneReflectances> panes = new Memo<>(1_000);
  private final boolean lossless;

  /** Panes that lose nothing need images from much farther away. */
  private static final double LOSSLESS_REACH = 10;

  /**
   * The geometry of diffuse light is computed for clear shares of the panes of 0.1, 0.5, 0.9 and 1:
   * not for 0, where a pane that reflects nothing tells nothing of a clearer one.
   */
  private static final double LEAST_CLEAR = 0.1;

  private static final double CLEAR_STEP = 0.4;

  /** A solver with nothing computed yet. */
  public FastSolver() {
    this(false);
  }

  private FastSolver(boolean lossless) {
    this.lossless = lossless;
  }

  /** A solver whose panes reflect everything and whose water takes nothing: for flux checks. */
  public static FastSolver lossless() {
    return new FastSolver(true);
  }

  private record PathKey(double height, double depth, double index, Lid lid, int steps) {}

  private record AttenuationKey(Identity<PhotonSpectrum> spectrum, Water water) {}

  /** Tables compare by identity. */
  private record RadialKey(
      PathTable table, boolean level, IntensityTable intensities, List<Attenuation> attenuations) {}

  private record PaneKey(Walls walls, double index) {}

  private record ReturnKey(Tank tank, Identity<PhotonSpectrum> spectrum) {}

  /** All that diffuse light depends on; tables compare by identity. */
  private record DiffuseKey(
      Tank tank,
      List<PointSource> sources,
      IntensityTable intensities,
      List<Identity<PhotonSpectrum>> spectra) {}

  /** Compares by identity: equal content in two objects is only computed twice, never confused. */
  private static final class Identity<T> {
    private final T value;

    Identity(T value) {
      this.value = value;
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Identity<?> that && that.value == value;
    }

    @Override
    public int hashCode() {
      return System.identityHashCode(value);
    }
  }

  @Override
  public UnitFields unitFields(Rig rig, Places places) {
    Tank tank = rig.tank();
    places.requireInWater(tank);
    Receivers atPlaces = Receivers.at(places);
    Interreflection room = interreflection(tank);
    double[][][] values = new double[rig.hangings().size()][][];
    for (int h = 0; h < values.length; h++) {
      Hanging hanging = rig.hangings().get(h);
      requireDistributions(hanging);
      List<PointSource> sources = PointSource.of(h, hanging);
      List<Channel> channels = hanging.fixture().channels();
      IntensityTable lamps = intensities(channels);
      Attenuation[] attenuations = attenuations(channels, tank);
      FluxCollector.Radials radial = radials(lamps, attenuations);
      double[][] sums = new double[channels.size()][places.size()];
      walk(tank, sources, atPlaces, new FluxCollector(lamps, radial, atPlaces, null, sums));
      if (!room.patches().isEmpty()) {
        double[][] lattices = diffuse(tank, room, sources, channels, lamps, radial);
        for (int c = 0; c < lattices.length; c++) {
          for (DepthPlane plane : atPlaces.planes()) {
            room.addInterpolated(lattices[c], plane, sums[c]);
          }
        }
      }
      values[h] = sums;
    }
    return new UnitFields(rig, places, values);
  }

  /**
   * All light paths of a rig to a set of places, for one spectrum: the field as a linear function
   * of the lamps' intensities, with nothing assumed about these.
   *
   * @param rig the scene; distributions and settings are not used
   * @param places where, all inside the tank
   * @param spectrum of the light
   * @throws IllegalArgumentException if a place lies outside the tank or in a rock
   */
  public PathBundle paths(Rig rig, Places places, PhotonSpectrum spectrum) {
    Tank tank = rig.tank();
    places.requireInWater(tank);
    PathBundle.Builder bundle = new PathBundle.Builder(places.size(), attenuation(spectrum, tank));
    List<PointSource> sources = new ArrayList<>();
    for (int h = 0; h < rig.hangings().size(); h++) {
      sources.addAll(PointSource.of(h, rig.hangings().get(h)));
    }
    Receivers atPlaces = Receivers.at(places);
    walk(tank, sources, atPlaces, bundle.receivers(atPlaces, null));
    Interreflection room = interreflection(tank);
    if (!room.patches().isEmpty()) {
      Receivers onPatches = Receivers.onPatches(room.patches());
      PatchFacing facing = new PatchFacing(room.patches());
      walk(tank, sources, onPatches, bundle.receivers(onPatches, facing));
      bundle.fromPatches(returnToPlaces(tank, room, spectrum, places));
    }
    return bundle.build();
  }

  private void walk(
      Tank tank, List<PointSource> sources, Receivers receivers, PathCollector collector) {
    OpeningTracer tracer = new OpeningTracer(tank, panes(tank));
    for (DepthPlane plane : receivers.planes()) {
      for (PointSource source : sources) {
        PathTable table = table(tank, source.height(), plane.depth(), receivers.steps());
        collector.from(source, table);
        ImageAxis imagesX = tracer.imagesX(plane.x(), source, plane.depth(), table);
        ImageAxis imagesY = tracer.imagesY(plane.y(), source, plane.depth(), table);
        EdgeBlur blur = tracer.blur(source, plane.depth());
        for (int m = 0; m < plane.members().length; m++) {
          collector.to(plane.members()[m]);
          tracer.trace(
              source,
              plane.depth(),
              table,
              imagesX,
              plane.xIndex()[m],
              imagesY,
              plane.yIndex()[m],
              blur,
              collector);
          collector.done();
        }
      }
    }
  }

  /**
   * What bottom and covered panes send back of one hanging's light: the same wherever it is asked
   * for, so that one rig at place after place costs it once.
   *
   * @return E_d on the lattice of the room, by channel
   */
  private double[][] diffuse(
      Tank tank,
      Interreflection room,
      List<PointSource> sources,
      List<Channel> channels,
      IntensityTable lamps,
      FluxCollector.Radials radial) {
    List<Identity<PhotonSpectrum>> spectra =
        channels.stream().map(channel -> new Identity<>(channel.spectrumOrFlat())).toList();
    return diffuse.get(
        new DiffuseKey(tank, sources, lamps, spectra),
        key -> {
          Receivers onPatches = Receivers.onPatches(room.patches());
          PatchFacing facing = new PatchFacing(room.patches());
          double[][] direct = new double[channels.size()][room.patches().size()];
          walk(
              tank,
              sources,
              onPatches,
              new FluxCollector(lamps, radial, onPatches, facing, direct));
          double[][] lattices = new double[direct.length][];
          for (int c = 0; c < direct.length; c++) {
            lattices[c] = returns(tank, channels.get(c).spectrumOrFlat()).lattice(direct[c]);
          }
          return lattices;
        });
  }

  private double[][] returnToPlaces(
      Tank tank, Interreflection room, PhotonSpectrum spectrum, Places places) {
    double[][] rows = returns(tank, spectrum).rows();
    double[][] matrix = new double[places.size()][room.patches().size()];
    int[] nodes = new int[8];
    double[] weights = new double[8];
    for (int i = 0; i < matrix.length; i++) {
      room.locate(places.x(i), places.y(i), places.depth(i), nodes, weights);
      for (int corner = 0; corner < 8; corner++) {
        double[] row = rows[nodes[corner]];
        for (int p = 0; p < row.length; p++) {
          matrix[i][p] += weights[corner] * row[p];
        }
      }
    }
    return matrix;
  }

  private static void requireDistributions(Hanging hanging) {
    for (Channel channel : hanging.fixture().channels()) {
      if (channel.distribution().isEmpty()) {
        throw new IllegalArgumentException(
            String.format(
                "fixture %s: channel %s has no intensity distribution yet; fit a survey first",
                hanging.fixture().name(), channel.name()));
      }
    }
  }

  private PaneReflectances panes(Tank tank) {
    return lossless
        ? PaneReflectances.perfect()
        : panes.get(
            new PaneKey(tank.walls(), tank.water().refractiveIndex()),
            key -> PaneReflectances.of(key.walls, key.index));
  }

  private Interreflection interreflection(Tank tank) {
    // Absorption, opening and the bottom's reflectance enter later: one geometry serves them all.
    // So do panes that are nearly alike.
    Walls walls = tank.walls();
    for (Side side : Side.values()) {
      walls = walls.with(side, walls.on(side).withClear(aboutClear(walls.on(side).clear())));
    }
    Tank geometry =
        tank.withWalls(walls)
            .withWater(new Water(tank.water().refractiveIndex(), 0, 0))
            .withBottomReflectance(tank.bottomReflectance() > 0 ? 0.5 : 0)
            .withOpening(new Opening(0, List.of(), tank.opening().lid()))
            .withSurface(Agitation.STILL)
            .withAquascape(Aquascape.none());
    return rooms.get(
        geometry, key -> Interreflection.of(key, panes(key), lossless ? LOSSLESS_REACH : 1));
  }

  /**
   * The clear share that the geometry for some clear share is computed at; clean panes are many.
   */
  private static double aboutClear(double clear) {
    return clear == 1
        ? 1
        : LEAST_CLEAR + CLEAR_STEP * Math.max(0, Math.round((clear - LEAST_CLEAR) / CLEAR_STEP));
  }

  private Interreflection.Return returns(Tank tank, PhotonSpectrum spectrum) {
    return returns.get(
        new ReturnKey(tank.withAquascape(Aquascape.none()), new Identity<>(spectrum)),
        key -> interreflection(tank).attenuated(tank, attenuation(spectrum, tank)));
  }

  private PathTable table(Tank tank, double height, double depth, int steps) {
    return pathTables.get(
        new PathKey(height, depth, tank.water().refractiveIndex(), tank.opening().lid(), steps),
        key -> PathTable.of(key.height, key.depth, key.index, key.lid, key.steps));
  }

  private Attenuation attenuation(PhotonSpectrum spectrum, Tank tank) {
    if (lossless) {
      return Attenuation.none();
    }
    return attenuations.get(
        new AttenuationKey(new Identity<>(spectrum), tank.water()),
        key -> Attenuation.of(key.spectrum.value, key.water));
  }

  private FluxCollector.Radials radials(IntensityTable lamps, Attenuation[] attenuations) {
    List<Attenuation> ofWater = List.of(attenuations);
    return (paths, level) ->
        radials.get(
            new RadialKey(paths, level, lamps, ofWater),
            key -> FluxCollector.radial(paths, level, lamps, attenuations));
  }

  private Attenuation[] attenuations(List<Channel> channels, Tank tank) {
    return channels.stream()
        .map(channel -> attenuation(channel.spectrumOrFlat(), tank))
        .toArray(Attenuation[]::new);
  }

  private IntensityTable intensities(List<Channel> channels) {
    List<IntensityDistribution> distributions =
        channels.stream().map(channel -> channel.distribution().orElseThrow()).toList();
    return intensities.get(
        distributions.stream().map(Identity::new).toList(),
        key -> IntensityTable.of(distributions));
  }
}
