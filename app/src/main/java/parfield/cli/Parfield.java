package parfield.cli;

import java.io.FileDescriptor;
import java.io.PrintWriter;
import parfield.answer.Problem;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Entry point of the {@code parfield} command. */
@Command(
    name = "parfield",
    versionProvider = Version.class,
    description = "From PAR readings to mounting height, spacing and dials.",
    subcommands = {
      CheckCommand.class,
      StatsCommand.class,
      FitCommand.class,
      FieldCommand.class,
      RecommendCommand.class,
      ReportCommand.class,
      DayCommand.class,
      HomesCommand.class,
      AcclimateCommand.class,
      PowerCommand.class,
      CalendarCommand.class,
      TransferCommand.class,
      ServeCommand.class,
      SpectrumCommand.class,
      LampCommand.class,
      ValidateCommand.class,
      DemoCommand.class,
      WorkspaceCommand.class,
    },
    synopsisSubcommandLabel = "COMMAND",
    mixinStandardHelpOptions = true,
    commandListHeading = "%nCommands:%n",
    footer = {
      "",
      "parfield COMMAND --help tells more of each; docs/COMMANDS.md tells all.",
      "Answers go to standard output, everything else to standard error."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done",
      "1:done, but the answer is negative: no option meets the demands, a published value is not"
          + " met, or, with --strict, a reading looks wrong",
      "2:not done: a fault in a file, on the command line or of the program",
      "130:interrupted, after the best found so far was printed"
    })
public final class Parfield implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "name a command; none was given");
  }

  /**
   * Runs the command and ends the process with its exit code.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    StandardStream answers = new StandardStream(FileDescriptor.out);
    PrintWriter err = new StandardStream(FileDescriptor.err).writer();
    int code = run(answers.writer(), err, args);
    if (answers.lost().isPresent()) {
      err.print(Problem.of("standard output cannot be written: " + answers.lost().get()).text());
      err.flush();
      code = ExitCode.FAILED;
    }
    System.exit(code);
  }

  /**
   * Runs the command.
   *
   * @param out takes the answer
   * @param err takes diagnostics
   * @param args the command line
   * @return the exit code
   */
  static int run(PrintWriter out, PrintWriter err, String... args) {
    ProblemHandler problems = new ProblemHandler(args);
    CommandLine command =
        new CommandLine(new Parfield())
            .setOut(out)
            .setErr(err)
            .setParameterExceptionHandler(problems)
            .setExecutionExceptionHandler(problems);
    int code;
    try {
      code = command.execute(args);
    } catch (OutOfMemoryError e) {
      code = problems.outOfMemory(err);
    }
    out.flush();
    err.flush();
    return code;
  }
}
