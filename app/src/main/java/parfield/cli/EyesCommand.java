package parfield.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import parfield.answer.EyesAnswer;
import parfield.answer.Light;
import parfield.answer.Refusal;
import parfield.spectrum.EyeExposure;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.Scale;
import parfield.spectrum.ViewedSource;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** {@code parfield spectrum eyes}: what a light does to eyes, and when limits are reached. */
@Command(
    name = "eyes",
    mixinStandardHelpOptions = true,
    header = "Estimate after what time a light reaches the limits for eyes.",
    description = {
      "",
      "Irradiance at the eye, weighted for blue light and ultraviolet, and the time after which the"
          + " limits of IEC 62471 and Directive 2006/25/EC are reached. An estimate, no clearance:"
          + " looked at from a stated distance, the source taken as evenly bright."
    })
final class EyesCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private SpectrumOptions spectra;
  @Mixin private LengthOption length;

  @Parameters(
      paramLabel = "FILE",
      converter = SpectrumArgument.Converter.class,
      description =
          "A file of one spectrum, or FILE#NAME; in W or µmol per m² and nm it is taken as read where"
              + " the eye is.")
  private SpectrumArgument file;

  @Option(
      names = "--distance",
      required = true,
      paramLabel = "LENGTH",
      description = "From what shines to the eye.")
  private double distance;

  @Option(
      names = "--size",
      required = true,
      paramLabel = "WIDTHxHEIGHT",
      converter = SizeConverter.class,
      description = "Sides of what shines, as in 40x9.")
  private Size size;

  @Option(
      names = "--ppfd",
      paramLabel = "PPFD",
      description =
          "PPFD read in air where the eye is, facing the light; needed where the spectrum has no"
              + " such scale.")
  private Double ppfd;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    if (!(distance > 0)) {
      throw Refusal.of("--distance must be above 0; got " + distance, "give it, as in 50");
    }
    LengthUnit unit = length.unit();
    Light light = spectra.one(file, "the light", err);
    PhotonSpectrum atEye = light.photons();
    if (ppfd != null) {
      atEye = atEye.atPpfd(ppfd);
    } else if (atEye.scale() != Scale.IRRADIANCE) {
      throw Refusal.of(
          "how bright " + light.name() + " is where the eye is, is not known",
          "read the PPFD there, in air, facing the light, and give it, as in --ppfd 300");
    }
    ViewedSource source =
        new ViewedSource(
            unit.toMetres(size.width()), unit.toMetres(size.height()), unit.toMetres(distance));
    spectra.print(
        spec.commandLine().getOut(),
        new EyesAnswer(light, atEye.parPhotons(), EyeExposure.of(atEye.toRadiant(), source)),
        unit);
    return ExitCode.DONE;
  }

  /**
   * Sides of what shines, in a unit that is not known yet.
   *
   * @param width one side, above 0
   * @param height the other, above 0
   */
  record Size(double width, double height) {}

  /** Reads {@code 40x9}. */
  static final class SizeConverter implements ITypeConverter<Size> {
    @Override
    public Size convert(String text) {
      String[] sides = text.toLowerCase(java.util.Locale.ROOT).split("[x×]", -1);
      if (sides.length == 2 && sides[0].matches("[0-9.]{1,9}") && sides[1].matches("[0-9.]{1,9}")) {
        try {
          Size size = new Size(Double.parseDouble(sides[0]), Double.parseDouble(sides[1]));
          if (size.width() > 0 && size.height() > 0) {
            return size;
          }
        } catch (NumberFormatException e) {
          throw fault(text);
        }
      }
      throw fault(text);
    }

    private static TypeConversionException fault(String text) {
      return new TypeConversionException("a size is two lengths above 0, as in 40x9; got " + text);
    }
  }
}
