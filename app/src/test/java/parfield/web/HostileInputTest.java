package parfield.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.demo.DemoBench;
import parfield.web.bench.YamlText;
import parfield.web.work.Job;

/** Texts that would be script if they were not told apart from it, and files that swell. */
class HostileInputTest {
  /** Ends an attribute, a tag and a text, then would run. */
  private static final String EVIL = "\"><img src=x onerror=e()></b><script>e()</script>'";

  private static final Pattern NAMES =
      Pattern.compile("\\b(bar|blue|overall|low|high|probe|soft|stony)\\b(?=[:,\\]} \\n])(?! )");

  @TempDir private static Path folder;
  private static TestServer server;
  private static UUID id;

  @BeforeAll
  static void start() throws InterruptedException {
    server = TestServer.start(folder);
    Map<String, byte[]> files = new LinkedHashMap<>();
    DemoBench.files(1)
        .forEach((name, text) -> files.put(name, text.getBytes(StandardCharsets.UTF_8)));
    files.put(DemoBench.SETUP, evil().getBytes(StandardCharsets.UTF_8));
    id = server.workspace().benchFiles().take(EVIL, true, DemoBench.SETUP, files, EVIL).bench();
    server.post("/bench/" + id + "/model/fit", Map.of());
    waitFor("fit");
    server.post(
        "/bench/" + id + "/recommend/run", Map.of("counts", "1", "heights", "18", "depth", "15"));
    waitFor("recommend");
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  /** The sample's setup with a hostile name for everything that has a name. */
  private static String evil() {
    return NAMES
        .matcher(DemoBench.files(1).get(DemoBench.SETUP))
        .replaceAll(
            name ->
                java.util.regex.Matcher.quoteReplacement(
                    YamlText.quoted(EVIL + name.group(1).substring(0, 2))));
  }

  private static void waitFor(String kind) throws InterruptedException {
    for (int i = 0; i < 1200; i++) {
      Optional<Job> job = server.server().desk().jobs().latest(id, kind);
      if (job.map(Job::ended).orElse(false)) {
        assertThat(job.get().problem()).isEmpty();
        return;
      }
      Thread.sleep(50);
    }
    throw new IllegalStateException(kind + " did not end within a minute");
  }

  private static HttpResponse<String> get(String path) {
    return server.send(
        server
            .request(path)
            .header("Accept", "text/html")
            .header("Cookie", "parfield-who=<script>e()</script><img/src=x/onerror=e()>")
            .GET()
            .build());
  }

  /** A page shows what was typed as text; a picture is a document of its own and is well-formed. */
  private static void assertHarmless(String path, HttpResponse<String> answer) {
    String type = answer.headers().firstValue("Content-Type").orElse("");
    String policy = answer.headers().firstValue("Content-Security-Policy").orElse("");
    assertThat(answer.headers().firstValue("X-Content-Type-Options")).as(path).hasValue("nosniff");
    if (type.startsWith("text/html")) {
      assertThat(answer.body()).as(path).doesNotContain("<img src=x", "<img/src", "<script>");
      assertThat(policy).as(path).contains("script-src 'self'").doesNotContain("unsafe");
    } else if (type.startsWith("image/svg")) {
      assertThat(answer.body()).as(path).doesNotContain("<img", "<script");
      assertWellFormed(path, answer.body());
    }
  }

  private static void assertWellFormed(String path, String xml) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      factory
          .newDocumentBuilder()
          .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    } catch (Exception e) {
      throw new AssertionError(path + " is not well-formed", e);
    }
  }

  private static Set<String> addresses(String page) {
    Set<String> all = new LinkedHashSet<>();
    Pattern.compile("(?:href|src)=\"(/[^\"#]*)")
        .matcher(page)
        .results()
        .map(MatchResult::group)
        .map(found -> found.substring(found.indexOf('"') + 1).replace("&amp;", "&"))
        .filter(path -> !path.startsWith("/styles/") && !path.startsWith("/libraries/"))
        .filter(path -> !path.contains("export") && !path.contains("light.csv"))
        .forEach(all::add);
    return all;
  }

  @Test
  @DisplayName("every page and picture of a bench whose every name is script shows it as text")
  void everyScreen() {
    Set<String> seen = new LinkedHashSet<>();
    List<String> due = new ArrayList<>(List.of("/", "/?away=1", "/pair"));
    for (String step :
        List.of("setup", "measure", "model", "transfer", "explore", "recommend", "publish")) {
      due.add("/bench/" + id + "/" + step);
    }
    int pictures = 0;
    while (!due.isEmpty() && seen.size() < 300) {
      String path = due.remove(0);
      if (!seen.add(path)) {
        continue;
      }
      HttpResponse<String> answer = get(path.replace("<", "%3C").replace(">", "%3E"));
      // Numbers of spectra of which none is chosen are refused, in words that are looked at too.
      if (path.contains("/spectra/answer.json")) {
        assertThat(answer.statusCode()).as(path).isIn(200, 422);
      } else {
        assertThat(answer.statusCode()).as(path).isIn(200, 302);
      }
      assertHarmless(path, answer);
      String type = answer.headers().firstValue("Content-Type").orElse("");
      pictures += type.startsWith("image/svg") ? 1 : 0;
      if (type.startsWith("text/html")) {
        due.addAll(addresses(answer.body()));
      }
    }
    assertThat(due).isEmpty();
    assertThat(pictures).isGreaterThan(10);
    String shown = "&lt;img src=x onerror=e()&gt;";
    for (String step : List.of("setup", "measure", "model", "explore", "recommend", "publish")) {
      assertThat(get("/bench/" + id + "/" + step).body()).as(step).contains(shown);
    }
    assertThat(get("/").body()).contains(shown);
  }

  @Test
  @DisplayName("what is typed into a form and refused comes back as text")
  void everyForm() {
    String at = "/bench/" + id;
    Map<String, Map<String, String>> forms = new LinkedHashMap<>();
    forms.put(at + "/setup", Map.of("revision", "1", "text", EVIL + ": ["));
    forms.put(at + "/setup/files", Map.of("revision", "1", "folder", EVIL));
    forms.put(at + "/setup/undo", Map.of("revision", EVIL));
    forms.put(at + "/setup/files/delete", Map.of("revision", "1", "name", EVIL));
    forms.put(
        at + "/measure",
        Map.of(
            "name", EVIL, "rig", EVIL, "meter", EVIL, "depths", EVIL, "columns", EVIL, "rows",
            EVIL));
    forms.put(
        at + "/recommend/demands",
        Map.of(
            "revision", EVIL,
            "band-name", EVIL,
            "band-from", EVIL,
            "band-to", EVIL,
            "demand-kind", EVIL,
            "demand-band", EVIL,
            "demand-value", EVIL,
            "demand-where", EVIL));
    forms.put(
        at + "/recommend/run",
        Map.of("counts", EVIL, "heights", EVIL, "spacings", EVIL, "depth", EVIL));
    forms.put(at + "/recommend/take", Map.of("advice", EVIL, "option", EVIL));
    forms.put(at + "/rename", Map.of("name", EVIL.repeat(10)));
    forms.put("/pair/enter", Map.of("code", EVIL));
    forms.forEach(
        (path, form) -> {
          HttpResponse<String> answer = server.post(path, form);
          assertThat(answer.statusCode()).as(path).isIn(302, 303, 400, 401, 403, 404, 409, 422);
          assertHarmless(path, answer);
        });
    String asked = URLEncoder.encode(EVIL, StandardCharsets.UTF_8);
    for (String path :
        List.of(
            "/?search=" + asked,
            "/benches?search=" + asked + "&page=" + asked,
            "/" + asked.replace("+", "%20"),
            at + "/recommend?advice=" + asked,
            at + "/recommend?option=" + asked,
            at + "/explore?rig=" + asked,
            at + "/setup/tank.svg?rig=" + asked,
            at + "/setup/file?name=" + asked,
            at + "/publish/light.csv?rig=" + asked,
            at + "/publish/readings?name=" + asked)) {
      HttpResponse<String> answer = get(path);
      assertThat(answer.statusCode()).as(path).isLessThan(500);
      assertHarmless(path, answer);
    }
  }

  @Test
  @DisplayName("a bench is not named by nothing, nor by a page of text")
  void benchNames() {
    HttpResponse<String> longName =
        server.post("/bench/" + id + "/rename", Map.of("name", "x".repeat(101)));
    assertThat(longName.statusCode()).isEqualTo(422);
    assertThat(longName.body()).contains("the name of a bench: got 101 letters, allowed 100");
    HttpResponse<String> none = server.post("/bench/" + id + "/rename", Map.of("name", " "));
    assertThat(none.statusCode()).isEqualTo(422);
    assertThat(none.body()).contains("a bench needs a name: got nothing");
    assertThat(server.post("/benches/blank", Map.of("name", "x".repeat(101))).statusCode())
        .isEqualTo(422);
  }

  @Test
  @DisplayName("the names of files that come up are shown as text")
  void fileNames() {
    UUID bench = server.sample();
    HttpResponse<String> answer =
        upload(
            "/bench/" + bench + "/setup/files",
            "<img src=x onerror=e()>.csv",
            new byte[] {1},
            Map.of("revision", "1", "folder", ""));

    assertHarmless("upload", answer);
    assertThat(answer.statusCode()).isIn(302, 422);
    assertHarmless("setup", get("/bench/" + bench + "/setup"));
  }

  private static HttpResponse<String> upload(
      String path, String name, byte[] bytes, Map<String, String> fields) {
    return upload(path, Map.of(name, bytes), fields);
  }

  private static HttpResponse<String> upload(
      String path, Map<String, byte[]> files, Map<String, String> fields) {
    String boundary = "frontier-" + UUID.randomUUID();
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    fields.forEach(
        (field, value) ->
            put(
                body,
                "--" + boundary + "\r\nContent-Disposition: form-data; name=\"" + field + "\"",
                value.getBytes(StandardCharsets.UTF_8)));
    files.forEach(
        (name, bytes) ->
            put(
                body,
                "--"
                    + boundary
                    + "\r\nContent-Disposition: form-data; name=\"files\"; filename=\""
                    + name
                    + "\"\r\nContent-Type: application/octet-stream",
                bytes));
    body.writeBytes(("--" + boundary + "--\r\n").getBytes(StandardCharsets.UTF_8));
    return server.send(
        server
            .request(path)
            .header("Origin", server.server().address())
            .header("Accept", "text/html")
            .header("Content-Type", "multipart/form-data; boundary=" + boundary)
            .POST(BodyPublishers.ofByteArray(body.toByteArray()))
            .build());
  }

  private static void put(ByteArrayOutputStream body, String head, byte[] content) {
    body.writeBytes((head + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
    body.writeBytes(content);
    body.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
  }

  /** A workbook whose only sheet holds some cells, and rows that swell it by some MiB. */
  private static byte[] workbook(int rows, int columns, int mebis) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      zip.setLevel(Deflater.BEST_COMPRESSION);
      part(
          zip,
          "[Content_Types].xml",
          "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default"
              + " Extension=\"xml\" ContentType=\"application/xml\"/><Default Extension=\"rels\""
              + " ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
              + "<Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd."
              + "openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/></Types>");
      String relations = "http://schemas.openxmlformats.org/package/2006/relationships";
      String types = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
      part(
          zip,
          "_rels/.rels",
          "<Relationships xmlns=\""
              + relations
              + "\"><Relationship Id=\"rId1\" Type=\""
              + types
              + "/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
      part(
          zip,
          "xl/workbook.xml",
          "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" xmlns:r=\""
              + types
              + "\"><sheets><sheet name=\"a\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>");
      part(
          zip,
          "xl/_rels/workbook.xml.rels",
          "<Relationships xmlns=\""
              + relations
              + "\"><Relationship Id=\"rId1\" Type=\""
              + types
              + "/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>");
      zip.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
      write(
          zip,
          "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
              + "<sheetData>");
      for (int row = 1; row <= rows; row++) {
        StringBuilder line = new StringBuilder("<row r=\"" + row + "\">");
        for (int column = 0; column < columns; column++) {
          line.append("<c r=\"" + (char) ('A' + column) + row + "\"><v>1</v></c>");
        }
        write(zip, line.append("</row>").toString());
      }
      String again = "<row r=\"9\"><c r=\"A9\"><v>1</v></c></row>";
      String mebi = again.repeat((1 << 20) / again.length() + 1);
      for (int i = 0; i < mebis; i++) {
        write(zip, mebi);
      }
      write(zip, "</sheetData></worksheet>");
      zip.closeEntry();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static void part(ZipOutputStream zip, String name, String text) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    write(zip, text);
    zip.closeEntry();
  }

  private static void write(ZipOutputStream zip, String text) throws IOException {
    zip.write(text.getBytes(StandardCharsets.UTF_8));
  }

  /** The sample as it would be brought in by a person, one survey in a workbook. */
  private static HttpResponse<String> bringIn(byte[] workbook) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    DemoBench.files(1)
        .forEach(
            (name, text) ->
                files.put(
                    "bench/" + name,
                    text.replace("low.csv", "low.xlsx").getBytes(StandardCharsets.UTF_8)));
    files.remove("bench/low.csv");
    files.put("bench/low.xlsx", workbook);
    return upload("/benches/import", files, Map.of());
  }

  @Test
  @DisplayName("a workbook that swells to 200 MiB is refused with the limit; the server lives")
  void swellingWorkbook() {
    byte[] bomb = workbook(2, 4, 200);
    assertThat(bomb.length).isLessThan(4 << 20);

    HttpResponse<String> answer = bringIn(bomb);

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("low.xlsx").contains("64 MiB");
    assertThat(get("/").statusCode()).isEqualTo(200);
  }

  @Test
  @DisplayName("a sheet with a million cells is refused, and the server lives")
  void millionCells() {
    HttpResponse<String> answer = bringIn(workbook(125_000, 8, 0));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("low.xlsx");
    assertThat(get("/").statusCode()).isEqualTo(200);
  }

  @Test
  @DisplayName("a workbook beside the setup is only stored; named by it, it is looked at")
  void besideTheSetup() {
    UUID bench = server.sample();
    HttpResponse<String> kept =
        upload(
            "/bench/" + bench + "/setup/files",
            "blue.xlsx",
            workbook(2, 4, 200),
            Map.of("revision", "1", "folder", "spectra"));
    assertThat(kept.statusCode()).as(kept.body()).isEqualTo(302);
    String text = server.workspace().benches().setup(bench).text();

    HttpResponse<String> answer =
        server.post(
            "/bench/" + bench + "/setup",
            Map.of("revision", "2", "text", text.replace("spectra/blue.csv", "spectra/blue.xlsx")));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("blue.xlsx").contains("64 MiB");
    assertThat(get("/bench/" + bench + "/setup").statusCode()).isEqualTo(200);
  }

  @Test
  @DisplayName("a pasted block of a million cells is refused, by its size or by its cells")
  void pasted() {
    UUID bench = server.sample();
    UUID survey = server.workspace().surveys().named(bench, "low").id();
    String paste = "/bench/" + bench + "/measure/" + survey + "/paste";
    String cells = "1\\t".repeat(100).concat("\\n");

    HttpResponse<String> large =
        server.postJson(paste, "{\"text\": \"" + cells.repeat(10_000) + "\"}");
    assertThat(large.statusCode()).isEqualTo(413);
    HttpResponse<String> many = server.postJson(paste, "{\"text\": \"" + cells.repeat(500) + "\"}");
    assertThat(many.statusCode()).isIn(200, 422);
    assertThat(many.body()).contains("10000");
    assertThat(server.workspace().surveys().named(bench, "low").readings()).isEqualTo(40);
    assertThat(get("/").statusCode()).isEqualTo(200);
  }
}
