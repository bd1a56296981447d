package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import parfield.answer.Answer;
import parfield.answer.Bench;
import parfield.answer.Light;
import parfield.answer.MeterAnswer;
import parfield.answer.Refusal;
import parfield.answer.SurveyColourAnswer;
import parfield.formats.Nearest;
import parfield.formats.Sensors;
import parfield.formats.Setup;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.SensorResponse;
import parfield.spectrum.SpectralFactor;
import parfield.survey.SpectralCorrection;
import parfield.survey.SpectralSensor;
import parfield.survey.Survey;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield spectrum meter}: what a quantum sensor makes of a light. */
@Command(
    name = "meter",
    mixinStandardHelpOptions = true,
    header = "Say what a PAR meter makes of a light.",
    description = {
      "",
      "The spectral factor F of each light: true PPFD is reading × F. With a measured response a"
          + " reading can be corrected; the made-up ones only say how large an error may be. Of a"
          + " setup, what the colour of each survey's light does to its readings."
    })
final class MeterCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private SpectrumOptions spectra;

  @Parameters(
      paramLabel = "FILE",
      arity = "1..*",
      converter = SpectrumArgument.Converter.class,
      description =
          "Files of spectra, FILE#NAME for one spectrum of a file; or a setup file (YAML).")
  private List<SpectrumArgument> files;

  @Option(
      names = "--response",
      paramLabel = "TABLE",
      description =
          "The sensor's response: a file (columns wavelength_nm and response), or one of: ideal,"
              + " generic blue-weak, generic red-short, generic even; default: every generic one.")
  private String response;

  @Option(
      names = "--calibrated-under",
      paramLabel = "LIGHT",
      description =
          "The light that its display was made right under: a file of one spectrum, or one of:"
              + " illuminant A, illuminant D65, equal photons; default: illuminant A.")
  private String calibration = "illuminant A";

  @Option(
      names = "--shown",
      paramLabel = "PPFD",
      description = "A reading: say what it may truly be.")
  private Double shown;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    if (shown != null && !(shown > 0)) {
      throw Refusal.of("--shown must be above 0; got " + shown, "give what the meter showed");
    }
    Answer answer =
        files.size() == 1 && MixChannels.isSetup(files.get(0).path())
            ? ofSetup(Bench.read(files.get(0).path()).setup())
            : ofLights(err);
    spectra.print(spec.commandLine().getOut(), answer, LengthUnit.CM);
    return ExitCode.DONE;
  }

  private Answer ofLights(PrintWriter err) {
    List<SensorResponse> responses =
        response == null
            ? SensorResponse.generics()
            : List.of(
                named(
                    response,
                    Sensors.responses(),
                    path -> {
                      Sensors.Read read = Sensors.read(path);
                      read.assumptions().forEach(sentence -> err.println("taken: " + sentence));
                      return read.response();
                    }));
    PhotonSpectrum under =
        named(
            calibration,
            Sensors.lights(),
            path ->
                spectra
                    .one(
                        new SpectrumArgument.Converter().convert(calibration),
                        "the light of calibration",
                        err)
                    .photons());
    List<MeterAnswer.Seen> seen = new ArrayList<>();
    for (Light light : spectra.read(files, err)) {
      for (SensorResponse one : responses) {
        seen.add(new MeterAnswer.Seen(light, one, SpectralFactor.of(one, light.photons(), under)));
      }
    }
    return new MeterAnswer(calibration, seen, java.util.Optional.ofNullable(shown));
  }

  /** Finds what stands under a name. */
  @FunctionalInterface
  private interface FromFile<T> {
    T read(Path path);
  }

  private static <T> T named(String text, Map<String, T> known, FromFile<T> file) {
    if (known.containsKey(text)) {
      return known.get(text);
    }
    if (text.indexOf('.') < 0) {
      throw Refusal.of(
          "nothing goes by the name " + text,
          Nearest.of(text, known.keySet())
              .map(nearest -> "did you mean " + nearest + "?")
              .orElse("name a file, or one of " + String.join(", ", known.keySet())));
    }
    try {
      return file.read(Path.of(text));
    } catch (InvalidPathException e) {
      throw Refusal.of("this names no file: " + text, "name a file");
    }
  }

  private Answer ofSetup(Setup setup) {
    if (response != null || shown != null) {
      throw Refusal.of(
          "--response and --shown belong to files of spectra: a setup states its meters",
          "leave them out, or name a spectrum");
    }
    List<SurveyColourAnswer.Seen> seen = new ArrayList<>();
    for (Survey survey : setup.surveys().values()) {
      SpectralSensor sensor = setup.sensors().get(survey.meter().name());
      if (sensor != null) {
        seen.add(
            new SurveyColourAnswer.Seen(
                survey, sensor.response(), SpectralCorrection.of(survey.rig(), sensor)));
      }
    }
    if (seen.isEmpty()) {
      throw Refusal.of(
          setup.source() + " states of no surveyed meter how it sees colour",
          "add it, as in meters: {probe: {response: generic blue-weak, calibrated under: illuminant"
              + " A}}");
    }
    return new SurveyColourAnswer(setup.source(), seen);
  }
}
