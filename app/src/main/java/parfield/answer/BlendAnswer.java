package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.spectrum.Blend;
import parfield.spectrum.DisplayColour;
import parfield.spectrum.WaveBands;
import parfield.units.LengthUnit;

/**
 * Whether the colours of a fixture blend into one light.
 *
 * @param blend the places against their mean light
 * @param bands of which shares are told
 * @param statements on what the answer rests
 * @param lights that were measured; none where they were predicted
 * @param files that were left
 */
public record BlendAnswer(
    Blend blend, WaveBands bands, List<String> statements, List<Light> lights, List<String> files)
    implements Answer {
  public BlendAnswer {
    Objects.requireNonNull(blend, "blend");
    Objects.requireNonNull(bands, "bands");
    statements = List.copyOf(statements);
    lights = List.copyOf(lights);
    files = List.copyOf(files);
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(blend.words()).append("\n\n");
    text.append(table().text()).append('\n');
    explanation().forEach(sentence -> text.append(sentence).append('\n'));
    text.append(Lines.section("What it rests on", statements));
    text.append(Lines.section("About the spectra", about()));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  /** What the figures mean and which band differs most, a sentence each. */
  public List<String> explanation() {
    Blend.Spread widest = widest();
    return List.of(
        String.format(
            Locale.ROOT,
            "Bands in nm; shares are of the photons within %s–%s nm. Δu′v′ is the distance in"
                + " colour from the\nmean light of all places at equal PPFD; root mean square %s,"
                + " between two places at most %s.",
            Numbers.plain(bands.fromNm(), 1),
            Numbers.plain(bands.toNm(), 1),
            Numbers.fixed(blend.typical(), 4),
            Numbers.fixed(blend.widest(), 4)),
        String.format(
            Locale.ROOT,
            "Of the bands %s nm differs most: %s %% at %s, %s %% at %s.",
            Numbers.nm(widest.band()),
            Numbers.finePercent(widest.least()),
            widest.leastAt(),
            Numbers.finePercent(widest.most()),
            widest.mostAt()));
  }

  /** What the spectra may suffer from, a sentence each; none where they were predicted. */
  public List<String> about() {
    return Light.cautions(lights);
  }

  /** Every place against the mean light. */
  public Table table() {
    List<String> header = new ArrayList<>(List.of("place", "Δu′v′"));
    bands.bands().forEach(band -> header.add(Numbers.nm(band) + " (%)"));
    Table table = new Table("l" + "r".repeat(header.size() - 1), header);
    for (Blend.Row place : blend.rows()) {
      List<String> row = new ArrayList<>(List.of(place.name()));
      row.add(Numbers.fixed(place.deviation(), 4));
      place.shares().forEach(share -> row.add(Numbers.finePercent(share)));
      table.row(row);
    }
    List<String> mean = new ArrayList<>(List.of("mean light", Numbers.NONE));
    blend.spreads().forEach(spread -> mean.add(Numbers.finePercent(spread.mean())));
    table.row(mean);
    List<String> range = new ArrayList<>(List.of("highest less lowest", Numbers.NONE));
    blend.spreads().forEach(spread -> range.add(Numbers.finePercent(spread.range())));
    table.row(range);
    return table;
  }

  private Blend.Spread widest() {
    Blend.Spread widest = blend.spreads().get(0);
    for (Blend.Spread spread : blend.spreads()) {
      widest = spread.range() > widest.range() ? spread : widest;
    }
    return widest;
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("verdict", blend.verdict().name().toLowerCase(Locale.ROOT));
    json.put("in_words", blend.words());
    json.put("farthest", blend.farthest().name());
    Json.number(json, "delta_uv", blend.farthest().deviation(), 5);
    Json.number(json, "delta_uv_rms", blend.typical(), 5);
    Json.number(json, "delta_uv_between_two", blend.widest(), 5);
    ArrayNode places = json.putArray("places");
    for (Blend.Row place : blend.rows()) {
      ObjectNode entry = places.addObject();
      entry.put("place", place.name());
      Json.number(entry, "delta_uv", place.deviation(), 5);
      Json.number(entry, "x", place.chromaticity().x(), 5);
      Json.number(entry, "y", place.chromaticity().y(), 5);
      entry.put("screen_colour", DisplayColour.of(place.chromaticity()).hex());
      ArrayNode shares = entry.putArray("bands");
      for (int b = 0; b < bands.bands().size(); b++) {
        Json.number(Json.band(shares, bands.bands().get(b)), "share", place.shares().get(b));
      }
    }
    ArrayNode spreads = json.putArray("spreads");
    for (Blend.Spread spread : blend.spreads()) {
      ObjectNode entry = Json.band(spreads, spread.band());
      Json.number(entry, "mean", spread.mean());
      Json.number(entry, "least", spread.least());
      entry.put("least_at", spread.leastAt());
      Json.number(entry, "most", spread.most());
      entry.put("most_at", spread.mostAt());
    }
    Json.strings(json, "statements", statements);
    Json.strings(json, "cautions", Light.cautions(lights));
    Json.strings(json, "files", files);
    return json;
  }
}
