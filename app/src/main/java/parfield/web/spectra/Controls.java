package parfield.web.spectra;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parfield.answer.Numbers;
import parfield.rig.Rig;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.Scale;
import parfield.spectrum.WaveBand;
import parfield.units.LengthUnit;
import parfield.web.bench.OpenBench;

/** What the fields of a view begin with. */
public final class Controls {
  private final Question question;
  private final Optional<MixView.Mixing> mixing;
  private final boolean predicts;

  Controls(Question question, Optional<MixView.Mixing> mixing, boolean predicts) {
    this.question = question;
    this.mixing = mixing;
    this.predicts = predicts;
  }

  /**
   * One of several that can be picked.
   *
   * @param value of it in the address
   * @param words that a person reads
   */
  public record Option(String value, String words) {}

  /**
   * One dial.
   *
   * @param name of it
   * @param percent it stands at
   * @param channel whether it is a channel's own, not a master
   * @param scaled whether the channel's brightness is known without being typed
   */
  public record Dial(String name, String percent, boolean channel, boolean scaled) {}

  /** The symbol of the unit of lengths. */
  public String unit() {
    return question.unit().symbol();
  }

  /** The chosen spectra. */
  public List<Option> chosen() {
    return question.chosen().stream()
        .map(one -> new Option(one.key(), one.light().name()))
        .toList();
  }

  /** Whether a spectrum is chosen. */
  public boolean isChosen(String key) {
    return question.chosen().stream().anyMatch(one -> one.key().equals(key));
  }

  /** What a field holds: what was typed, else what it begins with. */
  public String value(String field, String otherwise) {
    return question.asked().text(field, otherwise);
  }

  /** How deep can be looked, in the unit shown. */
  public String deepest() {
    return Asked.plain(Math.floor(question.unit().fromMetres(question.deepest()) * 10 + 1e-6) / 10);
  }

  /** The depth that is looked at, in the unit shown. */
  public String depth(boolean usual) {
    LengthUnit unit = question.unit();
    double begin =
        usual
            ? question.bench().flatMap(OpenBench::setup).isPresent()
                ? question.bench().get().bench().usualDepth()
                : question.deepest() / 2
            : question.deepest() / 2;
    return value("depth", Asked.plain(Math.rint(unit.fromMetres(begin) * 10) / 10));
  }

  /** The yellowing that is looked at. */
  public String yellowing() {
    return value("yellowing", Asked.plain(question.water().yellowing()));
  }

  /** Whether the page knows a tank. */
  public boolean hasTank() {
    return question.setup().isPresent();
  }

  /** Rigs whose light can be predicted. */
  public List<String> rigs() {
    return predicts
        ? question
            .setup()
            .map(setup -> setup.rigs().values().stream().map(Rig::name).toList())
            .orElse(List.of())
        : List.of();
  }

  /** Fixtures whose channels can be mixed. */
  public List<String> fixtures() {
    return MixView.fixtures(question);
  }

  /** Where the mixed channels come from: {@code chosen} or a fixture. */
  public String mixedFrom() {
    return mixing.map(MixView.Mixing::from).orElse(value("from", MixView.CHOSEN));
  }

  /** Rigs that tell how bright the mixed channels are. */
  public List<String> mixedRigs() {
    return predicts && mixing.isPresent() ? MixView.rigs(question, mixing.get().from()) : List.of();
  }

  /** The rig that tells it, if one does. */
  public String mixedRig() {
    return mixing.map(MixView.Mixing::rig).orElse("");
  }

  /** The dials of the mix. */
  public List<Dial> dials() {
    List<Dial> dials = new ArrayList<>();
    if (mixing.isPresent()) {
      List<ChannelLight> lights = mixing.get().channels().lights();
      for (Map.Entry<String, Double> dial : mixing.get().dials().entrySet()) {
        int i = dials.size();
        dials.add(
            new Dial(
                dial.getKey(),
                mixing.get().found().isPresent()
                    ? Asked.plain(dial.getValue())
                    : value(Asked.field("dial", dial.getKey()), Asked.plain(dial.getValue())),
                i < lights.size(),
                i < lights.size() && lights.get(i).spectrum().scale() != Scale.RELATIVE));
      }
    }
    return dials;
  }

  /** The wavebands by name. */
  public List<String> bands() {
    return question.bands().bands().stream().map((WaveBand band) -> Numbers.nm(band)).toList();
  }
}
