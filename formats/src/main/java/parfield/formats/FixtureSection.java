package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.Master;
import parfield.lamp.OutputCurve;
import parfield.spectrum.PhotonSpectrum;

/** One of the setup's {@code fixtures}: emitters, channels, dials, distribution. */
final class FixtureSection {
  private final Section fixture;
  private final Lengths lengths;
  private final Sources sources;

  private FixtureSection(Section fixture, Lengths lengths, Sources sources) {
    this.fixture = fixture;
    this.lengths = lengths;
    this.sources = sources;
  }

  /** The fixture, empty if anything about it is wrong. */
  static Optional<Fixture> read(String name, Entry entry, Lengths lengths, Sources sources) {
    int faults = entry.notes().count();
    Optional<Section> section =
        entry.section("length", "width", "emitters", "channels", "dials", "distribution");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    try (Section open = section.get()) {
      return new FixtureSection(open, lengths, sources).fixture(name, faults);
    }
  }

  private Optional<Fixture> fixture(String name, int faultsBefore) {
    double length = size("length", "state the size of the fixture along its length");
    double width = size("width", "state the size of the fixture across its length");
    List<Emitter> emitters = emitters(length, width);
    List<Channel> channels = channels(Math.max(1, emitters.size()));
    List<Master> masters = masters(channels.stream().map(Channel::name).toList());
    if (fixture.at().notes().count() > faultsBefore) {
      return Optional.empty();
    }
    return Optional.of(
        new Fixture(
            name, lengths.metres(length), lengths.metres(width), emitters, channels, masters));
  }

  /** A size, 0 if it is not stated. */
  private double size(String key, String cure) {
    return fixture.optional(key).map(entry -> entry.number(lengths.positive(), cure)).orElse(0.0);
  }

  private List<Emitter> emitters(double length, double width) {
    String cure = "write where light leaves the fixture: emitters: [{x: -12, y: 0}, {x: 12, y: 0}]";
    Optional<Entry> stated = fixture.required("emitters", cure);
    if (stated.isEmpty()) {
      return List.of();
    }
    List<Entry> entries = stated.get().list(cure);
    if (stated.get().isList() && entries.isEmpty()) {
      stated.get().fault("an empty list", "1 emitter or more", cure);
    }
    List<Emitter> emitters = new ArrayList<>();
    boolean points = false;
    for (Entry entry : entries) {
      Optional<Section> section = entry.section("x", "y", "aperture");
      if (section.isEmpty()) {
        continue;
      }
      Section emitter = section.get();
      double x = emitter.number("x", within(length), "state the offset along the fixture's length");
      double y = emitter.number("y", within(width), "state the offset across the fixture's length");
      double aperture =
          emitter
              .optional("aperture")
              .map(side -> side.number(lengths.notNegative(), "state the side of the lit square"))
              .orElse(0.0);
      points |= !emitter.has("aperture");
      if (!Double.isNaN(x) && !Double.isNaN(y) && !Double.isNaN(aperture)) {
        emitters.add(new Emitter(lengths.metres(x), lengths.metres(y), lengths.metres(aperture)));
      }
    }
    if (points) {
      fixture.taken("aperture of its emitters", "unknown (a fit seeks it, else points)");
    }
    return emitters;
  }

  /** Offsets lie within a fixture whose size is stated. */
  private Limit within(double size) {
    return size > 0 ? lengths.between(-size / 2, size / 2) : lengths.signed();
  }

  private List<Channel> channels(int emitters) {
    String cure = "name the channels: channels: {blue: {spectrum: blue.csv, watts: 90}}";
    Optional<Entry> stated = fixture.required("channels", cure);
    if (stated.isEmpty()) {
      return List.of();
    }
    Map<String, Entry> entries = stated.get().named(cure);
    if (stated.get().isMap() && entries.isEmpty()) {
      stated.get().fault("an empty map", "1 channel or more", cure);
    }
    Optional<DistributionEntry.Stated> common =
        fixture.optional("distribution").map(entry -> DistributionEntry.read(entry, sources));
    boolean alone = entries.size() == 1;
    if (!fixture.has("distribution")) {
      fixture.taken("distribution", "fitted");
    }
    List<Channel> channels = new ArrayList<>();
    entries.forEach((name, entry) -> channels.add(channel(name, entry, common, emitters, alone)));
    return channels;
  }

  private Channel channel(
      String name,
      Entry entry,
      Optional<DistributionEntry.Stated> common,
      int emitters,
      boolean alone) {
    Optional<Section> section =
        entry.isNothing()
            ? Optional.of(new Section(entry, List.of(), List.of()))
            : entry.section("spectrum", "watts", "output", "distribution");
    if (section.isEmpty()) {
      return plain(name);
    }
    try (Section channel = section.get()) {
      Optional<PhotonSpectrum> spectrum =
          channel.optional("spectrum").flatMap(file -> sources.spectrum(file, name));
      if (!channel.has("spectrum")) {
        channel.taken("spectrum", "flat over 400 to 700 nm");
      }
      double watts =
          channel
              .optional("watts")
              .map(
                  value ->
                      value.number(
                          Limit.between(0, 100_000, "W"),
                          "state the electric power at full output"))
              .orElse(Double.NaN);
      Optional<OutputCurve> curve = channel.optional("output").flatMap(FixtureSection::curve);
      if (!channel.has("output")) {
        channel.taken("output", "proportional to the dial");
      }
      Optional<IntensityDistribution> own =
          channel
              .optional("distribution")
              .map(value -> DistributionEntry.read(value, sources))
              .flatMap(
                  stated ->
                      stated.in(
                          new DistributionEntry.ChannelLight(name, spectrum, emitters, true)));
      if (!channel.has("distribution")) {
        own =
            common.flatMap(
                stated ->
                    stated.in(new DistributionEntry.ChannelLight(name, spectrum, emitters, alone)));
      }
      return new Channel(
          name,
          spectrum,
          Double.isNaN(watts) ? OptionalDouble.empty() : OptionalDouble.of(watts),
          curve.orElse(OutputCurve.proportional()),
          own);
    }
  }

  /** Stands for a channel that is wrong, so that dials that name it are not wrong for that. */
  private static Channel plain(String name) {
    return new Channel(
        name,
        Optional.empty(),
        OptionalDouble.empty(),
        OutputCurve.proportional(),
        Optional.empty());
  }

  private static Optional<OutputCurve> curve(Entry entry) {
    String cure = "write the output measured at some dials: output: {0: 0, 50: 0.4, 100: 1}";
    int faults = entry.notes().count();
    List<double[]> points = new ArrayList<>();
    for (Entry.Keyed keyed : entry.keyed(cure, String::strip)) {
      double dial = keyed.key().number(Limit.between(0, 100, "%"), "a dial runs from 0 to 100");
      double output = keyed.value().number(Limit.between(0, 1), "divide by the output at dial 100");
      points.add(new double[] {dial, output});
    }
    if (entry.notes().count() > faults) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new OutputCurve(
              points.stream().mapToDouble(point -> point[0]).toArray(),
              points.stream().mapToDouble(point -> point[1]).toArray()));
    } catch (IllegalArgumentException e) {
      entry.fault("", "", e.getMessage());
      return Optional.empty();
    }
  }

  private List<Master> masters(List<String> channels) {
    String cure = "write dials: {master: {scales: [blue, white]}}";
    List<Master> masters = new ArrayList<>();
    Optional<Entry> stated = fixture.optional("dials");
    if (stated.isEmpty()) {
      return masters;
    }
    stated
        .get()
        .named(cure)
        .forEach(
            (name, entry) -> {
              if (channels.contains(name)) {
                entry.fault(
                    Notes.shown(name),
                    "a name that no channel has",
                    "rename the master: each channel has a dial of its own name already");
                return;
              }
              entry
                  .section("scales")
                  .flatMap(master -> master.required("scales", cure))
                  .ifPresent(scales -> masters.add(master(name, scales, channels, cure)));
            });
    return masters;
  }

  private static Master master(String name, Entry scales, List<String> channels, String cure) {
    TreeSet<String> scaled = new TreeSet<>();
    List<Entry> entries = scales.list(cure);
    if (scales.isList() && entries.isEmpty()) {
      scales.fault("an empty list", "1 channel or more", cure);
    }
    for (Entry entry : entries) {
      Optional<String> channel = entry.text(cure);
      if (channel.isPresent() && channels.contains(channel.get())) {
        scaled.add(channel.get());
      } else if (channel.isPresent()) {
        entry.unknown(entry.path() + " is no channel", channel.get(), channels, "name a channel");
      }
    }
    return new Master(name, scaled);
  }
}
