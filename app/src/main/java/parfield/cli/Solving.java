package parfield.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parfield.answer.Refusal;
import parfield.field.Places;
import parfield.photon.Effort;
import parfield.photon.PhotonTracer;
import parfield.photon.TracedField;
import parfield.photon.Wanted;
import parfield.photon.Watch;
import parfield.rig.Rig;
import parfield.tank.Place;
import picocli.CommandLine.Option;

/** Which solver a command asks, and how hard the reference solver works. */
final class Solving {
  /** Standard error at which the reference solver stops where none is asked for. */
  private static final double UNTIL = 0.01;

  /** More places than this take more memory than a common computer has. */
  private static final int MOST = 100_000;

  /** The solvers by the names that a person types. */
  enum Solver {
    fast,
    reference
  }

  @Option(
      names = "--solver",
      paramLabel = "fast|reference",
      defaultValue = "fast",
      description =
          "What computes the light: the fast solver, or the reference solver, which counts packets"
              + " of photons: slower, and with scattering and freeboard. Default: ${DEFAULT-VALUE}.")
  private Solver solver;

  @Option(
      names = "--until",
      paramLabel = "SHARE",
      converter = ShareConverter.class,
      description =
          "With --solver reference: stop when no value's standard error is more than this share of"
              + " it, as in 1%%; in dark places, of a tenth of the mean. Default: 1%%.")
  private Double until;

  @Option(
      names = "--for",
      paramLabel = "TIME",
      converter = DurationConverter.class,
      description =
          "With --solver reference: stop after this time, as in 60s or 5min, whatever the error."
              + " Default: no limit.")
  private Duration time;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "With --solver reference: seed of its chance. Default: 1.")
  private Long seed;

  /** Whether the reference solver is asked. */
  boolean byReference() {
    return solver == Solver.reference;
  }

  /** Refuses options that say nothing here. */
  void check() {
    if (!byReference() && (until != null || time != null || seed != null)) {
      throw Refusal.of(
          "--until, --for and --seed tell the reference solver when to stop and where to begin",
          "add --solver reference, or leave them out");
    }
  }

  /**
   * Counts the light of a rig.
   *
   * @param rig every channel must carry a distribution
   * @param places where
   * @param sensor side of the level square over which light is averaged [m]
   * @param interruption may stop it
   * @param err takes the status line
   * @return what is known once the error is small enough, time is up, or a person has had enough
   */
  TracedField count(
      Rig rig, List<Places> places, double sensor, Interruption interruption, PrintWriter err) {
    int size = places.stream().mapToInt(Places::size).sum();
    if (size > MOST) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "%d places are asked of the reference solver; at most %d can be",
              size,
              MOST),
          "ask for larger cells or for fewer depths");
    }
    double target = until == null ? UNTIL : until;
    try (StatusLine status = StatusLine.on(err)) {
      status.show("counting packets of photons …");
      long start = System.nanoTime();
      Watch watch =
          (packets, error) -> {
            double elapsed = (System.nanoTime() - start) * 1e-9;
            status.show(share(elapsed, error, target), words(packets, error));
            return !interruption.asked() && (time == null || elapsed < time.toSeconds());
          };
      return new PhotonTracer(Effort.until(target, seed == null ? 1 : seed))
          .trace(rig, Wanted.at(Places.of(all(places))).withSensor(sensor), watch);
    }
  }

  private static List<Place> all(List<Places> places) {
    return places.stream()
        .flatMap(some -> IntStream.range(0, some.size()).mapToObj(some::get))
        .toList();
  }

  /** Work goes with the inverse square of the error. */
  private double share(double elapsed, double error, double target) {
    double ofError = Math.min(1, target * target / (error * error));
    return time == null ? ofError : Math.max(ofError, elapsed / time.toSeconds());
  }

  private static String words(long packets, double error) {
    return String.format(
        Locale.ROOT,
        "%.1f million packets, standard error at most %.2g %%",
        packets / 1e6,
        100 * error);
  }
}
