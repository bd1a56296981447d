package parfield.photon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Rock;
import parfield.field.FastSolver;
import parfield.field.LightBudget;
import parfield.field.Places;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.optics.Reflectance;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/** The reference solver as a whole: what it gives, how it repeats, what it refuses. */
class PhotonTracerTest {
  private static final Tank TANK = Tank.of(.9, .6, .5).withBottomReflectance(.35);

  private static final Fixture LAMP =
      new Fixture(
          "lamp",
          0,
          0,
          List.of(new Emitter(-.1, 0, .02), new Emitter(.1, .01, .02)),
          List.of(
              Channel.of("blue", new CosinePower(60, 3)),
              Channel.of("white", new CosinePower(30, 1))),
          List.of());

  private static final Places PLACES = Places.volume(TANK, 3, 2, 2);

  private static Rig over(Tank tank) {
    return new Rig("one", tank, List.of(Hanging.level(LAMP, .4, .3, .2)));
  }

  private static TracedField trace(Tank tank, Wanted wanted, long packets) {
    return new PhotonTracer(Effort.packets(packets, 7)).trace(over(tank), wanted, Watch.patient());
  }

  @Test
  void theSeedAloneDecides() {
    Wanted wanted = new Wanted(PLACES, .05, Optional.of(new VoxelGrid(4, 3, 2)), List.of());
    Effort effort = Effort.packets(200_000, 3);
    TracedField one = traceWith(effort.withThreads(1), wanted);
    TracedField three = traceWith(effort.withThreads(3), wanted);
    TracedField other = traceWith(Effort.packets(200_000, 4), wanted);
    for (int i = 0; i < PLACES.size(); i++) {
      assertThat(three.downwelling(i)).isEqualTo(one.downwelling(i));
      assertThat(three.downwellingError(i)).isEqualTo(one.downwellingError(i));
      assertThat(three.upwelling(i)).isEqualTo(one.upwelling(i));
      assertThat(other.downwelling(i)).isNotEqualTo(one.downwelling(i));
    }
    for (int i = 0; i < 24; i++) {
      assertThat(three.scalar(i)).isEqualTo(one.scalar(i));
    }
  }

  private static TracedField traceWith(Effort effort, Wanted wanted) {
    return new PhotonTracer(effort).trace(over(TANK), wanted, Watch.patient());
  }

  @Test
  void agreesWithTheFastSolver() {
    TracedField traced = trace(TANK, Wanted.at(PLACES).withSensor(.03), 1_500_000);
    double[] fast = new FastSolver().solve(over(TANK), PLACES).ppfd();
    double sum = 0;
    for (int i = 0; i < fast.length; i++) {
      double miss = (traced.downwelling(i) - fast[i]) / traced.downwellingError(i);
      assertThat(Math.abs(miss)).as("place %d, standard errors", i).isLessThan(4.5);
      sum += miss * miss / fast.length;
    }
    // Mean square of twelve standard normal numbers: 0.1 to 2.9 with probability 0.9999.
    assertThat(sum).isBetween(0.1, 2.9);
  }

  /** E_o − 0 ≥ E_d + E_u, and in a channel at full output the sum of channels is the whole. */
  @Test
  void irradiancesHangTogether() {
    VoxelGrid layer = new VoxelGrid(1, 1, 25);
    Wanted wanted =
        new Wanted(Places.of(List.of(new Place(.45, .3, .25))), .04, Optional.of(layer), List.of());
    TracedField traced = trace(TANK, wanted, 300_000);
    assertThat(traced.upwelling(0)).isGreaterThan(0).isLessThan(traced.downwelling(0));
    double mean = traced.scalar(12);
    assertThat(mean).isGreaterThan(0);
    double both = traced.unitFields().ofChannel(0)[0] + traced.unitFields().ofChannel(1)[0];
    assertThat(traced.downwelling(0)).isCloseTo(both, within(1e-9 * both));
    double scalars = traced.scalarOf(0, 0, 12) + traced.scalarOf(0, 1, 12);
    assertThat(mean).isCloseTo(scalars, within(1e-9 * scalars));
  }

  /** A coral that faces the surface receives what a level sensor reads; one that hangs, E_u. */
  @Test
  void placementsReceiveWhatTheyFace() {
    Place place = new Place(.4, .3, .3);
    Wanted wanted =
        Wanted.at(Places.of(List.of(place)))
            .withSensor(.06)
            .withPlacements(
                List.of(
                    new Placement(place, 0, 0, -1),
                    new Placement(place, 0, 0, 1),
                    new Placement(place, 1, 0, 0)));
    TracedField traced = trace(TANK, wanted, 1_500_000);
    assertThat(traced.onPlacement(0))
        .isCloseTo(traced.downwelling(0), within(.03 * traced.downwelling(0)));
    assertThat(traced.onPlacement(1))
        .isCloseTo(traced.upwelling(0), within(.05 * traced.upwelling(0)));
    assertThat(traced.onPlacement(2)).isLessThan(traced.onPlacement(0)).isGreaterThan(0);
    assertThat(traced.onPlacementError(0)).isPositive();
  }

  /** What is launched and what is spilled agree with the integrals of the light budget. */
  @Test
  void launchesAndSpillsWhatTheLampSends() {
    TracedField traced = trace(TANK, Wanted.at(PLACES), 300_000);
    LightBudget budget = LightBudget.of(over(TANK));
    assertThat(traced.launched()).isCloseTo(budget.emitted(), within(.005 * budget.emitted()));
    assertThat(traced.ended(Fate.SPILLED) / traced.launched())
        .isCloseTo(budget.spill(), within(.003));
    double enters = budget.entered() / budget.emitted();
    assertThat(1 - (traced.ended(Fate.SPILLED) + traced.ended(Fate.RETURNED)) / traced.launched())
        .isCloseTo(enters, within(.004));
  }

  /**
   * Perfect panes, no absorption, black bottom: every plane gets the flux that entered. 361.218
   * µmol/s of 418.879 emitted: check value of the design, made with an independent program.
   */
  @Test
  void perfectPanesKeepTheFlux() {
    Fixture lamp =
        new Fixture(
            "two",
            0,
            0,
            List.of(new Emitter(-.15, 0, 0), new Emitter(.15, 0, 0)),
            List.of(Channel.of("white", new CosinePower(100, 2))),
            List.of());
    Tank tank = Tank.of(.9, .6, .5);
    Rig rig = new Rig("two", tank, List.of(Hanging.level(lamp, .45, .3, .2)));
    Layer clear =
        new Layer(
            0,
            .5,
            1.34,
            new double[Wavebands.COUNT],
            new double[Wavebands.COUNT],
            parfield.optics.PhaseFunction.isotropic(),
            1);
    Scene scene =
        new Scene(
                .9,
                .6,
                new Layer[] {clear},
                1,
                1,
                0,
                Opening.free(),
                null,
                new Diffuser(new double[Wavebands.COUNT]),
                Aquascape.none(),
                new Diffuser[0])
            .withPerfectPanes();
    Wavebands bands = new Wavebands(List.of(PhotonSpectrum.flat()), tank.water());
    Places centre = Places.of(List.of(new Place(.45, .3, .1), new Place(.45, .3, .5)));
    Batches batches =
        new Batches(4, new double[] {1}, new Ledger(1).size(), List.of(new int[] {0, 2}));
    batches.run(
        () ->
            new PacketTrial(
                scene,
                Wavebands.COUNT,
                new RigEmission(rig, RigEmission.tables(rig), bands),
                channels -> new Detector[] {new PlaceSensors(centre, 2, 0, channels)},
                0,
                batches.packetsPerBatch()),
        Effort.packets(400_000, 5),
        Watch.patient());
    for (int plane = 0; plane < 2; plane++) {
      assertThat(batches.mean(plane)).isCloseTo(361.218, within(3 * batches.error(plane) + .01));
      assertThat(batches.error(plane)).isLessThan(.003 * 361.218);
    }
  }

  /** Every surface in the way, and all photons are accounted for. */
  @Test
  void nothingIsLost() {
    Tank busy =
        TANK.withWalls(new Walls(Wall.film(), Wall.coralline(), Wall.painted(), Wall.clean()))
            .withOpening(
                new Opening(.02, List.of(new Rectangle(.4, .5, 0, .6)), new Lid.Clear(1.49), .05))
            .withSurface(parfield.optics.Agitation.STRONG)
            .withWater(
                parfield.optics.Water.seaWater(.1)
                    .withScattering(
                        new parfield.optics.Scattering(.3, 1, new parfield.optics.Rayleigh())))
            .withAquascape(
                Aquascape.of(
                    List.of(
                        new Rock(
                            "r",
                            new Box(.3, .3, .4, .2, .2, .2, .4),
                            Reflectance.tabulated(
                                new double[] {400, 700}, new double[] {.1, .4})))));
    TracedField traced = trace(busy, Wanted.at(Places.of(List.of(new Place(.8, .5, .2)))), 200_000);
    double ended = 0;
    for (Fate fate : Fate.values()) {
      if (fate != Fate.BELOW && fate != Fate.DROPPED) {
        assertThat(traced.ended(fate)).as("%s", fate).isPositive();
      }
      ended += traced.ended(fate);
    }
    assertThat(ended).isCloseTo(traced.launched(), within(1e-9 * traced.launched()));
    assertThat(Math.abs(traced.ended(Fate.DROPPED))).isLessThan(.002 * traced.launched());
  }

  @Test
  void stopsWhenItIsGoodEnoughOrTold() {
    Wanted wanted = Wanted.at(PLACES).withSensor(.1);
    TracedField good =
        new PhotonTracer(Effort.until(.02, 1)).trace(over(TANK), wanted, Watch.patient());
    assertThat(good.worstError()).isLessThanOrEqualTo(.02);
    TracedField told =
        new PhotonTracer(Effort.until(1e-9, 1))
            .trace(over(TANK), wanted, (packets, error) -> packets < 250_000);
    assertThat(told.packets()).isBetween(250_000L, 400_000L);
  }

  @Test
  void saysWhatIsWrong() {
    assertThatThrownBy(() -> trace(TANK, Wanted.at(Places.of(List.of(new Place(1, .1, .1)))), 1))
        .hasMessage(
            "a place lies outside the water: x 1.0, y 0.1, depth 0.1 m in a tank of 0.9 x 0.6 x"
                + " 0.5 m");
    Fixture dark =
        LAMP.withChannels(
            List.of(
                new Channel(
                    "blue",
                    Optional.empty(),
                    java.util.OptionalDouble.empty(),
                    parfield.lamp.OutputCurve.proportional(),
                    Optional.empty())));
    Rig rig = new Rig("r", TANK, List.of(Hanging.level(dark, .4, .3, .2)));
    assertThatThrownBy(() -> new PhotonTracer(Effort.packets(1, 1)).unitFields(rig, PLACES))
        .hasMessage(
            "fixture lamp: channel blue has no intensity distribution yet; fit a survey first");
    assertThatThrownBy(() -> new Effort(1, 0, .01, 1))
        .hasMessage("at least one thread must work; got 0");
    assertThatThrownBy(() -> Effort.until(0, 1))
        .hasMessage("the wanted standard error must be above 0; got 0.0");
    assertThatThrownBy(() -> Effort.packets(0, 1))
        .hasMessage("at least one packet must be sent; got 0");
    assertThatThrownBy(() -> new VoxelGrid(0, 1, 1))
        .hasMessage("a grid of voxels needs at least one each way; got 0 x 1 x 1");
    assertThatThrownBy(() -> new Placement(new Place(.1, .1, .1), 0, 0, 2))
        .hasMessage("a placement's normal must be of length 1; got (0.0, 0.0, 2.0)");
  }

  @Test
  void aDarkRigIsDark() {
    Rig off = over(TANK).withSetting(new Setting(java.util.Map.of("blue", 0.0, "white", 0.0)));
    TracedField traced =
        new PhotonTracer(Effort.packets(50_000, 1)).trace(off, Wanted.at(PLACES), Watch.patient());
    assertThat(traced.downwelling(0)).isZero();
    assertThat(traced.unitFields().ofChannel(0)[0]).isPositive();
  }
}
