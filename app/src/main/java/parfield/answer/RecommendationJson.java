package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parfield.care.Caution;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.plan.BandCoverage;
import parfield.plan.BandSetting;
import parfield.plan.Demand;
import parfield.plan.Extent;
import parfield.plan.Figures;
import parfield.plan.NextReading;
import parfield.plan.Option;
import parfield.plan.Recommendation;
import parfield.plan.Remedy;
import parfield.plan.Shortfall;
import parfield.plan.Verdict;
import parfield.rig.Hanging;
import parfield.units.LengthUnit;

/** A recommendation as JSON. */
final class RecommendationJson {
  private RecommendationJson() {}

  static ObjectNode of(RecommendationAnswer answer) {
    Recommendation recommendation = answer.recommendation();
    ObjectNode json = Json.object();
    json.put("setup", answer.source());
    json.put("complete", recommendation.complete());
    json.put("rigs_looked_at", recommendation.evaluated());
    json.set("measured", Measured.json(answer.surveys()));
    json.set("options", options(recommendation.options(), recommendation));
    json.set("trade_off", options(recommendation.tradeOff(), recommendation));
    json.set("heights", options(recommendation.heightSweep(), recommendation));
    json.set("spacings", options(recommendation.spacingSweep(), recommendation));
    json.set("band_settings", bandSettings(recommendation));
    json.set("shortfalls", shortfalls(recommendation));
    json.set("remedies", remedies(recommendation));
    json.set("next_readings", nextReadings(recommendation.nextReadings()));
    strings(json.putArray("statements"), answer.statements());
    strings(json.putArray("assumptions"), recommendation.assumptions(LengthUnit.CM));
    strings(
        json.putArray("cautions"), Arrays.stream(Caution.values()).map(Caution::inWords).toList());
    return json;
  }

  private static void strings(ArrayNode array, List<String> sentences) {
    sentences.forEach(array::add);
  }

  private static ArrayNode options(List<Option> options, Recommendation recommendation) {
    ArrayNode array = array();
    options.forEach(option -> array.add(option(option, recommendation)));
    return array;
  }

  private static ObjectNode option(Option option, Recommendation recommendation) {
    ObjectNode json = Json.object();
    Fixture fixture = option.arrangement().pattern().fixture();
    json.put("fixture", fixture.name());
    json.put("count", option.arrangement().count());
    json.put("layout", option.arrangement().layout().name().toLowerCase(Locale.ROOT));
    Json.length(json, "spacing", option.arrangement().spacing());
    Json.length(json, "height", option.height());
    ArrayNode centres = json.putArray("centres");
    for (Hanging hanging : option.over(recommendation.search().tank()).hangings()) {
      ObjectNode centre = centres.addObject();
      Json.length(centre, "x", hanging.x());
      Json.length(centre, "y", hanging.y());
    }
    json.set("dials_percent", dials(fixture, option.setting()));
    Json.number(json, "power_w", option.watts());
    ProbabilityJson.put(json, option.probability());
    json.put("standing", word(option.standing()));
    ArrayNode verdicts = json.putArray("demands");
    option.verdicts().forEach(verdict -> verdicts.add(verdict(verdict)));
    ArrayNode figures = json.putArray("figures");
    option.figures().forEach(of -> figures.add(figures(of)));
    return json;
  }

  private static ObjectNode dials(Fixture fixture, Setting setting) {
    ObjectNode json = Json.object();
    fixture.dials().forEach(dial -> Json.number(json, dial, setting.percent(dial)));
    return json;
  }

  private static String word(Verdict.Standing standing) {
    return standing.name().toLowerCase(Locale.ROOT);
  }

  private static ObjectNode verdict(Verdict verdict) {
    ObjectNode json = Json.object();
    Demand demand = verdict.demand();
    json.put("demand", demand.inWords());
    if (demand instanceof Demand.HotSpot || demand instanceof Demand.MeanPpfd) {
      Json.ppfd(json, "reached", verdict.value());
    } else {
      Json.number(json, "reached", verdict.value());
    }
    ProbabilityJson.put(json, verdict.probability());
    json.put("standing", word(verdict.standing()));
    return json;
  }

  private static ObjectNode figures(Figures figures) {
    ObjectNode json = Json.object();
    extent(json, figures.extent());
    Json.ppfd(json, "mean", figures.mean());
    Json.ppfd(json, "hot_spot", figures.hotSpot());
    Json.number(json, "evenness_u0", figures.evenness());
    Json.number(json, "ends_to_centre", figures.endsToCentre());
    Json.number(json, "retention", figures.retention());
    ArrayNode bands = json.putArray("coverage");
    for (BandCoverage coverage : figures.coverage()) {
      ObjectNode band = bands.addObject();
      band.put("band", coverage.band().name());
      Json.number(band, "inside", coverage.share());
    }
    return json;
  }

  private static void extent(ObjectNode json, Extent extent) {
    json.put(
        "of",
        extent instanceof Extent.Plane
            ? "plane"
            : extent instanceof Extent.Living ? "living surface" : "volume");
    if (extent instanceof Extent.Plane plane) {
      Json.length(json, "depth", plane.depth());
    }
    extent.zone().ifPresent(zone -> json.put("zone", zone.name()));
  }

  private static ArrayNode bandSettings(Recommendation recommendation) {
    ArrayNode array = array();
    for (BandSetting setting : recommendation.bandSettings()) {
      ObjectNode json = array.addObject();
      json.put("band", setting.band().name());
      extent(json, setting.extent());
      json.set(
          "dials_percent",
          dials(recommendation.best().arrangement().pattern().fixture(), setting.setting()));
      Json.number(json, "inside", setting.coverage());
    }
    return array;
  }

  private static ArrayNode shortfalls(Recommendation recommendation) {
    ArrayNode array = array();
    for (Shortfall shortfall : recommendation.shortfalls()) {
      ObjectNode json = verdict(shortfall.verdict());
      Json.number(json, "missing", shortfall.missing());
      json.put("in_words", shortfall.inWords(LengthUnit.CM));
      json.set("sought_for_it_alone", option(shortfall.alone(), recommendation));
      array.add(json);
    }
    return array;
  }

  private static ArrayNode remedies(Recommendation recommendation) {
    ArrayNode array = array();
    for (Remedy remedy : recommendation.remedies()) {
      ObjectNode json = array.addObject();
      json.put("kind", remedy.kind().name().toLowerCase(Locale.ROOT));
      Json.number(json, "factor", remedy.factor());
      json.put("helps", remedy.helps());
      json.put("in_words", remedy.inWords(LengthUnit.CM));
      json.set("option", option(remedy.option(), recommendation));
    }
    return array;
  }

  private static ArrayNode nextReadings(List<NextReading> readings) {
    ArrayNode array = array();
    for (NextReading reading : readings) {
      ObjectNode json = array.addObject();
      Json.place(json, reading.place());
      Json.ppfd(json, "expected", reading.shown());
      Json.number(json, "spread_left", reading.spreadLeft());
    }
    return array;
  }

  private static ArrayNode array() {
    return JsonNodeFactory.instance.arrayNode();
  }
}
