package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.spectrum.Comparison;
import parfield.spectrum.WaveBands;
import parfield.units.LengthUnit;

/**
 * Lights beside a reference.
 *
 * @param reference the reference
 * @param basis what was made equal
 * @param bands of which shares are told
 * @param lights each beside the reference, at least one
 * @param files that were left
 */
public record CompareAnswer(
    Light reference,
    Comparison.Basis basis,
    WaveBands bands,
    List<Compared> lights,
    List<String> files)
    implements Answer {
  public CompareAnswer {
    Objects.requireNonNull(reference, "reference");
    Objects.requireNonNull(basis, "basis");
    Objects.requireNonNull(bands, "bands");
    lights = List.copyOf(lights);
    files = List.copyOf(files);
  }

  /**
   * One light beside the reference.
   *
   * @param light the light
   * @param comparison with the reference
   */
  public record Compared(Light light, Comparison comparison) {
    public Compared {
      Objects.requireNonNull(light, "light");
      Objects.requireNonNull(comparison, "comparison");
    }
  }

  private boolean photons() {
    return basis == Comparison.Basis.EQUAL_PPFD;
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "%s beside %s, at equal %s\n\n",
            Numbers.count(lights.size(), "light"),
            reference.name(),
            photons() ? "PPFD" : "energy of 400–700 nm"));
    text.append(figures().text()).append('\n');
    text.append(shares().text()).append('\n');
    explanation().forEach(sentence -> text.append(sentence).append('\n'));
    text.append(Lines.section("About the spectra", about()));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  /** What the figures mean and what shares are of, a sentence each. */
  public List<String> explanation() {
    return List.of(
        String.format(
            Locale.ROOT,
            "Shares are of the %s within %s–%s nm; in brackets: points more or less than the"
                + " reference.",
            photons() ? "photons" : "energy",
            Numbers.plain(bands.fromNm(), 1),
            Numbers.plain(bands.toNm(), 1)),
        "The overlap is the part of a light, within 400–700 nm, that the reference has too; the"
            + " spectral\nangle is 0° for lights of one shape and 90° for lights without a common"
            + " wavelength.");
  }

  /** What the spectra may suffer from, a sentence each. */
  public List<String> about() {
    return Light.cautions(all());
  }

  /** How alike each light is to the reference. */
  public Table figures() {
    Table figures =
        new Table("lrrr", "light", "overlap (%)", "spectral angle (°)", "main peak shifted (nm)");
    for (Compared compared : lights) {
      figures.row(
          compared.light().name(),
          Numbers.percent(compared.comparison().overlap()),
          Numbers.plain(Math.toDegrees(compared.comparison().angle()), 1),
          compared
              .comparison()
              .peakShiftNm()
              .toOptional()
              .map(shift -> Numbers.signed(shift, 1))
              .orElse("not defined"));
    }
    return figures;
  }

  /** Shares by waveband, each beside the reference's. */
  public Table shares() {
    List<String> header = new ArrayList<>(List.of("band (nm)", reference.name() + " (%)"));
    lights.forEach(compared -> header.add(compared.light().name() + " (%)"));
    Table table = new Table("l" + "r".repeat(header.size() - 1), header);
    List<List<Comparison.Row>> rows =
        lights.stream().map(compared -> compared.comparison().bands(bands)).toList();
    for (int b = 0; b < bands.bands().size(); b++) {
      List<String> row = new ArrayList<>();
      row.add(Numbers.nm(bands.bands().get(b)));
      row.add(Numbers.finePercent(rows.get(0).get(b).reference()));
      for (List<Comparison.Row> light : rows) {
        row.add(
            String.format(
                Locale.ROOT,
                "%s (%s)",
                Numbers.finePercent(light.get(b).light()),
                Numbers.signed(100 * light.get(b).difference(), 1)));
      }
      table.row(row);
    }
    return table;
  }

  private List<Light> all() {
    List<Light> all = new ArrayList<>(List.of(reference));
    lights.forEach(compared -> all.add(compared.light()));
    return all;
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("reference", reference.name());
    json.put("equal", photons() ? "ppfd" : "energy");
    ArrayNode array = json.putArray("lights");
    for (Compared compared : lights) {
      ObjectNode entry = array.addObject();
      entry.put("light", compared.light().name());
      Json.number(entry, "overlap", compared.comparison().overlap());
      Json.number(entry, "spectral_angle_deg", Math.toDegrees(compared.comparison().angle()));
      Json.number(entry, "main_peak_shift_nm", compared.comparison().peakShiftNm());
      ArrayNode shares = entry.putArray("bands");
      for (Comparison.Row row : compared.comparison().bands(bands)) {
        ObjectNode share = Json.band(shares, row.band());
        Json.number(share, "share", row.light());
        Json.number(share, "reference_share", row.reference());
        Json.number(share, "difference", row.difference());
      }
    }
    Json.strings(json, "cautions", Light.cautions(all()));
    Json.strings(json, "files", files);
    return json;
  }
}
