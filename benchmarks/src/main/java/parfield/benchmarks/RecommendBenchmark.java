package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
import parfield.field.LightField;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.LightModelFit;
import parfield.lamp.Setting;
import parfield.plan.Demand;
import parfield.plan.Demands;
import parfield.plan.Extent;
import parfield.plan.Mix;
import parfield.plan.Option;
import parfield.plan.Planner;
import parfield.plan.Search;
import parfield.survey.Band;

/**
 * A recommendation: three heights × seven spacings of two fixtures × the dials of two channels, by
 * a model fitted to simulated readings, with a solver that has computed nothing yet.
 *
 * <p>Judged by the coverage that each option promises: how many points (shown as per cent) it is
 * off in the simulated truth. Bar: 3 s.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 4, time = 1)
@Fork(1)
public class RecommendBenchmark implements Judged {
  private static final long SEED = 96;

  /** Demands that some rig meets, or that none does, so that remedies are sought too. */
  @Param({"met", "unmet"})
  public String demands;

  private SimulatedBench bench;
  private LightModel model;
  private Search search;
  private Demands wanted;
  private Band band;

  /** Takes the readings and fits the model. */
  @Setup
  public void prepare() {
    bench = new SimulatedBench(2, SEED);
    Setting violet = new Setting(Map.of("white", 0.0));
    model =
        LightModelFit.with(new FastSolver())
            .fit(
                List.of(
                    bench.survey("low", 0.15, Setting.full()),
                    bench.survey("high", 0.30, Setting.full()),
                    bench.survey("violet", 0.15, violet)));
    search =
        Search.around(List.of(bench.rig(0.15, Setting.full())), 0.25)
            .withHeights(List.of(0.15, 0.22, 0.30))
            .withCounts(List.of(2))
            .withMix(Mix.FREE);
    boolean met = demands.equals("met");
    band = met ? new Band("wide", 100, 500) : new Band("stony", 200, 350);
    wanted =
        Demands.stated(
            List.of(band),
            List.of(
                new Demand.Coverage(band, met ? 0.6 : 0.9, Extent.volume()),
                new Demand.Retention(0.7, Extent.volume())));
  }

  /** From a light model to a recommendation. */
  @Benchmark
  public Object recommend() {
    return new Planner(new FastSolver()).recommend(model, wanted, search);
  }

  @Override
  public Deviation deviation() {
    prepare();
    Places volume = Places.volume(bench.stated(), 24, 16, 12);
    List<Double> points = new ArrayList<>();
    for (Option option : new Planner(new FastSolver()).recommend(model, wanted, search).options()) {
      LightField truth = bench.truth(option.over(bench.stated()), volume);
      int inside = 0;
      for (double ppfd : truth.ppfd()) {
        inside += band.contains(ppfd) ? 1 : 0;
      }
      double promised = option.figuresOf(Extent.volume()).coverageOf(band).value();
      points.add(promised - (double) inside / volume.size());
    }
    return Deviation.of(points, "coverage in the simulated truth, in points");
  }
}
