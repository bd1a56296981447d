package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import parfield.field.FastSolver;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * An invented bench whose truth is known: readings with 2 % error each, 5 mm error of place and
 * rounding, in a tank whose panes, water and bottom differ a little from what is stated.
 */
final class SimulatedBench {
  private static final Meter METER = new Meter("probe", 1, true, 0, 0.05, 0.02, 0.005, 1);
  private static final double[] DEPTHS = {0.15, 0.35};

  /** A lobe with a shoulder, wider along the fixture: none that the fit assumes. */
  private static final IntensityDistribution SHOULDERED =
      (gamma, azimuth) -> {
        double cosine = Math.max(0, Math.cos(gamma));
        double sine = Math.sin(gamma);
        double round = Math.pow(cosine, 3) + 0.3 * cosine * sine;
        return 110 * round * (1 + 0.2 * sine * sine * Math.cos(2 * azimuth));
      };

  private final SplittableRandom random;
  private final int channels;

  /**
   * A bench.
   *
   * @param channels of its fixture, 1 or 2
   * @param seed of the readings' errors
   */
  SimulatedBench(int channels, long seed) {
    this.channels = channels;
    random = new SplittableRandom(seed);
  }

  /** What the person wrote down. */
  Tank stated() {
    return Scenes.tank();
  }

  /** What the tank really is. */
  private Tank real() {
    return stated()
        .withWalls(new Walls(Wall.film(), Wall.clean(), Wall.clean(), Wall.film()))
        .withBottomReflectance(0.3)
        .withWater(Water.seaWater(0.08));
  }

  /** The fixture as the setup states it: nothing is known of its light. */
  Fixture unknownLamp() {
    return lamp(false);
  }

  private Fixture lamp(boolean known) {
    List<Channel> all = new ArrayList<>();
    all.add(channel("white", known, SHOULDERED));
    if (channels > 1) {
      all.add(channel("violet", known, new CosinePower(40, 1.5)));
    }
    return new Fixture(
        "pendant",
        0.4,
        0.1,
        List.of(new Emitter(-0.12, 0, 0.03), new Emitter(0.12, 0, 0.03)),
        all,
        List.of());
  }

  private static Channel channel(String name, boolean known, IntensityDistribution distribution) {
    return new Channel(
        name,
        Optional.empty(),
        OptionalDouble.of(60),
        OutputCurve.proportional(),
        known ? Optional.of(distribution) : Optional.empty());
  }

  /** A rig as stated, over the middle of the tank. */
  Rig rig(double height, Setting setting) {
    return new Rig(
        "middle", stated(), List.of(new Hanging(unknownLamp(), 0.45, 0.3, height, 0, 0, setting)));
  }

  /** The light as it really is under a stated rig. */
  LightField truth(Rig stated, Places places) {
    return new FastSolver()
        .solve(
            stated.withTank(real()).withHangings(hanging -> hanging.withFixture(lamp(true))),
            places);
  }

  /** 32 readings: 4 × 4 at each of two depths. */
  Survey survey(String name, double height, Setting setting) {
    List<Place> nominal = places(4, 4);
    double slip = METER.positionError();
    List<Place> real = new ArrayList<>();
    for (Place place : nominal) {
      real.add(
          new Place(
              place.x() + slip * random.nextGaussian(),
              place.y() + slip * random.nextGaussian(),
              place.depth()));
    }
    Rig rig = rig(height, setting);
    LightField truth = truth(rig, Places.of(real));
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < nominal.size(); i++) {
      double shown = truth.ppfd(i) * (1 + METER.repeatError() * random.nextGaussian());
      readings.add(new Reading(0, nominal.get(i), Math.max(0, Math.round(shown))));
    }
    return new Survey(name, rig, METER, readings);
  }

  /** Centres of equal cells of the depths that are read. */
  List<Place> places(int columns, int rows) {
    List<Place> places = new ArrayList<>();
    for (double depth : DEPTHS) {
      Places plane = Places.plane(stated(), depth, columns, rows);
      for (int i = 0; i < plane.size(); i++) {
        places.add(plane.get(i));
      }
    }
    return places;
  }
}
