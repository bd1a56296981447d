package parfield.web.bench;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.ChoicePictures;
import parfield.answer.Json;
import parfield.answer.RecommendationAnswer;
import parfield.plan.Demand;
import parfield.plan.Mix;
import parfield.plan.Search;
import parfield.units.LengthUnit;

/**
 * What is kept of a recommendation: its answer, as text and pictures too, and what was searched.
 */
public final class AdviceDocument {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private AdviceDocument() {}

  /** The document of an answer, to be stored. */
  static byte[] of(RecommendationAnswer answer) {
    return bytes(document(answer));
  }

  /** A document as it is stored. */
  public static byte[] bytes(JsonNode document) {
    try {
      return MAPPER.writeValueAsBytes(document);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The document of an answer. */
  public static ObjectNode document(RecommendationAnswer answer) {
    ObjectNode document = Json.object();
    document.set("answer", answer.json());
    answer.recommendation().demands().all().stream()
        .filter(Demand.Coverage.class::isInstance)
        .map(Demand.Coverage.class::cast)
        .findFirst()
        .ifPresent(demand -> document.put("aim", demand.band().name()));
    put(document.putObject("search"), answer.recommendation().search());
    for (LengthUnit unit : LengthUnit.values()) {
      ObjectNode told = document.putObject(unit.symbol());
      told.put("text", answer.text(unit));
      told.set("words", answer.words(unit));
      ChoicePictures.heights(answer.recommendation(), unit)
          .ifPresent(svg -> told.put("heights", svg));
      ChoicePictures.spacings(answer.recommendation(), unit)
          .ifPresent(svg -> told.put("spacings", svg));
    }
    return document;
  }

  /** Reads a document. */
  public static JsonNode read(byte[] document) {
    try {
      return MAPPER.readTree(document);
    } catch (IOException e) {
      throw new UncheckedIOException("the stored recommendation cannot be read", e);
    }
  }

  private static void put(ObjectNode json, Search search) {
    ArrayNode counts = json.putArray("counts");
    search.counts().forEach(counts::add);
    ArrayNode heights = json.putArray("heights_m");
    search.heights().forEach(heights::add);
    ArrayNode spacings = json.putArray("spacings_m");
    search.spacings().forEach(spacings::add);
    json.put("plane_m", search.planeDepth());
    json.put("free_mix", search.mix() == Mix.FREE);
  }

  /**
   * The search that a document's recommendation was found by; of one that does not hold it, the
   * search that the bench suggests.
   *
   * @param bench as it was for the recommendation
   */
  public static Search search(JsonNode document, Bench bench) {
    JsonNode kept = document.path("search");
    if (kept.isMissingNode()) {
      return Advice.search(bench, bench.usualDepth());
    }
    List<Integer> counts = new ArrayList<>();
    kept.path("counts").forEach(count -> counts.add(count.asInt()));
    Search search =
        Advice.search(bench, kept.path("plane_m").asDouble())
            .withCounts(counts)
            .withHeights(numbers(kept.path("heights_m")))
            .withSpacings(numbers(kept.path("spacings_m")));
    return kept.path("free_mix").asBoolean() ? search.withMix(Mix.FREE) : search;
  }

  private static List<Double> numbers(JsonNode list) {
    List<Double> all = new ArrayList<>();
    list.forEach(number -> all.add(number.asDouble()));
    return all;
  }
}
