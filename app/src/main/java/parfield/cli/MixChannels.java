package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parfield.answer.Bench;
import parfield.answer.MixableChannels;
import parfield.answer.Refusal;
import parfield.formats.Nearest;
import parfield.lamp.Fixture;
import parfield.plan.DialledMix;
import parfield.rig.Rig;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.Scale;
import parfield.units.LengthUnit;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The channels of a mix: where they come from, how bright they are, how far they may be turned. */
final class MixChannels {
  @Mixin private Modelling modelling;
  @Mixin private LengthOption length;

  @Parameters(
      paramLabel = "CHANNELS",
      arity = "1..*",
      converter = SpectrumArgument.Converter.class,
      description = "Spectra of the channels, each a column or a file; or a setup file (YAML).")
  private List<SpectrumArgument> files;

  @Option(
      names = "--fixture",
      paramLabel = "FIXTURE",
      description = "Fixture of the setup; default: its only one.")
  private String fixtureName;

  @Option(
      names = "--rig",
      paramLabel = "RIG",
      description =
          "Rig of the setup whose light model tells how bright each channel is at --depth.")
  private String rigName;

  @Option(
      names = "--depth",
      paramLabel = "LENGTH",
      description = "Depth of the place, in the middle of the tank.")
  private Double depth;

  @Option(
      names = "--ppfd",
      paramLabel = "CHANNEL=PPFD",
      split = ",",
      description = "PPFD of each channel alone at full output, all read at one place.")
  private Map<String, Double> ppfd = Map.of();

  @Option(
      names = "--limit",
      paramLabel = "CHANNEL=FROM:TO",
      split = ",",
      description = "How far a channel's dial may be turned, in percent; default: 0:100.")
  private Map<String, String> limits = Map.of();

  /** Files that are read. */
  List<Path> inputs() {
    List<Path> inputs = new ArrayList<>(files.stream().map(SpectrumArgument::path).toList());
    inputs.addAll(modelling.inputs());
    return inputs;
  }

  /**
   * Channels that can be mixed.
   *
   * @param fixture that carries them, with its dials
   * @param lights each at full output, in the fixture's order, all of one known scale
   * @param levels how far dials may be turned, by channel
   * @param statements on what their brightness rests
   */
  record Read(
      Fixture fixture,
      List<ChannelLight> lights,
      Map<String, DialledMix.Level> levels,
      List<String> statements) {}

  /** Whether a file is a setup, by its name. */
  static boolean isSetup(Path file) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    return name.endsWith(".yaml") || name.endsWith(".yml");
  }

  /** Reads the channels; each is scaled to its PPFD where that was given. */
  Read read(SpectrumOptions spectra, PrintWriter err) {
    if (files.size() == 1 && isSetup(files.get(0).path())) {
      return ofSetup(Bench.read(files.get(0).path()), err);
    }
    if (fixtureName != null || rigName != null || depth != null) {
      throw Refusal.of(
          "--fixture, --rig and --depth belong to a setup, not to files of spectra",
          "name a setup file (YAML), or leave them out");
    }
    return finished(MixableChannels.of(spectra.read(files, err)));
  }

  private Read ofSetup(Bench bench, PrintWriter err) {
    if (rigName != null) {
      return ofModel(bench, err);
    }
    return finished(MixableChannels.of(fixture(bench)));
  }

  /** Channels as a light model has them in the middle of the tank. */
  private Read ofModel(Bench bench, PrintWriter err) {
    if (depth == null) {
      throw Refusal.of(
          "--rig tells the brightness of channels at a depth: --depth was not given",
          "give it, as in --depth 20");
    }
    Rig rig = bench.rig(rigName);
    MixableChannels.onlyFixture(rig);
    LengthUnit unit = length.unit(bench);
    double metres = unit.toMetres(depth);
    bench.checkDepths(List.of(metres), unit);
    Rig lit = modelling.lit(bench, rig, err);
    return finished(MixableChannels.under(modelling.solver(), rig, lit, metres, unit));
  }

  private Fixture fixture(Bench bench) {
    Map<String, Fixture> fixtures = bench.setup().fixtures();
    if (fixtureName == null && fixtures.size() == 1) {
      return fixtures.values().iterator().next();
    }
    if (fixtureName == null) {
      throw Refusal.of(
          bench.setup().source() + " states several fixtures",
          "name one, as in --fixture " + fixtures.keySet().iterator().next());
    }
    known(List.of(fixtureName), List.copyOf(fixtures.keySet()), "fixture");
    return fixtures.get(fixtureName);
  }

  private static void known(Iterable<String> asked, List<String> there, String what) {
    for (String name : asked) {
      if (!there.contains(name)) {
        throw Refusal.of(
            String.format(Locale.ROOT, "there is no %s named %s", what, name),
            Nearest.of(name, there)
                .map(nearest -> "did you mean " + nearest + "?")
                .orElse(
                    there.isEmpty()
                        ? "there is none at all"
                        : "there are " + String.join(", ", there)));
      }
    }
  }

  private Read finished(MixableChannels channels) {
    List<ChannelLight> lights = channels.lights();
    List<String> names = lights.stream().map(ChannelLight::name).toList();
    known(ppfd.keySet(), names, "channel");
    known(limits.keySet(), names, "channel");
    List<ChannelLight> scaled = new ArrayList<>();
    Map<String, DialledMix.Level> levels = new LinkedHashMap<>();
    for (ChannelLight light : lights) {
      Double at = ppfd.get(light.name());
      if (!ppfd.isEmpty() && at == null) {
        throw Refusal.of(
            "--ppfd tells nothing of channel " + light.name(),
            "read every channel alone at full output, at one place, and give all of them");
      }
      if (at == null && light.spectrum().scale() == Scale.RELATIVE) {
        throw Refusal.of(
            "how bright channel " + light.name() + " is beside the others is not known",
            "read every channel alone at full output, at one place: --ppfd "
                + String.join(",", names.stream().map(name -> name + "=…").toList()),
            "or take it from the light model of a setup: --rig and --depth");
      }
      scaled.add(at == null ? light : new ChannelLight(light.name(), light.spectrum().atPpfd(at)));
      levels.put(light.name(), level(light.name()));
    }
    return new Read(channels.fixture(), scaled, levels, channels.statements());
  }

  private DialledMix.Level level(String name) {
    String text = limits.getOrDefault(name, "0:100");
    String[] ends = text.split(":", -1);
    if (ends.length == 2 && ends[0].matches("[0-9.]{1,9}") && ends[1].matches("[0-9.]{1,9}")) {
      try {
        return new DialledMix.Level(Double.parseDouble(ends[0]), Double.parseDouble(ends[1]));
      } catch (IllegalArgumentException e) {
        throw noLevel(name, text);
      }
    }
    throw noLevel(name, text);
  }

  private static Refusal noLevel(String name, String text) {
    return Refusal.of(
        String.format(Locale.ROOT, "the limit of channel %s is no range: %s", name, text),
        "write two dials from 0 to 100, the lower first, as in --limit " + name + "=20:100");
  }
}
