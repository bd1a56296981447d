package parfield.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import parfield.answer.Json;
import parfield.answer.Refusal;
import parfield.answer.ValidationAnswer;
import parfield.photon.Effort;
import parfield.units.LengthUnit;
import parfield.validation.ComparedTank;
import parfield.validation.Finding;
import parfield.validation.TankComparison;
import parfield.validation.Validation;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code parfield validate}: published cases computed anew, fast solver against reference. */
@Command(
    name = "validate",
    mixinStandardHelpOptions = true,
    header = "Compute published cases anew and compare the solvers.",
    description = {
      "",
      "Holds the reference solver against published values, each with its source, and the fast"
          + " solver against the reference in tanks that stress it. Ctrl-C stops and prints what is"
          + " known by then."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:everything agrees",
      "1:a value differs or stayed open, or the fast solver errs more than it says",
      "2:not done: a fault on the command line or of the program",
      "130:interrupted, after what was known by then was printed"
    })
final class ValidateCommand implements Callable<Integer> {
  /** Packets for each compared tank at full precision. */
  private static final double PACKETS = 6_000_000;

  private static final double FEWEST_PACKETS = 300_000;

  @Spec private CommandSpec spec;

  @Option(names = OutputOptions.JSON, description = "Answer in JSON, errors too.")
  private boolean json;

  @Option(
      names = "--until",
      paramLabel = "SHARE",
      defaultValue = "0.3%",
      converter = ShareConverter.class,
      description =
          "Standard error at which a value counts as known, at most 10%%; 3%% takes seconds."
              + " Default: ${DEFAULT-VALUE}.")
  private double until;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of all chance. Default: ${DEFAULT-VALUE}.")
  private long seed;

  @Override
  public Integer call() {
    if (until > Validation.COARSEST) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "--until runs to %s%%: coarser figures tell nothing; got %s%%",
              number(100 * Validation.COARSEST),
              number(100 * until)),
          "leave it out for full precision");
    }
    PrintWriter err = spec.commandLine().getErr();
    try (Interruption interruption = new Interruption()) {
      ValidationAnswer answer = validate(interruption, err);
      PrintWriter out = spec.commandLine().getOut();
      out.print(json ? Json.text(answer.json()) : answer.text(LengthUnit.CM));
      out.flush();
      if (interruption.asked()) {
        return ExitCode.INTERRUPTED;
      }
      return answer.agrees() ? ExitCode.DONE : ExitCode.NEGATIVE;
    }
  }

  private ValidationAnswer validate(Interruption interruption, PrintWriter err) {
    int threads = Runtime.getRuntime().availableProcessors();
    try (StatusLine status = StatusLine.on(err)) {
      List<Finding> findings =
          new Validation(until, seed, threads)
              .run(
                  (done, of, name) -> {
                    status.show((double) done / of, "published cases: " + name);
                    return !interruption.asked();
                  });
      List<TankComparison> comparisons = new ArrayList<>();
      List<ComparedTank> tanks = ComparedTank.all();
      for (int i = 0; i < tanks.size() && !interruption.asked(); i++) {
        status.show((double) i / tanks.size(), "tanks: " + tanks.get(i).name());
        TankComparison comparison =
            TankComparison.of(
                tanks.get(i),
                Effort.packets(packets(), seed),
                (packets, error) -> !interruption.asked());
        if (!interruption.asked()) {
          comparisons.add(comparison);
        }
      }
      return new ValidationAnswer(until, seed, findings, comparisons, tanks.size());
    }
  }

  private long packets() {
    double coarseness = until / Validation.FULL;
    return (long) Math.max(FEWEST_PACKETS, Math.min(1e15, PACKETS / (coarseness * coarseness)));
  }

  private static String number(double value) {
    return value == Math.rint(value)
        ? String.valueOf((long) value)
        : String.format(Locale.ROOT, "%.4g", value);
  }
}
