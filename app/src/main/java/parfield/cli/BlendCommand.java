package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.BlendAnswer;
import parfield.answer.Light;
import parfield.answer.PredictedBlend;
import parfield.answer.Refusal;
import parfield.answer.SpectrumPictures;
import parfield.field.Places;
import parfield.formats.PlacesFile;
import parfield.rig.Rig;
import parfield.spectrum.Blend;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield spectrum blend}: whether the colours blend into one light over places. */
@Command(
    name = "blend",
    mixinStandardHelpOptions = true,
    header = "Say whether the colours blend into one light.",
    description = {
      "",
      "Holds the spectra of several places under one fixture against their mean light, brightness"
          + " left out: how far band shares and colour differ, where most, and what that means. Of a"
          + " setup, the spectra are predicted at places under a rig."
    })
final class BlendCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private SpectrumOptions spectra;
  @Mixin private BandsOption waveBands;
  @Mixin private LengthOption length;
  @Mixin private Modelling modelling;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      converter = SpectrumArgument.Converter.class,
      description =
          "Spectra of the places, each a column or a file, ten are common; or a setup file (YAML).")
  private List<SpectrumArgument> files;

  @Option(
      names = "--rig",
      paramLabel = "RIG",
      description = "Rig of the setup, at the dials that it states.")
  private String rigName;

  @Option(
      names = "--depth",
      paramLabel = "LENGTH",
      description = "Depth of the places in the setup: ten, in two rows of five.")
  private Double depth;

  @Option(
      names = "--at",
      paramLabel = "PLACES",
      description =
          "Places of this file instead (columns x, y and depth, units in their names); without a"
              + " column of depths, at --depth.")
  private Path places;

  @Option(
      names = "--svg",
      paramLabel = "OUT",
      description =
          "Leave a chart of the differences, place by place, in this file; one of that name is"
              + " replaced.")
  private Path svg;

  @Override
  public Integer call() {
    List<Path> inputs = new ArrayList<>(files.stream().map(SpectrumArgument::path).toList());
    inputs.addAll(modelling.inputs());
    if (places != null) {
      inputs.add(places);
    }
    if (svg != null) {
      OutputFile.check(svg, inputs);
      if (waveBands.bands().bands().size() > SpectrumPictures.MOST_BLEND_BANDS) {
        throw Refusal.of(
            "a chart of a blend has room for " + SpectrumPictures.MOST_BLEND_BANDS + " bands",
            "give fewer --bands, or leave --svg out");
      }
    }
    PrintWriter err = spec.commandLine().getErr();
    List<String> left = svg == null ? List.of() : List.of(svg.toString());
    LengthUnit unit = length.unit();
    BlendAnswer answer;
    if (isSetup()) {
      Bench bench = Bench.read(files.get(0).path());
      unit = length.unit(bench);
      answer = predicted(bench, unit, left, err);
    } else {
      answer = measured(left, err);
    }
    if (svg != null) {
      OutputFile.write(svg, SpectrumPictures.blend(answer));
    }
    spectra.print(spec.commandLine().getOut(), answer, unit);
    return ExitCode.DONE;
  }

  private boolean isSetup() {
    return files.size() == 1 && MixChannels.isSetup(files.get(0).path());
  }

  private BlendAnswer measured(List<String> left, PrintWriter err) {
    if (rigName != null || depth != null || places != null) {
      throw Refusal.of(
          "--rig, --depth and --at belong to a setup, not to files of spectra",
          "name a setup file (YAML), or leave them out");
    }
    List<Light> lights = spectra.read(files, err);
    Blend blend =
        Blend.of(
            waveBands.bands(),
            lights.stream().map(light -> new Blend.Spot(light.name(), light.photons())).toList());
    return new BlendAnswer(blend, waveBands.bands(), List.of(), lights, left);
  }

  private BlendAnswer predicted(Bench bench, LengthUnit unit, List<String> left, PrintWriter err) {
    if (rigName == null || (depth == null && places == null)) {
      throw Refusal.of(
          "a blend is predicted under a rig, at a depth: "
              + (rigName == null ? "--rig" : "--depth")
              + " was not given",
          "give both, as in --rig "
              + bench.setup().rigs().keySet().iterator().next()
              + " --depth 20");
    }
    Rig rig = bench.rig(rigName);
    Places asked = asked(bench, rig, unit, err);
    Rig lit = modelling.lit(bench, rig, err);
    return PredictedBlend.of(
        modelling.solver(),
        lit,
        asked,
        places == null ? OptionalDouble.of(unit.toMetres(depth)) : OptionalDouble.empty(),
        waveBands.bands(),
        unit,
        left);
  }

  private Places asked(Bench bench, Rig rig, LengthUnit unit, PrintWriter err) {
    List<Double> depths = depth == null ? List.of() : List.of(unit.toMetres(depth));
    bench.checkDepths(depths, unit);
    if (places == null) {
      return PredictedBlend.usualPlaces(rig, depths.get(0));
    }
    PlacesFile.Read read = PlacesFile.read(places, bench.setup().tank(), unit, depths);
    read.assumptions().forEach(sentence -> err.println("taken: " + sentence));
    return Places.of(read.places());
  }
}
