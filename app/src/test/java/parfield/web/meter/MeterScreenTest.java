package parfield.web.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;

/** A meter over HTTP: who may post, what is taken, what pages are told. */
class MeterScreenTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private static Path folder;
  private static TestServer server;
  private static UUID bench;
  private static int surveys;
  private String base;

  @BeforeAll
  static void start() {
    server = TestServer.start(folder, true);
    bench = server.sample();
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  @BeforeEach
  void begin() {
    HttpResponse<String> answer =
        server.post(
            "/bench/" + bench + "/measure",
            Map.of(
                "name",
                "walk " + surveys++,
                "rig",
                "low",
                "meter",
                "probe",
                "depths",
                "15",
                "columns",
                "4",
                "rows",
                "3"));
    base = URI.create(answer.headers().firstValue("Location").orElseThrow()).getPath();
  }

  private JsonNode meter() throws IOException {
    return JSON.readTree(server.get(base + "/meter").body());
  }

  private String token() throws IOException {
    return meter().get("token").asText();
  }

  private HttpRequest.Builder lines(String body) {
    return server
        .request(base + "/meter")
        .header("Content-Type", "text/plain")
        .POST(BodyPublishers.ofString(body));
  }

  private HttpResponse<String> post(String body) throws IOException {
    return server.send(lines(body).header("Authorization", "Bearer " + token()).build());
  }

  private HttpResponse<String> ask(String path, String json) {
    return server.postJson(base + "/meter" + path, json);
  }

  @Test
  @DisplayName("lines are taken with the word, or from a page of this server; else refused")
  void whoMayPost() throws IOException {
    assertThat(post("71.5\n").statusCode()).isEqualTo(200);
    assertThat(server.send(lines("71.5").header("Origin", server.address("")).build()).statusCode())
        .isEqualTo(200);
    assertThat(server.send(lines("71.5").build()).statusCode()).isEqualTo(403);
    assertThat(
            server.send(lines("71.5").header("Origin", "http://evil.example").build()).statusCode())
        .isEqualTo(403);
    HttpResponse<String> wrong =
        server.send(lines("71.5").header("Authorization", "Bearer guess").build());
    assertThat(wrong.statusCode()).isEqualTo(401);
    assertThat(wrong.body()).contains("copy it anew from the page of the survey");
  }

  @Test
  @DisplayName("the word opens nothing but the posting of lines")
  void theWordOpensNothingElse() throws IOException {
    String word = "Bearer " + token();
    for (String path :
        new String[] {
          base + "/readings", base + "/undo", base + "/meter/port", "/benches/sample"
        }) {
      HttpResponse<String> answer =
          server.send(
              server
                  .request(path)
                  .header("Authorization", word)
                  .POST(BodyPublishers.ofString("{}"))
                  .build());
      assertThat(answer.statusCode()).as(path).isEqualTo(403);
    }
    assertThat(
            server
                .send(
                    server
                        .request("/bench/" + bench + "/measure/" + UUID.randomUUID() + "/meter")
                        .header("Authorization", word)
                        .POST(BodyPublishers.ofString("71"))
                        .build())
                .statusCode())
        .isEqualTo(404);
  }

  @Test
  @DisplayName("another device needs the word alone to post, and is not told it")
  void fromAnotherDevice() throws IOException {
    assumeThat(server.server().lanAddresses())
        .as("this machine has an address in a network")
        .isNotEmpty();
    URI lan = URI.create(server.server().lanAddresses().get(0));
    String head =
        "POST "
            + base
            + "/meter HTTP/1.1\r\nHost: "
            + lan.getAuthority()
            + "\r\nContent-Length: 4\r\nConnection: close\r\n";
    assertThat(raw(lan, head + "\r\n71.5")).as("no word, no session").startsWith("HTTP/1.1 403");
    assertThat(raw(lan, head + "Authorization: Bearer guess\r\n\r\n71.5"))
        .startsWith("HTTP/1.1 401");
    assertThat(raw(lan, head + "Authorization: Bearer " + token() + "\r\n\r\n71.5"))
        .startsWith("HTTP/1.1 200");

    String code = server.server().pairing().newCode().code();
    String body = "code=" + code;
    String entered =
        raw(
            lan,
            "POST /pair/enter HTTP/1.1\r\nHost: "
                + lan.getAuthority()
                + "\r\nOrigin: "
                + lan
                + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: "
                + body.length()
                + "\r\nConnection: close\r\n\r\n"
                + body);
    String cookie = entered.replaceAll("(?s).*Set-Cookie: ([^;]*);.*", "$1");
    String told =
        raw(
            lan,
            "GET "
                + base
                + "/meter HTTP/1.1\r\nHost: "
                + lan.getAuthority()
                + "\r\nCookie: "
                + cookie
                + "\r\nConnection: close\r\n\r\n");
    assertThat(told).startsWith("HTTP/1.1 200").contains("\"state\"").doesNotContain(token());
  }

  private static String raw(URI address, String request) throws IOException {
    try (Socket socket = new Socket(address.getHost(), address.getPort())) {
      socket.setSoTimeout(10_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.getOutputStream().flush();
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  @DisplayName("what is not used is told to the sender")
  void toldToTheSender() throws IOException {
    JsonNode some = JSON.readTree(post("71.5\r\nBATT 85 %\r\n\r\n72,5").body());
    assertThat(some.get("numbers").asInt()).isEqualTo(2);
    assertThat(some.get("ignored").asInt()).isEqualTo(1);
    assertThat(some.get("told").get(0).asText())
        .isEqualTo("“BATT 85 %”: its unit is %, which is no PPFD");

    HttpResponse<String> none = post("garbage\n12x\n");
    assertThat(none.statusCode()).isEqualTo(422);
    assertThat(none.body())
        .contains("none of 2 lines holds a reading")
        .contains("12 touches other");
    assertThat(post("").body()).contains("no line was sent");
    assertThat(meter().get("state").get("ignored").asInt()).isEqualTo(3);
  }

  @Test
  @DisplayName("too much, too many and from two senders is refused with the right status")
  void bounds() throws IOException {
    HttpResponse<String> large = post("7".repeat(MeterScreen.MOST_BYTES + 1));
    assertThat(large.statusCode()).isEqualTo(413);
    assertThat(large.body()).contains("a request may hold 1048576 bytes of lines");

    HttpResponse<String> many = post("71\n".repeat(500));
    assertThat(many.statusCode()).isEqualTo(429);
    assertThat(many.headers().firstValue("Retry-After")).hasValue("1");
    assertThat(many.body()).contains("more than 100 lines a second");
    // More than is taken is bounded too where nobody says beforehand how much comes.
    HttpResponse<String> endless =
        server.send(
            server
                .request(base + "/meter")
                .header("Authorization", "Bearer " + token())
                .POST(
                    BodyPublishers.ofInputStream(
                        () ->
                            new java.io.ByteArrayInputStream(new byte[MeterScreen.MOST_BYTES * 2])))
                .build());
    assertThat(endless.statusCode()).isEqualTo(413);
  }

  @Test
  @DisplayName("a stream of lines is heard while it is still being sent")
  void stream() throws Exception {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.server().port())) {
      OutputStream out = socket.getOutputStream();
      out.write(
          ("POST "
                  + base
                  + "/meter HTTP/1.1\r\nHost: localhost:"
                  + server.server().port()
                  + "\r\nAuthorization: Bearer "
                  + token()
                  + "\r\nTransfer-Encoding: chunked\r\n\r\n")
              .getBytes(StandardCharsets.UTF_8));
      for (int i = 0; i < 30; i++) {
        out.write("6\r\n71.5\r\n\r\n".getBytes(StandardCharsets.UTF_8));
        out.flush();
        TimeUnit.MILLISECONDS.sleep(100);
      }
      JsonNode state = meter().get("state");
      assertThat(state.get("words").asText()).isEqualTo("Holds still");
      assertThat(state.get("source").asText()).isEqualTo("POSTED");
      // Broken off in the middle of 999: that is no line.
      out.write("2\r\n99\r\n".getBytes(StandardCharsets.UTF_8));
    }
    TimeUnit.MILLISECONDS.sleep(300);
    assertThat(meter().get("state").get("numbers").asInt()).isEqualTo(30);
  }

  @Test
  @DisplayName("a rest is taken once, by the page that takes; pages hear of it as it happens")
  void taking() throws Exception {
    String page = UUID.randomUUID().toString();
    String other = UUID.randomUUID().toString();
    HttpResponse<java.io.InputStream> events =
        HttpClient.newHttpClient()
            .send(
                server
                    .request(base + "/events?since=0")
                    .header("Accept", "text/event-stream")
                    .GET()
                    .build(),
                HttpResponse.BodyHandlers.ofInputStream());
    try (BufferedReader heard =
        new BufferedReader(new InputStreamReader(events.body(), StandardCharsets.UTF_8))) {
      post("20.0");
      ask("/taker", "{\"page\": \"" + page + "\", \"on\": true}");
      for (int i = 0; i < 45; i++) {
        post("71.5\n");
        TimeUnit.MILLISECONDS.sleep(80);
      }
      long hold = meter().get("state").get("hold").asLong();
      assertThat(ask("/take", "{\"page\": \"" + other + "\", \"hold\": " + hold + "}").statusCode())
          .isEqualTo(409);
      String mine = "{\"page\": \"" + page + "\", \"hold\": " + hold + "}";
      JsonNode taken = JSON.readTree(ask("/take", mine).body());
      assertThat(taken.get("typed").asText()).isEqualTo("71.5");
      assertThat(taken.get("origin").asText()).isEqualTo("POSTED");
      assertThat(ask("/take", mine).statusCode()).isEqualTo(200);
      assertThat(ask("/take", "{\"page\": \"" + page + "\", \"hold\": " + (hold + 1) + "}").body())
          .contains("this rest of the meter is over, or another page takes the readings");

      boolean still = false;
      boolean waits = false;
      for (String line = heard.readLine(); line != null && !waits; line = heard.readLine()) {
        still |= line.startsWith("data:") && line.contains("\"words\":\"Holds still\"");
        waits = still && line.contains("\"words\":\"Taken: move the probe on\"");
      }
      assertThat(waits).isTrue();
    }
    assertThat(ask("/take", "{\"page\": \"x\", \"hold\": 1}").statusCode()).isEqualTo(422);
  }

  @Test
  @DisplayName("only ports that are listed are opened; other files of the machine are not")
  void ports() throws IOException {
    HttpResponse<String> answer = ask("/port", "{\"port\": \"/etc/passwd\", \"speed\": 9600}");
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("there is no serial port /etc/passwd at the computer that runs Parfield")
        .contains("PARFIELD_SERIAL_PORTS");
    System.setProperty(SerialPorts.PROPERTY, folder.resolve("no-port").toString());
    try {
      assertThat(server.get(base + "/meter/ports").body()).contains("no-port");
      String path = JSON.writeValueAsString(folder.resolve("no-port").toString());
      assertThat(ask("/port", "{\"port\": " + path + ", \"speed\": 12}").body())
          .contains("a speed of 12 baud is not offered");
      assertThat(ask("/port", "{\"port\": " + path + ", \"speed\": 9600}").statusCode())
          .isEqualTo(200);
      assertThat(meter().get("state").get("source").asText()).isEqualTo("SERIAL");
      assertThat(post("71").statusCode()).as("two meters do not mix").isEqualTo(409);
      assertThat(ask("/port", "{\"port\": \"\"}").statusCode()).isEqualTo(200);
      assertThat(post("71").statusCode()).isEqualTo(200);
    } finally {
      System.clearProperty(SerialPorts.PROPERTY);
    }
    assertThat(ask("/field", "{\"field\": 99}").body())
        .contains("the field of a line must be 1 to 50; got 99");
  }
}
