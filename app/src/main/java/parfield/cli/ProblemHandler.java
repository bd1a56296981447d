package parfield.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parfield.answer.Json;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.formats.InvalidFile;
import parfield.formats.Nearest;
import parfield.workspace.WorkspaceProblem;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Tells on standard error why a command was not done, as text or as JSON. */
final class ProblemHandler implements IExecutionExceptionHandler, IParameterExceptionHandler {
  private final boolean json;

  /** A handler for one command line. */
  ProblemHandler(String... args) {
    this.json = Arrays.asList(args).contains(OutputOptions.JSON);
  }

  @Override
  public int handleParseException(ParameterException e, String[] args) {
    CommandLine command = e.getCommandLine();
    List<String> hints = new ArrayList<>();
    if (e instanceof UnmatchedArgumentException unmatched) {
      nearest(command, unmatched.getUnmatched().get(0))
          .ifPresent(name -> hints.add("did you mean " + name + "?"));
    }
    hints.add("see " + command.getCommandSpec().qualifiedName() + " --help");
    Problem problem = Problem.of(e.getMessage(), hints.toArray(String[]::new));
    return tell(problem, command.getErr());
  }

  /** The option or command of {@code command} that a word most likely means. */
  private static Optional<String> nearest(CommandLine command, String word) {
    List<String> known = new ArrayList<>(command.getSubcommands().keySet());
    known.addAll(command.getCommandSpec().optionsMap().keySet());
    return Nearest.of(word.split("=", 2)[0], known);
  }

  @Override
  public int handleExecutionException(Exception e, CommandLine command, ParseResult parsed) {
    return tell(problemOf(e), command.getErr());
  }

  int outOfMemory(PrintWriter err) {
    return tell(
        Problem.of(
            "there is not enough memory for this",
            "ask for fewer places or readings, or give Java more memory: java -Xmx4g -jar …"),
        err);
  }

  private int tell(Problem problem, PrintWriter err) {
    err.print(json ? Json.text(problem.json()) : problem.text());
    return problem.status();
  }

  static Problem problemOf(Exception e) {
    if (e instanceof Refusal refusal) {
      return refusal.problem();
    }
    if (e instanceof InvalidFile invalid) {
      return Problem.of(invalid);
    }
    if (e instanceof WorkspaceProblem problem) {
      return Problem.of(problem.title(), problem.hints().toArray(new String[0]));
    }
    if (e instanceof IllegalArgumentException) {
      return Problem.of(e.getMessage());
    }
    StringWriter trace = new StringWriter();
    e.printStackTrace(new PrintWriter(trace, true));
    return new Problem(
        "a fault of the program, not of your files: " + e,
        ExitCode.FAILED,
        trace.toString(),
        List.of(Problem.Hint.of("report it with the lines above and the setup if you can")));
  }
}
