package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.optics.Agitation;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Side;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * An invented tank of another size and condition, drawn by a seed: what its owner states, and what
 * it really is.
 *
 * @param stated the rig as stated, its fixtures without distributions
 * @param real the rig as it is, with the hidden lamp of another specimen
 * @param places where its light is looked at
 */
record OtherTank(Rig stated, Rig real, List<Place> places) {
  private static final double REHANG = 0.004;

  static OtherTank of(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Tank tank = tank(random);
    Fixture lamp = SimulatedBench.oval();
    int count = tank.length() > 0.9 ? 2 : 1;
    double height = 0.12 + 0.23 * random.nextDouble();
    List<Hanging> hangings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      hangings.add(
          Hanging.level(
              SimulatedBench.unknown(lamp),
              tank.length() * ((i + 0.5) / count + 0.06 * (random.nextDouble() - 0.5)),
              tank.width() * (0.45 + 0.1 * random.nextDouble()),
              height));
    }
    Rig stated = new Rig("other", tank, hangings);
    return new OtherTank(stated, real(stated, lamp, random), places(tank, random));
  }

  private static Tank tank(SplittableRandom random) {
    double length = 0.45 + 1.05 * random.nextDouble();
    List<Rectangle> braces = new ArrayList<>();
    double width = 0.4 + 0.3 * random.nextDouble();
    if (length > 0.9 && random.nextDouble() < 0.4) {
      braces.add(new Rectangle(length / 2 - 0.03, length / 2 + 0.03, 0, width));
    }
    double kind = random.nextDouble();
    Lid lid =
        kind < 0.5
            ? new Lid.None()
            : kind < 0.75
                ? new Lid.Mesh(0.75 + 0.15 * random.nextDouble())
                : new Lid.Clear(random.nextBoolean() ? 1.49 : 1.52);
    double rim = random.nextDouble() < 0.5 ? 0 : 0.03 * random.nextDouble();
    return new Tank(
        length,
        width,
        0.3 + 0.35 * random.nextDouble(),
        new Walls(wall(random), wall(random), wall(random), wall(random)),
        0.1 + 0.4 * random.nextDouble(),
        new Opening(rim, braces, lid),
        Water.seaWater(0.02 + 0.18 * random.nextDouble()),
        Agitation.values()[random.nextInt(Agitation.values().length)]);
  }

  private static Wall wall(SplittableRandom random) {
    Wall[] walls = {Wall.clean(), Wall.film(), Wall.coralline(), Wall.painted()};
    return walls[random.nextInt(walls.length)];
  }

  /** What is stated, wrong as the priors say that it is: in the tank, the lid and the specimen. */
  private static Rig real(Rig stated, Fixture lamp, SplittableRandom random) {
    Tank tank = stated.tank();
    Conditions conditions = Conditions.of(tank);
    double[] z = new double[conditions.size()];
    for (int k = 0; k < z.length; k++) {
      z[k] = random.nextGaussian();
    }
    Walls walls = tank.walls();
    for (Side side : Side.values()) {
      double clear = conditions.clear(z, 0).get(side.ordinal());
      walls = walls.with(side, walls.on(side).withClear(clear));
    }
    double lid =
        tank.opening().lid() instanceof Lid.None
            ? 1
            : Math.exp(Transfer.LID_DEVIATION * random.nextGaussian());
    double output =
        lid
            * Math.exp(
                Transfer.SPECIMEN_DEVIATION * random.nextGaussian()
                    + Transfer.SPECIMEN_CHANNEL_DEVIATION * random.nextGaussian());
    Fixture specimen =
        lamp.withChannels(lamp.channels().stream().map(c -> times(c, output)).toList());
    double dx = conditions.offsetX(z, 0) + REHANG * random.nextGaussian();
    double dy = conditions.offsetY(z, 0) + REHANG * random.nextGaussian();
    double dh = conditions.heightOffset(z, 0) + REHANG * random.nextGaussian();
    Tank real =
        tank.withWalls(walls)
            .withBottomReflectance(conditions.bottom(z, 0))
            .withWater(tank.water().withYellowing(conditions.yellowing(z, 0)));
    return stated
        .withTank(real)
        .withHangings(h -> h.withFixture(specimen).at(h.x() + dx, h.y() + dy, h.height() + dh));
  }

  private static Channel times(Channel channel, double factor) {
    IntensityDistribution light = channel.distribution().orElseThrow();
    return new Channel(
        channel.name(),
        channel.spectrum(),
        channel.watts(),
        channel.curve(),
        Optional.of((gamma, azimuth) -> factor * light.intensity(gamma, azimuth)));
  }

  /** Four by two in three layers, each moved a little. */
  private static List<Place> places(Tank tank, SplittableRandom random) {
    List<Place> places = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      for (int j = 0; j < 2; j++) {
        for (int i = 0; i < 4; i++) {
          places.add(
              new Place(
                  tank.length() * (i + 0.25 + 0.5 * random.nextDouble()) / 4,
                  tank.width() * (j + 0.25 + 0.5 * random.nextDouble()) / 2,
                  tank.depth() * (k + 0.25 + 0.5 * random.nextDouble()) / 3));
        }
      }
    }
    return places;
  }
}
