package parfield.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import parfield.answer.Light;
import parfield.answer.PartsAnswer;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.Unmixing;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield spectrum parts}: which channels a measured light is made of. */
@Command(
    name = "parts",
    mixinStandardHelpOptions = true,
    header = "Say which channels a measured light is made of.",
    description = {
      "",
      "Takes a spectrum apart into those of its channels: the level of each, never below zero, with"
          + " its error, and what they do not explain."
    })
final class PartsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private SpectrumOptions spectra;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      converter = SpectrumArgument.Converter.class,
      description = "Files of measured spectra; FILE#NAME is one spectrum of a file.")
  private List<SpectrumArgument> files;

  @Option(
      names = "--of",
      required = true,
      arity = "1..*",
      paramLabel = "CHANNELS",
      converter = SpectrumArgument.Converter.class,
      description = "Spectra of the channels, each alone, each a column or a file.")
  private List<SpectrumArgument> channels;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    List<Light> parts = spectra.read(channels, err);
    List<ChannelLight> lights =
        parts.stream().map(light -> new ChannelLight(light.name(), light.photons())).toList();
    List<PartsAnswer.TakenApart> taken = new ArrayList<>();
    for (Light light : spectra.read(files, err)) {
      taken.add(new PartsAnswer.TakenApart(light, Unmixing.of(light.photons(), lights)));
    }
    spectra.print(spec.commandLine().getOut(), new PartsAnswer(parts, taken), LengthUnit.CM);
    return ExitCode.DONE;
  }
}
