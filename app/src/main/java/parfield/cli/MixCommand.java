package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import parfield.answer.Light;
import parfield.answer.MixAnswer;
import parfield.answer.Refusal;
import parfield.answer.SpectrumPictures;
import parfield.plan.DialledMix;
import parfield.spectrum.MixGoal;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.WaveBand;
import parfield.units.LengthUnit;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code parfield spectrum mix}: dials that come nearest to a wanted light. */
@Command(
    name = "mix",
    mixinStandardHelpOptions = true,
    header = "Find the dials that come nearest to a wanted light.",
    description = {
      "",
      "The wanted light is the shape of a reference spectrum, or shares of photons in wavebands. No"
          + " setting within the limits comes nearer; of those that are equally near, the brightest"
          + " is given, with the light that it leaves.",
      "",
      "How bright the channels are beside each other must be known: from spectra in a complete unit,"
          + " from --ppfd, or from a light model of a setup (--rig and --depth)."
    })
final class MixCommand implements Callable<Integer> {
  private static final WaveBand PAR =
      WaveBand.of(PhotonSpectrum.PAR_FROM_NM, PhotonSpectrum.PAR_TO_NM);

  @Spec private CommandSpec spec;
  @Mixin private SpectrumOptions spectra;
  @Mixin private BandsOption waveBands;
  @Mixin private MixChannels channels;

  @ArgGroup(multiplicity = "1")
  private Wanted wanted;

  /** What to come near to: one of two. */
  static final class Wanted {
    @Option(
        names = "--to",
        paramLabel = "REFERENCE",
        converter = SpectrumArgument.Converter.class,
        description = "Come near to the shape of this spectrum within 400 to 700 nm.")
    private SpectrumArgument reference;

    @Option(
        names = "--shares",
        paramLabel = "BAND=PERCENT",
        split = ",",
        description =
            "Come near to these shares of photons, as in 430-480=45,600-700=8; each band is one of"
                + " --bands, those not named may hold what they will.")
    private Map<String, Double> shares;
  }

  @Option(
      names = "--svg",
      paramLabel = "OUT",
      description =
          "Leave a picture of the mix, over the reference if there is one, in this file; one of that"
              + " name is replaced.")
  private Path svg;

  @Override
  public Integer call() {
    if (svg != null) {
      List<Path> inputs = new ArrayList<>(channels.inputs());
      Optional.ofNullable(wanted.reference).ifPresent(argument -> inputs.add(argument.path()));
      OutputFile.check(svg, inputs);
    }
    PrintWriter err = spec.commandLine().getErr();
    Optional<Light> reference =
        Optional.ofNullable(wanted.reference)
            .map(argument -> spectra.one(argument, "the wanted light", err));
    Map<WaveBand, Double> shares = wanted.shares == null ? Map.of() : shares(wanted.shares);
    MixChannels.Read read = channels.read(spectra, err);
    MixGoal goal =
        reference
            .map(light -> MixGoal.shape(light.photons(), PAR))
            .orElseGet(() -> MixGoal.shares(waveBands.bands(), shares));
    DialledMix mix = DialledMix.nearest(goal, read.fixture(), read.lights(), read.levels());
    MixAnswer answer =
        new MixAnswer(
            reference,
            shares,
            waveBands.bands(),
            read.fixture(),
            read.lights(),
            mix,
            read.statements(),
            svg == null ? List.of() : List.of(svg.toString()));
    if (svg != null) {
      OutputFile.write(svg, SpectrumPictures.mix(answer));
    }
    spectra.print(spec.commandLine().getOut(), answer, LengthUnit.CM);
    return ExitCode.DONE;
  }

  private Map<WaveBand, Double> shares(Map<String, Double> percents) {
    Map<WaveBand, Double> found = new LinkedHashMap<>();
    for (Map.Entry<String, Double> entry : percents.entrySet()) {
      WaveBand band =
          waveBands.bands().bands().stream()
              .filter(one -> name(one).equals(entry.getKey().replace('–', '-').strip()))
              .findFirst()
              .orElseThrow(
                  () ->
                      Refusal.of(
                          String.format(Locale.ROOT, "%s is none of the wavebands", entry.getKey()),
                          "they are "
                              + String.join(
                                  ", ",
                                  waveBands.bands().bands().stream().map(MixCommand::name).toList())
                              + "; give others by --bands"));
      double percent = entry.getValue();
      if (!(percent >= 0 && percent <= 100)) {
        throw Refusal.of(
            String.format(
                Locale.ROOT, "a share runs from 0 to 100 %%; got %s for %s", percent, name(band)),
            "write it in percent, as in 430-480=45");
      }
      found.put(band, percent / 100);
    }
    return found;
  }

  private static String name(WaveBand band) {
    return number(band.fromNm()) + "-" + number(band.toNm());
  }

  private static String number(double nm) {
    return nm == Math.rint(nm) ? String.valueOf((long) nm) : String.valueOf(nm);
  }
}
