package parfield.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.answer.Answer;
import parfield.answer.Json;
import parfield.answer.Light;
import parfield.answer.Refusal;
import parfield.formats.MeasuredSpectrum;
import parfield.formats.Nearest;
import parfield.formats.SpectralUnit;
import parfield.formats.SpectrumFile;
import parfield.units.LengthUnit;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** What the commands on spectra share: how files are read and answers shown. */
final class SpectrumOptions {
  @Option(names = OutputOptions.JSON, description = "Answer in JSON, errors too.")
  private boolean json;

  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      converter = UnitConverter.class,
      description =
          "What the numbers of the files count, where they do not say: W/m2/nm, uW/cm2/nm, W/nm,"
              + " umol/m2/s/nm, energy, photons or counts.")
  private SpectralUnit unit;

  /** Writes an answer to standard output, lengths in {@code length}. */
  void print(PrintWriter out, Answer answer, LengthUnit length) {
    out.print(json ? Json.text(answer.json()) : answer.text(length));
  }

  /**
   * Reads the spectra that are named.
   *
   * @param err takes what was assumed
   * @throws Refusal if a file holds no spectrum of the name
   */
  List<Light> read(List<SpectrumArgument> named, PrintWriter err) {
    List<Light> lights = new ArrayList<>();
    named.forEach(argument -> lights.addAll(read(argument, err)));
    return lights;
  }

  /** Reads the spectra of one file, or the one that is named in it. */
  List<Light> read(SpectrumArgument argument, PrintWriter err) {
    SpectrumFile.Read read = SpectrumFile.read(argument.path(), Optional.ofNullable(unit));
    read.assumptions().forEach(sentence -> err.println("taken: " + sentence));
    List<MeasuredSpectrum> spectra = read.spectra();
    if (argument.name().isEmpty()) {
      return spectra.stream().map(Light::of).toList();
    }
    String name = argument.name().get();
    List<String> names = spectra.stream().map(MeasuredSpectrum::name).toList();
    int at = names.indexOf(name);
    if (at < 0) {
      throw Refusal.of(
          String.format(
              Locale.ROOT, "%s holds no spectrum named %s", argument.path().getFileName(), name),
          Nearest.of(name, names)
              .map(nearest -> "did you mean " + nearest + "?")
              .orElse("its spectra are " + String.join(", ", names)));
    }
    return List.of(Light.of(spectra.get(at)));
  }

  /**
   * Reads one spectrum.
   *
   * @param what it is for, as words for a refusal
   * @throws Refusal if the file holds several and none is named
   */
  Light one(SpectrumArgument argument, String what, PrintWriter err) {
    List<Light> lights = read(argument, err);
    if (lights.size() > 1) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "%s holds %d spectra; %s is one of them",
              argument.path().getFileName(),
              lights.size(),
              what),
          String.format(
              Locale.ROOT,
              "name it, as in %s#%s",
              argument.path().getFileName(),
              lights.get(0).name()));
    }
    return lights.get(0);
  }

  /** Reads a unit of spectra. */
  static final class UnitConverter implements ITypeConverter<SpectralUnit> {
    @Override
    public SpectralUnit convert(String text) {
      return SpectralUnit.of(text)
          .orElseThrow(
              () ->
                  new TypeConversionException(
                      "a unit of spectra is one of W/m2/nm, uW/cm2/nm, W/nm, umol/m2/s/nm, energy,"
                          + " photons, counts; got "
                          + text));
    }
  }
}
