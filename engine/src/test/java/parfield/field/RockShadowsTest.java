package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Bounds;
import parfield.aquascape.Box;
import parfield.aquascape.Ellipsoid;
import parfield.aquascape.Rock;
import parfield.aquascape.Shape;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.optics.Reflectance;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Place;
import parfield.tank.Tank;

/** Shadows of rocks under water. */
class RockShadowsTest {
  private static final Reflectance GRAY = Reflectance.gray(0.2);
  private static final int CELLS = 3;

  private static Aquascape rocks(Shape... shapes) {
    List<Rock> rocks = new ArrayList<>();
    for (Shape shape : shapes) {
      rocks.add(new Rock("rock " + rocks.size(), shape, GRAY));
    }
    return Aquascape.of(rocks);
  }

  private static Rig rig(Tank tank) {
    Fixture lamp =
        new Fixture(
            "lamp",
            0,
            0,
            List.of(new Emitter(0, 0, 0)),
            List.of(Channel.of("white", new CosinePower(100, 2))),
            List.of());
    return new Rig("rig", tank, List.of(Hanging.level(lamp, tank.length() / 2, .3, .2)));
  }

  /** Rocks wholly inside a tank. */
  private static List<Shape> inside(SplittableRandom random, Tank tank) {
    List<Shape> shapes = new ArrayList<>();
    while (shapes.size() < 3) {
      double x = tank.length() * random.nextDouble();
      double y = tank.width() * random.nextDouble();
      double z = tank.depth() * random.nextDouble();
      double a = .01 + .15 * random.nextDouble();
      double b = .01 + .15 * random.nextDouble();
      double c = .01 + .1 * random.nextDouble();
      double yaw = 3 * random.nextDouble();
      Shape shape =
          random.nextBoolean()
              ? new Box(x, y, z, 2 * a, 2 * b, 2 * c, yaw)
              : new Ellipsoid(x, y, z, a, b, c, yaw);
      Bounds bounds = shape.bounds();
      if (bounds.fromX() > 0
          && bounds.toX() < tank.length()
          && bounds.fromY() > 0
          && bounds.toY() < tank.width()
          && bounds.fromDepth() > 0
          && bounds.toDepth() < tank.depth()) {
        shapes.add(shape);
      }
    }
    return shapes;
  }

  /** A shape as it is seen in the image cell at some orders. */
  private static Shape image(Shape shape, Tank tank, int orderX, int orderY) {
    boolean mirroredX = (orderX & 1) != 0;
    boolean mirroredY = (orderY & 1) != 0;
    double turn = mirroredX ^ mirroredY ? -1 : 1;
    if (shape instanceof Box box) {
      return new Box(
          ImageAxis.image(box.x(), orderX, tank.length()),
          ImageAxis.image(box.y(), orderY, tank.width()),
          box.depth(),
          box.sizeX(),
          box.sizeY(),
          box.sizeZ(),
          turn * box.yaw());
    }
    Ellipsoid e = (Ellipsoid) shape;
    return new Ellipsoid(
        ImageAxis.image(e.x(), orderX, tank.length()),
        ImageAxis.image(e.y(), orderY, tank.width()),
        e.depth(),
        e.semiX(),
        e.semiY(),
        e.semiZ(),
        turn * e.yaw());
  }

  /** The other way round: the path stays straight, the rocks are mirrored into every cell. */
  @Test
  void foldedPathsMeetWhatStraightOnesMeetAmongMirroredRocks() {
    int[] blocked = new int[1];
    SeededLaw.holds(
        60,
        random -> {
          Tank tank = Tank.of(.5 + random.nextDouble(), .4 + .4 * random.nextDouble(), .5);
          List<Shape> shapes = inside(random, tank);
          List<Shape> everywhere = new ArrayList<>();
          for (int i = -CELLS; i <= CELLS; i++) {
            for (int j = -CELLS; j <= CELLS; j++) {
              for (Shape shape : shapes) {
                everywhere.add(image(shape, tank, i, j));
              }
            }
          }
          Aquascape unfolded = rocks(everywhere.toArray(Shape[]::new));
          RockShadows shadows =
              RockShadows.of(tank.withAquascape(rocks(shapes.toArray(Shape[]::new)))).orElseThrow();
          for (int k = 0; k < 200; k++) {
            int orderX = random.nextInt(-CELLS, CELLS + 1);
            int orderY = random.nextInt(-CELLS, CELLS + 1);
            double x = tank.length() * random.nextDouble();
            double y = tank.width() * random.nextDouble();
            double endX = tank.length() * random.nextDouble();
            double alongX = ImageAxis.image(endX, orderX, tank.length()) - x;
            double endY = tank.width() * random.nextDouble();
            double alongY = ImageAxis.image(endY, orderY, tank.width()) - y;
            double depth = tank.depth() * random.nextDouble();
            double path = Math.sqrt(alongX * alongX + alongY * alongY + depth * depth);
            boolean straight =
                unfolded.blocks(x, y, 0, alongX / path, alongY / path, depth / path, path);
            assertThat(shadows.block(x, y, alongX, alongY, depth, orderX, orderY))
                .isEqualTo(straight);
            blocked[0] += straight ? 1 : 0;
          }
        });
    // Else the law would hold of nothing.
    assertThat(blocked[0]).isBetween(1_000, 11_000);
  }

  @Test
  void pathsAlongThePanesEnd() {
    Tank tank = Tank.of(.9, .6, .5).withAquascape(rocks(new Box(.45, .3, .45, .2, .2, .1, 0)));
    RockShadows shadows = RockShadows.of(tank).orElseThrow();
    for (int orderX = -2; orderX <= 2; orderX++) {
      for (int orderY = -2; orderY <= 2; orderY++) {
        assertThat(shadows.block(0, 0, 0, 0, .5, orderX, orderY)).isFalse();
        assertThat(shadows.block(.9, .6, 0, 0, .5, orderX, orderY)).isFalse();
        assertThat(shadows.block(0, .6, -.2, .1, .5, orderX, orderY)).isFalse();
      }
    }
    assertThat(shadows.block(.45, .3, 0, 0, .5, 0, 0)).isTrue();
    assertThat(shadows.block(.45, .3, 0, 0, .39, 0, 0)).isFalse();
  }

  /**
   * Below a level plate, what lies in its shadow by Snell's law is dark and the rest as without it.
   */
  @Test
  void aPlateCastsTheShadowThatSnellsLawSays() {
    Tank tank = RandomScenes.black(1, .6, .5);
    Box plate = new Box(.5, .3, .2, .2, .16, .001, 0);
    Places places = Places.plane(tank, .45, 100, 60);
    double[] clear = new FastSolver().solve(rig(tank), places).ppfd();
    double[] shaded = new FastSolver().solve(rig(tank.withAquascape(rocks(plate))), places).ppfd();
    int dark = 0;
    for (int i = 0; i < places.size(); i++) {
      double dx = places.x(i) - .5;
      double dy = places.y(i) - .3;
      double r = Math.hypot(dx, dy);
      SurfacePath path = SurfacePath.solve(.2, .45, r, 1.34);
      double at = path.crossing() + (r - path.crossing()) * .2 / .45;
      double px = Math.abs(dx) * at / r;
      double py = Math.abs(dy) * at / r;
      // The plate is a millimetre thick: near its edge its sides count.
      if (px < .1 - .002 && py < .08 - .002) {
        assertThat(shaded[i]).isZero();
        dark++;
      } else if (px > .1 + .002 || py > .08 + .002) {
        assertThat(shaded[i]).isEqualTo(clear[i]);
      }
    }
    assertThat(dark).isGreaterThan(600);
  }

  @Test
  void theFieldOverTheRocksIsWhatItWas() {
    SeededLaw.holds(
        10,
        random -> {
          Rig rig = RandomScenes.rig(random);
          Tank tank = rig.tank().withBottomReflectance(0);
          double top = .6 * tank.depth();
          Tank rocky =
              tank.withAquascape(
                  rocks(
                      new Box(.2, .2, tank.depth(), .2, .2, 2 * (tank.depth() - top), 0),
                      new Ellipsoid(.4, .2, tank.depth(), .1, .1, tank.depth() - top, 0)));
          List<Place> over =
              RandomScenes.places(random, tank, 30).stream()
                  .map(p -> new Place(p.x(), p.y(), Math.min(p.depth(), top)))
                  .toList();
          // Panes may send back diffusely what the rocks keep from them: none do here.
          Tank black = RandomScenes.black(tank.length(), tank.width(), tank.depth());
          double[] clear =
              new FastSolver()
                  .solve(new Rig("clear", black, rig.hangings()), Places.of(over))
                  .ppfd();
          double[] shaded =
              new FastSolver()
                  .solve(
                      new Rig("rocky", black.withAquascape(rocky.aquascape()), rig.hangings()),
                      Places.of(over))
                  .ppfd();
          assertThat(shaded).isEqualTo(clear);
        });
  }

  @Test
  void theBottomUnderARockSendsNothingBack() {
    Tank tank = RandomScenes.black(.9, .6, .5).withBottomReflectance(.9);
    // A plate over the whole bottom: nothing reaches it.
    Tank covered = tank.withAquascape(rocks(new Box(.45, .3, .45, 2, 2, .01, 0)));
    Places places = Places.plane(tank, .1, 9, 6);
    double[] black = new FastSolver().solve(rig(tank.withBottomReflectance(0)), places).ppfd();
    double[] pale = new FastSolver().solve(rig(tank), places).ppfd();
    double[] rocky = new FastSolver().solve(rig(covered), places).ppfd();
    for (int i = 0; i < places.size(); i++) {
      assertThat(pale[i]).isGreaterThan(1.001 * black[i]);
      assertThat(rocky[i]).isCloseTo(black[i], within(1e-9 * black[i]));
    }
  }

  @Test
  void thePathsOfTheFitSeeTheSameRocks() {
    SeededLaw.holds(
        10,
        random -> {
          Tank tank = RandomScenes.tank(random);
          tank = tank.withAquascape(rocks(inside(random, tank).toArray(Shape[]::new)));
          Fixture fixture =
              new Fixture(
                  "lamp",
                  0,
                  0,
                  List.of(new Emitter(0, 0, .03)),
                  List.of(Channel.of("white", new CosinePower(100, 1.5))),
                  List.of());
          Rig rig = new Rig("rig", tank, List.of(RandomScenes.hanging(random, tank, fixture)));
          Places places = Places.plane(tank, .9 * tank.depth(), 9, 7);
          FastSolver solver = new FastSolver();
          double[] field = solver.solve(rig, places).ppfd();
          PathBundle paths = solver.paths(rig, places, PhotonSpectrum.flat());
          double[] intensity = new double[paths.size()];
          for (int i = 0; i < intensity.length; i++) {
            intensity[i] =
                fixture
                    .channels()
                    .get(0)
                    .distribution()
                    .orElseThrow()
                    .intensity(paths.gamma(i), paths.azimuth(i));
          }
          double[] gathered = paths.gather(intensity);
          double most = java.util.Arrays.stream(field).max().orElseThrow();
          for (int i = 0; i < field.length; i++) {
            assertThat(gathered[i]).isCloseTo(field[i], within(1e-3 * most));
          }
        });
  }

  @Test
  void placesInARockAreRefused() {
    Tank tank = Tank.of(.9, .6, .5).withAquascape(rocks(new Box(.45, .3, .45, .2, .2, .1, 0)));
    Places places = Places.of(List.of(new Place(.1, .1, .45), new Place(.5, .3, .45)));
    String message =
        "place 1 lies in rock rock 0: x 0.5, y 0.3, depth 0.45 m; leave it out, or move the rock";
    FastSolver solver = new FastSolver();
    assertThatThrownBy(() -> solver.solve(rig(tank), places)).hasMessage(message);
    assertThatThrownBy(() -> solver.paths(rig(tank), places, PhotonSpectrum.flat()))
        .hasMessage(message);
  }
}
