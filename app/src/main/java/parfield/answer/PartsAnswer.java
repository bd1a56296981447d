package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import parfield.spectrum.Scale;
import parfield.spectrum.Unmixing;
import parfield.units.LengthUnit;

/**
 * Which channels measured lights are made of.
 *
 * @param channels each alone
 * @param lights taken apart, at least one
 */
public record PartsAnswer(List<Light> channels, List<TakenApart> lights) implements Answer {
  public PartsAnswer {
    channels = List.copyOf(channels);
    lights = List.copyOf(lights);
  }

  /**
   * One light taken apart.
   *
   * @param light as it was measured
   * @param parts of it
   */
  public record TakenApart(Light light, Unmixing parts) {
    public TakenApart {
      Objects.requireNonNull(light, "light");
      Objects.requireNonNull(parts, "parts");
    }
  }

  /** Whether the level of a channel is a fraction of the light measured for it. */
  private boolean fractions(Light light) {
    Scale scale = light.photons().scale();
    return scale != Scale.RELATIVE
        && channels.stream().allMatch(channel -> channel.photons().scale() == scale);
  }

  private double ofPpfd(TakenApart taken, int channel) {
    double all = 0;
    for (int c = 0; c < channels.size(); c++) {
      all += taken.parts().levels().get(c).level() * channels.get(c).photons().parPhotons();
    }
    double part =
        taken.parts().levels().get(channel).level() * channels.get(channel).photons().parPhotons();
    return all > 0 ? part / all : Double.NaN;
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    for (TakenApart taken : lights) {
      text.append(text.isEmpty() ? "" : "\n");
      text.append(String.format(Locale.ROOT, "%s is made of\n\n", taken.light().name()));
      text.append(table(taken).text()).append('\n');
      remarks(taken).forEach(sentence -> text.append(sentence).append('\n'));
    }
    text.append(Lines.section("About the spectra", about()));
    return text.toString();
  }

  /** What the spectra may suffer from, a sentence each. */
  public List<String> about() {
    return Light.cautions(all());
  }

  /** The level of every channel in a light. */
  public Table table(TakenApart taken) {
    boolean fractions = fractions(taken.light());
    String level = fractions ? "level (%)" : "level, of its file";
    Table table = new Table("lrrr", "channel", level, "standard error", "of the PPFD (%)");
    for (int c = 0; c < channels.size(); c++) {
      Unmixing.Level found = taken.parts().levels().get(c);
      double share = ofPpfd(taken, c);
      table.row(
          found.channel(),
          fractions ? Numbers.finePercent(found.level()) : Numbers.significant(found.level()),
          fractions
              ? Numbers.finePercent(found.standardError())
              : Numbers.significant(found.standardError()),
          Double.isNaN(share) ? Numbers.NONE : Numbers.finePercent(share));
    }
    return table;
  }

  /** What the channels do not explain, and what to beware of. */
  public List<String> remarks(TakenApart taken) {
    List<String> remarks = new ArrayList<>();
    remarks.add(
        String.format(
            Locale.ROOT,
            "Not explained by them: %s %% (root mean square, of the light's own).",
            Numbers.finePercent(taken.parts().residual())));
    if (!fractions(taken.light())) {
      remarks.add(
          "The scale of a spectrum is not known, so that levels are no fractions of full output:"
              + " only their ratios, and shares, mean something.");
    }
    taken.parts().warning().ifPresent(warning -> remarks.add("Beware: " + warning + "."));
    return remarks;
  }

  private List<Light> all() {
    List<Light> all = new ArrayList<>(channels);
    lights.forEach(taken -> all.add(taken.light()));
    return all;
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    ArrayNode array = json.putArray("lights");
    for (TakenApart taken : lights) {
      ObjectNode entry = array.addObject();
      entry.put("light", taken.light().name());
      entry.put("levels_are_fractions", fractions(taken.light()));
      ArrayNode levels = entry.putArray("channels");
      for (int c = 0; c < channels.size(); c++) {
        Unmixing.Level found = taken.parts().levels().get(c);
        ObjectNode level = levels.addObject();
        level.put("channel", found.channel());
        Json.number(level, "level", found.level(), 9);
        Json.number(level, "standard_error", found.standardError(), 9);
        double share = ofPpfd(taken, c);
        Json.number(
            level,
            "share_of_ppfd",
            Double.isNaN(share) ? OptionalDouble.empty() : OptionalDouble.of(share));
      }
      Json.number(entry, "not_explained", taken.parts().residual());
      Json.number(entry, "condition", taken.parts().condition());
      entry.put("warning", taken.parts().warning().orElse(null));
    }
    Json.strings(json, "cautions", Light.cautions(all()));
    return json;
  }
}
