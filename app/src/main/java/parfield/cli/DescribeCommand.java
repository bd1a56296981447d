package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import parfield.answer.DescribeAnswer;
import parfield.answer.Light;
import parfield.answer.Refusal;
import parfield.answer.SpectrumPictures;
import parfield.plot.ChromaticityChartSpec;
import parfield.plot.CurvesSpec;
import parfield.spectrum.LightAnalysis;
import parfield.spectrum.RadiantSpectrum;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield spectrum describe}: what light it is. */
@Command(
    name = "describe",
    mixinStandardHelpOptions = true,
    header = "Say what light it is.",
    description = {
      "",
      "PPFD and lux where the scale is known, what each waveband holds, peaks, colour, colour"
          + " temperature and rendering where they are defined, the share that corals' symbionts"
          + " absorb by a model; and what the spectrum may suffer from."
    })
final class DescribeCommand implements Callable<Integer> {
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
      names = "--svg",
      paramLabel = "OUT",
      description =
          "Leave a picture of the spectrum in this file, of several the first six in one; a file of"
              + " that name is replaced.")
  private Path svg;

  @Option(
      names = "--colours",
      paramLabel = "OUT",
      description =
          "Leave a picture of where the lights stand among all colours in this file; a file of that"
              + " name is replaced.")
  private Path colours;

  @Override
  public Integer call() {
    List<Path> inputs = files.stream().map(SpectrumArgument::path).toList();
    List<Path> pictures = Stream.of(svg, colours).filter(Objects::nonNull).toList();
    pictures.forEach(picture -> OutputFile.check(picture, inputs));
    PrintWriter err = spec.commandLine().getErr();
    List<DescribeAnswer.Described> described = new ArrayList<>();
    for (Light light : spectra.read(files, err)) {
      RadiantSpectrum radiant = light.photons().toRadiant();
      described.add(
          new DescribeAnswer.Described(
              light, LightAnalysis.on(radiant.wavelengths(), waveBands.bands()).figures(radiant)));
    }
    if (svg != null) {
      OutputFile.write(svg, SpectrumPictures.spectra(first(described, CurvesSpec.MOST_SERIES)));
    }
    if (colours != null) {
      List<DescribeAnswer.Described> shown =
          first(
              described.stream()
                  .filter(one -> one.figures().chromaticity().toOptional().isPresent())
                  .toList(),
              ChromaticityChartSpec.MOST_LIGHTS);
      if (shown.isEmpty()) {
        throw Refusal.of(
            "no light of these has a colour: none is seen within 380 to 780 nm",
            "leave --colours out");
      }
      OutputFile.write(colours, SpectrumPictures.colours(shown));
    }
    spectra.print(
        spec.commandLine().getOut(),
        new DescribeAnswer(described, pictures.stream().map(Path::toString).toList()),
        LengthUnit.CM);
    return ExitCode.DONE;
  }

  private static <T> List<T> first(List<T> all, int most) {
    return all.subList(0, Math.min(all.size(), most));
  }
}
