package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.Setting;
import parfield.optics.Attenuation;
import parfield.optics.Interface;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Side;
import parfield.tank.Tank;
import parfield.tank.Walls;

/**
 * Laws that every field obeys, whatever the scene.
 *
 * <p>Reciprocity is none of them: E_d belongs to a level receiver and a lamp with a distribution of
 * its own, so that the two cannot be exchanged. It holds for boundaries, panes and diffuse patches,
 * and is tested there.
 */
class FieldLawsTest {
  private static Fixture pointLamp(IntensityDistribution distribution) {
    return new Fixture(
        "lamp",
        0,
        0,
        List.of(new Emitter(0, 0, 0)),
        List.of(Channel.of("white", distribution)),
        List.of());
  }

  private static void assertAlike(double[] actual, double[] expected, double relative) {
    double largest = Arrays.stream(expected).max().orElseThrow();
    for (int i = 0; i < expected.length; i++) {
      assertThat(actual[i])
          .as("place %d", i)
          .isCloseTo(expected[i], within(relative * expected[i] + 1e-12 * largest));
    }
  }

  @Test
  void isLinearInPower() {
    SeededLaw.holds(
        8,
        random -> {
          Rig rig = RandomScenes.rig(random);
          Places places = Places.of(RandomScenes.places(random, rig.tank(), 40));
          double factor = 3 * random.nextDouble();
          Rig brighter =
              rig.withHangings(
                  hanging ->
                      hanging.withFixture(
                          hanging
                              .fixture()
                              .withChannels(
                                  hanging.fixture().channels().stream()
                                      .map(
                                          channel ->
                                              channel.withDistribution(
                                                  channel
                                                      .distribution()
                                                      .orElseThrow()
                                                      .scaled(factor)))
                                      .toList())));
          FastSolver solver = new FastSolver();
          double[] expected = solver.solve(rig, places).ppfd();
          for (int i = 0; i < expected.length; i++) {
            expected[i] *= factor;
          }
          assertAlike(solver.solve(brighter, places).ppfd(), expected, 1e-10);
        });
  }

  @Test
  void anySettingIsASumOfTheChannels() {
    SeededLaw.holds(
        8,
        random -> {
          Rig rig = RandomScenes.rig(random);
          Places places = Places.of(RandomScenes.places(random, rig.tank(), 40));
          Setting setting =
              new Setting(
                  Map.of("round", 100 * random.nextDouble(), "oval", 100 * random.nextDouble()));
          FastSolver solver = new FastSolver();
          UnitFields fields = solver.unitFields(rig, places);
          double[] sum = new double[places.size()];
          for (int i = 0; i < sum.length; i++) {
            for (int h = 0; h < 2; h++) {
              sum[i] += fields.unit(h, 0, i) * setting.percent("round") / 100;
              sum[i] += fields.unit(h, 1, i) * setting.percent("oval") / 100;
            }
          }
          assertAlike(fields.at(setting).ppfd(), sum, 1e-12);
          assertAlike(solver.solve(rig.withSetting(setting), places).ppfd(), sum, 1e-12);
          double[] full = fields.at(Setting.full()).ppfd();
          double[] round = fields.ofChannel(0);
          double[] oval = fields.ofChannel(1);
          for (int i = 0; i < full.length; i++) {
            round[i] += oval[i];
          }
          assertAlike(full, round, 1e-12);
        });
  }

  @Test
  void twoFixturesGiveTheSumOfEach() {
    SeededLaw.holds(
        8,
        random -> {
          Rig both = RandomScenes.rig(random);
          Places places = Places.of(RandomScenes.places(random, both.tank(), 40));
          FastSolver solver = new FastSolver();
          double[] sum = new double[places.size()];
          for (Hanging hanging : both.hangings()) {
            LightField alone =
                solver.solve(new Rig("alone", both.tank(), List.of(hanging)), places);
            for (int i = 0; i < sum.length; i++) {
              sum[i] += alone.ppfd(i);
            }
          }
          assertAlike(solver.solve(both, places).ppfd(), sum, 1e-12);
        });
  }

  @Test
  void permutedPlacesChangeNothing() {
    SeededLaw.holds(
        8,
        random -> {
          Rig rig = RandomScenes.rig(random);
          List<Place> places = RandomScenes.places(random, rig.tank(), 60);
          List<Integer> order = new ArrayList<>();
          for (int i = 0; i < places.size(); i++) {
            order.add(i);
          }
          Collections.shuffle(order, new Random(random.nextLong()));
          FastSolver solver = new FastSolver();
          LightField straight = solver.solve(rig, Places.of(places));
          LightField shuffled =
              solver.solve(rig, Places.of(order.stream().map(places::get).toList()));
          for (int i = 0; i < order.size(); i++) {
            assertThat(shuffled.ppfd(i)).isEqualTo(straight.ppfd(order.get(i)));
          }
        });
  }

  /** A solver that has solved other things gives what a fresh one gives. */
  @Test
  void whatWasSolvedBeforeChangesNothing() {
    SeededLaw.holds(
        6,
        random -> {
          FastSolver used = new FastSolver();
          Rig other = RandomScenes.rig(random);
          used.solve(other, Places.of(RandomScenes.places(random, other.tank(), 10)));
          Rig rig = RandomScenes.rig(random);
          Places places = Places.of(RandomScenes.places(random, rig.tank(), 30));
          double[] first = used.solve(rig, places).ppfd();
          assertThat(used.solve(rig, places).ppfd()).isEqualTo(first);
          assertThat(new FastSolver().solve(rig, places).ppfd()).isEqualTo(first);
        });
  }

  /** The mirror image of a scene, left for right, has the mirror image of its field. */
  @Test
  void aMirroredSceneHasAMirroredField() {
    SeededLaw.holds(
        8,
        random -> {
          Rig rig = RandomScenes.rig(random);
          Tank tank = rig.tank();
          List<Place> places = RandomScenes.places(random, tank, 40);
          Walls walls = tank.walls();
          Opening opening = tank.opening();
          Tank mirroredTank =
              tank.withWalls(walls.with(Side.LEFT, walls.right()).with(Side.RIGHT, walls.left()))
                  .withOpening(
                      new Opening(
                          opening.rim(),
                          opening.opaque().stream()
                              .map(
                                  r ->
                                      new Rectangle(
                                          tank.length() - r.toX(),
                                          tank.length() - r.fromX(),
                                          r.fromY(),
                                          r.toY()))
                              .toList(),
                          opening.lid()));
          Rig mirrored =
              rig.withTank(mirroredTank)
                  .withHangings(
                      h ->
                          new Hanging(
                              mirrored(h.fixture()),
                              tank.length() - h.x(),
                              h.y(),
                              h.height(),
                              h.tilt(),
                              -h.yaw(),
                              h.setting()));
          double[] expected = new FastSolver().solve(rig, Places.of(places)).ppfd();
          List<Place> others =
              places.stream().map(p -> new Place(tank.length() - p.x(), p.y(), p.depth())).toList();
          assertAlike(new FastSolver().solve(mirrored, Places.of(others)).ppfd(), expected, 1e-8);
        });
  }

  /**
   * The fixture seen in a mirror: emitters change sides along its length; lamps are alike there.
   */
  private static Fixture mirrored(Fixture fixture) {
    return new Fixture(
        fixture.name(),
        fixture.length(),
        fixture.width(),
        fixture.emitters().stream()
            .map(emitter -> new Emitter(-emitter.x(), emitter.y(), emitter.aperture()))
            .toList(),
        fixture.channels(),
        fixture.masters());
  }

  @Test
  void aSymmetricRigOverASymmetricTankHasASymmetricField() {
    SeededLaw.holds(
        8,
        random -> {
          Tank tank = Tank.of(.9, .6, .3 + .3 * random.nextDouble()).withBottomReflectance(.3);
          Fixture lamp =
              new Fixture(
                  "lamp",
                  0,
                  0,
                  List.of(new Emitter(-.1, 0, .02), new Emitter(.1, 0, .02)),
                  RandomScenes.fixture(random, "other").channels(),
                  List.of());
          Rig rig =
              new Rig(
                  "symmetric",
                  tank,
                  List.of(Hanging.level(lamp, .25, .3, .2), Hanging.level(lamp, .65, .3, .2)));
          List<Place> places = RandomScenes.places(random, tank, 30);
          double[] here = new FastSolver().solve(rig, Places.of(places)).ppfd();
          for (List<Place> images :
              List.of(
                  places.stream().map(p -> new Place(.9 - p.x(), p.y(), p.depth())).toList(),
                  places.stream().map(p -> new Place(p.x(), .6 - p.y(), p.depth())).toList())) {
            assertAlike(new FastSolver().solve(rig, Places.of(images)).ppfd(), here, 1e-8);
          }
        });
  }

  @Test
  void halfATurnOfASymmetricLampChangesNothing() {
    SeededLaw.holds(
        8,
        random -> {
          Tank tank = RandomScenes.tank(random);
          Fixture lamp =
              new Fixture(
                  "lamp",
                  0,
                  0,
                  List.of(new Emitter(-.1, .02, .02), new Emitter(.1, -.02, .02)),
                  RandomScenes.fixture(random, "other").channels(),
                  List.of());
          double yaw = .2 + random.nextDouble();
          Places places = Places.of(RandomScenes.places(random, tank, 30));
          double[] here = turned(tank, lamp, yaw, places);
          assertAlike(turned(tank, lamp, yaw + Math.PI, places), here, 1e-8);
          assertAlike(turned(tank, lamp, yaw - 2 * Math.PI, places), here, 1e-8);
        });
  }

  private static double[] turned(Tank tank, Fixture lamp, double yaw, Places places) {
    Hanging hanging =
        new Hanging(lamp, .4 * tank.length(), .5 * tank.width(), .2, 0, yaw, Setting.full());
    return new FastSolver().solve(new Rig("turned", tank, List.of(hanging)), places).ppfd();
  }

  /** A quarter turn of an oval lamp over a square tank turns the field. */
  @Test
  void aQuarterTurnTurnsTheField() {
    SplittableRandom random = new SplittableRandom(3);
    Tank tank = Tank.of(.6, .6, .4).withBottomReflectance(.3);
    Fixture lamp =
        new Fixture(
            "lamp",
            0,
            0,
            List.of(new Emitter(-.1, 0, 0), new Emitter(.1, 0, 0)),
            RandomScenes.fixture(random, "other").channels(),
            List.of());
    List<Place> places = RandomScenes.places(random, tank, 40);
    List<Place> swapped = places.stream().map(p -> new Place(p.y(), p.x(), p.depth())).toList();
    double[] along = square(tank, lamp, 0, places);
    double[] across = square(tank, lamp, Math.PI / 2, swapped);
    // Patches and lattice of the diffuse part differ along x and y.
    assertAlike(across, along, 5e-3);
    Tank dark = tank.withBottomReflectance(0);
    assertAlike(square(dark, lamp, Math.PI / 2, swapped), square(dark, lamp, 0, places), 1e-4);
  }

  private static double[] square(Tank tank, Fixture lamp, double yaw, List<Place> places) {
    Hanging hanging = new Hanging(lamp, .3, .3, .2, 0, yaw, Setting.full());
    return new FastSolver()
        .solve(new Rig("square", tank, List.of(hanging)), Places.of(places))
        .ppfd();
  }

  /** A positive tilt turns the light toward +y, a negative one toward −y. */
  @Test
  void tiltMovesLightSideways() {
    Tank tank = RandomScenes.black(1, 1, .4);
    Fixture lamp = pointLamp(new CosinePower(100, 4));
    Places plane = Places.plane(tank, .2, 20, 20);
    double level = meanY(tank, lamp, 0, plane);
    assertThat(level).isCloseTo(.5, within(1e-9));
    double last = level;
    for (double tilt : new double[] {.1, .2, .4}) {
      double there = meanY(tank, lamp, tilt, plane);
      assertThat(there).isGreaterThan(last);
      assertThat(meanY(tank, lamp, -tilt, plane)).isCloseTo(1 - there, within(1e-9));
      last = there;
    }
  }

  /** Turned by a quarter, a tilt acts along −x: yaw turns +x toward +y, so +y toward −x. */
  @Test
  void yawTurnsTheTilt() {
    Tank tank = RandomScenes.black(1, 1, .4);
    Fixture lamp = pointLamp(new CosinePower(100, 4));
    Hanging hanging = new Hanging(lamp, .5, .5, .3, .3, Math.PI / 2, Setting.full());
    LightField field =
        new FastSolver()
            .solve(
                new Rig("turned", tank, List.of(hanging)),
                Places.of(List.of(new Place(.3, .5, .2), new Place(.7, .5, .2))));
    assertThat(field.ppfd(0)).isGreaterThan(1.2 * field.ppfd(1));
  }

  private static double meanY(Tank tank, Fixture lamp, double tilt, Places plane) {
    Hanging hanging = new Hanging(lamp, .5, .5, .3, tilt, 0, Setting.full());
    LightField field = new FastSolver().solve(new Rig("tilted", tank, List.of(hanging)), plane);
    double sum = 0;
    double moment = 0;
    for (int i = 0; i < plane.size(); i++) {
      sum += field.ppfd(i);
      moment += field.ppfd(i) * plane.y(i);
    }
    return moment / sum;
  }

  /** Straight below a lamp that is tilted by t stands what it emits at t: PHYSICS §1 for r = 0. */
  @Test
  void aTiltedLampIsSeenUnderItsTilt() {
    SeededLaw.holds(
        40,
        random -> {
          double height = .1 + .4 * random.nextDouble();
          double depth = .05 + .4 * random.nextDouble();
          double tilt = 2.4 * (random.nextDouble() - .5);
          CosinePower lobe = new CosinePower(100, 3 * random.nextDouble());
          Tank tank = RandomScenes.black(2, 2, .5);
          Hanging hanging =
              new Hanging(
                  pointLamp(lobe), 1, 1, height, tilt, 6 * random.nextDouble(), Setting.full());
          double index = tank.water().refractiveIndex();
          double apparent = height + depth / index;
          double straight =
              lobe.intensity(Math.abs(tilt), 0)
                  * (1 - Interface.reflectance(1, 1, index))
                  / (apparent * apparent);
          double water = Attenuation.of(PhotonSpectrum.flat(), tank.water()).transmittance(depth);
          double got =
              new FastSolver()
                  .solve(
                      new Rig("tilted", tank, List.of(hanging)),
                      Places.of(List.of(new Place(1, 1, depth))))
                  .ppfd(0);
          assertThat(got).isCloseTo(straight * water, within(1e-4 * straight));
        });
  }

  /** Refining the grid of a plane, its mean settles. */
  @Test
  void aFinerGridConverges() {
    SeededLaw.holds(
        4,
        random -> {
          Tank tank = Tank.of(.9, .6, .5).withBottomReflectance(.3);
          Rig rig =
              new Rig(
                  "one",
                  tank,
                  List.of(
                      Hanging.level(
                          pointLamp(new CosinePower(100, 1 + 2 * random.nextDouble())),
                          .2 + .5 * random.nextDouble(),
                          .2 + .2 * random.nextDouble(),
                          .2)));
          FastSolver solver = new FastSolver();
          double fine = mean(solver, rig, 192);
          for (int columns : new int[] {12, 24, 48, 96}) {
            // Seams between images cross cells: the error falls with the size of a cell.
            assertThat(mean(solver, rig, columns))
                .as("%d columns", columns)
                .isCloseTo(fine, within(.1 / columns * fine));
          }
        });
  }

  private static double mean(FastSolver solver, Rig rig, int columns) {
    LightField field = solver.solve(rig, Places.plane(rig.tank(), .3, columns, columns * 2 / 3));
    return Arrays.stream(field.ppfd()).average().orElseThrow();
  }

  /** A wide aperture is many points; a small one comes close to one. */
  @Test
  void aSmallApertureComesCloseToAPoint() {
    Tank tank = Tank.of(.9, .6, .5);
    Places plane = Places.plane(tank, .3, 12, 8);
    double[] point = aperture(tank, 0, plane);
    assertAlike(aperture(tank, .002, plane), point, 1e-4);
    double small = away(aperture(tank, .02, plane), point);
    double large = away(aperture(tank, .08, plane), point);
    assertThat(small).isLessThan(large / 4);
  }

  private static double[] aperture(Tank tank, double aperture, Places places) {
    Fixture lamp =
        new Fixture(
            "lamp",
            0,
            0,
            List.of(new Emitter(0, 0, aperture)),
            List.of(Channel.of("white", new CosinePower(100, 2))),
            List.of());
    Rig rig = new Rig("one", tank, List.of(Hanging.level(lamp, .45, .3, .1)));
    return new FastSolver().solve(rig, places).ppfd();
  }

  private static double away(double[] a, double[] b) {
    double largest = 0;
    for (int i = 0; i < a.length; i++) {
      largest = Math.max(largest, Math.abs(a[i] / b[i] - 1));
    }
    return largest;
  }
}
