package parfield.photon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Ellipsoid;
import parfield.aquascape.Rock;
import parfield.aquascape.Shape;
import parfield.field.Places;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.optics.Agitation;
import parfield.optics.HenyeyGreenstein;
import parfield.optics.Reflectance;
import parfield.optics.Scattering;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/** Geometry that nobody would build: no NaN, no lost light, no endless path. */
class WalkFuzzTest {
  private static final List<Wall> WALLS =
      List.of(Wall.clean(), Wall.film(), Wall.coralline(), Wall.painted(), Wall.opaque());

  @Test
  void nothingIsLostAnywhere() {
    SeededLaw.holds(
        60,
        random -> {
          Tank tank = tank(random);
          Rig rig = rig(random, tank);
          Wanted wanted =
              new Wanted(
                  Places.of(List.of(free(tank, random), free(tank, random))),
                  .05,
                  Optional.of(new VoxelGrid(3, 4, 5)),
                  List.of(new Placement(free(tank, random), 0, .6, -.8)));
          TracedField traced =
              new PhotonTracer(Effort.packets(16_000, random.nextLong()))
                  .trace(rig, wanted, Watch.patient());
          double ended = 0;
          for (Fate fate : Fate.values()) {
            assertThat(traced.ended(fate)).as("%s", fate).isFinite();
            ended += traced.ended(fate);
          }
          assertThat(ended).isCloseTo(traced.launched(), within(1e-9 * traced.launched()));
          for (int i = 0; i < 60; i++) {
            assertThat(traced.scalar(i)).isFinite().isGreaterThanOrEqualTo(0);
          }
          for (int i = 0; i < 2; i++) {
            assertThat(traced.downwelling(i)).isFinite().isGreaterThanOrEqualTo(0);
            assertThat(traced.upwelling(i)).isFinite().isGreaterThanOrEqualTo(0);
          }
          assertThat(traced.onPlacement(0)).isFinite().isGreaterThanOrEqualTo(0);
        });
  }

  private static Place free(Tank tank, SplittableRandom random) {
    while (true) {
      Place place =
          new Place(
              tank.length() * random.nextDouble(),
              tank.width() * random.nextDouble(),
              tank.depth() * random.nextDouble());
      if (!tank.aquascape().inside(place.x(), place.y(), place.depth())) {
        return place;
      }
    }
  }

  private static Tank tank(SplittableRandom random) {
    double length = .2 + random.nextDouble();
    double width = .2 + .5 * random.nextDouble();
    double depth = .1 + .6 * random.nextDouble();
    List<Rock> rocks = new ArrayList<>();
    for (int i = random.nextInt(5); i > 0; i--) {
      rocks.add(
          new Rock(
              "rock " + i,
              shape(random, length, width, depth),
              Reflectance.tabulated(
                  new double[] {400, 550, 700},
                  new double[] {
                    random.nextDouble() * .9, random.nextDouble() * .9, random.nextDouble() * .9
                  })));
    }
    Lid lid =
        switch (random.nextInt(3)) {
          case 0 -> new Lid.None();
          case 1 -> new Lid.Mesh(random.nextDouble());
          default -> new Lid.Clear(1 + random.nextDouble());
        };
    Opening opening =
        new Opening(
            random.nextBoolean() ? 0 : .05 * random.nextDouble(),
            random.nextBoolean()
                ? List.of()
                : List.of(new Rectangle(.3 * length, .4 * length, -.1, width + .1)),
            lid,
            random.nextBoolean() ? 0 : .3 * random.nextDouble());
    return Tank.of(length, width, depth)
        .withWalls(new Walls(wall(random), wall(random), wall(random), wall(random)))
        .withBottomReflectance(random.nextBoolean() ? .99 : .4)
        .withOpening(opening)
        .withSurface(Agitation.values()[random.nextInt(3)])
        .withWater(
            new Water(1.01 + .5 * random.nextDouble(), .5 * random.nextDouble(), .015)
                .withScattering(
                    random.nextBoolean()
                        ? Scattering.none()
                        : new Scattering(
                            3 * random.nextDouble(),
                            4 * random.nextDouble(),
                            new HenyeyGreenstein(1.8 * random.nextDouble() - .9))))
        .withAquascape(Aquascape.of(rocks));
  }

  /** Sizes down to a hair, flush with panes, bottom and surface, or through them. */
  private static Shape shape(SplittableRandom random, double length, double width, double depth) {
    double x = random.nextInt(4) == 0 ? 0 : length * random.nextDouble();
    double y = random.nextInt(4) == 0 ? width : width * random.nextDouble();
    double z = random.nextInt(4) == 0 ? depth : depth * random.nextDouble();
    double a = random.nextInt(4) == 0 ? 1e-4 : .3 * random.nextDouble() + 1e-3;
    double b = random.nextInt(4) == 0 ? 2 * width : .3 * random.nextDouble() + 1e-3;
    double c = random.nextInt(4) == 0 ? 1e-4 : .3 * random.nextDouble() + 1e-3;
    double yaw = random.nextBoolean() ? 0 : 6 * random.nextDouble();
    return random.nextBoolean()
        ? new Box(x, y, z, a, b, c, yaw)
        : new Ellipsoid(x, y, z, a, b, c, yaw);
  }

  private static Wall wall(SplittableRandom random) {
    return WALLS.get(random.nextInt(WALLS.size()));
  }

  /** Emitters over corners and edges, close to the water, tilted to the horizon, far outside. */
  private static Rig rig(SplittableRandom random, Tank tank) {
    List<Hanging> hangings = new ArrayList<>();
    for (int i = 0; i <= random.nextInt(2); i++) {
      Fixture fixture =
          new Fixture(
              "f" + i,
              0,
              0,
              List.of(
                  new Emitter(0, 0, random.nextBoolean() ? 0 : .1 * random.nextDouble()),
                  new Emitter(.05, 0, 0)),
              List.of(
                  Channel.of("a", new CosinePower(10, 20 * random.nextDouble())),
                  Channel.of("b", new CosinePower(10, 0))),
              List.of());
      double x = random.nextInt(3) == 0 ? 0 : (2 * random.nextDouble() - .5) * tank.length();
      double y = random.nextInt(3) == 0 ? tank.width() : random.nextDouble() * tank.width();
      double height = random.nextInt(4) == 0 ? 1e-6 : .5 * random.nextDouble() + 1e-3;
      double tilt = random.nextBoolean() ? 0 : Math.PI * (random.nextDouble() - .5);
      hangings.add(
          new Hanging(fixture, x, y, height, tilt, 3 * random.nextDouble(), Setting.full()));
    }
    return new Rig("fuzz", tank, hangings);
  }
}
