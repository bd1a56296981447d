package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.rig.Rig;
import parfield.tank.Place;

/**
 * A full field: 27,648 places, 2 fixtures × 2 emitters × 4 channels, clean panes, diffuse bottom.
 *
 * <p>Bars: 30 ms once tables exist, goal 10 ms; 80 ms with nothing computed yet.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 8, time = 250, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 10, time = 250, timeUnit = TimeUnit.MILLISECONDS)
@Fork(2)
public class FieldBenchmark implements Judged {
  private static final int JUDGED_PLACES = 96;
  private static final long SEED = 2027;

  /** Lamps the same at every azimuth, or brighter along their length. */
  @Param({"round", "oval"})
  public String lamp;

  private Rig rig;
  private Places places;
  private FastSolver solver;

  /** Prepares the scene and a solver whose tables exist. */
  @Setup
  public void prepare() {
    rig = Scenes.twoFixtures(Scenes.tank(), lamp);
    places = Scenes.volume(rig.tank());
    solver = new FastSolver();
    solver.unitFields(rig, places);
  }

  /** Tables exist. */
  @Benchmark
  public UnitFields warm() {
    return solver.unitFields(rig, places);
  }

  /** Nothing is computed yet. */
  @Benchmark
  public UnitFields cold() {
    return new FastSolver().unitFields(rig, places);
  }

  @Override
  public Deviation deviation() {
    prepare();
    UnitFields fields = warm();
    ImageReference reference = new ImageReference(rig);
    SplittableRandom random = new SplittableRandom(SEED);
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i < JUDGED_PLACES; i++) {
      int at = random.nextInt(places.size());
      Place place = places.get(at);
      double[] expected = reference.downwelling(place);
      for (int c = 0; c < expected.length; c++) {
        double got = 0;
        for (int h = 0; h < rig.hangings().size(); h++) {
          got += fields.unit(h, c, at);
        }
        errors.add(Math.abs(got / expected[c] - 1));
      }
    }
    return Deviation.of(errors, "every path solved by itself, at 96 places");
  }
}
