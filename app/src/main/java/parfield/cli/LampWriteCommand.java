package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.LampLight;
import parfield.answer.LampWrittenAnswer;
import parfield.fit.LightModel;
import parfield.formats.FixtureLight;
import parfield.formats.PhotometricFile;
import parfield.formats.WholeFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** {@code parfield lamp write}: a photometric file of a fitted fixture. */
@Command(
    name = "write",
    mixinStandardHelpOptions = true,
    header = "Leave the light of a fixture as a photometric file.",
    description = {
      "",
      "The fixture as its light model has it, seen as one source: candela by the spectra of its"
          + " channels, photons by keywords of our own. One channel by itself is written at full"
          + " output."
    })
final class LampWriteCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(
      names = "--fixture",
      paramLabel = "FIXTURE",
      description = "Name of the fixture; default: the only one.")
  private String fixture;

  @Option(
      names = "--channel",
      paramLabel = "CHANNEL",
      description = "Only this channel, at full output; default: all channels together.")
  private String channel;

  @Option(
      names = "--dial",
      paramLabel = "DIAL=PERCENT",
      description = "What a dial stands at, as in --dial blue=80; default: 100.")
  private Map<String, Double> dials = new LinkedHashMap<>();

  @Option(
      names = "--as",
      required = true,
      paramLabel = "lm63|eulumdat",
      converter = FormatConverter.class,
      description = "Format of the file.")
  private PhotometricFile.Format format;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "OUT",
      description = "Where to leave it; a file of that name is replaced.")
  private Path target;

  @Override
  public Integer call() {
    List<Path> inputs = new ArrayList<>(modelling.inputs());
    inputs.add(file);
    OutputFile.check(target, inputs);
    PrintWriter err = spec.commandLine().getErr();
    Bench bench = Bench.read(file);
    LampLight lamp =
        LampLight.of(bench, Optional.ofNullable(fixture), Optional.ofNullable(channel), dials);
    Optional<LightModel> model =
        lamp.stated() && modelling.inputs().isEmpty()
            ? Optional.empty()
            : Optional.of(modelling.model(bench, err));
    FixtureLight light = lamp.light(model, LocalDate.now(ZoneOffset.UTC));
    byte[] bytes = light.bytes(format);
    WholeFile.write(target, out -> out.write(bytes));
    String name = target.toString();
    output.print(
        spec.commandLine().getOut(),
        new LampWrittenAnswer(light, PhotometricFile.read(name, bytes), name),
        output.length(bench));
    return ExitCode.DONE;
  }

  /** Reads {@code lm63} and {@code eulumdat}. */
  static final class FormatConverter implements ITypeConverter<PhotometricFile.Format> {
    @Override
    public PhotometricFile.Format convert(String text) {
      for (PhotometricFile.Format format : PhotometricFile.Format.values()) {
        if (format.key().equals(text)) {
          return format;
        }
      }
      throw new TypeConversionException("a format is lm63 or eulumdat; got " + text);
    }
  }
}
