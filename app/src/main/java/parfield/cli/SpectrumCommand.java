package parfield.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code parfield spectrum}: what light it is, and what the meter makes of it. */
@Command(
    name = "spectrum",
    mixinStandardHelpOptions = true,
    header = "What light it is, and what a meter makes of it.",
    description = {
      "",
      "Reads spectra of lamps, channels and places: CSV, TSV or XLSX of any sane layout, or IES"
          + " TM-27 XML. FILE#NAME is one spectrum of a file that holds several."
    },
    subcommands = {
      DescribeCommand.class,
      CompareCommand.class,
      DepthsCommand.class,
      BlendCommand.class,
      MixCommand.class,
      PartsCommand.class,
      MeterCommand.class,
      EyesCommand.class
    },
    synopsisSubcommandLabel = "QUESTION",
    commandListHeading = "%nQuestions:%n")
final class SpectrumCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "name a question; none was given");
  }
}
