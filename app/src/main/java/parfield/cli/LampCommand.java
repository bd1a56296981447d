package parfield.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code parfield lamp}: photometric files in and out. */
@Command(
    name = "lamp",
    mixinStandardHelpOptions = true,
    header = "Read and write photometric files of fixtures.",
    description = {
      "",
      "ANSI/IES LM-63 and EULUMDAT: the light of a fixture by direction, in candela. Keywords of our"
          + " own tell its photons; docs/PHOTOMETRIC_FILES.md describes them."
    },
    subcommands = {LampReadCommand.class, LampWriteCommand.class},
    synopsisSubcommandLabel = "COMMAND",
    commandListHeading = "%nCommands:%n")
final class LampCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "name a command, read or write; none was given");
  }
}
