package parfield.web.recommend;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parfield.answer.ProbabilityJson;
import parfield.answer.Refusal;
import parfield.formats.Setup;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.plan.Probability;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.units.LengthUnit;

/**
 * One option of a recommendation.
 *
 * @param name for addresses
 * @param json as the answer says it
 */
public record Choice(String name, JsonNode json) {
  /** Lengths in the answer are in centimetres. */
  private static final double CM = 0.01;

  /** What hangs, in a few words. */
  public String inWords(LengthUnit unit) {
    int count = json.path("count").asInt();
    String fixtures = count + " × " + json.path("fixture").asText();
    String apart =
        count > 1 ? ", " + length(json.path("spacing_cm").asDouble(), unit) + " apart" : "";
    String layout =
        json.path("layout").asText().equals("row")
            ? ""
            : ", " + json.path("layout").asText().replace('_', ' ');
    return fixtures + layout + apart + ", " + height(unit) + " high";
  }

  /** Mounting height with its unit. */
  public String height(LengthUnit unit) {
    return length(json.path("height_cm").asDouble(), unit);
  }

  private static String length(double cm, LengthUnit unit) {
    return String.format(Locale.ROOT, "%s %s", number(unit.fromMetres(cm * CM)), unit.symbol());
  }

  /** At most one decimal. */
  private static String number(double value) {
    double tenths = Math.round(value * 10) / 10.0;
    return tenths == Math.rint(tenths)
        ? String.format(Locale.ROOT, "%.0f", tenths)
        : String.format(Locale.ROOT, "%.1f", tenths);
  }

  /** Centres of the fixtures, x and y, without a unit. */
  public List<List<String>> centres(LengthUnit unit) {
    List<List<String>> all = new ArrayList<>();
    json.path("centres")
        .forEach(
            centre ->
                all.add(
                    List.of(
                        number(unit.fromMetres(centre.path("x_cm").asDouble() * CM)),
                        number(unit.fromMetres(centre.path("y_cm").asDouble() * CM)))));
    return all;
  }

  /** Dials and their percentages. */
  public Map<String, String> dials() {
    Map<String, String> dials = new LinkedHashMap<>();
    json.path("dials_percent")
        .properties()
        .forEach(dial -> dials.put(dial.getKey(), number(dial.getValue().asDouble())));
    return dials;
  }

  /** Power, with its unit; empty if the setup does not state it. */
  public String power() {
    return json.path("power_w").isNumber() ? number(json.path("power_w").asDouble()) + " W" : "";
  }

  /** Probability that all demands are met. */
  public Probability probability() {
    return ProbabilityJson.of(json);
  }

  /** Standing in words: met, failed, too close to call. */
  public String standing() {
    return standing(json);
  }

  static String standing(JsonNode of) {
    return switch (of.path("standing").asText()) {
      case "met" -> "met";
      case "failed" -> "not met";
      default -> "too close to call";
    };
  }

  /**
   * A row of a table about this option.
   *
   * @param what it is about
   * @param value with its interval
   * @param probability that it is met; empty where nothing is demanded
   * @param standing in words, maybe empty
   */
  public record Row(String what, String value, String probability, String standing) {}

  /**
   * What is demanded and what is reached.
   *
   * @param words the demands in their order; where there are none, as the answer says them
   */
  public List<Row> demands(List<String> words) {
    List<Row> rows = new ArrayList<>();
    for (JsonNode demand : json.path("demands")) {
      boolean ppfd = demand.has("reached_umol_m2_s");
      JsonNode reached = demand.path(ppfd ? "reached_umol_m2_s" : "reached");
      rows.add(
          new Row(
              rows.size() < words.size() ? words.get(rows.size()) : demand.path("demand").asText(),
              ppfd ? interval(reached, 1, "") : interval(reached, 100, " %"),
              ProbabilityJson.of(demand).inWords(),
              standing(demand)));
    }
    return rows;
  }

  /** Its figures, of water and plane. */
  public List<Row> figures(LengthUnit unit) {
    List<Row> rows = new ArrayList<>();
    for (JsonNode of : json.path("figures")) {
      String where =
          of.path("of").asText().equals("plane")
              ? length(of.path("depth_cm").asDouble(), unit) + " deep"
              : of.path("of").asText().equals("volume") ? "water" : of.path("of").asText();
      String zone = of.has("zone") ? " of " + of.path("zone").asText() : "";
      for (JsonNode band : of.path("coverage")) {
        add(rows, "in " + band.path("band").asText(), where + zone, band.path("inside"), 100, " %");
      }
      add(rows, "mean PPFD", where + zone, of.path("mean_umol_m2_s"), 1, "");
      add(rows, "hot spot", where + zone, of.path("hot_spot_umol_m2_s"), 1, "");
      add(rows, "evenness U₀", where + zone, of.path("evenness_u0"), 100, " %");
      add(rows, "ends over centre", where + zone, of.path("ends_to_centre"), 100, " %");
      add(rows, "retention", where + zone, of.path("retention"), 100, " %");
    }
    return rows;
  }

  private static void add(
      List<Row> rows, String what, String where, JsonNode estimate, double factor, String unit) {
    if (estimate.has("value")) {
      rows.add(new Row(what + ", " + where, interval(estimate, factor, unit), "", ""));
    }
  }

  private static String interval(JsonNode estimate, double factor, String unit) {
    return String.format(
        Locale.ROOT,
        "%s (%s–%s)%s",
        number(factor * estimate.path("value").asDouble()),
        number(factor * estimate.path("low").asDouble()),
        number(factor * estimate.path("high").asDouble()),
        unit);
  }

  /** Share of the water in a band by its number. */
  public double coverage(int band) {
    return json.path("figures")
        .path(0)
        .path("coverage")
        .path(band)
        .path("inside")
        .path("value")
        .asDouble();
  }

  /** A figure of the water, 0 if there is none. */
  public double figure(String key) {
    return json.path("figures").path(0).path(key).path("value").asDouble();
  }

  /** The rig that this option is, over the tank of a setup. */
  public Rig over(Setup setup, String rigName) {
    String fixture = json.path("fixture").asText();
    Hanging pattern =
        setup.rigs().values().stream()
            .flatMap(rig -> rig.hangings().stream())
            .filter(hanging -> hanging.fixture().name().equals(fixture))
            .findFirst()
            .orElseThrow(
                () ->
                    Refusal.of(
                        "the setup no longer hangs a fixture named " + fixture,
                        "run the recommendation again"));
    Map<String, Double> dials = new LinkedHashMap<>();
    json.path("dials_percent")
        .properties()
        .forEach(dial -> dials.put(dial.getKey(), dial.getValue().asDouble()));
    Fixture hung = setup.fixtures().get(fixture);
    double height = json.path("height_cm").asDouble() * CM;
    List<Hanging> hangings = new ArrayList<>();
    for (JsonNode centre : json.path("centres")) {
      hangings.add(
          pattern
              .withFixture(hung)
              .at(centre.path("x_cm").asDouble() * CM, centre.path("y_cm").asDouble() * CM, height)
              .withSetting(new Setting(dials)));
    }
    return new Rig(rigName, setup.tank(), hangings);
  }
}
