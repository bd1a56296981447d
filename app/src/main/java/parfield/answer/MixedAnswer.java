package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.Comparison;
import parfield.spectrum.LightAnalysis;
import parfield.spectrum.RadiantSpectrum;
import parfield.spectrum.Superposition;
import parfield.spectrum.WaveBands;
import parfield.units.LengthUnit;

/**
 * What light some dials give: the mix as {@link DescribeAnswer} tells it, and beside a reference as
 * {@link CompareAnswer} does.
 *
 * @param fixture whose dials
 * @param channels each at full output, all of one known scale
 * @param setting the dials
 * @param outputs fraction of full output, one a channel
 * @param described the mix
 * @param compared the mix beside a reference, if there is one
 * @param statements on what the brightness of the channels rests
 */
public record MixedAnswer(
    Fixture fixture,
    List<ChannelLight> channels,
    Setting setting,
    List<Double> outputs,
    DescribeAnswer described,
    Optional<CompareAnswer> compared,
    List<String> statements)
    implements Answer {
  /** What the mix is called. */
  public static final String NAME = "mix";

  public MixedAnswer {
    Objects.requireNonNull(fixture, "fixture");
    channels = List.copyOf(channels);
    Objects.requireNonNull(setting, "setting");
    outputs = List.copyOf(outputs);
    Objects.requireNonNull(described, "described");
    Objects.requireNonNull(compared, "compared");
    statements = List.copyOf(statements);
  }

  /**
   * Mixes channels.
   *
   * @param fixture whose dials
   * @param channels each at full output, in the fixture's order, all of one scale
   * @param setting the dials
   * @param reference to hold the mix against, if there is one
   * @param bands of which shares are told
   * @param statements on what the brightness of the channels rests
   * @throws Refusal if the dials give no light
   * @throws IllegalArgumentException if the scales of the channels differ, or the mix cannot be
   *     held against the reference
   */
  public static MixedAnswer of(
      Fixture fixture,
      List<ChannelLight> channels,
      Setting setting,
      Optional<Light> reference,
      WaveBands bands,
      List<String> statements) {
    List<Double> outputs = new ArrayList<>();
    for (double output : fixture.outputs(setting)) {
      outputs.add(Math.min(1, output));
    }
    if (outputs.stream().noneMatch(output -> output > 0)) {
      throw Refusal.of("these dials give no light", "turn one of them up");
    }
    Light mix =
        new Light(
            NAME,
            Superposition.of(channels.stream().map(ChannelLight::spectrum).toList(), outputs),
            List.of());
    RadiantSpectrum radiant = mix.photons().toRadiant();
    DescribeAnswer described =
        new DescribeAnswer(
            List.of(
                new DescribeAnswer.Described(
                    mix, LightAnalysis.on(radiant.wavelengths(), bands).figures(radiant))),
            List.of());
    Optional<CompareAnswer> compared =
        reference.map(
            light ->
                new CompareAnswer(
                    light,
                    Comparison.Basis.EQUAL_PPFD,
                    bands,
                    List.of(
                        new CompareAnswer.Compared(
                            mix,
                            Comparison.of(
                                Comparison.Basis.EQUAL_PPFD, mix.photons(), light.photons()))),
                    List.of()));
    return new MixedAnswer(fixture, channels, setting, outputs, described, compared, statements);
  }

  /** What is dialled, and what each channel gives then. */
  public Table dialTable() {
    return MixAnswer.dialTable(fixture, setting, channels, outputs);
  }

  /** The mix over the reference if there is one, else filled with its colours. */
  public String picture() {
    return compared
        .map(answer -> SpectrumPictures.overlay(answer.lights().get(0), answer.reference()))
        .orElseGet(() -> SpectrumPictures.spectra(described.lights()));
  }

  @Override
  public String text(LengthUnit unit) {
    return dialTable().text()
        + "\n"
        + described.text(unit)
        + compared.map(answer -> "\n" + answer.text(unit)).orElse("")
        + Lines.section("What it rests on", statements);
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    ArrayNode array = json.putArray("dials");
    List<String> dials = fixture.dials();
    for (int i = 0; i < dials.size(); i++) {
      boolean channel = i < channels.size();
      ObjectNode entry = array.addObject();
      entry.put("dial", dials.get(i));
      Json.number(entry, "set_to_percent", setting.percent(dials.get(i)));
      Json.number(
          entry, "output", channel ? OptionalDouble.of(outputs.get(i)) : OptionalDouble.empty());
      Json.number(
          entry,
          "share_of_ppfd",
          channel ? MixAnswer.ofPhotons(channels, outputs, i) : OptionalDouble.empty());
    }
    json.set("described", described.json());
    json.set("compared", compared.map(CompareAnswer::json).orElse(null));
    Json.strings(json, "statements", statements);
    return json;
  }
}
