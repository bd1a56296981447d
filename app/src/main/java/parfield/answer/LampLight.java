package parfield.answer;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.formats.FixtureLight;
import parfield.formats.Nearest;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.PhotonFlux;
import parfield.lamp.Setting;
import parfield.spectrum.LightAnalysis;
import parfield.units.Estimate;

/**
 * What of a bench becomes a photometric file: a fixture, all of it at a setting or one channel at
 * full output.
 *
 * @param fixture as the setup states it
 * @param channel the one channel; empty for all
 * @param setting the dials; not used for one channel
 */
public record LampLight(Fixture fixture, Optional<String> channel, Setting setting) {
  /**
   * Looks up a fixture.
   *
   * @param name of it; empty for the only one
   * @param channel one of its channels; empty for all
   * @throws Refusal if there is no such fixture, channel or dial
   */
  public static LampLight of(
      Bench bench, Optional<String> name, Optional<String> channel, Map<String, Double> dials) {
    Map<String, Fixture> fixtures = bench.setup().fixtures();
    if (name.isEmpty() && fixtures.size() != 1) {
      throw Refusal.of(
          String.format(
              Locale.ROOT, "%s states %d fixtures", bench.setup().source(), fixtures.size()),
          "name one with --fixture: " + String.join(", ", fixtures.keySet()));
    }
    Fixture fixture = fixtures.get(name.orElseGet(() -> fixtures.keySet().iterator().next()));
    if (fixture == null) {
      throw unknown(bench.setup().source() + " states no fixture", name.get(), fixtures.keySet());
    }
    List<String> channels = fixture.channels().stream().map(Channel::name).toList();
    if (channel.isPresent() && !channels.contains(channel.get())) {
      throw unknown("fixture " + fixture.name() + " has no channel", channel.get(), channels);
    }
    if (channel.isPresent() && !dials.isEmpty()) {
      throw Refusal.of(
          "a channel by itself is written at full output: dials say nothing about it",
          "leave --dial out, or leave --channel out");
    }
    for (Map.Entry<String, Double> dial : dials.entrySet()) {
      if (!fixture.dials().contains(dial.getKey())) {
        throw unknown("fixture " + fixture.name() + " has no dial", dial.getKey(), fixture.dials());
      }
      if (!(dial.getValue() >= 0 && dial.getValue() <= 100)) {
        throw Refusal.of(
            "the dial " + dial.getKey() + " is set to " + dial.getValue(),
            "a dial runs from 0 to 100");
      }
    }
    return new LampLight(fixture, channel, new Setting(dials));
  }

  private static Refusal unknown(String title, String name, java.util.Collection<String> known) {
    return Refusal.of(
        title + " named " + name,
        Nearest.of(name, known)
            .map(nearest -> "did you mean " + nearest + "?")
            .orElse("there are " + String.join(", ", known)));
  }

  /** Whether its setup states all that a file needs, so that no light model is wanted. */
  public boolean stated() {
    return fixture.channels().stream().allMatch(it -> it.distribution().isPresent());
  }

  /**
   * The light to be written.
   *
   * @param model the light model; empty if the setup states the fixture's distributions
   * @param date of the file
   * @throws Refusal if a channel has no spectrum, so that its candela are not known, or the light
   *     model does not know the fixture
   */
  public FixtureLight light(Optional<LightModel> model, LocalDate date) {
    List<Channel> channels = fixture.channels();
    double[] outputs = fixture.outputs(setting);
    List<Integer> shown = new ArrayList<>();
    List<FixtureLight.Part> parts = new ArrayList<>();
    Optional<List<IntensityDistribution>> fitted = model.flatMap(it -> lamps(it.best()));
    for (int c = 0; c < channels.size(); c++) {
      Channel one = channels.get(c);
      if (channel.isPresent() && !one.name().equals(channel.get())) {
        continue;
      }
      shown.add(c);
      int index = c;
      parts.add(
          new FixtureLight.Part(
              one.name(),
              fitted
                  .map(lamps -> lamps.get(index))
                  .or(one::distribution)
                  .orElseThrow(() -> notFitted()),
              channel.isPresent() ? 1 : outputs[c],
              lumensPerMicromole(one),
              one.watts()));
    }
    if (channel.isEmpty() && java.util.Arrays.stream(outputs).allMatch(output -> output == 0)) {
      throw Refusal.of(
          "at these dials fixture " + fixture.name() + " gives off no light",
          "turn a dial up: --dial " + channels.get(0).name() + "=100");
    }
    Estimate flux =
        model
            .filter(it -> fitted.isPresent())
            .map(it -> flux(it, shown, outputs))
            .orElse(new Estimate(1, 1, 1));
    double aperture =
        model.filter(it -> fitted.isPresent()).map(it -> it.best().aperture()).orElse(0.0);
    return new FixtureLight(
        fixture.name(),
        parts,
        fixture.emitters().size(),
        span(fixture.emitters().stream().map(Emitter::x).toList(), aperture),
        span(fixture.emitters().stream().map(Emitter::y).toList(), aperture),
        flux.low() / flux.value(),
        flux.high() / flux.value(),
        model
            .filter(it -> fitted.isPresent())
            .map(LampLight::source)
            .orElse("stated in a setup, not measured"),
        date);
  }

  private Refusal notFitted() {
    return Refusal.of(
        "fixture " + fixture.name() + " is not in the light model",
        "fit a survey taken with it, or state its distribution");
  }

  private Optional<List<IntensityDistribution>> lamps(Truth truth) {
    List<IntensityDistribution> lamps = truth.distributions().get(fixture.name());
    if (lamps != null && lamps.size() != fixture.channels().size()) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "fixture %s has %d channels but the light model knows %d",
              fixture.name(),
              fixture.channels().size(),
              lamps.size()),
          "fit again");
    }
    return Optional.ofNullable(lamps);
  }

  private double lumensPerMicromole(Channel one) {
    if (one.spectrum().isEmpty()) {
      throw Refusal.of(
          "channel "
              + one.name()
              + " has no spectrum: a photometric file is in candela, which count what the eye sees",
          "state it, as in channels: {" + one.name() + ": {spectrum: " + one.name() + ".csv}}");
    }
    return LightAnalysis.of(one.spectrum().get())
        .luxPerPpfd()
        .toOptional()
        .filter(lumens -> lumens > 0)
        .orElseThrow(
            () ->
                Refusal.of(
                    "channel " + one.name() + " gives no light that the eye sees",
                    "a photometric file cannot tell of it: leave the channel out"));
  }

  /** The photon flux over all that the readings allow, the meter's scale in it. */
  private Estimate flux(LightModel model, List<Integer> shown, double[] outputs) {
    double[] draws = new double[model.draws().size()];
    for (int i = 0; i < draws.length; i++) {
      Truth draw = model.draws().get(i);
      draws[i] = draw.meterScale() * flux(draw, shown, outputs);
    }
    Estimate found = Estimate.ofSample(flux(model.best(), shown, outputs), draws);
    return new Estimate(
        found.value(), Math.min(found.low(), found.value()), Math.max(found.high(), found.value()));
  }

  private double flux(Truth truth, List<Integer> shown, double[] outputs) {
    List<IntensityDistribution> lamps = truth.distributions().get(fixture.name());
    double sum = 0;
    for (int c : shown) {
      sum += (channel.isPresent() ? 1 : outputs[c]) * PhotonFlux.of(lamps.get(c));
    }
    return sum;
  }

  private static String source(LightModel model) {
    String text =
        String.format(
            Locale.ROOT,
            "light model fitted to %d readings, which it misses by %s %% (robust standard"
                + " deviation)",
            model.report().residuals().size(),
            Numbers.finePercent(model.report().relativeResidual()));
    return model.report().crossValidation().stream()
        .findFirst()
        .map(
            held ->
                text
                    + String.format(
                        Locale.ROOT,
                        "; %s held out: median error %s %%",
                        held.heldOut(),
                        Numbers.finePercent(held.median())))
        .orElse(text);
  }

  /** From the first emitter to the last, their own size in it [m]. */
  private double span(List<Double> places, double unstated) {
    double low = places.stream().min(Double::compare).orElse(0.0);
    double high = places.stream().max(Double::compare).orElse(0.0);
    double side =
        fixture.emitters().stream()
            .mapToDouble(it -> it.aperture() > 0 ? it.aperture() : unstated)
            .max()
            .orElse(0);
    return high - low + side;
  }
}
