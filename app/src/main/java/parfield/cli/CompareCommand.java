package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import parfield.answer.CompareAnswer;
import parfield.answer.Light;
import parfield.answer.Refusal;
import parfield.answer.SpectrumPictures;
import parfield.spectrum.Comparison;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** {@code parfield spectrum compare}: lights beside a reference. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    header = "Hold lights against a reference, equally bright.",
    description = {
      "",
      "Both are brought to the same PPFD, or to the same energy. Then: how alike their shapes are"
          + " (spectral angle, overlap), how far the main peak is shifted, and how each band's share"
          + " differs."
    })
final class CompareCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private SpectrumOptions spectra;
  @Mixin private BandsOption waveBands;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      converter = SpectrumArgument.Converter.class,
      description = "Files of spectra; FILE#NAME is one spectrum of a file.")
  private List<SpectrumArgument> files;

  @Option(
      names = "--with",
      required = true,
      paramLabel = "REFERENCE",
      converter = SpectrumArgument.Converter.class,
      description = "The reference: a file of one spectrum, or FILE#NAME.")
  private SpectrumArgument reference;

  @Option(
      names = "--equal",
      paramLabel = "ppfd|energy",
      converter = BasisConverter.class,
      description = "What is made equal; default: ppfd.")
  private Comparison.Basis basis = Comparison.Basis.EQUAL_PPFD;

  @Option(
      names = "--svg",
      paramLabel = "OUT",
      description =
          "Leave a picture of the first light over the reference with their difference in this"
              + " file; one of that name is replaced.")
  private Path svg;

  @Override
  public Integer call() {
    List<Path> inputs = new ArrayList<>(files.stream().map(SpectrumArgument::path).toList());
    inputs.add(reference.path());
    if (svg != null) {
      OutputFile.check(svg, inputs);
    }
    PrintWriter err = spec.commandLine().getErr();
    Light with = spectra.one(reference, "the reference", err);
    List<CompareAnswer.Compared> compared =
        spectra.read(files, err).stream().map(light -> compared(light, with)).toList();
    if (svg != null) {
      OutputFile.write(svg, SpectrumPictures.overlay(compared.get(0), with));
    }
    spectra.print(
        spec.commandLine().getOut(),
        new CompareAnswer(
            with,
            basis,
            waveBands.bands(),
            compared,
            svg == null ? List.of() : List.of(svg.toString())),
        LengthUnit.CM);
    return ExitCode.DONE;
  }

  private CompareAnswer.Compared compared(Light light, Light with) {
    try {
      return new CompareAnswer.Compared(
          light, Comparison.of(basis, light.photons(), with.photons()));
    } catch (IllegalArgumentException e) {
      throw Refusal.of(
          String.format(Locale.ROOT, "%s with %s: %s", light.name(), with.name(), e.getMessage()),
          "compare lights that have some within 400 to 700 nm");
    }
  }

  /** Reads {@code ppfd} and {@code energy}. */
  static final class BasisConverter implements ITypeConverter<Comparison.Basis> {
    @Override
    public Comparison.Basis convert(String text) {
      return switch (text) {
        case "ppfd" -> Comparison.Basis.EQUAL_PPFD;
        case "energy" -> Comparison.Basis.EQUAL_ENERGY;
        default ->
            throw new TypeConversionException("what is made equal is ppfd or energy; got " + text);
      };
    }
  }
}
