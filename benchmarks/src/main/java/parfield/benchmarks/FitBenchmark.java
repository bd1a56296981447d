package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
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
import parfield.lamp.Setting;
import parfield.rig.Rig;
import parfield.survey.Survey;

/**
 * A fit of 64 readings with its posterior, by a solver that has computed nothing yet.
 *
 * <p>The readings are simulated, 32 at each of two heights, and the model is judged at a height in
 * between that was not read. Bar: 1 s.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class FitBenchmark implements Judged {
  private static final long SEED = 64;

  private SimulatedBench bench;
  private List<Survey> surveys;

  /** Takes the readings. */
  @Setup
  public void prepare() {
    bench = new SimulatedBench(1, SEED);
    surveys =
        List.of(
            bench.survey("low", 0.15, Setting.full()), bench.survey("high", 0.30, Setting.full()));
  }

  /** From readings to a light model. */
  @Benchmark
  public LightModel fit() {
    return LightModelFit.with(new FastSolver()).fit(surveys);
  }

  @Override
  public Deviation deviation() {
    prepare();
    Places places = Places.of(bench.places(18, 12));
    Rig middle = bench.rig(0.22, Setting.full());
    LightField expected = bench.truth(middle, places);
    double[] got = fit().predict(new FastSolver(), middle, places).best();
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i < got.length; i++) {
      errors.add(got[i] / expected.ppfd(i) - 1);
    }
    return Deviation.of(errors, "the simulated truth at a height that was not read");
  }
}
