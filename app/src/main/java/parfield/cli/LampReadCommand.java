package parfield.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import parfield.answer.Json;
import parfield.answer.LampFileAnswer;
import parfield.formats.PhotometricFile;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield lamp read}: what a photometric file holds. */
@Command(
    name = "read",
    mixinStandardHelpOptions = true,
    header = "Tell what a photometric file holds.",
    description = {
      "",
      "Planes, symmetry, flux by its intensities beside the flux it states, photons where it tells"
          + " them; what had to be taken without being stated, and what does not fit."
    })
final class LampReadCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = OutputOptions.JSON, description = "Answer in JSON, errors too.")
  private boolean json;

  @Parameters(paramLabel = "FILE", description = "An LM-63 or EULUMDAT file.")
  private Path file;

  @Option(
      names = "--length",
      paramLabel = "cm|in",
      defaultValue = "cm",
      converter = OutputOptions.UnitConverter.class,
      description = "Unit of lengths in what is shown; default: cm.")
  private LengthUnit length;

  @Override
  public Integer call() {
    Path name = file.getFileName();
    LampFileAnswer read =
        new LampFileAnswer(
            name == null ? file.toString() : name.toString(), PhotometricFile.read(file));
    spec.commandLine().getOut().print(json ? Json.text(read.json()) : read.text(length));
    return ExitCode.DONE;
  }
}
