package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.field.SpectralField;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.OutputCurve;
import parfield.rig.Rig;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/**
 * Channels to be mixed, before their brightness beside each other is known for sure.
 *
 * @param fixture that carries them, with its dials
 * @param lights each at full output, in the fixture's order; maybe of unknown scale
 * @param statements on what their brightness rests
 */
public record MixableChannels(Fixture fixture, List<ChannelLight> lights, List<String> statements) {
  public MixableChannels {
    Objects.requireNonNull(fixture, "fixture");
    lights = List.copyOf(lights);
    statements = List.copyOf(statements);
  }

  /** Spectra that were measured each alone: as channels with dials of their own, half for half. */
  public static MixableChannels of(List<Light> spectra) {
    List<Channel> channels =
        spectra.stream()
            .map(
                light ->
                    new Channel(
                        light.name(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OutputCurve.proportional(),
                        Optional.empty()))
            .toList();
    return new MixableChannels(
        new Fixture("channels", 0, 0, List.of(new Emitter(0, 0, 0)), channels, List.of()),
        spectra.stream().map(light -> new ChannelLight(light.name(), light.photons())).toList(),
        List.of());
  }

  /**
   * The channels of a fixture, as their spectra are stated.
   *
   * @throws Refusal if one has no spectrum
   */
  public static MixableChannels of(Fixture fixture) {
    return new MixableChannels(
        fixture,
        fixture.channels().stream()
            .map(channel -> new ChannelLight(channel.name(), spectrum(fixture, channel)))
            .toList(),
        List.of());
  }

  /**
   * The channels as a rig lights the middle of its tank.
   *
   * @param solver predicts PPFD
   * @param stated the rig as the setup states it, of one kind of fixture
   * @param lit the same with a distribution for every channel
   * @param depth of the place [m]
   * @param unit in which the statements tell it
   */
  public static MixableChannels under(
      FieldSolver solver, Rig stated, Rig lit, double depth, LengthUnit unit) {
    Fixture fixture = onlyFixture(stated);
    Place middle = new Place(lit.tank().length() / 2, lit.tank().width() / 2, depth);
    SpectralField field = SpectralField.of(solver, lit, Places.of(List.of(middle)));
    List<String> statements = new ArrayList<>();
    statements.add(
        String.format(
            Locale.ROOT,
            "How bright the channels are comes from the light that is predicted: rig %s, middle of"
                + " the tank, %s deep.",
            stated.name(),
            Numbers.withUnit(depth, unit)));
    AlikeChannels.statement(lit.hangings().get(0).fixture()).ifPresent(statements::add);
    return new MixableChannels(
        fixture,
        IntStream.range(0, fixture.channels().size())
            .mapToObj(channel -> field.channel(channel, 0))
            .toList(),
        statements);
  }

  /**
   * The one kind of fixture that a rig hangs.
   *
   * @throws Refusal if it hangs several
   */
  public static Fixture onlyFixture(Rig rig) {
    Fixture fixture = rig.hangings().get(0).fixture();
    if (rig.hangings().stream().anyMatch(hanging -> !hanging.fixture().equals(fixture))) {
      throw Refusal.of(
          "rig " + rig.name() + " hangs fixtures of several kinds: their dials differ",
          "name a rig of one kind of fixture");
    }
    return fixture;
  }

  private static PhotonSpectrum spectrum(Fixture fixture, Channel channel) {
    return channel
        .spectrum()
        .orElseThrow(
            () ->
                Refusal.of(
                    String.format(
                        Locale.ROOT,
                        "channel %s of fixture %s has no spectrum",
                        channel.name(),
                        fixture.name()),
                    "measure it and name it in the setup, as in spectrum: "
                        + channel.name()
                        + ".csv"));
  }
}
