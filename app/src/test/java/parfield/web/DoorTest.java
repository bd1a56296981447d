package parfield.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who may come in, and what cannot get in. */
class DoorTest {
  @TempDir private static Path folder;
  private static TestServer server;

  @BeforeAll
  static void start() {
    server = TestServer.start(folder, true);
  }

  @AfterAll
  static void stop() {
    assertThat(server.get("/").statusCode()).as("alive after all of it").isEqualTo(200);
    server.close();
  }

  /** Sends a request byte by byte as it is, past what a client would allow. */
  private static String raw(String request, String host) throws IOException {
    try (Socket socket = new Socket(host, server.server().port())) {
      socket.setSoTimeout(10_000);
      OutputStream out = socket.getOutputStream();
      out.write(request.getBytes(StandardCharsets.ISO_8859_1));
      out.flush();
      InputStream in = socket.getInputStream();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static String ask(String path, String host) throws IOException {
    return raw(
        "GET " + path + " HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n",
        "127.0.0.1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"evil.example", "evil.example:80", "localhost:1", "localhost.evil.example"})
  @DisplayName("a foreign host is refused: no page can bend a name of its own to this machine")
  void foreignHost(String host) throws IOException {
    assertThat(ask("/", host)).startsWith("HTTP/1.1 421");
  }

  @Test
  @DisplayName("what changes something must come from a page of this server")
  void foreignOrigin() {
    HttpResponse<String> foreign =
        server.send(
            server
                .request("/benches/sample")
                .header("Origin", "http://evil.example")
                .POST(BodyPublishers.noBody())
                .build());
    HttpResponse<String> none =
        server.send(server.request("/benches/sample").POST(BodyPublishers.noBody()).build());
    HttpResponse<String> nothing =
        server.send(
            server
                .request("/benches/sample")
                .header("Origin", "null")
                .POST(BodyPublishers.noBody())
                .build());

    assertThat(foreign.statusCode()).isEqualTo(403);
    assertThat(none.statusCode()).isEqualTo(403);
    assertThat(nothing.statusCode()).isEqualTo(403);
    assertThat(server.workspace().benches().list("", 10, 0).total()).isZero();
  }

  @Test
  @DisplayName("another device needs a session, which a code gives once")
  void pairing() throws IOException {
    assumeThat(server.server().lanAddresses())
        .as("this machine has an address in a network")
        .isNotEmpty();
    String lan = server.server().lanAddresses().get(0).substring("http://".length());
    String host = lan.substring(0, lan.indexOf(':'));
    String code = server.server().pairing().newCode().code();
    String get = "GET / HTTP/1.1\r\nHost: " + lan + "\r\nConnection: close\r\n";
    String body = "code=" + code;
    String enter =
        "POST /pair/enter HTTP/1.1\r\nHost: "
            + lan
            + "\r\nOrigin: http://"
            + lan
            + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: "
            + body.length()
            + "\r\nConnection: close\r\n\r\n"
            + body;

    assertThat(raw(get + "\r\n", host))
        .startsWith("HTTP/1.1 401")
        .contains("this device is not paired");
    String entered = raw(enter, host);
    assertThat(entered).startsWith("HTTP/1.1 302").contains("HttpOnly").contains("SameSite=Strict");
    String cookie = entered.replaceAll("(?s).*Set-Cookie: ([^;]*);.*", "$1");
    assertThat(raw(get + "Cookie: " + cookie + "\r\n\r\n", host)).startsWith("HTTP/1.1 200");
    assertThat(raw(enter, host)).startsWith("HTTP/1.1 403");
    assertThat(raw("GET /pair HTTP/1.1\r\nHost: " + lan + "\r\nConnection: close\r\n\r\n", host))
        .as("the code is shown at the computer alone")
        .doesNotContain("QR code");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/scripts/../../../etc/passwd",
        "/scripts/%2e%2e/%2e%2e/etc/passwd",
        "/styles/..%2f..%2fetc%2fpasswd",
        "/scripts/..%5c..%5cetc",
        "/libraries/..%2f..%2fversion.txt",
        "/libraries/htmx.js%00.txt"
      })
  void pathsLeadNowhere(String path) throws IOException {
    String answer = ask(path, "localhost:" + server.server().port());

    assertThat(answer).matches("(?s)HTTP/1.1 40[04].*").doesNotContain("root:");
  }

  @Test
  @DisplayName("scripts and styles come by their names, and once while they stay the same")
  void scriptsAndStyles() {
    for (String path :
        new String[] {"/scripts/explore/grips.js", "/styles/parfield.css", "/styles/icon.svg"}) {
      HttpResponse<String> first = server.get(path);
      assertThat(first.statusCode()).as(path).isEqualTo(200);
      assertThat(first.headers().firstValue("Content-Type").orElseThrow())
          .startsWith(
              path.endsWith("js")
                  ? "text/javascript"
                  : path.endsWith("css") ? "text/css" : "image/svg+xml");
      assertThat(first.headers().firstValue("Cache-Control")).hasValue("no-cache");
      HttpResponse<String> again =
          server.send(
              server
                  .request(path)
                  .header("If-None-Match", first.headers().firstValue("ETag").orElseThrow())
                  .build());
      assertThat(again.statusCode()).as(path).isEqualTo(304);
    }
    assertThat(server.get("/scripts/explore").statusCode()).isEqualTo(404);
    assertThat(server.get("/scripts/").statusCode()).isEqualTo(404);
  }

  @Test
  void everyAnswerCarriesThePolicy() {
    for (String path : new String[] {"/", "/scripts/frame.js", "/nothing", "/libraries/htmx.js"}) {
      assertThat(server.get(path).headers().firstValue("Content-Security-Policy"))
          .as(path)
          .hasValueSatisfying(
              policy -> assertThat(policy).contains("script-src 'self'").doesNotContain("unsafe"));
    }
  }

  @Test
  @DisplayName("names that look like markup are shown as text")
  void markupInNames() {
    String name = "<script>alert(1)</script>\"'&";
    HttpResponse<String> made = server.post("/benches/blank", Map.of("name", name));
    String id = made.headers().firstValue("Location").orElseThrow().split("/")[2];
    for (String path :
        new String[] {
          "/",
          "/benches?search=%3Cscript%3E",
          "/bench/" + id + "/setup",
          "/bench/" + id + "/measure",
          "/bench/" + id + "/model",
          "/bench/" + id + "/explore",
          "/bench/" + id + "/recommend",
          "/bench/" + id + "/publish"
        }) {
      assertThat(server.get(path).body()).as(path).doesNotContain("<script>alert");
    }
    server.workspace().benches().putAway(UUID.fromString(id));
  }

  @Test
  void tooMuchIsRefused() {
    HttpResponse<String> answer =
        server.send(
            server
                .request("/benches/import")
                .header("Origin", server.server().address())
                .header("Content-Type", "multipart/form-data; boundary=x")
                .POST(BodyPublishers.ofByteArray(new byte[(int) Server.MOST_BYTES + 10_000]))
                .build());

    assertThat(answer.statusCode()).isEqualTo(413);
  }

  private static HttpResponse<String> upload(String file, byte[] bytes) throws IOException {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    body.write(
        ("--x\r\nContent-Disposition: form-data; name=\"files\"; filename=\""
                + file
                + "\"\r\nContent-Type: application/octet-stream\r\n\r\n")
            .getBytes(StandardCharsets.UTF_8));
    body.write(bytes);
    body.write("\r\n--x--\r\n".getBytes(StandardCharsets.UTF_8));
    return server.send(
        server
            .request("/benches/import")
            .header("Origin", server.server().address())
            .header("Accept", "text/html")
            .header("Content-Type", "multipart/form-data; boundary=x")
            .POST(BodyPublishers.ofByteArray(body.toByteArray()))
            .build());
  }

  @Test
  @DisplayName("an archive that unpacks to far more than it is, is refused")
  void zipBomb() throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(packed)) {
      zip.putNextEntry(new ZipEntry("setup.yaml"));
      byte[] zeros = new byte[1 << 20];
      for (int i = 0; i < 400; i++) {
        zip.write(zeros);
      }
      zip.closeEntry();
    }

    assertThat(upload("bomb.zip", packed.toByteArray()).statusCode()).isEqualTo(422);
  }

  @Test
  void zipThatClimbs() throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(packed)) {
      zip.putNextEntry(new ZipEntry("../../escaped.yaml"));
      zip.write("parfield: 1".getBytes(StandardCharsets.UTF_8));
      zip.closeEntry();
    }

    assertThat(upload("climb.zip", packed.toByteArray()).statusCode()).isEqualTo(422);
  }

  @Test
  @DisplayName("aliases that multiply are refused")
  void yamlBomb() throws IOException {
    StringBuilder yaml = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
    for (int i = 1; i < 12; i++) {
      String before = "*a" + (i - 1);
      yaml.append("a").append(i).append(": &a").append(i).append(" [");
      yaml.append((before + ", ").repeat(9)).append(before).append("]\n");
    }

    HttpResponse<String> answer =
        upload("setup.yaml", yaml.toString().getBytes(StandardCharsets.UTF_8));

    assertThat(answer.statusCode()).isEqualTo(422);
  }

  @Test
  void fileThatIsNoSetup() throws IOException {
    HttpResponse<String> answer = upload("photo.jpg", new byte[] {1, 2, 3});

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("none of the chosen files is a setup file");
  }
}
