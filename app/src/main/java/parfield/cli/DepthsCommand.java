package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.DepthsAnswer;
import parfield.answer.Light;
import parfield.answer.Refusal;
import parfield.answer.SpectrumPictures;
import parfield.optics.Underwater;
import parfield.optics.Water;
import parfield.plot.CurvesSpec;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield spectrum depths}: how water changes a light on its way down. */
@Command(
    name = "depths",
    mixinStandardHelpOptions = true,
    header = "Say how water changes a light on its way down.",
    description = {
      "",
      "What absorption alone leaves of a light that goes straight down: the share of its PPFD, and"
          + " how the shares of its wavebands shift. Slanted light goes a longer way and changes"
          + " more. Spreading with distance changes no colour and is not counted."
    })
final class DepthsCommand implements Callable<Integer> {
  /** Yellowing where none is stated [m⁻¹]; as in a setup. */
  private static final double YELLOWING = 0.05;

  @Spec private CommandSpec spec;
  @Mixin private SpectrumOptions spectra;
  @Mixin private BandsOption waveBands;
  @Mixin private LengthOption length;

  @Parameters(
      paramLabel = "FILE",
      converter = SpectrumArgument.Converter.class,
      description = "A file of one spectrum, or FILE#NAME.")
  private SpectrumArgument file;

  @Option(
      names = "--at",
      required = true,
      paramLabel = "LENGTHS",
      converter = LengthsConverter.class,
      description = "Depths below the water line, as in 10,20,30 or 0:50:10.")
  private LengthsConverter.Lengths depths;

  @Option(
      names = "--setup",
      paramLabel = "SETUP",
      description = "Take the water of this setup file.")
  private Path setup;

  @Option(
      names = "--yellowing",
      paramLabel = "1/M",
      description = "Absorption of yellow substance at 440 nm; default: the setup's, else 0.05.")
  private Double yellowing;

  @Option(
      names = "--svg",
      paramLabel = "OUT",
      description =
          "Leave a chart of the shares by depth in this file; one of that name is replaced.")
  private Path svg;

  @Override
  public Integer call() {
    List<Path> inputs = new ArrayList<>(List.of(file.path()));
    if (setup != null) {
      inputs.add(setup);
    }
    if (svg != null) {
      OutputFile.check(svg, inputs);
      if (waveBands.bands().bands().size() > CurvesSpec.MOST_SERIES) {
        throw Refusal.of(
            "a chart tells at most " + CurvesSpec.MOST_SERIES + " bands apart",
            "give fewer --bands, or leave --svg out");
      }
    }
    PrintWriter err = spec.commandLine().getErr();
    Light light = spectra.one(file, "the light", err);
    Water water = Water.seaWater(YELLOWING);
    LengthUnit unit = length.unit();
    if (setup != null) {
      Bench bench = Bench.read(setup);
      unit = length.unit(bench);
      water = bench.setup().tank().water();
      bench.checkDepths(depths.metres(unit), unit);
    }
    if (yellowing != null) {
      water = water.withYellowing(yellowing);
    }
    DepthsAnswer answer =
        new DepthsAnswer(
            light,
            water,
            waveBands.bands(),
            Underwater.shift(light.photons(), water, waveBands.bands(), depths.metres(unit)),
            svg == null ? List.of() : List.of(svg.toString()));
    if (svg != null) {
      OutputFile.write(svg, SpectrumPictures.depths(answer, unit));
    }
    spectra.print(spec.commandLine().getOut(), answer, unit);
    return ExitCode.DONE;
  }
}
