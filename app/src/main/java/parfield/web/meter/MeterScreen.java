package parfield.web.meter;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.ConflictResponse;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import parfield.answer.Json;
import parfield.answer.Refusal;
import parfield.web.bench.Desk;
import parfield.web.door.Door;
import parfield.web.door.MeterToken;
import parfield.web.page.Screen;
import parfield.workspace.SurveySummary;

/**
 * The meter of a survey over HTTP: its lines come in, its ports are chosen, its rests are taken.
 */
public final class MeterScreen implements Screen, AutoCloseable {
  /** Most bytes of one request that posts lines; a stream begins anew after them. */
  static final int MOST_BYTES = 1 << 20;

  /** Most lines a second over a while, and at once. */
  static final int MOST_LINES = 100;

  /** Requests that may post lines at the same time. */
  static final int MOST_STREAMS = 16;

  private static final int MOST_JSON = 4096;
  private static final int MOST_FIELD = 50;
  private static final List<Integer> SPEEDS =
      List.of(1200, 2400, 4800, 9600, 19_200, 38_400, 57_600, 115_200);
  private static final String PATH = "/bench/{id}/measure/{survey}/meter";
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Desk desk;
  private final Meters meters;
  private final SerialPorts ports;
  private final MeterToken token;
  private final Supplier<String> address;
  private final Semaphore streams = new Semaphore(MOST_STREAMS);

  /** Tells the pages that watch a survey. */
  @FunctionalInterface
  public interface Pages {
    /** Sends an event to all who watch a survey. */
    void say(UUID survey, String event, ObjectNode what);
  }

  /**
   * The screen.
   *
   * @param desk knows the surveys
   * @param pages are told how a meter stands, as the event {@code meter}
   * @param ports of this machine
   * @param token by which a program may post lines
   * @param address of this server, for the example that a page shows
   */
  public MeterScreen(
      Desk desk, Pages pages, SerialPorts ports, MeterToken token, Supplier<String> address) {
    this.desk = desk;
    this.meters = Meters.now((survey, news) -> pages.say(survey, "meter", news));
    this.ports = ports;
    this.token = token;
    this.address = address;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get(PATH, this::tell);
    routes.post(PATH, this::lines);
    routes.get(PATH + "/ports", this::ports);
    routes.post(PATH + "/port", this::open);
    routes.post(PATH + "/taker", this::taker);
    routes.post(PATH + "/take", this::take);
    routes.post(PATH + "/wait", this::waitToMove);
    routes.post(PATH + "/field", this::field);
    routes.post(PATH + "/water", this::water);
  }

  private UUID survey(Context context) {
    try {
      UUID bench = UUID.fromString(context.pathParam("id"));
      SurveySummary survey =
          desk.workspace().surveys().get(UUID.fromString(context.pathParam("survey")));
      if (survey.bench().equals(bench)) {
        return survey.id();
      }
    } catch (IllegalArgumentException e) {
      throw new NotFoundResponse("there is no such page");
    }
    throw new NotFoundResponse("this bench has no survey " + context.pathParam("survey"));
  }

  private static void answer(Context context, JsonNode json) {
    context
        .header("Cache-Control", "no-store")
        .contentType("application/json; charset=utf-8")
        .result(json.toString());
  }

  /** How the meter stands; the word to post with is told at this machine alone. */
  private void tell(Context context) {
    UUID survey = survey(context);
    ObjectNode json = Json.object();
    json.set("state", meters.of(survey).state());
    json.put("address", address.get() + context.path());
    if (Door.isHere(context.ip())) {
      json.put("token", token.token());
    }
    ArrayNode speeds = json.putArray("speeds");
    SPEEDS.forEach(speeds::add);
    meters.port(survey).ifPresent(port -> json.put("speed", port.baud()));
    answer(context, json);
  }

  private void ports(Context context) {
    survey(context);
    SerialPorts.Listing listing = ports.list();
    ObjectNode json = Json.object();
    ArrayNode told = json.putArray("ports");
    for (SerialPorts.Port port : listing.ports()) {
      told.addObject().put("path", port.path()).put("description", port.description());
    }
    listing.trouble().ifPresent(trouble -> json.put("trouble", trouble));
    answer(context, json);
  }

  /** Only a port that is listed is opened: no path of a request reaches the system. */
  private void open(Context context) {
    UUID survey = survey(context);
    JsonNode body = body(context);
    String path = body.path("port").asText("");
    if (path.isEmpty()) {
      meters.close(survey);
    } else {
      int speed = body.path("speed").asInt(9600);
      if (!SPEEDS.contains(speed)) {
        throw Refusal.of(
            String.format(Locale.ROOT, "a speed of %d baud is not offered", speed),
            "choose one of " + SPEEDS);
      }
      if (ports.list().ports().stream().noneMatch(port -> port.path().equals(path))) {
        throw Refusal.of(
            "there is no serial port "
                + LineReader.shown(path)
                + " at the computer that runs"
                + " Parfield",
            "plug the meter in, and look for ports again",
            "a port that the system does not list can be named in the environment variable "
                + SerialPorts.VARIABLE
                + " before the start");
      }
      meters.open(survey, path, speed);
    }
    answer(context, meters.of(survey).state());
  }

  private void taker(Context context) {
    MeterStream stream = meters.of(survey(context));
    JsonNode body = body(context);
    String page = page(body);
    if (body.path("on").asBoolean(false)) {
      stream.taker(page, body.path("rippled").asBoolean(false));
    } else {
      stream.noTaker(page);
    }
    answer(context, stream.state());
  }

  private void take(Context context) {
    MeterStream stream = meters.of(survey(context));
    JsonNode body = body(context);
    String page = page(body);
    long hold = body.path("hold").asLong(0);
    Optional<MeterStream.Taken> taken =
        hold > 0 ? stream.take(page, hold) : stream.takeNow(page, meters.time());
    if (taken.isEmpty()) {
      throw new ConflictResponse(
          hold > 0
              ? "this rest of the meter is over, or another page takes the readings"
              : "the meter shows nothing now: is it on, and connected?");
    }
    ObjectNode json = Json.object();
    json.put("typed", taken.get().reading().typed());
    json.put("value", taken.get().reading().value());
    json.put("origin", stream.state().path("source").asText());
    answer(context, json);
  }

  private void waitToMove(Context context) {
    MeterStream stream = meters.of(survey(context));
    stream.waitToMove();
    answer(context, stream.state());
  }

  private void field(Context context) {
    MeterStream stream = meters.of(survey(context));
    int field = body(context).path("field").asInt(0);
    if (field < 0 || field > MOST_FIELD) {
      throw Refusal.of(
          String.format(
              Locale.ROOT, "the field of a line must be 1 to %d; got %d", MOST_FIELD, field),
          "count the fields of a line from the left, beginning with 1");
    }
    stream.field(field == 0 ? OptionalInt.empty() : OptionalInt.of(field));
    answer(context, stream.state());
  }

  private void water(Context context) {
    MeterStream stream = meters.of(survey(context));
    stream.rippled(body(context).path("rippled").asBoolean(false));
    answer(context, stream.state());
  }

  private static String page(JsonNode body) {
    String page = body.path("page").asText("");
    try {
      return UUID.fromString(page).toString();
    } catch (IllegalArgumentException e) {
      throw Refusal.of("the page does not say which one it is", "reload the page");
    }
  }

  private static JsonNode body(Context context) {
    try {
      byte[] bytes = context.bodyInputStream().readNBytes(MOST_JSON + 1);
      if (bytes.length > MOST_JSON) {
        throw new ContentTooLargeResponse(
            String.format(Locale.ROOT, "the request has more than %d bytes", MOST_JSON));
      }
      JsonNode json = JSON.readTree(new String(bytes, StandardCharsets.UTF_8));
      if (json != null && json.isObject()) {
        return json;
      }
    } catch (JsonProcessingException e) {
      throw Refusal.of("the request is no JSON: " + e.getOriginalMessage(), "reload the page");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    throw Refusal.of("the request is no JSON object", "reload the page");
  }

  // Lines.

  private void lines(Context context) {
    UUID survey = survey(context);
    if (context.contentLength() > MOST_BYTES) {
      throw tooMuch();
    }
    if (!streams.tryAcquire()) {
      throw tooOften(
          context,
          String.format(
              Locale.ROOT, "%d requests post lines already: end one of them", MOST_STREAMS));
    }
    try {
      listen(context, meters.of(survey), new MeterStream.Source(false, context.ip()));
    } finally {
      streams.release();
    }
  }

  /** Uses each line as it comes, so that a request may last as long as its meter sends. */
  private void listen(Context context, MeterStream stream, MeterStream.Source source) {
    LineReader reader = new LineReader(true);
    Count count = new Count();
    byte[] bytes = new byte[1024];
    int total = 0;
    try {
      InputStream in = context.bodyInputStream();
      for (int read = in.read(bytes); read >= 0; read = in.read(bytes)) {
        total += read;
        if (total > MOST_BYTES) {
          throw tooMuch();
        }
        for (LineReader.Line line : reader.accept(bytes, read)) {
          hear(context, stream, source, line, count);
        }
      }
    } catch (IOException e) {
      // The sender is gone, or silent for too long: what stands unfinished is no line.
      throw new HttpResponseException(
          408, "the stream of lines broke off: post again from the next line on");
    }
    Optional<LineReader.Line> rest = reader.finish();
    if (rest.isPresent()) {
      hear(context, stream, source, rest.get(), count);
    }
    ObjectNode json = Json.object();
    json.put("numbers", count.numbers);
    json.put("ignored", count.ignored);
    ArrayNode told = json.putArray("told");
    stream.ignoredInWords().stream().limit(Math.min(count.ignored, 5)).forEach(told::add);
    if (count.numbers == 0) {
      String[] hints =
          count.ignored == 0
              ? new String[] {"send the number that the meter shows, and a line feed"}
              : stream.ignoredInWords().stream()
                  .limit(Math.min(count.ignored, 5))
                  .toArray(String[]::new);
      throw Refusal.of(
          count.ignored == 0
              ? "no line was sent"
              : String.format(Locale.ROOT, "none of %d lines holds a reading", count.ignored),
          hints);
    }
    answer(context, json);
  }

  private static final class Count {
    private int numbers;
    private int ignored;
  }

  private void hear(
      Context context,
      MeterStream stream,
      MeterStream.Source source,
      LineReader.Line line,
      Count count) {
    long now = meters.time();
    if (!stream.claimSource(source, now)) {
      throw new ConflictResponse(
          "another meter is read for this survey: close its port on the page, or stop the other"
              + " sender");
    }
    if (!stream.allows(MOST_LINES, now)) {
      throw tooOften(
          context,
          String.format(
              Locale.ROOT, "more than %d lines a second: send fewer, or their mean", MOST_LINES));
    }
    if (stream.hear(line, now) instanceof Heard.Value) {
      count.numbers++;
    } else {
      count.ignored++;
    }
  }

  private static HttpResponseException tooMuch() {
    return new ContentTooLargeResponse(
        String.format(
            Locale.ROOT,
            "a request may hold %d bytes of lines: go on in another request",
            MOST_BYTES));
  }

  private static HttpResponseException tooOften(Context context, String why) {
    context.header("Retry-After", "1");
    return new HttpResponseException(HttpStatus.TOO_MANY_REQUESTS.getCode(), why);
  }

  /** Closes every port. */
  @Override
  public void close() {
    meters.close();
  }
}
