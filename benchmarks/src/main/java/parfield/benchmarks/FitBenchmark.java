package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import parfield.field.FastSolver;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.LightModelFit;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.OutputCurve;
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
 * A fit of 64 readings with its posterior, by a solver that has computed nothing yet.
 *
 * <p>The readings are simulated: 32 at each of two heights, with 2 % error a reading, 5 mm error of
 * place and rounding, in a tank whose panes, water and bottom differ a little from what is stated.
 * Judged at a height in between that was not read. Bar: 1 s.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class FitBenchmark implements Judged {
  private static final long SEED = 64;
  private static final Meter METER = new Meter("probe", 1, true, 0, 0.05, 0.02, 0.005, 1);
  private static final double[] DEPTHS = {0.15, 0.35};
  private static final double MIDDLE_HEIGHT = 0.22;

  private List<Survey> surveys;

  /** Takes the readings. */
  @Setup
  public void prepare() {
    SplittableRandom random = new SplittableRandom(SEED);
    surveys = List.of(survey("low", 0.15, random), survey("high", 0.30, random));
  }

  /** From readings to a light model. */
  @Benchmark
  public LightModel fit() {
    return LightModelFit.with(new FastSolver()).fit(surveys);
  }

  @Override
  public Deviation deviation() {
    prepare();
    FastSolver solver = new FastSolver();
    Tank tank = stated();
    List<Place> places = new ArrayList<>();
    for (double depth : DEPTHS) {
      Places plane = Places.plane(tank, depth, 18, 12);
      for (int i = 0; i < plane.size(); i++) {
        places.add(plane.get(i));
      }
    }
    Places all = Places.of(places);
    LightField expected = solver.solve(rig(trueTank(), MIDDLE_HEIGHT, trueLamp()), all);
    double[] got = fit().predict(solver, rig(tank, MIDDLE_HEIGHT, unknownLamp()), all).best();
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i < got.length; i++) {
      errors.add(got[i] / expected.ppfd(i) - 1);
    }
    return Deviation.of(errors, "the simulated truth at a height that was not read");
  }

  private static Survey survey(String name, double height, SplittableRandom random) {
    Tank tank = stated();
    List<Place> nominal = new ArrayList<>();
    List<Place> real = new ArrayList<>();
    for (double depth : DEPTHS) {
      for (int j = 0; j < 4; j++) {
        for (int i = 0; i < 4; i++) {
          double x = tank.length() * (i + 0.5) / 4;
          double y = tank.width() * (j + 0.5) / 4;
          nominal.add(new Place(x, y, depth));
          double slip = METER.positionError();
          real.add(
              new Place(x + slip * random.nextGaussian(), y + slip * random.nextGaussian(), depth));
        }
      }
    }
    LightField truth = new FastSolver().solve(rig(trueTank(), height, trueLamp()), Places.of(real));
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < nominal.size(); i++) {
      double shown = truth.ppfd(i) * (1 + METER.repeatError() * random.nextGaussian());
      readings.add(new Reading(0, nominal.get(i), Math.max(0, Math.round(shown))));
    }
    return new Survey(name, rig(tank, height, unknownLamp()), METER, readings);
  }

  private static Rig rig(Tank tank, double height, Fixture fixture) {
    return new Rig("over the middle", tank, List.of(Hanging.level(fixture, 0.45, 0.3, height)));
  }

  /** What the person wrote down. */
  private static Tank stated() {
    return Scenes.tank();
  }

  /** What the tank really is. */
  private static Tank trueTank() {
    return stated()
        .withWalls(new Walls(Wall.film(), Wall.clean(), Wall.clean(), Wall.film()))
        .withBottomReflectance(0.3)
        .withWater(Water.seaWater(0.08));
  }

  private static Fixture unknownLamp() {
    return lamp(Optional.empty());
  }

  /** A lobe with a shoulder, wider along the fixture: none that the fit assumes. */
  private static Fixture trueLamp() {
    IntensityDistribution lobe =
        (gamma, azimuth) -> {
          double cosine = Math.max(0, Math.cos(gamma));
          double sine = Math.sin(gamma);
          double round = Math.pow(cosine, 3) + 0.3 * cosine * sine;
          return 110 * round * (1 + 0.2 * sine * sine * Math.cos(2 * azimuth));
        };
    return lamp(Optional.of(lobe));
  }

  private static Fixture lamp(Optional<IntensityDistribution> distribution) {
    Channel white =
        new Channel(
            "white",
            Optional.empty(),
            OptionalDouble.empty(),
            OutputCurve.proportional(),
            distribution);
    return new Fixture(
        "pendant",
        0.4,
        0.1,
        List.of(new Emitter(-0.12, 0, 0.03), new Emitter(0.12, 0, 0.03)),
        List.of(white),
        List.of());
  }
}
