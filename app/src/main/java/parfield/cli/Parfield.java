package parfield.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Entry point of the {@code parfield} command. */
@Command(
    name = "parfield",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = "From PAR readings to mounting height, spacing and dials.")
public final class Parfield implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Name a command; none was given.");
  }

  /**
   * Runs the command and ends the process with its exit code: 0 done, 1 failed, 2 wrong usage.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    System.exit(new CommandLine(new Parfield()).execute(args));
  }
}
