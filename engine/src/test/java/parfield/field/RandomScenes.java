package parfield.field;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.HarmonicIntensity;
import parfield.lamp.Setting;
import parfield.optics.Agitation;
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

/** Scenes of every kind, for laws that hold for all of them. */
final class RandomScenes {
  private static final List<Wall> WALLS =
      List.of(Wall.clean(), Wall.film(), Wall.coralline(), Wall.painted(), Wall.opaque());

  private RandomScenes() {}

  /** A tank of any size and condition; its bottom is black in one of four. */
  static Tank tank(SplittableRandom random) {
    double length = .5 + random.nextDouble();
    double width = .4 + .4 * random.nextDouble();
    Opening opening =
        random.nextBoolean()
            ? Opening.free()
            : new Opening(
                .03 * random.nextDouble(),
                List.of(new Rectangle(.4 * length, .45 * length, 0, width)),
                random.nextBoolean() ? new Lid.Clear(1.49) : new Lid.Mesh(.8));
    return new Tank(
        length,
        width,
        .3 + .4 * random.nextDouble(),
        new Walls(wall(random), wall(random), wall(random), wall(random)),
        random.nextInt(4) == 0 ? 0 : .6 * random.nextDouble(),
        opening,
        Water.seaWater(.2 * random.nextDouble()),
        Agitation.values()[random.nextInt(3)]);
  }

  /** Panes that take all light, a black bottom, no lid, no yellow substance, still water. */
  static Tank black(double length, double width, double depth) {
    return Tank.of(length, width, depth).withWalls(Walls.all(new Wall(0, Wall.Cover.IN_WATER, 0)));
  }

  private static Wall wall(SplittableRandom random) {
    return WALLS.get(random.nextInt(WALLS.size()));
  }

  /** A fixture whose emitters lie anywhere, its channels round and oval, alike in each quadrant. */
  static Fixture fixture(SplittableRandom random, String name) {
    List<Emitter> emitters = new ArrayList<>();
    for (int i = 0; i <= random.nextInt(3); i++) {
      emitters.add(
          new Emitter(
              .2 * (random.nextDouble() - .5),
              .1 * (random.nextDouble() - .5),
              random.nextBoolean() ? 0 : .05 * random.nextDouble()));
    }
    return new Fixture(
        name,
        0,
        0,
        emitters,
        List.of(
            Channel.of(
                "round", new CosinePower(20 + 50 * random.nextDouble(), 4 * random.nextDouble())),
            Channel.of("oval", oval(random))),
        List.of());
  }

  private static HarmonicIntensity oval(SplittableRandom random) {
    double[][] cosine = new double[3][10];
    double turn = random.nextDouble() - .5;
    for (int i = 0; i < 10; i++) {
      double gamma = Math.PI / 2 * i / 9;
      cosine[0][i] = 4 + 2 * Math.log(Math.max(.05, Math.cos(gamma)));
      cosine[2][i] = turn * Math.sin(gamma) * Math.sin(gamma);
    }
    return new HarmonicIntensity(cosine, new double[0][]);
  }

  /** A fixture hung somewhere over a tank, tilted and turned or not. */
  static Hanging hanging(SplittableRandom random, Tank tank, Fixture fixture) {
    return new Hanging(
        fixture,
        tank.length() * random.nextDouble(),
        tank.width() * random.nextDouble(),
        .1 + .3 * random.nextDouble(),
        random.nextBoolean() ? 0 : .6 * (random.nextDouble() - .5),
        random.nextBoolean() ? 0 : 3 * random.nextDouble(),
        Setting.full());
  }

  static Rig rig(SplittableRandom random) {
    Tank tank = tank(random);
    return new Rig(
        "random",
        tank,
        List.of(
            hanging(random, tank, fixture(random, "first")),
            hanging(random, tank, fixture(random, "second"))));
  }

  static List<Place> places(SplittableRandom random, Tank tank, int count) {
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      places.add(
          new Place(
              tank.length() * random.nextDouble(),
              tank.width() * random.nextDouble(),
              tank.depth() * (i % 3 == 0 ? .5 : random.nextDouble())));
    }
    return places;
  }
}
