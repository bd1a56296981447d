package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.optics.Underwater;
import parfield.optics.Water;
import parfield.spectrum.WaveBands;
import parfield.units.LengthUnit;

/**
 * How water changes a light on its way down.
 *
 * @param light as it is just below the surface
 * @param water that it goes through
 * @param bands of which shares are told
 * @param depths what is left, at least one
 * @param files that were left
 */
public record DepthsAnswer(
    Light light, Water water, WaveBands bands, List<Underwater.AtDepth> depths, List<String> files)
    implements Answer {
  public DepthsAnswer {
    Objects.requireNonNull(light, "light");
    Objects.requireNonNull(water, "water");
    Objects.requireNonNull(bands, "bands");
    depths = List.copyOf(depths);
    files = List.copyOf(files);
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "%s under water of yellowing %s 1/m, by absorption alone\n\n",
            light.name(),
            Numbers.plain(water.yellowing(), 4)));
    text.append(table(unit).text()).append('\n');
    explanation().forEach(sentence -> text.append(sentence).append('\n'));
    text.append(Lines.section("About the spectra", about()));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  /** What shares are of and what is left out, a sentence each. */
  public List<String> explanation() {
    return List.of(
        String.format(
            Locale.ROOT,
            "Bands in nm; shares are of the photons within %s–%s nm at that depth. The light is"
                + " taken to go\nstraight down: slanted and reflected light goes a longer way and"
                + " changes more.",
            Numbers.plain(bands.fromNm(), 1),
            Numbers.plain(bands.toNm(), 1)));
  }

  /** What the spectrum may suffer from, a sentence each. */
  public List<String> about() {
    return Light.cautions(List.of(light));
  }

  /** What is left at each depth, and the shares there. */
  public Table table(LengthUnit unit) {
    List<String> header =
        new ArrayList<>(List.of("depth (" + unit.symbol() + ")", "PPFD left (%)"));
    bands.bands().forEach(band -> header.add(Numbers.nm(band) + " (%)"));
    Table table = new Table("r".repeat(header.size()), header);
    for (Underwater.AtDepth at : depths) {
      List<String> row = new ArrayList<>();
      row.add(Numbers.length(at.depth(), unit));
      row.add(at.parLeft().toOptional().map(Numbers::finePercent).orElse(Numbers.NONE));
      List<Double> shares = at.shares().toOptional().orElse(List.of());
      for (int b = 0; b < bands.bands().size(); b++) {
        row.add(shares.isEmpty() ? Numbers.NONE : Numbers.finePercent(shares.get(b)));
      }
      table.row(row);
    }
    return table;
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("light", light.name());
    Json.number(json, "yellowing_per_m", water.yellowing());
    ArrayNode array = json.putArray("depths");
    for (Underwater.AtDepth at : depths) {
      ObjectNode entry = array.addObject();
      Json.length(entry, "depth", at.depth());
      Json.number(entry, "ppfd_left", at.parLeft());
      ArrayNode shares = entry.putArray("bands");
      at.shares()
          .toOptional()
          .ifPresent(
              all -> {
                for (int b = 0; b < all.size(); b++) {
                  Json.number(Json.band(shares, bands.bands().get(b)), "share", all.get(b));
                }
              });
    }
    Json.strings(json, "cautions", Light.cautions(List.of(light)));
    Json.strings(json, "files", files);
    return json;
  }
}
