package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.plan.DialledMix;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.ChannelMix;
import parfield.spectrum.Comparison;
import parfield.spectrum.Scale;
import parfield.spectrum.WaveBand;
import parfield.spectrum.WaveBands;
import parfield.units.LengthUnit;

/**
 * The dials that come nearest to a wanted light.
 *
 * @param reference the wanted shape; empty where shares were wanted
 * @param shares wanted share by band; empty where a shape was wanted
 * @param bands of which shares are told
 * @param fixture whose dials
 * @param channels each at full output
 * @param found the dials and their mix
 * @param statements on what the answer rests
 * @param files that were left
 */
public record MixAnswer(
    Optional<Light> reference,
    Map<WaveBand, Double> shares,
    WaveBands bands,
    Fixture fixture,
    List<ChannelLight> channels,
    DialledMix found,
    List<String> statements,
    List<String> files)
    implements Answer {
  public MixAnswer {
    Objects.requireNonNull(reference, "reference");
    Objects.requireNonNull(bands, "bands");
    Objects.requireNonNull(fixture, "fixture");
    Objects.requireNonNull(found, "found");
    shares = Collections.unmodifiableMap(new LinkedHashMap<>(shares));
    channels = List.copyOf(channels);
    statements = List.copyOf(statements);
    files = List.copyOf(files);
  }

  /** The mix at whole percents: what a person dials. */
  ChannelMix mix() {
    return found.dialled();
  }

  /** The mix beside the reference, if one was wanted. */
  Optional<Comparison> comparison() {
    return reference.map(
        light -> Comparison.of(Comparison.Basis.EQUAL_PPFD, mix().spectrum(), light.photons()));
  }

  /** What a channel gives of all photons of 400–700 nm; empty where there are none. */
  static OptionalDouble ofPhotons(List<ChannelLight> channels, List<Double> outputs, int channel) {
    double all = 0;
    for (int c = 0; c < channels.size(); c++) {
      all += outputs.get(c) * channels.get(c).spectrum().parPhotons();
    }
    double part = outputs.get(channel) * channels.get(channel).spectrum().parPhotons();
    return all > 0 ? OptionalDouble.of(part / all) : OptionalDouble.empty();
  }

  private OptionalDouble ofPhotons(int channel) {
    return ofPhotons(channels, mix().outputs(), channel);
  }

  /** What is dialled, and what each channel gives then. */
  static Table dialTable(
      Fixture fixture, Setting setting, List<ChannelLight> channels, List<Double> outputs) {
    Table table = new Table("lrrr", "dial", "set to (%)", "output (%)", "of the mix's PPFD (%)");
    List<String> dials = fixture.dials();
    for (int i = 0; i < dials.size(); i++) {
      boolean channel = i < channels.size();
      OptionalDouble share = channel ? ofPhotons(channels, outputs, i) : OptionalDouble.empty();
      table.row(
          dials.get(i),
          Numbers.plain(setting.percent(dials.get(i)), 1),
          channel ? Numbers.plain(100 * outputs.get(i), 1) : Numbers.NONE,
          share.isPresent() ? Numbers.finePercent(share.getAsDouble()) : Numbers.NONE);
    }
    return table;
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        reference
            .map(light -> "Dials nearest to the shape of " + light.name() + "\n\n")
            .orElse("Dials nearest to the wanted shares\n\n"));
    text.append(dialTable().text()).append('\n');
    remarks().forEach(sentence -> text.append(sentence).append('\n'));
    text.append('\n').append(bandTable().text());
    text.append(Lines.section("What it rests on", statements));
    text.append(Lines.section("About the spectra", about()));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  /** What the reference may suffer from, a sentence each. */
  public List<String> about() {
    return reference.map(light -> Light.cautions(List.of(light))).orElse(List.of());
  }

  /** What to dial, and what each channel gives then. */
  public Table dialTable() {
    return dialTable(fixture, found.dials(), channels, mix().outputs());
  }

  /** How near the mix comes, what light it leaves and what whole percents cost. */
  public List<String> remarks() {
    Scale scale = mix().spectrum().scale();
    double rounding = mix().mismatch() - found.nearest().mismatch();
    return List.of(
        mismatch(),
        String.format(
            Locale.ROOT,
            "Left at this mix: %s%s %% of all channels at their highest.",
            scale
                .photonUnit()
                .map(
                    name ->
                        (scale == Scale.IRRADIANCE ? "PPFD " : "PPF ")
                            + Numbers.significant(mix().parPhotons())
                            + " "
                            + (scale == Scale.IRRADIANCE ? Numbers.PPFD : "µmol s⁻¹")
                            + ", ")
                .orElse(""),
            Numbers.percent(mix().share())),
        String.format(
            Locale.ROOT,
            "No dials within the limits come nearer; whole percents cost %s.",
            reference.isPresent()
                ? Numbers.plain(Math.toDegrees(rounding), 2) + "°"
                : Numbers.plain(100 * rounding, 2) + " points"));
  }

  private String mismatch() {
    return comparison()
        .map(
            beside ->
                String.format(
                    Locale.ROOT,
                    "Remaining mismatch: spectral angle %s°, overlap %s %% (within 400–700 nm).",
                    Numbers.plain(Math.toDegrees(mix().mismatch()), 1),
                    Numbers.percent(beside.overlap())))
        .orElseGet(
            () ->
                String.format(
                    Locale.ROOT,
                    "Remaining mismatch: %s points, root mean square over the wanted bands.",
                    Numbers.plain(100 * mix().mismatch(), 1)));
  }

  /** Shares by waveband, wanted and reached. */
  public Table bandTable() {
    Table table = new Table("lrr", "band (nm)", "wanted (%)", "reached (%)");
    Optional<List<Double>> reached = bands.shares(mix().spectrum()).toOptional();
    for (int b = 0; b < bands.bands().size(); b++) {
      OptionalDouble share = wanted(b);
      table.row(
          Numbers.nm(bands.bands().get(b)),
          share.isPresent() ? Numbers.finePercent(share.getAsDouble()) : Numbers.NONE,
          reached.isPresent() ? Numbers.finePercent(reached.get().get(b)) : Numbers.NONE);
    }
    return table;
  }

  private OptionalDouble wanted(int band) {
    if (reference.isPresent()) {
      return bands
          .shares(reference.get().photons())
          .toOptional()
          .map(all -> OptionalDouble.of(all.get(band)))
          .orElse(OptionalDouble.empty());
    }
    Double share = shares.get(bands.bands().get(band));
    return share == null ? OptionalDouble.empty() : OptionalDouble.of(share);
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("reference", reference.map(Light::name).orElse(null));
    ArrayNode array = json.putArray("dials");
    List<String> dials = fixture.dials();
    for (int i = 0; i < dials.size(); i++) {
      boolean channel = i < channels.size();
      ObjectNode entry = array.addObject();
      entry.put("dial", dials.get(i));
      Json.number(entry, "set_to_percent", found.dials().percent(dials.get(i)));
      Json.number(entry, "exact_percent", found.exact().percent(dials.get(i)));
      Json.number(
          entry,
          "output",
          channel ? OptionalDouble.of(mix().outputs().get(i)) : OptionalDouble.empty());
      Json.number(entry, "share_of_ppfd", channel ? ofPhotons(i) : OptionalDouble.empty());
    }
    Optional<Comparison> beside = comparison();
    Json.number(
        json,
        "spectral_angle_deg",
        beside.isPresent()
            ? OptionalDouble.of(Math.toDegrees(mix().mismatch()))
            : OptionalDouble.empty());
    Json.number(
        json,
        "overlap",
        beside.isPresent() ? OptionalDouble.of(beside.get().overlap()) : OptionalDouble.empty());
    Json.number(
        json,
        "shares_missed_by",
        beside.isPresent() ? OptionalDouble.empty() : OptionalDouble.of(mix().mismatch()));
    Scale scale = mix().spectrum().scale();
    Json.number(
        json,
        "ppfd_umol_m2_s",
        scale == Scale.IRRADIANCE ? OptionalDouble.of(mix().parPhotons()) : OptionalDouble.empty());
    Json.number(
        json,
        "ppf_umol_s",
        scale == Scale.FLUX ? OptionalDouble.of(mix().parPhotons()) : OptionalDouble.empty());
    Json.number(json, "share_of_highest", mix().share());
    ArrayNode shown = json.putArray("bands");
    Optional<List<Double>> reached = bands.shares(mix().spectrum()).toOptional();
    for (int b = 0; b < bands.bands().size(); b++) {
      ObjectNode entry = Json.band(shown, bands.bands().get(b));
      Json.number(entry, "wanted", wanted(b));
      Json.number(
          entry,
          "share",
          reached.isPresent() ? OptionalDouble.of(reached.get().get(b)) : OptionalDouble.empty());
    }
    Json.strings(json, "statements", statements);
    Json.strings(json, "files", files);
    return json;
  }
}
