package parfield.web.measure;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import parfield.answer.Json;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.workspace.Changes;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;
import parfield.workspace.ReadingWrite;
import parfield.workspace.Seen;

/** Readings between browser and server: lengths in metres, times in milliseconds since 1970. */
final class ReadingsJson {
  private static final Instant EARLIEST = Instant.parse("2000-01-01T00:00:00Z");
  private static final Duration CLOCKS_APART = Duration.ofMinutes(5);
  private static final int LONGEST_TYPED = 100;

  private ReadingsJson() {}

  /** A write that cannot be taken, with its reason. */
  static final class Unusable extends Exception {
    private static final long serialVersionUID = 1L;

    Unusable(String reason) {
      super(reason);
    }
  }

  /** A reading as it is now. */
  static ObjectNode of(ReadingRevision reading) {
    Entry entry = reading.entry();
    ObjectNode json = Json.object();
    json.put("reading", reading.reading().toString());
    json.put("revision", reading.revision());
    json.put("sequence", reading.sequence());
    json.put("x", entry.place().x());
    json.put("y", entry.place().y());
    json.put("depth", entry.place().depth());
    json.put("order", entry.order());
    json.put("typed", entry.typed());
    if (entry.value().isPresent()) {
      json.put("value", entry.value().getAsDouble());
    } else {
      json.putNull("value");
    }
    json.put("origin", entry.origin().name());
    json.put("kind", entry.kind().name());
    json.put("kept", entry.kept());
    json.put("cause", reading.cause().name());
    json.put("who", reading.who());
    json.put("when", reading.when().toEpochMilli());
    return json;
  }

  /** What changed in a survey. */
  static ObjectNode of(Changes changes) {
    ObjectNode json = Json.object();
    json.put("sequence", changes.sequence());
    json.put("canUndo", changes.canUndo());
    json.put("canRedo", changes.canRedo());
    json.set("readings", of(changes.readings()));
    return json;
  }

  /** Readings, each as it is now. */
  static ArrayNode of(List<ReadingRevision> readings) {
    ArrayNode array = Json.object().arrayNode();
    readings.forEach(reading -> array.add(of(reading)));
    return array;
  }

  /**
   * A write as a browser sends it. The value is read from what was typed, by the rules of {@link
   * TypedNumber}; a withdrawn reading has nothing typed.
   *
   * @param json the write
   * @param tank in which its place must lie, if the setup can be read
   * @param now a time in the future is taken for this
   * @throws Unusable with the reason, for a person
   */
  static ReadingWrite write(JsonNode json, Optional<Tank> tank, Instant now) throws Unusable {
    Place place = new Place(number(json, "x"), number(json, "y"), number(json, "depth"));
    if (tank.isPresent() && !tank.get().contains(place)) {
      throw new Unusable(
          String.format(
              Locale.ROOT,
              "x %.3f, y %.3f, depth %.3f m lies outside the tank, %s x %s m and %s m deep: was"
                  + " the setup changed? Reload the page",
              place.x(),
              place.y(),
              place.depth(),
              tank.get().length(),
              tank.get().width(),
              tank.get().depth()));
    }
    String typed = json.path("typed").asText("");
    boolean withdrawn = json.path("withdrawn").asBoolean(false);
    OptionalDouble value = OptionalDouble.empty();
    if (withdrawn) {
      typed = "";
    } else {
      TypedNumber read = TypedNumber.read(typed);
      if (read.problem().isPresent()) {
        throw new Unusable(read.problem().get());
      }
      value = read.value();
    }
    if (typed.length() > LONGEST_TYPED) {
      throw new Unusable(
          String.format(
              Locale.ROOT,
              "what was typed has %d characters; at most %d are taken: type the number alone",
              typed.length(),
              LONGEST_TYPED));
    }
    Instant when = Instant.ofEpochMilli(json.path("when").asLong(0));
    if (when.isBefore(EARLIEST) || when.isAfter(now.plus(CLOCKS_APART))) {
      when = now;
    }
    long basedOn = json.path("basedOn").asLong(-1);
    if (basedOn < 0) {
      throw new Unusable("a write must state the revision it is based on: reload the page");
    }
    return new ReadingWrite(
        id(json, "id"),
        id(json, "reading"),
        basedOn,
        new Entry(
            place,
            json.path("order").asInt(0),
            typed,
            value,
            named(Entry.Origin.class, json, "origin"),
            named(Entry.Kind.class, json, "kind"),
            json.path("kept").asBoolean(false)),
        when);
  }

  private static double number(JsonNode json, String key) throws Unusable {
    JsonNode node = json.path(key);
    if (!node.isNumber() || !Double.isFinite(node.asDouble())) {
      throw new Unusable(
          String.format(Locale.ROOT, "a reading must state %s in metres: reload the page", key));
    }
    return node.asDouble();
  }

  /**
   * What a page knew when it asked for an undo or redo: {@code after}, the id of its own item that
   * it had sent or would send just before, or {@code known}, the number of the last change.
   */
  static Seen seen(JsonNode json) throws Unusable {
    if (json.hasNonNull("after")) {
      return Seen.after(id(json, "after"));
    }
    JsonNode known = json.path("known");
    return known.isIntegralNumber() ? Seen.upTo(known.asLong()) : Seen.WHATEVER;
  }

  static UUID id(JsonNode json, String key) throws Unusable {
    String text = json.path(key).asText("");
    try {
      UUID id = UUID.fromString(text);
      if (id.toString().equalsIgnoreCase(text)) {
        return id;
      }
    } catch (IllegalArgumentException e) {
      // told below, as for a text that only looks like an id
    }
    throw new Unusable(
        String.format(Locale.ROOT, "%s must be an id of 36 characters: reload the page", key));
  }

  private static <E extends Enum<E>> E named(Class<E> type, JsonNode json, String key)
      throws Unusable {
    String name = json.path(key).asText("");
    for (E constant : type.getEnumConstants()) {
      if (constant.name().equals(name)) {
        return constant;
      }
    }
    throw new Unusable(
        String.format(Locale.ROOT, "%s of a reading is unknown: reload the page", key));
  }
}
