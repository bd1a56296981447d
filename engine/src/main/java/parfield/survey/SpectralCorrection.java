package parfield.survey;

import java.util.ArrayList;
import java.util.List;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.Finding;
import parfield.spectrum.SensorResponse;
import parfield.spectrum.SpectralFactor;

/**
 * What the colour of a rig's light does to a meter's readings, what of that is corrected and what
 * remains as an error.
 *
 * <p>Corrected, for a response from a table: every reading is multiplied by the spectral factor F
 * of the mix that the rig is dialled to. Only stated as an error, for a generic response: no
 * reading is changed, and |F − 1| joins the scale error. In both cases remain as an error: how the
 * channels share the light, which before a fit is only guessed from their watts, and a part of the
 * correction itself. Left out: F is of the light as the lamps give it off; water takes red, so that
 * the mix at a deep reading is another.
 *
 * @param parts the lit channels, by fixture and channel
 * @param spectralFactor F of the mix: true PPFD over shown
 * @param factor what readings are multiplied by: F where it is corrected, else 1
 * @param error standard relative error that this adds to all readings together
 */
public record SpectralCorrection(
    List<Part> parts, double spectralFactor, double factor, double error) {
  /**
   * Standard deviation of ln light of a channel whose share is guessed from its watts; as in the
   * fit of a channel that was never lit. Common practice, no source.
   */
  static final double SHARE_DEVIATION = 0.5;

  /**
   * Standard error of a correction by a table, as a part of |F − 1|: a sensor differs from its
   * kind's table. Common practice, no source.
   */
  static final double TABLE_DEVIATION = 0.25;

  public SpectralCorrection {
    parts = List.copyOf(parts);
  }

  /**
   * One channel of the mix.
   *
   * @param fixture its fixture's name
   * @param channel its name
   * @param share of the mix's PPFD, guessed from watts and dials, else even
   * @param shownOverTrue what the sensor shows of it over its PPFD, 1/F
   */
  public record Part(String fixture, String channel, double share, double shownOverTrue) {}

  /**
   * The correction for a rig's light.
   *
   * @param rig the scene, at the setting that is read
   * @param sensor how the meter sees colour
   * @return not defined where a lit channel has no spectrum, nothing is lit, or the sensor shows
   *     nothing of the light
   */
  public static Finding<SpectralCorrection> of(Rig rig, SpectralSensor sensor) {
    boolean watts =
        rig.hangings().stream()
            .flatMap(hanging -> hanging.fixture().channels().stream())
            .allMatch(channel -> channel.watts().orElse(0) > 0);
    List<Part> lit = new ArrayList<>();
    double all = 0;
    for (Hanging hanging : rig.hangings()) {
      Fixture fixture = hanging.fixture();
      double[] outputs = fixture.outputs(hanging.setting());
      for (int c = 0; c < outputs.length; c++) {
        Channel channel = fixture.channels().get(c);
        double light = outputs[c] * (watts ? channel.watts().getAsDouble() : 1);
        if (!(light > 0)) {
          continue;
        }
        if (channel.spectrum().isEmpty()) {
          return Finding.notDefined(
              String.format(
                  "channel %s of fixture %s has no spectrum", channel.name(), fixture.name()));
        }
        all += light;
        lit.add(
            new Part(
                fixture.name(),
                channel.name(),
                light,
                SpectralFactor.shownOverTrue(
                    sensor.response(), channel.spectrum().get(), sensor.calibration())));
      }
    }
    if (lit.isEmpty()) {
      return Finding.notDefined("every channel of rig " + rig.name() + " is dark");
    }
    return ofParts(joined(lit, all), sensor.response());
  }

  /** Channels of fixtures of one name together, shares summing to 1. */
  private static List<Part> joined(List<Part> lit, double all) {
    List<Part> joined = new ArrayList<>();
    for (Part part : lit) {
      double share = part.share / all;
      int before = -1;
      for (int i = 0; i < joined.size(); i++) {
        Part other = joined.get(i);
        if (other.fixture.equals(part.fixture) && other.channel.equals(part.channel)) {
          before = i;
        }
      }
      double sum = share + (before < 0 ? 0 : joined.get(before).share);
      Part whole = new Part(part.fixture, part.channel, sum, part.shownOverTrue);
      if (before < 0) {
        joined.add(whole);
      } else {
        joined.set(before, whole);
      }
    }
    return joined;
  }

  private static Finding<SpectralCorrection> ofParts(List<Part> parts, SensorResponse response) {
    double shown = parts.stream().mapToDouble(part -> part.share * part.shownOverTrue).sum();
    if (!(shown > 0)) {
      return Finding.notDefined("a sensor of response " + response.name() + " shows nothing of it");
    }
    double factor = 1 / shown;
    // F = Σ p / Σ (p / F_c): d ln F = Σ (true share − shown share) d ln p.
    double byShares = 0;
    for (Part part : parts) {
      byShares =
          Math.hypot(byShares, SHARE_DEVIATION * part.share * (1 - part.shownOverTrue * factor));
    }
    return Finding.of(
        switch (response.standing()) {
          case IDEAL -> new SpectralCorrection(parts, 1, 1, 0);
          case TABLE ->
              new SpectralCorrection(
                  parts,
                  factor,
                  factor,
                  Math.hypot(byShares, TABLE_DEVIATION * Math.abs(factor - 1) / factor));
          case GENERIC ->
              new SpectralCorrection(
                  parts, factor, 1, Math.hypot(factor * byShares, Math.abs(factor - 1)));
        });
  }
}
