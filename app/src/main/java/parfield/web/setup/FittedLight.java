package parfield.web.setup;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parfield.fit.Truth;
import parfield.formats.SetupValue;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.units.LengthUnit;

/**
 * The fitted light of a fixture as the setup states a light: a table of intensities for each
 * channel, and the size of its emitters.
 *
 * @param entry the fixture's entry, with the tables in place of its distribution
 * @param files the tables by name
 */
record FittedLight(SetupValue entry, Map<String, byte[]> files) {
  /** Steps of the tables [degrees]: a fitted lobe is straight between them to a few per mille. */
  private static final int GAMMA_STEP = 3;

  private static final int AZIMUTH_STEP = 15;

  /**
   * Tables of the most plausible light.
   *
   * @param stated the fixture's entry as the bench states it
   * @param fixture the same, read
   * @param truth that was fitted
   * @param bench that it was fitted on, in words
   * @param unit of the entry's lengths
   * @return empty if the model does not know the fixture
   */
  static Optional<FittedLight> of(
      SetupValue stated, Fixture fixture, Truth truth, String bench, LengthUnit unit) {
    List<IntensityDistribution> lights = truth.distributions().get(fixture.name());
    if (lights == null
        || lights.size() != fixture.channels().size()
        || !(stated instanceof SetupValue.Fields fields)) {
      return Optional.empty();
    }
    Map<String, byte[]> files = new LinkedHashMap<>();
    Map<String, SetupValue> channels = new LinkedHashMap<>();
    for (int i = 0; i < lights.size(); i++) {
      String name = fixture.channels().get(i).name();
      String file = "fitted/" + name.replaceAll("[^\\p{L}\\p{N}_-]", "-") + "-" + (i + 1) + ".csv";
      files.put(file, table(lights.get(i), name, bench).getBytes(StandardCharsets.UTF_8));
      Map<String, SetupValue> channel =
          new LinkedHashMap<>(
              fields.entries().get("channels") instanceof SetupValue.Fields all
                      && all.entries().get(name) instanceof SetupValue.Fields own
                  ? own.entries()
                  : Map.of());
      channel.put(
          "distribution", new SetupValue.Fields(Map.of("table", new SetupValue.Text(file))));
      channels.put(name, new SetupValue.Fields(channel));
    }
    Map<String, SetupValue> entry = new LinkedHashMap<>(fields.entries());
    entry.put("channels", new SetupValue.Fields(channels));
    entry.remove("distribution");
    entry.computeIfPresent(
        "emitters",
        (key, emitters) -> sized(emitters, FixtureEntry.number(unit.fromMetres(truth.aperture()))));
    return Optional.of(new FittedLight(new SetupValue.Fields(entry), files));
  }

  /** Emitters that state no aperture, with the fitted one. */
  private static SetupValue sized(SetupValue emitters, String aperture) {
    if (!(emitters instanceof SetupValue.Items items)) {
      return emitters;
    }
    List<SetupValue> sized = new ArrayList<>();
    for (SetupValue emitter : items.elements()) {
      if (emitter instanceof SetupValue.Fields fields) {
        Map<String, SetupValue> entries = new LinkedHashMap<>(fields.entries());
        entries.putIfAbsent("aperture", new SetupValue.Figure(aperture));
        sized.add(new SetupValue.Fields(entries));
      } else {
        sized.add(emitter);
      }
    }
    return new SetupValue.Items(sized);
  }

  private static String table(IntensityDistribution light, String channel, String bench) {
    StringBuilder text =
        new StringBuilder(
            String.format(
                    Locale.ROOT,
                    "# %s, fitted on %s: µmol/s/sr of one emitter at full output, in the scale of that"
                        + " bench's meter%n",
                    channel.replaceAll("\\p{Cntrl}", " "),
                    bench.replaceAll("\\p{Cntrl}", " "))
                .replace("\r", ""));
    text.append("gamma_deg");
    int last = light.quadrantSymmetric() ? 90 : 360;
    for (int azimuth = 0; azimuth <= last; azimuth += AZIMUTH_STEP) {
      text.append(',').append(azimuth);
    }
    for (int gamma = 0; gamma <= 90; gamma += GAMMA_STEP) {
      text.append('\n').append(gamma);
      for (int azimuth = 0; azimuth <= last; azimuth += AZIMUTH_STEP) {
        text.append(',')
            .append(
                String.format(
                    Locale.ROOT,
                    "%.6g",
                    // Straight down has no azimuth, and 360 repeats 0.
                    light.intensity(
                        Math.toRadians(gamma), gamma == 0 ? 0 : Math.toRadians(azimuth % 360))));
      }
    }
    return text.append('\n').toString();
  }
}
