package parfield.benchmarks;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Runs the benchmarks and prints one table: time, bytes allocated and error in one row.
 *
 * <p>Takes JMH's own options ({@code -h} lists them); a regular expression picks benchmarks. The
 * least time is the shortest mean of one iteration: on a machine that others use too it says more
 * than the mean.
 */
public final class TimeAndError {
  private static final String ALLOCATED = "gc.alloc.rate.norm";

  private TimeAndError() {}

  /**
   * Runs the benchmarks.
   *
   * @param arguments JMH's options
   */
  public static void main(String[] arguments)
      throws CommandLineOptionException, RunnerException, java.io.IOException {
    CommandLineOptions options = new CommandLineOptions(arguments);
    if (options.shouldHelp()
        || options.shouldList()
        || options.shouldListWithParams()
        || options.shouldListProfilers()
        || options.shouldListResultFormats()) {
      org.openjdk.jmh.Main.main(arguments);
      return;
    }
    List<RunResult> results =
        new ArrayList<>(
            new Runner(new OptionsBuilder().parent(options).addProfiler(GCProfiler.class).build())
                .run());
    Map<String, Judged.Deviation> deviations = new HashMap<>();
    System.out.printf(
        Locale.ROOT,
        "%n%s %s, %d processors%n%n",
        System.getProperty("java.vm.name"),
        System.getProperty("java.vm.version"),
        Runtime.getRuntime().availableProcessors());
    System.out.println(
        "| benchmark | least, ms | mean, ms | allocated, MB | error, median | worst | against |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (RunResult result : results) {
      String scene = scene(result.getParams());
      Judged.Deviation deviation =
          deviations.computeIfAbsent(scene, key -> judge(result.getParams()));
      System.out.println(row(result, deviation));
    }
  }

  private static String row(RunResult result, Judged.Deviation deviation) {
    Result<?> time = result.getPrimaryResult();
    double allocated = Double.NaN;
    for (Map.Entry<String, ?> secondary : result.getSecondaryResults().entrySet()) {
      if (secondary.getKey().endsWith(ALLOCATED)) {
        allocated = result.getSecondaryResults().get(secondary.getKey()).getScore();
      }
    }
    return String.format(
        Locale.ROOT,
        "| %s | %.3g | %.3g | %.3g | %.2g %% | %.2g %% | %s |",
        name(result.getParams()),
        time.getStatistics().getMin(),
        time.getScore(),
        allocated / 1e6,
        100 * deviation.median(),
        100 * deviation.worst(),
        deviation.against());
  }

  /** The benchmark's name without its package, and its parameters. */
  private static String name(BenchmarkParams params) {
    String name = params.getBenchmark();
    int method = name.lastIndexOf('.');
    StringBuilder text = new StringBuilder(name.substring(name.lastIndexOf('.', method - 1) + 1));
    for (String key : params.getParamsKeys()) {
      text.append(", ").append(params.getParam(key));
    }
    return text.toString();
  }

  /** What one error belongs to: a class and its parameters, whatever the method. */
  private static String scene(BenchmarkParams params) {
    StringBuilder text = new StringBuilder(className(params));
    for (String key : params.getParamsKeys()) {
      text.append(' ').append(key).append('=').append(params.getParam(key));
    }
    return text.toString();
  }

  private static String className(BenchmarkParams params) {
    return params.getBenchmark().substring(0, params.getBenchmark().lastIndexOf('.'));
  }

  private static Judged.Deviation judge(BenchmarkParams params) {
    try {
      Class<?> type = Class.forName(className(params));
      Object benchmark = type.getDeclaredConstructor().newInstance();
      for (String key : params.getParamsKeys()) {
        type.getField(key).set(benchmark, params.getParam(key));
      }
      return ((Judged) benchmark).deviation();
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(
          className(params) + " must be a Judged class with public parameters of text", e);
    }
  }
}
