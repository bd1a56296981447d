package parfield.answer;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import parfield.spectrum.Finding;
import parfield.spectrum.WaveBand;
import parfield.tank.Place;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * JSON as this program writes it: lengths in centimetres whatever the person reads in, the unit in
 * the key, numbers rounded to what they mean, {@code null} for what is not known.
 */
public final class Json {
  private static final ObjectMapper MAPPER =
      new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

  private Json() {}

  /** An empty object. */
  public static ObjectNode object() {
    return JsonNodeFactory.instance.objectNode();
  }

  /** The text of a document, indented, with a line feed at its end. */
  public static String text(JsonNode document) {
    try {
      return MAPPER.writeValueAsString(document) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of JSON cannot fail to be written", e);
    }
  }

  /** Puts a length [m] as centimetres under {@code key_cm}. */
  static void length(ObjectNode json, String key, double metres) {
    json.put(key + "_cm", rounded(LengthUnit.CM.fromMetres(metres), 3));
  }

  /** Puts x, y and depth of a place in centimetres. */
  static void place(ObjectNode json, Place place) {
    length(json, "x", place.x());
    length(json, "y", place.y());
    length(json, "depth", place.depth());
  }

  /** Puts a PPFD under {@code key_umol_m2_s}. */
  static void ppfd(ObjectNode json, String key, double ppfd) {
    json.put(key + "_umol_m2_s", rounded(ppfd, 2));
  }

  /** Puts a PPFD with its interval under {@code key_umol_m2_s}. */
  static void ppfd(ObjectNode json, String key, Estimate ppfd) {
    estimate(json, key + "_umol_m2_s", ppfd, 2);
  }

  /** Puts a pure number: a share, a ratio, a probability. */
  static void number(ObjectNode json, String key, double value) {
    json.put(key, rounded(value, 4));
  }

  /** Puts a pure number with at most {@code digits} decimals. */
  static void number(ObjectNode json, String key, double value, int digits) {
    json.put(key, rounded(value, digits));
  }

  /** Puts a pure number, or {@code null}. */
  static void number(ObjectNode json, String key, OptionalDouble value) {
    if (value.isPresent()) {
      number(json, key, value.getAsDouble());
    } else {
      json.putNull(key);
    }
  }

  /** Puts a figure, or {@code null} where it is not defined. */
  static void number(ObjectNode json, String key, Finding<Double> value) {
    number(json, key, value.toOptional().map(OptionalDouble::of).orElse(OptionalDouble.empty()));
  }

  /** Puts a pure number with its interval. */
  static void number(ObjectNode json, String key, Estimate value) {
    estimate(json, key, value, 4);
  }

  /** Adds a waveband by its ends; its figures follow. */
  static ObjectNode band(ArrayNode array, WaveBand band) {
    ObjectNode entry = array.addObject();
    number(entry, "from_nm", band.fromNm());
    number(entry, "to_nm", band.toNm());
    return entry;
  }

  /** Puts a list of sentences or names. */
  static void strings(ObjectNode json, String key, List<String> all) {
    ArrayNode array = json.putArray(key);
    all.forEach(array::add);
  }

  private static void estimate(ObjectNode json, String key, Estimate estimate, int digits) {
    ObjectNode interval = json.putObject(key);
    interval.put("value", rounded(estimate.value(), digits));
    interval.put("low", rounded(estimate.low(), digits));
    interval.put("high", rounded(estimate.high(), digits));
  }

  /** A number with at most {@code digits} decimals; infinite and undefined numbers as null. */
  private static Double rounded(double value, int digits) {
    if (!Double.isFinite(value)) {
      return null;
    }
    double power = Math.pow(10, digits);
    double rounded = Math.rint(value * power) / power;
    return Double.isFinite(rounded) ? rounded + 0.0 : value;
  }
}
