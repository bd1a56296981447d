package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Function;
import parfield.answer.Bench;
import parfield.answer.FieldAnswer;
import parfield.answer.FieldPictures;
import parfield.answer.FieldPrediction;
import parfield.answer.Numbers;
import parfield.answer.Refusal;
import parfield.field.Departure;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.formats.PlacesFile;
import parfield.photon.Wanted;
import parfield.plot.Scale;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield field}: the predicted light of a rig. */
@Command(
    name = "field",
    mixinStandardHelpOptions = true,
    header = "Predict the light of a rig.",
    description = {
      "",
      "PPFD on planes or at places, each value with its 5 to 95 %% interval: as the bench's meter"
          + " would show it, and with the meter's own scale error. Without --csv the values go to"
          + " standard output as separated values. Ctrl-C stops the reference solver and prints what"
          + " is known by then."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done",
      "2:not done: a fault in a file or on the command line",
      "130:interrupted, after what was known by then was printed"
    })
final class FieldCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;
  @Mixin private Solving solving;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(
      names = "--rig",
      required = true,
      paramLabel = "RIG",
      description = "Name of a rig of the setup, measured or not.")
  private String rigName;

  @Option(
      names = "--depth",
      paramLabel = "LENGTHS",
      converter = LengthsConverter.class,
      description = "Depths of planes below the water line, as in 15,30 or 10:40:10.")
  private LengthsConverter.Lengths depths;

  @Option(
      names = "--at",
      paramLabel = "PLACES",
      description =
          "Predict at the places of this file instead (columns x, y and depth, units in their"
              + " names); without a column of depths, at each --depth.")
  private Path places;

  @Option(
      names = "--cell",
      paramLabel = "LENGTH",
      description = "Greatest side of the cells of a plane; default: 2.5 cm.")
  private Double cell;

  @Option(
      names = "--csv",
      paramLabel = "OUT",
      description = "Leave the values in this file; one of that name is replaced.")
  private Path csv;

  @Option(
      names = "--svg",
      paramLabel = "OUT",
      description =
          "Leave a heat map of each --depth in this file; with several depths, each in a file of its"
              + " own, with the depth before the ending. Files of that name are replaced.")
  private Path svg;

  @Option(
      names = "--scale",
      paramLabel = "FROM:TO",
      converter = ScaleConverter.class,
      description =
          "PPFD at the ends of the maps' colours; default: round numbers that hold all maps.")
  private Scale scale;

  @Override
  public Integer call() {
    checkOptions();
    Bench bench = Bench.read(file);
    LengthUnit unit = output.length(bench);
    Rig rig = bench.rig(rigName);
    List<Double> planes = depths == null ? List.of() : depths.metres(unit);
    bench.checkDepths(planes, unit);
    PrintWriter err = spec.commandLine().getErr();
    List<Places> asked = new ArrayList<>();
    if (places != null) {
      PlacesFile.Read read = PlacesFile.read(places, bench.setup().tank(), unit, planes);
      read.assumptions().forEach(sentence -> err.println("taken: " + sentence));
      asked.add(Places.of(read.places()));
    }
    LightModel model = modelling.model(bench, err);
    FieldPrediction prediction = new FieldPrediction(model, modelling.solver(), rig);
    double side = cell == null ? FieldPrediction.CELL : unit.toMetres(cell);
    if (!solving.byReference()) {
      Departure.of(rig.tank()).forEach(left -> err.println(left.inWords()));
      predict(prediction, asked, planes, side, bench);
      tell(prediction, bench, rig, planes, unit);
      return ExitCode.DONE;
    }
    try (Interruption interruption = new Interruption()) {
      count(prediction, model, asked, planes, side, interruption);
      predict(prediction, asked, planes, side, bench);
      tell(prediction, bench, rig, planes, unit);
      spec.commandLine().getOut().flush();
      return interruption.asked() ? ExitCode.INTERRUPTED : ExitCode.DONE;
    }
  }

  private void predict(
      FieldPrediction prediction, List<Places> asked, List<Double> planes, double side, Bench of) {
    if (asked.isEmpty()) {
      planes.forEach(depth -> prediction.addPlane(depth, side, of.bands()));
    } else {
      asked.forEach(prediction::addPlaces);
    }
  }

  private void count(
      FieldPrediction prediction,
      LightModel model,
      List<Places> asked,
      List<Double> planes,
      double side,
      Interruption interruption) {
    boolean whole = asked.isEmpty();
    prediction.correctBy(
        solving.count(
            model.best().applyTo(prediction.rig()),
            whole ? planes.stream().map(depth -> prediction.cells(depth, side)).toList() : asked,
            whole ? prediction.sensor(side) : Wanted.SENSOR,
            interruption,
            spec.commandLine().getErr()));
  }

  private void tell(
      FieldPrediction prediction, Bench bench, Rig rig, List<Double> planes, LengthUnit unit) {
    Map<Path, Function<FieldAnswer, String>> files = files(bench, rig, planes, unit);
    FieldAnswer answer =
        prediction.answer(
            bench.setup().source(), files.keySet().stream().map(Path::toString).toList());
    files.forEach((target, content) -> OutputFile.write(target, content.apply(answer)));
    PrintWriter out = spec.commandLine().getOut();
    if (csv == null && !output.json()) {
      out.print(answer.csv(unit));
      answer.counted().ifPresent(spec.commandLine().getErr()::print);
    } else {
      output.print(out, answer, unit);
    }
  }

  /** What shall be left, by file. */
  private Map<Path, Function<FieldAnswer, String>> files(
      Bench bench, Rig rig, List<Double> planes, LengthUnit unit) {
    Map<Path, Function<FieldAnswer, String>> files = new LinkedHashMap<>();
    if (csv != null) {
      files.put(csv, answer -> answer.csv(unit));
    }
    if (svg != null) {
      FieldPictures pictures = new FieldPictures(bench.setup(), rig, unit);
      for (int k = 0; k < planes.size(); k++) {
        int plane = k;
        Path target =
            planes.size() == 1 ? svg : OutputFile.with(svg, Numbers.length(planes.get(k), unit));
        files.put(
            target,
            answer ->
                pictures.map(answer, plane, scale == null ? FieldPictures.scale(answer) : scale));
      }
    }
    return files;
  }

  private void checkOptions() {
    solving.check();
    if (places == null && depths == null) {
      throw Refusal.of(
          "field needs to know where: neither --depth nor --at was given",
          "give the depth of a plane, as in --depth 15, or a file of places, as in --at places.csv");
    }
    if (cell != null && !(cell > 0)) {
      throw Refusal.of("--cell must be above 0; got " + cell, "leave it out for cells of 2.5 cm");
    }
    List<Path> inputs = new ArrayList<>(modelling.inputs());
    inputs.add(file);
    if (places != null) {
      inputs.add(places);
    }
    if (csv != null) {
      OutputFile.check(csv, inputs);
    }
    if (svg != null) {
      if (places != null || depths == null) {
        throw Refusal.of(
            "--svg draws whole planes: it goes with --depth, not with --at",
            "leave --at out, or --svg");
      }
      OutputFile.check(svg, inputs);
    }
  }
}
