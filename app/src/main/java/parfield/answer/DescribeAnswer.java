package parfield.answer;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import parfield.spectrum.Finding;
import parfield.spectrum.LightFigures;
import parfield.spectrum.Peak;
import parfield.spectrum.Scale;
import parfield.spectrum.SymbiontAbsorption;
import parfield.units.LengthUnit;

/**
 * What light it is.
 *
 * @param lights with their figures, at least one, all of the same wavebands
 * @param files that were left
 */
public record DescribeAnswer(List<Described> lights, List<String> files) implements Answer {
  /** Lights side by side in one table. */
  private static final int SIDE_BY_SIDE = 5;

  public DescribeAnswer {
    lights = List.copyOf(lights);
    files = List.copyOf(files);
  }

  /**
   * One light.
   *
   * @param light the light
   * @param figures what was found in its spectrum
   */
  public record Described(Light light, LightFigures figures) {
    public Described {
      Objects.requireNonNull(light, "light");
      Objects.requireNonNull(figures, "figures");
    }
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    for (int from = 0; from < lights.size(); from += SIDE_BY_SIDE) {
      text.append(from == 0 ? "" : "\n");
      text.append(table(lights.subList(from, Math.min(lights.size(), from + SIDE_BY_SIDE))).text());
    }
    text.append(Lines.section("Not defined", notDefined()));
    text.append(Lines.section("Peaks, of energy per nm", peaks()));
    text.append(Lines.section("About the spectra", about()));
    text.append(Lines.section("About the share that symbionts absorb", SymbiontAbsorption.CAVEATS));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  /** Figures that some light has not, with the reasons, a sentence each. */
  public List<String> notDefined() {
    return LightFigureWords.notDefined(lights);
  }

  /** What the spectra may suffer from, a sentence each. */
  public List<String> about() {
    List<String> unscaled =
        lights.stream()
            .filter(one -> one.figures().scale() == Scale.RELATIVE)
            .map(one -> one.light().name())
            .toList();
    List<String> about = new ArrayList<>();
    if (!unscaled.isEmpty()) {
      about.add(
          String.join(", ", unscaled)
              + ": the scale is not known, so that only shares and colours are told, no PPFD, lux"
              + " or watts");
    }
    about.addAll(Light.cautions(lights.stream().map(Described::light).toList()));
    return about;
  }

  /** Every figure, the lights side by side. */
  public Table table() {
    return table(lights);
  }

  private static Table table(List<Described> some) {
    List<String> header = new ArrayList<>(List.of("figure"));
    some.forEach(one -> header.add(one.light().name()));
    Table table = new Table("l" + "r".repeat(some.size()), header);
    if (some.stream().anyMatch(one -> one.figures().scale() == Scale.IRRADIANCE)) {
      sums(table, some, Scale.IRRADIANCE, "PPFD (µmol m⁻² s⁻¹)", "illuminance (lx)");
    }
    if (some.stream().anyMatch(one -> one.figures().scale() == Scale.FLUX)) {
      sums(table, some, Scale.FLUX, "PPF (µmol s⁻¹)", "luminous flux (lm)");
    }
    int bands = some.get(0).figures().bands().bands().size();
    for (int b = 0; b < bands; b++) {
      int band = b;
      row(
          table,
          some,
          Numbers.nm(some.get(0).figures().bands().bands().get(b)) + " nm (% of photons)",
          figures -> figures.bandShares().map(shares -> Numbers.finePercent(shares.get(band))));
    }
    LightFigureWords.ROWS.forEach(
        figure -> row(table, some, figure.name(), figures -> figure.shown(figures)));
    return table;
  }

  private static void sums(
      Table table, List<Described> some, Scale scale, String photons, String luminous) {
    row(
        table,
        some,
        photons,
        figures -> scaled(figures, scale, Numbers.significant(figures.parPhotons())));
    row(
        table,
        some,
        luminous,
        figures -> scaled(figures, scale, Numbers.significant(figures.luminous())));
  }

  private static Finding<String> scaled(LightFigures figures, Scale scale, String shown) {
    return Finding.of(figures.scale() == scale ? shown : Numbers.NONE);
  }

  private static void row(
      Table table,
      List<Described> some,
      String name,
      Function<LightFigures, Finding<String>> figure) {
    List<String> cells = new ArrayList<>(List.of(name));
    some.forEach(one -> cells.add(figure.apply(one.figures()).toOptional().orElse("not defined")));
    table.row(cells);
  }

  /** The peaks of each light, a sentence each. */
  public List<String> peaks() {
    List<String> lines = new ArrayList<>();
    for (Described one : lights) {
      List<String> words = new ArrayList<>();
      double highest = one.figures().peaks().stream().mapToDouble(Peak::height).max().orElse(1);
      for (Peak peak : one.figures().peaks()) {
        words.add(
            String.format(
                Locale.ROOT,
                "%s nm, %s, height %s %%",
                Numbers.plain(peak.centreNm(), 1),
                peak.widthNm()
                    .toOptional()
                    .map(width -> Numbers.plain(width, 1) + " nm wide")
                    .orElse("width not defined"),
                Numbers.percent(peak.height() / highest)));
      }
      lines.add(one.light().name() + ": " + (words.isEmpty() ? "none" : String.join("; ", words)));
    }
    return lines;
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    var array = json.putArray("lights");
    for (Described one : lights) {
      ObjectNode entry = array.addObject();
      entry.put("light", one.light().name());
      LightFigureWords.json(entry, one.figures());
    }
    Json.strings(json, "cautions", Light.cautions(lights.stream().map(Described::light).toList()));
    Json.strings(json, "usable_share_caveats", SymbiontAbsorption.CAVEATS);
    Json.strings(json, "files", files);
    return json;
  }
}
