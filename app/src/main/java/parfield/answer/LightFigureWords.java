package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import parfield.spectrum.DisplayColour;
import parfield.spectrum.Finding;
import parfield.spectrum.LightFigures;
import parfield.spectrum.Peak;
import parfield.spectrum.Scale;

/** The figures of a light as rows of a table and as JSON. */
final class LightFigureWords {
  private LightFigureWords() {}

  /**
   * A figure that does not need a scale.
   *
   * @param name with its unit
   * @param value finds it
   */
  record Row(String name, Function<LightFigures, Finding<String>> value) {
    Finding<String> shown(LightFigures figures) {
      return value.apply(figures);
    }
  }

  /** Every figure that needs no scale, in the order of the table. */
  static final List<Row> ROWS =
      List.of(
          new Row(
              "ultraviolet 280–400 nm (% of photons 280–800)",
              figures -> figures.ultravioletShare().map(Numbers::finePercent)),
          new Row(
              "far red 700–800 nm (% of photons 280–800)",
              figures -> figures.farRedShare().map(Numbers::finePercent)),
          new Row(
              "mean wavelength, by energy (nm)",
              figures -> Finding.of(Numbers.plain(figures.centroidNm(), 1))),
          new Row(
              "lux per µmol m⁻² s⁻¹",
              figures -> figures.luxPerPpfd().map(value -> Numbers.plain(value, 1))),
          new Row(
              "lumens per watt of radiation",
              figures -> figures.luminousEfficacy().map(value -> Numbers.plain(value, 0))),
          new Row(
              "µmol per joule, 400–700 nm",
              figures -> figures.micromolesPerJoule().map(Numbers::ratio)),
          new Row(
              "colour x, y",
              figures ->
                  figures
                      .chromaticity()
                      .map(
                          colour ->
                              Numbers.fixed(colour.x(), 4) + ", " + Numbers.fixed(colour.y(), 4))),
          new Row(
              "colour u′, v′",
              figures ->
                  figures
                      .chromaticity()
                      .map(
                          colour ->
                              Numbers.fixed(colour.u(), 4)
                                  + ", "
                                  + Numbers.fixed(colour.vPrime(), 4))),
          new Row(
              "colour temperature (K)",
              figures ->
                  figures.colourTemperature().map(found -> Numbers.plain(found.kelvin(), 0))),
          new Row(
              "distance from black bodies Duv",
              figures -> figures.colourTemperature().map(found -> Numbers.signed(found.duv(), 4))),
          new Row(
              "colour rendering Ra",
              figures ->
                  figures
                      .colourRendering()
                      .map(
                          found ->
                              Numbers.plain(found.ra(), 0)
                                  + (found.lessAccurate() ? ", less accurate" : ""))),
          new Row(
              "absorbed by symbionts, model (% of PAR)",
              figures -> figures.usableShare().map(Numbers::percent)),
          new Row(
              "blue-light-weighted (mW per lm)",
              figures -> figures.blueLightPerLumen().map(value -> Numbers.ratio(1000 * value))));

  /** What is not defined, with its reason; figures that lack for the same reason together. */
  static List<String> notDefined(List<DescribeAnswer.Described> lights) {
    List<String> lines = new ArrayList<>();
    for (DescribeAnswer.Described one : lights) {
      Map<String, List<String>> figures = new LinkedHashMap<>();
      for (Row row : ROWS) {
        if (row.shown(one.figures()) instanceof Finding.NotDefined<String> none) {
          // Rendering lacks because temperature does, and says so.
          String reason =
              figures.keySet().stream()
                  .filter(before -> none.reason().endsWith(before))
                  .findFirst()
                  .orElse(none.reason());
          figures.computeIfAbsent(reason, of -> new ArrayList<>()).add(row.name());
        }
      }
      figures.forEach(
          (reason, names) ->
              lines.add(one.light().name() + ": " + String.join(", ", names) + ": " + reason));
    }
    return lines;
  }

  private static OptionalDouble sum(LightFigures figures, Scale scale, double value) {
    return figures.scale() == scale ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** Puts every figure, {@code null} where not known or not defined, and the reasons. */
  static void json(ObjectNode json, LightFigures figures) {
    json.put("scale", figures.scale().name().toLowerCase(Locale.ROOT));
    Json.number(json, "ppfd_umol_m2_s", sum(figures, Scale.IRRADIANCE, figures.parPhotons()));
    Json.number(json, "ppf_umol_s", sum(figures, Scale.FLUX, figures.parPhotons()));
    Json.number(json, "illuminance_lx", sum(figures, Scale.IRRADIANCE, figures.luminous()));
    Json.number(json, "luminous_flux_lm", sum(figures, Scale.FLUX, figures.luminous()));
    ArrayNode bands = json.putArray("bands");
    figures
        .bandShares()
        .toOptional()
        .ifPresent(
            shares -> {
              for (int b = 0; b < shares.size(); b++) {
                Json.number(
                    Json.band(bands, figures.bands().bands().get(b)), "share", shares.get(b));
              }
            });
    Json.number(json, "ultraviolet_share", figures.ultravioletShare());
    Json.number(json, "far_red_share", figures.farRedShare());
    ArrayNode peaks = json.putArray("peaks");
    for (Peak peak : figures.peaks()) {
      ObjectNode entry = peaks.addObject();
      Json.number(entry, "centre_nm", peak.centreNm());
      Json.number(entry, "width_nm", peak.widthNm());
      Json.number(entry, "height_of_highest", peak.height() / figures.peaks().get(0).height());
    }
    Json.number(json, "centroid_nm", figures.centroidNm());
    Json.number(json, "lux_per_umol_m2_s", figures.luxPerPpfd());
    Json.number(json, "lumens_per_watt", figures.luminousEfficacy());
    Json.number(json, "umol_per_joule", figures.micromolesPerJoule());
    colour(json, figures);
    Json.number(json, "usable_share", figures.usableShare());
    Json.number(
        json, "blue_light_mw_per_lm", figures.blueLightPerLumen().map(value -> 1000 * value));
    ArrayNode reasons = json.putArray("not_defined");
    for (Row row : ROWS) {
      if (row.shown(figures) instanceof Finding.NotDefined<String> none) {
        ObjectNode entry = reasons.addObject();
        entry.put("figure", row.name());
        entry.put("reason", none.reason());
      }
    }
  }

  private static void colour(ObjectNode json, LightFigures figures) {
    if (figures.chromaticity().toOptional().isEmpty()) {
      json.putNull("chromaticity");
      json.putNull("screen_colour");
    }
    figures
        .chromaticity()
        .toOptional()
        .ifPresent(
            colour -> {
              ObjectNode entry = json.putObject("chromaticity");
              Json.number(entry, "x", colour.x(), 5);
              Json.number(entry, "y", colour.y(), 5);
              Json.number(entry, "u_prime", colour.u(), 5);
              Json.number(entry, "v_prime", colour.vPrime(), 5);
              json.put("screen_colour", DisplayColour.of(colour).hex());
            });
    Json.number(
        json, "colour_temperature_k", figures.colourTemperature().map(found -> found.kelvin()));
    Json.number(json, "duv", figures.colourTemperature().map(found -> found.duv()));
    Json.number(json, "ra", figures.colourRendering().map(found -> found.ra()));
  }
}
