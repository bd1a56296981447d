package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.optics.Attenuation;
import parfield.optics.Interface;
import parfield.optics.Pane;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Side;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/** What panes, bottom, opening, lid and water do to the field. */
class WallsTest {
  private static final Tank TANK = Tank.of(.9, .6, .5);
  private static final Place NEAR_LEFT = new Place(.02, .3, .25);
  private static final CosinePower LOBE = new CosinePower(100, 2);
  private static final Fixture LAMP =
      new Fixture(
          "lamp",
          0,
          0,
          List.of(new Emitter(0, 0, 0)),
          List.of(Channel.of("white", LOBE)),
          List.of());

  private static double at(Tank tank, double x, Place place) {
    Rig rig = new Rig("one", tank, List.of(Hanging.level(LAMP, x, .3, .2)));
    return new FastSolver().solve(rig, Places.of(List.of(place))).ppfd(0);
  }

  private static Tank left(Wall wall) {
    return TANK.withWalls(TANK.walls().with(Side.LEFT, wall));
  }

  /**
   * One clean pane and three black ones: the straight path and its mirror image in the pane, each
   * solved by itself. PHYSICS §3: beyond 48.27° from the pane's normal all is reflected.
   */
  @Test
  void aCleanPaneAddsOneImage() {
    Tank black = RandomScenes.black(.9, .6, .5);
    Tank tank = black.withWalls(black.walls().with(Side.LEFT, Wall.clean()));
    SeededLaw.holds(
        200,
        random -> {
          double lampX = .1 + .5 * random.nextDouble();
          Place place = new Place(.6 * random.nextDouble(), .3, .02 + .4 * random.nextDouble());
          double direct = path(tank, lampX, place.x(), place.depth());
          double image = path(tank, lampX, -place.x(), place.depth());
          // The pane's table is linear over the steep onset of total reflection.
          assertThat(at(tank, lampX, place))
              .isCloseTo(direct + image, within(1e-3 * (direct + image)));
        });
  }

  /** E_d by one path in the plane y = 0.3, mirrored by the left pane where x is negative. */
  private static double path(Tank tank, double lampX, double x, double depth) {
    double index = tank.water().refractiveIndex();
    SurfacePath path = SurfacePath.solve(.2, depth, Math.abs(x - lampX), index);
    double crossing = lampX + Math.signum(x - lampX) * path.crossing();
    if (crossing < 0) {
      return 0;
    }
    double pane = x < 0 ? Pane.reflectance(path.sineWater(), index, Pane.GLASS, 1) : 1;
    return LOBE.intensity(Math.asin(path.sineAir()), 0)
        * path.spread()
        * (1 - Interface.reflectance(path.cosineAir(), 1, index))
        * Attenuation.of(PhotonSpectrum.flat(), tank.water()).transmittance(path.lengthInWater())
        * pane;
  }

  @Test
  void whatCoversAPaneDarkensThePlacesNearIt() {
    double clean = at(left(Wall.clean()), .45, NEAR_LEFT);
    double film = at(left(Wall.film()), .45, NEAR_LEFT);
    double painted = at(left(Wall.painted()), .45, NEAR_LEFT);
    double opaque = at(left(Wall.opaque()), .45, NEAR_LEFT);
    double black = at(left(new Wall(0, Wall.Cover.IN_WATER, 0)), .45, NEAR_LEFT);
    assertThat(clean).isGreaterThan(film);
    assertThat(film).isGreaterThan(painted);
    assertThat(painted).isGreaterThan(opaque);
    assertThat(opaque).isGreaterThan(black);
    assertThat(at(left(Wall.coveredWithAirGap()), .45, NEAR_LEFT)).isEqualTo(clean);
    // PHYSICS §3: leaving walls out is wrong by tens of per cent near the panes.
    assertThat(black).isLessThan(.75 * clean);
  }

  /** The clearer a pane with a black cover, the brighter every place. */
  @Test
  void theClearerThePaneTheMoreLight() {
    SeededLaw.holds(
        10,
        random -> {
          Place place = RandomScenes.places(random, TANK, 1).get(0);
          double last = 0;
          for (double clear : new double[] {0, .25, .5, .75, 1}) {
            double now = at(left(new Wall(clear, Wall.Cover.IN_WATER, 0)), .4, place);
            assertThat(now).isGreaterThanOrEqualTo(last);
            last = now;
          }
        });
  }

  /** A ray that grazes a pane is reflected whole: the pane at x = 0 doubles a place on it. */
  @Test
  void aPlaceOnAPaneBelowALampAboveThatPaneIsLit() {
    Tank black = RandomScenes.black(.9, .6, .5);
    Tank tank = black.withWalls(black.walls().with(Side.LEFT, Wall.clean()));
    Place place = new Place(0, .3, .25);
    double withoutPane = path(black, 0, 0, .25);
    assertThat(at(black, 0, place)).isCloseTo(withoutPane, within(1e-4 * withoutPane));
    assertThat(at(tank, 0, place)).isCloseTo(2 * withoutPane, within(1e-4 * withoutPane));
  }

  @Test
  void aPalerBottomBrightensEveryPlace() {
    SeededLaw.holds(
        10,
        random -> {
          Place place = RandomScenes.places(random, TANK, 1).get(0);
          double last = 0;
          for (double bottom : new double[] {0, .2, .4, .8}) {
            double now = at(TANK.withBottomReflectance(bottom), .4, place);
            assertThat(now).isGreaterThan(last);
            last = now;
          }
        });
  }

  @Test
  void yellowerWaterDarkensEveryPlace() {
    SeededLaw.holds(
        10,
        random -> {
          Place place = RandomScenes.places(random, TANK, 2).get(1);
          double last = Double.POSITIVE_INFINITY;
          for (double yellowing : new double[] {0, .1, .4, 2}) {
            double now =
                at(TANK.withBottomReflectance(.3).withWater(Water.seaWater(yellowing)), .4, place);
            assertThat(now).isLessThan(last);
            last = now;
          }
        });
  }

  @Test
  void aMeshTakesItsShareEverywhere() {
    SeededLaw.holds(
        10,
        random -> {
          Tank tank = TANK.withBottomReflectance(.3);
          Place place = RandomScenes.places(random, tank, 1).get(0);
          double open = at(tank, .4, place);
          double mesh =
              at(tank.withOpening(new Opening(0, List.of(), new Lid.Mesh(.7))), .4, place);
          assertThat(mesh).isCloseTo(.7 * open, within(1e-12 * open));
        });
  }

  /**
   * Straight down a clear sheet of index 1.52 transmits 1 − R, R = 2r/(1 + r), r = (.52/2.52)²;
   * what the water turns back, (.34/2.34)², meets it again, and so on: a geometric series.
   */
  @Test
  void aClearLidTransmitsAsASlab() {
    Tank black = RandomScenes.black(2, 2, .5);
    Place below = new Place(.4, .3, .25);
    double face = Math.pow(.52 / 2.52, 2);
    double open = at(black, .4, below);
    double lid = at(black.withOpening(new Opening(0, List.of(), new Lid.Clear(1.52))), .4, below);
    double sheet = 2 * face / (1 + face);
    double water = Math.pow(.34 / 2.34, 2);
    assertThat(lid / open).isCloseTo((1 - sheet) / (1 - sheet * water), within(1e-9));
  }

  /** Behind a brace stands no light that would have crossed it; aside of it nothing changes. */
  @Test
  void aBraceCastsASharpShadowInStillWater() {
    Tank black = RandomScenes.black(.9, .6, .5);
    Tank braced =
        black.withOpening(new Opening(0, List.of(new Rectangle(.5, .55, 0, .6)), new Lid.None()));
    for (double x = .02; x < .9; x += .01) {
      SurfacePath path = SurfacePath.solve(.2, .25, Math.abs(x - .4), 1.34);
      double crossing = .4 + Math.signum(x - .4) * path.crossing();
      Place place = new Place(x, .3, .25);
      if (crossing > .5 && crossing < .55) {
        assertThat(at(braced, .4, place)).as("x %s", x).isZero();
      } else {
        assertThat(at(braced, .4, place)).as("x %s", x).isEqualTo(at(black, .4, place));
      }
    }
  }

  /** Reciprocity between diffuse patches, images included: A₁ F₁₂ = A₂ F₂₁. */
  @Test
  void patchesOfTheBottomExchangeLightEvenly() {
    Tank tank =
        new Tank(
            .9,
            .6,
            .4,
            new Walls(Wall.clean(), Wall.film(), Wall.coralline(), Wall.painted()),
            .4,
            Opening.free(),
            Water.seaWater(0),
            TANK.surface());
    PaneReflectances panes = PaneReflectances.of(tank.walls(), 1.34);
    DiffuseKernel kernel = new DiffuseKernel(tank, panes, 1);
    List<Patch> bottom = Patch.of(tank).stream().filter(patch -> patch.side() == null).toList();
    SeededLaw.holds(
        200,
        random -> {
          Patch a = bottom.get(random.nextInt(bottom.size()));
          Patch b = bottom.get(random.nextInt(bottom.size()));
          double there = a.area() * transfer(kernel, b, a)[0];
          double back = b.area() * transfer(kernel, a, b)[0];
          // An image on the very rim of the reach may count on one side only.
          assertThat(there).isCloseTo(back, within(1e-5 * back));
          assertThat(path(kernel, a, b)).isCloseTo(path(kernel, b, a), within(1e-5));
        });
  }

  /**
   * Panes clearer or duller than those that a room was computed for are reached by its derivatives:
   * against a room computed for these very panes, as far apart as the solver lets them be.
   */
  @Test
  void aRoomServesPanesThatAreNearlyAlike() {
    Tank about = room(0.9, 0.9, 0.1);
    Tank stated = room(0.7, 0.7, 0.2);
    Interreflection exact =
        Interreflection.of(stated, PaneReflectances.of(stated.walls(), 1.34), 1);
    Interreflection near = Interreflection.of(about, PaneReflectances.of(about.walls(), 1.34), 1);
    double[] direct = new double[exact.patches().size()];
    for (int i = 0; i < direct.length; i++) {
      direct[i] = 100 + i % 7;
    }
    double[] right = exact.attenuated(stated, Attenuation.none()).lattice(direct);
    double[] told = near.attenuated(stated, Attenuation.none()).lattice(direct);
    double[] unmoved = near.attenuated(about, Attenuation.none()).lattice(direct);
    double missed = 0;
    double wouldMiss = 0;
    for (int node = 0; node < right.length; node++) {
      missed = Math.max(missed, Math.abs(told[node] / right[node] - 1));
      wouldMiss = Math.max(wouldMiss, Math.abs(unmoved[node] / right[node] - 1));
    }
    assertThat(missed).isLessThan(0.03);
    assertThat(wouldMiss).isGreaterThan(10 * missed);
  }

  /** Its covers send nothing back, so that the panes' mirrors alone tell two of them apart. */
  private static Tank room(double left, double front, double back) {
    return new Tank(
        .9,
        .6,
        .4,
        new Walls(
            new Wall(left, Wall.Cover.IN_WATER, 0),
            new Wall(left, Wall.Cover.IN_WATER, 0),
            new Wall(front, Wall.Cover.IN_WATER, 0),
            new Wall(back, Wall.Cover.BEHIND_GLASS, 0)),
        .4,
        Opening.free(),
        Water.seaWater(0),
        TANK.surface());
  }

  private static double path(DiffuseKernel kernel, Patch from, Patch to) {
    double[] view = transfer(kernel, from, to);
    return view[0] > 0 ? view[1] / view[0] : 0;
  }

  private static double[] transfer(DiffuseKernel kernel, Patch from, Patch to) {
    return kernel.transfer(from, to.x(), to.y(), to.z(), to.nx(), to.ny(), to.nz());
  }
}
