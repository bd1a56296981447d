package parfield.web.spectra;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.cli.Run;
import parfield.demo.DemoBench;
import parfield.web.TestServer;
import parfield.workspace.ShelfItem;

class SpectraScreenTest {
  private static final Map<String, String> DEMO = DemoBench.files(1);
  private static final String BOUNDARY = "----parts-of-a-form";
  private static final Pattern ROW = Pattern.compile("<tr>(.*?)</tr>", Pattern.DOTALL);
  private static final Pattern CELL = Pattern.compile("<t[hd][^>]*>(.*?)</t[hd]>", Pattern.DOTALL);

  @TempDir private Path folder;
  private TestServer server;

  @BeforeEach
  void start() {
    server = TestServer.start(folder);
  }

  @AfterEach
  void stop() {
    server.close();
  }

  // ---- What the tests do as a person would.

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private HttpResponse<String> drop(String at, String unit, Map<String, byte[]> files) {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    try {
      files.forEach(
          (name, content) -> {
            body.writeBytes(
                bytes(
                    "--"
                        + BOUNDARY
                        + "\r\nContent-Disposition: form-data; name=\"files\"; filename=\""
                        + name
                        + "\"\r\nContent-Type: application/octet-stream\r\n\r\n"));
            body.writeBytes(content);
            body.writeBytes(bytes("\r\n"));
          });
      body.write(
          bytes(
              "--"
                  + BOUNDARY
                  + "\r\nContent-Disposition: form-data; name=\"unit\"\r\n\r\n"
                  + unit
                  + "\r\n--"
                  + BOUNDARY
                  + "--\r\n"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return server.send(
        server
            .request(at + "/files")
            .header("Origin", server.server().address())
            .header("Accept", "text/html")
            .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
            .POST(BodyPublishers.ofByteArray(body.toByteArray()))
            .build());
  }

  private HttpResponse<String> drop(String name, String content) {
    return drop("/spectra", "", Map.of(name, bytes(content)));
  }

  /** Samples every 10 nm of 400–700 nm, columns alike but for a factor. */
  private static String samples(String head, int columns, double value) {
    StringBuilder text = new StringBuilder(head).append('\n');
    for (int nm = 400; nm <= 700; nm += 10) {
      text.append(nm);
      for (int c = 1; c <= columns; c++) {
        text.append(',').append(value * c);
      }
      text.append('\n');
    }
    return text.toString();
  }

  private void dropDemo(String... names) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (String name : names) {
      files.put(name + ".csv", bytes(DEMO.get("spectra/" + name + ".csv")));
    }
    assertThat(drop("/spectra", "", files).statusCode()).isEqualTo(302);
  }

  private Path file(String name) throws IOException {
    Path file = folder.resolve(name + ".csv");
    return Files.writeString(file, DEMO.get("spectra/" + name + ".csv"));
  }

  private static String key(String name, int which) {
    return URLEncoder.encode(
        "shelf/" + URLEncoder.encode(name, StandardCharsets.UTF_8) + "/" + which,
        StandardCharsets.UTF_8);
  }

  private static String chosen(String... names) {
    return String.join(
        "&", Stream.of(names).map(name -> "s=" + key(name + ".csv", 0)).toArray(String[]::new));
  }

  private List<String> names() {
    return server.workspace().shelf().list(ShelfItem.Kind.SPECTRUM, "", 100, 0).items().stream()
        .map(ShelfItem::name)
        .toList();
  }

  private static JsonNode json(String text) {
    try {
      return new ObjectMapper().readTree(text);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every row of every table of a page, cells joined by a space. */
  private static List<String> rows(String page) {
    List<String> rows = new ArrayList<>();
    Matcher row = ROW.matcher(page);
    while (row.find()) {
      List<String> cells = new ArrayList<>();
      Matcher cell = CELL.matcher(row.group(1));
      while (cell.find()) {
        cells.add(cell.group(1).replace("&#39;", "'").replace("&amp;", "&"));
      }
      rows.add(String.join(" ", cells));
    }
    return rows;
  }

  /** The page and the command say the same: the whole JSON, and every row of the text's tables. */
  private void same(String at, String query, Object... command) {
    Run asJson = Run.parfield(Stream.concat(Stream.of(command), Stream.of("--json")).toArray());
    assertThat(asJson.code()).as(asJson.err()).isZero();
    HttpResponse<String> answer = server.get(at + "/answer.json?" + query);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    assertThat(json(answer.body())).isEqualTo(json(asJson.out()));

    HttpResponse<String> page = server.get(at + "?" + query);
    assertThat(page.statusCode()).isEqualTo(200);
    List<String> wanted = new ArrayList<>();
    for (String line : Run.parfield(command).out().split("\n", -1)) {
      // Rows of tables have two spaces or more between their cells.
      if (line.matches("\\S.*\\S {2,}\\S.*")) {
        wanted.add(line.strip().replaceAll(" {2,}", " "));
      }
    }
    assertThat(wanted).isNotEmpty();
    assertThat(rows(page.body())).containsAll(wanted);
  }

  // ---- Figures.

  @Test
  @DisplayName("bands and colour are what describe tells")
  void describes() throws IOException {
    dropDemo("blue", "white", "reference");
    same(
        "/spectra",
        "view=bands&" + chosen("blue", "white", "reference"),
        "spectrum",
        "describe",
        file("blue"),
        file("white"),
        file("reference"));
    same(
        "/spectra",
        "view=bands&bands=400,500,600,700&" + chosen("blue"),
        "spectrum",
        "describe",
        file("blue"),
        "--bands",
        "400,500,600,700");
  }

  @Test
  @DisplayName("an overlay on a reference is what compare tells")
  void compares() throws IOException {
    dropDemo("blue", "white", "reference");
    same(
        "/spectra",
        "view=overlay&" + chosen("blue", "white", "reference") + "&ref=" + key("reference.csv", 0),
        "spectrum",
        "compare",
        file("blue"),
        file("white"),
        "--with",
        file("reference"));
  }

  @Test
  @DisplayName("the shift under water is what depths tells, with comma and unit as typed")
  void depths() throws IOException {
    dropDemo("white");
    same(
        "/spectra",
        "view=water&depth=25,5+cm&yellowing=0.2&" + chosen("white"),
        "spectrum",
        "depths",
        file("white"),
        "--at",
        "0,10,20,25.5,30,40,50,60,70,80,90,100",
        "--yellowing",
        "0.2");
  }

  @Test
  @DisplayName("measured places are what blend tells")
  void blends() throws IOException {
    dropDemo("places");
    StringBuilder query = new StringBuilder("view=blend");
    for (int i = 0; i < 10; i++) {
      query.append("&s=").append(key("places.csv", i));
    }
    same("/spectra", query.toString(), "spectrum", "blend", file("places"));
  }

  @Test
  @DisplayName("the nearest setting is what mix finds, for a reference and for shares")
  void mixes() throws IOException {
    dropDemo("blue", "white", "violet", "reference");
    String query =
        "view=mix&find=1&"
            + full("100", "80,5", "20")
            + "&"
            + chosen("blue", "white", "violet", "reference")
            + "&ref="
            + key("reference.csv", 0);
    Object[] channels = {
      "spectrum",
      "mix",
      file("blue"),
      file("white"),
      file("violet"),
      "--ppfd",
      "blue=100,white=80.5,violet=20"
    };
    same("/spectra", query, with(channels, "--to", file("reference")));
    same(
        "/spectra",
        query + "&" + field("low", "blue") + "=20&" + field("high", "white") + "=90",
        with(channels, "--to", file("reference"), "--limit", "blue=20:100,white=0:90"));
    same(
        "/spectra",
        query
            + "&goal=shares&"
            + field("share", "430–480")
            + "=45&"
            + field("share", "600–700")
            + "=8",
        with(channels, "--shares", "430-480=45,600-700=8"));
  }

  private static Object[] with(Object[] some, Object... more) {
    return Stream.concat(Stream.of(some), Stream.of(more)).toArray();
  }

  @Test
  @DisplayName("sliders at the nearest setting give the light that the nearest setting told")
  void slides() {
    dropDemo("blue", "white", "violet", "reference");
    String query =
        "view=mix&"
            + full("100", "80", "20")
            + "&"
            + chosen("blue", "white", "violet", "reference")
            + "&ref="
            + key("reference.csv", 0);
    JsonNode nearest = json(server.get("/spectra/answer.json?" + query + "&find=1").body());
    StringBuilder dials = new StringBuilder(query);
    for (int i = 0; i < 3; i++) {
      dials.append('&').append(field("dial", CHANNELS.get(i))).append('=');
      dials.append(nearest.get("dials").get(i).get("set_to_percent").asText());
    }
    JsonNode slid = json(server.get("/spectra/answer.json?" + dials).body());
    JsonNode beside = slid.get("compared").get("lights").get(0);
    assertThat(beside.get("overlap")).isEqualTo(nearest.get("overlap"));
    assertThat(beside.get("spectral_angle_deg")).isEqualTo(nearest.get("spectral_angle_deg"));
    JsonNode described = slid.get("described").get("lights").get(0);
    assertThat(described.get("ppfd_umol_m2_s").asDouble())
        .isEqualTo(nearest.get("ppfd_umol_m2_s").asDouble());
    for (int b = 0; b < 6; b++) {
      assertThat(described.get("bands").get(b).get("share"))
          .isEqualTo(nearest.get("bands").get(b).get("share"));
    }
    // The page that found it has its sliders there.
    String page = server.get("/spectra?" + query + "&find=1").body();
    assertThat(page)
        .contains(
            "name=\""
                + field("dial", "white")
                + "\" value=\""
                + Asked.plain(nearest.get("dials").get(1).get("set_to_percent").asDouble())
                + "\"");
  }

  @Test
  @DisplayName("half of two channels is half the light of both: spectra add")
  void halves() {
    dropDemo("blue", "white");
    String query = "view=mix&" + full("100", "60") + "&" + chosen("blue", "white");
    double full = ppfd(query + "&" + each("dial", "100", "100"));
    assertThat(full).isEqualTo(160);
    assertThat(ppfd(query + "&" + each("dial", "50", "50"))).isEqualTo(80);
    assertThat(ppfd(query + "&" + each("dial", "100", "0"))).isEqualTo(100);
  }

  private static final List<String> CHANNELS = List.of("blue", "white", "violet");

  private static String field(String kind, String name) {
    return Asked.field(kind, name);
  }

  /** Fields of one kind, one a channel. */
  private static String each(String kind, String... values) {
    List<String> pairs = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      pairs.add(field(kind, CHANNELS.get(i)) + "=" + values[i]);
    }
    return String.join("&", pairs);
  }

  private static String full(String... values) {
    return each("full", values);
  }

  @Test
  @DisplayName("what was typed for a channel stays with it when another is added")
  void keepsWhatBelongsTogether() {
    dropDemo("blue", "white", "reference");
    String typed = "view=mix&" + full("100", "60") + "&";
    assertThat(ppfd(typed + chosen("blue", "white"))).isEqualTo(160);
    assertThat(ppfd(typed + chosen("white", "blue"))).isEqualTo(160);
    assertThat(ppfd(typed + each("dial", "0", "100") + "&" + chosen("white", "blue")))
        .isEqualTo(60);
    assertThat(server.get("/spectra?" + typed + chosen("blue", "reference", "white")).body())
        .contains("how bright channel reference is beside the others is not known");
    // As the reference it is no channel.
    assertThat(
            ppfd(typed + chosen("reference", "white", "blue") + "&ref=" + key("reference.csv", 0)))
        .isEqualTo(160);
  }

  @Test
  @DisplayName("a length that was typed in centimetres stays as long where inches are shown")
  void keepsLengths() {
    dropDemo("blue");
    HttpResponse<String> page =
        server.send(
            server
                .request("/spectra?view=water&in=cm&depth=38.1&" + chosen("blue"))
                .header("Cookie", "parfield-length=in")
                .GET()
                .build());
    // 38.1 cm are 15 in: the inch is 2.54 cm by definition.
    assertThat(page.body()).contains("name=\"depth\" value=\"15\"", "blue, 15 in deep");
  }

  private double ppfd(String query) {
    return json(server.get("/spectra/answer.json?" + query).body())
        .get("described")
        .get("lights")
        .get(0)
        .get("ppfd_umol_m2_s")
        .asDouble();
  }

  @Test
  @DisplayName("taking apart is what parts tells")
  void takesApart() throws IOException {
    dropDemo("places", "blue", "white", "violet");
    same(
        "/spectra",
        "view=parts&light="
            + key("places.csv", 0)
            + "&s="
            + key("places.csv", 0)
            + "&"
            + chosen("blue", "white", "violet"),
        "spectrum",
        "parts",
        file("places") + "#front-1",
        "--of",
        file("blue"),
        file("white"),
        file("violet"));
  }

  @Test
  @DisplayName("the exposure of eyes is what eyes tells, with its cautions, and never called safe")
  void eyes() throws IOException {
    dropDemo("blue");
    String query = "view=eyes&distance=50&width=40&tall=9&ppfd=300&" + chosen("blue");
    same(
        "/spectra",
        query,
        "spectrum",
        "eyes",
        file("blue"),
        "--distance",
        "50",
        "--size",
        "40x9",
        "--ppfd",
        "300");
    String page = server.get("/spectra?" + query).body();
    assertThat(page)
        .contains(
            "An estimate from one spectrum, no clearance",
            "Competent people with calibrated instruments decide",
            "ultraviolet below is not counted");
    assertThat(page.toLowerCase(java.util.Locale.ROOT)).doesNotContain("safe");
    assertThat(server.get("/spectra?view=eyes&" + chosen("blue")).body())
        .contains("an estimate needs the distance, both sides of what shines and the PPFD");
  }

  /** The sample bench with a stated distribution for every channel, so that nothing needs a fit. */
  private UUID stated(String blue, String white, String violet) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    DEMO.forEach((name, text) -> files.put(name, bytes(text)));
    String setup = DEMO.get("setup.yaml");
    for (Map.Entry<String, String> channel :
        Map.of("blue", blue, "white", white, "violet", violet).entrySet()) {
      setup =
          setup.replace(
              "spectra/" + channel.getKey() + ".csv,",
              "spectra/" + channel.getKey() + ".csv, distribution: " + channel.getValue() + ",");
    }
    files.put("setup.yaml", bytes(setup));
    try {
      for (Map.Entry<String, byte[]> each : files.entrySet()) {
        Path path = folder.resolve("bench").resolve(each.getKey());
        Files.createDirectories(path.getParent());
        Files.write(path, each.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return server
        .workspace()
        .benchFiles()
        .take("Stated", true, "setup.yaml", files, "test")
        .bench();
  }

  @Test
  @DisplayName("a bench's channels are mixed and its places predicted as the commands do it")
  void asksTheBench() throws IOException {
    UUID bench =
        stated(
            "{beam: 75, photon flux: 60}",
            "{beam: 60, photon flux: 50}",
            "{beam: 100, photon flux: 12}");
    dropDemo("reference");
    Path setup = folder.resolve("bench/setup.yaml");
    String at = "/bench/" + bench + "/spectra";
    same(
        at,
        "view=blend&places=low&depth=25",
        "spectrum",
        "blend",
        setup,
        "--rig",
        "low",
        "--depth",
        "25");
    same(
        at,
        "view=mix&find=1&from=bar&rig=low&depth=25&"
            + chosen("reference")
            + "&ref="
            + key("reference.csv", 0),
        "spectrum",
        "mix",
        setup,
        "--rig",
        "low",
        "--depth",
        "25",
        "--to",
        file("reference"));
    String page = server.get(at).body();
    assertThat(page)
        .contains("Channels of fixture bar", "aria-current=\"page\"", "beside the steps");
    assertThat(server.get(at + "?view=water&s=channel%2Fbar%2Fblue").body())
        .contains("Depth, cm, to the bottom", "max=\"50\"");
  }

  @Test
  @DisplayName("where the channels are told alike, a blend is not guessed")
  void doesNotGuess() {
    String same = "{beam: 75, photon flux: 60}";
    UUID bench = stated(same, same, same);
    assertThat(server.get("/bench/" + bench + "/spectra?view=blend&places=low").body())
        .contains("how the colours of rig low blend is not known");
  }

  // ---- Files.

  @Test
  @DisplayName("a file is kept with who and when, again as a revision, and put away")
  void keeps() {
    HttpResponse<String> dropped = drop("blue.csv", DEMO.get("spectra/blue.csv"));
    assertThat(dropped.headers().firstValue("Location").orElseThrow())
        .contains("/spectra?s=shelf%2Fblue.csv%2F0");
    drop("blue.csv", DEMO.get("spectra/white.csv"));
    ShelfItem item = server.workspace().shelf().get(ShelfItem.Kind.SPECTRUM, "blue.csv");
    assertThat(item.revision()).isEqualTo(2);
    assertThat(server.workspace().bytes(item.files().get("blue.csv")))
        .isEqualTo(bytes(DEMO.get("spectra/white.csv")));
    assertThat(server.get("/spectra").body()).contains("blue.csv", "by me, ", "revision 2");

    server.post("/spectra/files/put-away", Map.of("name", "blue.csv"));
    assertThat(names()).isEmpty();
    assertThat(server.get("/spectra?view=bands&" + chosen("blue")).body())
        .contains("No longer there: blue.csv.", "no spectrum is chosen");
    assertThat(server.post("/spectra/files/put-away", Map.of("name", "blue.csv")).statusCode())
        .isEqualTo(404);
  }

  @Test
  @DisplayName("a unit that the file does not say is taken as it was told")
  void takesAUnit() {
    String text = samples("nm,light", 1, 1);
    HttpResponse<String> untold = drop("flat.csv", text);
    assertThat(untold.statusCode()).isEqualTo(422);
    assertThat(untold.body())
        .contains("what the values count: got nothing stated for light")
        .contains("choose it under: What the numbers count, where a file does not say")
        .doesNotContain("--unit");
    drop("/spectra", "umol/m2/s/nm", Map.of("flat.csv", bytes(text)));
    // 1 µmol m⁻² s⁻¹ nm⁻¹ over 400–700 nm, by the definition of PPFD.
    assertThat(
            json(server.get("/spectra/answer.json?view=bands&" + chosen("flat")).body())
                .get("lights")
                .get(0)
                .get("ppfd_umol_m2_s")
                .asDouble())
        .isEqualTo(300);
    assertThat(drop("/spectra", "<b>", Map.of("a.csv", bytes(text))).statusCode()).isEqualTo(422);
  }

  @Test
  @DisplayName(
      "of several files the sound ones are kept, the faulty ones told of with line and cure")
  void tellsFaults() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("good.csv", bytes(DEMO.get("spectra/blue.csv")));
    files.put("bad.csv", bytes("nm,relative_photon_flux\n400,1\n410,many\n420,2\n"));
    HttpResponse<String> answer = drop("/spectra", "", files);
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("One file was not taken; what could be read lies on the shelf.", "bad.csv:3")
        .contains("many");
    assertThat(names()).containsExactly("good.csv");
    assertThat(drop("/spectra", "", Map.of()).statusCode()).isEqualTo(422);
    assertThat(drop("/spectra", "", Map.of("empty.csv", new byte[0])).body())
        .contains("no file was chosen, or an empty one");
    Map<String, byte[]> many = new LinkedHashMap<>();
    for (int i = 0; i < 21; i++) {
      many.put(i + ".csv", bytes("x"));
    }
    assertThat(drop("/spectra", "", many).body())
        .contains("21 files were chosen; 1 to 20 can be taken at once");
  }

  @Test
  @DisplayName("files that are too large, packed bombs and entities are refused, the server alive")
  void refusesBombs() throws IOException {
    HttpResponse<String> large = drop("/spectra", "", Map.of("large.csv", new byte[(4 << 20) + 1]));
    assertThat(large.statusCode()).isEqualTo(413);
    assertThat(large.body())
        .contains("large.csv is 4194305 bytes large; a file of spectra holds at most 4 MiB");

    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(packed)) {
      zip.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
      zip.write(bytes("<a>"));
      byte[] elements = bytes("<b/>".repeat(1 << 18));
      for (int i = 0; i < 80; i++) {
        zip.write(elements);
      }
      zip.closeEntry();
    }
    assertThat(packed.size()).isLessThan(1 << 20);
    HttpResponse<String> bomb = drop("/spectra", "", Map.of("bomb.xlsx", packed.toByteArray()));
    assertThat(bomb.statusCode()).isEqualTo(422);
    assertThat(bomb.body())
        .contains("unpacked size of xl/worksheets/sheet1.xml: got more, allowed 64 MiB");

    HttpResponse<String> entities =
        drop(
            "laughs.spdx",
            "<!DOCTYPE a [<!ENTITY a \"ha\"><!ENTITY b \"&a;&a;\">]><IESTM2714>&b;</IESTM2714>");
    assertThat(entities.statusCode()).isEqualTo(422);
    assertThat(entities.body()).contains("a document type or an entity");
    assertThat(drop("noise.csv", "\u0000\u0001\u0002").statusCode()).isEqualTo(422);
    assertThat(drop("dark.csv", samples("nm,relative_photon_flux", 1, 0)).statusCode())
        .isEqualTo(422);
    assertThat(names()).isEmpty();
    assertThat(server.get("/spectra").statusCode()).isEqualTo(200);
  }

  @Test
  @DisplayName("no name of a file reaches the file system or the page's markup")
  void distrustsNames() throws IOException {
    String blue = DEMO.get("spectra/blue.csv");
    assertThat(drop("../../evil.csv", blue).statusCode()).isEqualTo(302);
    assertThat(drop("C:\\\\temp\\\\wild:1.csv", blue).statusCode()).isEqualTo(302);
    assertThat(names()).containsExactlyInAnyOrder("evil.csv", "wild-1.csv");
    try (Stream<Path> all = Files.walk(folder)) {
      assertThat(all.map(path -> path.getFileName().toString()))
          .noneMatch(n -> n.equals("evil.csv"));
    }

    String name = "<img src=x onerror=alert(1)>.csv";
    drop(name, samples("# photons\nnm,<script>alert(2)</script>,b", 2, 1));
    assertThat(names()).contains(name);
    for (View view : View.values()) {
      String page =
          server
              .get(
                  "/spectra?view="
                      + view.key()
                      + "&s="
                      + key(name, 0)
                      + "&s="
                      + key(name, 1)
                      + "&ref="
                      + key(name, 1)
                      + "&depth=%3Cscript%3Ealert(3)&distance=%22%3E%3Cb%3E&bands=%3Cscript%3E")
              .body();
      assertThat(page).as(view.key()).doesNotContain("<script>", "<img src=x", "\"><b>");
      assertThat(page).contains("&lt;img src=x onerror=alert(1)&gt;.csv");
    }
    String overlay =
        server.get("/spectra?view=overlay&s=" + key(name, 0) + "&s=" + key(name, 1)).body();
    assertThat(overlay).contains("&lt;script&gt;alert(2)").doesNotContain("<script>");
    assertThat(overlay).doesNotContain(" style=", " onclick=");
  }

  @Test
  @DisplayName("what comes from another page is refused")
  void refusesForeigners() {
    HttpResponse<String> foreign =
        server.send(
            server
                .request("/spectra/files/put-away")
                .header("Origin", "http://elsewhere.example")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString("name=a"))
                .build());
    assertThat(foreign.statusCode()).isEqualTo(403);
  }

  // ---- Fields.

  @Test
  @DisplayName("a number that is none is told beside its field and on top; what was typed stays")
  void tellsTypedFaults() {
    dropDemo("blue");
    HttpResponse<String> page =
        server.get("/spectra?view=water&depth=deep&yellowing=-1&" + chosen("blue"));
    assertThat(page.statusCode()).isEqualTo(422);
    assertThat(page.body())
        .contains("2 numbers are to mend", "value=\"deep\"", "value=\"-1\"")
        .contains("deep is no number: type one, as in 12.5 or 12,5")
        .contains("-1 lies outside 0 to 5 1/m: type a number within")
        .contains("id=\"f-depth\" name=\"depth\" value=\"deep\"")
        .contains("aria-invalid=\"true\" aria-describedby=\"e-depth\"");
    assertThat(server.get("/spectra?view=water&depth=1,234&" + chosen("blue")).body())
        .contains("1,234 may mean 1234 or 1.234: type the one you mean");
    assertThat(server.get("/spectra?view=bands&bands=700,400&" + chosen("blue")).body())
        .contains("wavebands are told by their ends in nm, upward");
    assertThat(
            server.get("/spectra/answer.json?view=water&depth=deep&" + chosen("blue")).statusCode())
        .isEqualTo(422);
  }

  @Test
  @DisplayName("what cannot be answered says what to do")
  void tellsWhatIsMissing() {
    assertThat(server.get("/spectra").body())
        .contains("no spectrum is chosen", "Put invented spectra there, to try");
    dropDemo("blue", "white");
    assertThat(server.get("/spectra?view=mix&" + chosen("blue", "white")).body())
        .contains("how bright channel blue is beside the others is not known");
    assertThat(server.get("/spectra?view=parts&" + chosen("blue")).body())
        .contains("choose the spectra of the channels too");
    assertThat(server.get("/spectra?view=blend&" + chosen("blue")).body())
        .contains("a blend needs the spectra of two places or more");
    assertThat(server.get("/spectra?view=overlay&height=measured&" + chosen("blue")).body())
        .contains("the scale of blue is not known: as measured it cannot be laid over another");
    assertThat(
            server
                .get(
                    "/spectra?view=mix&"
                        + full("1", "1")
                        + "&"
                        + each("dial", "0", "0")
                        + "&"
                        + chosen("blue", "white"))
                .body())
        .contains("these dials give no light");
  }

  @Test
  @DisplayName("invented spectra are marked so")
  void marksInvented() {
    assertThat(server.post("/spectra/invented", Map.of()).statusCode()).isEqualTo(302);
    assertThat(server.get("/spectra").body())
        .contains("invented-blue.csv", "<span class=\"tag\">invented</span>");
  }

  @Test
  @DisplayName("two lights of one name are told apart by their files")
  void tellsNamesApart() {
    String text = samples("# photons\nnm,blue,white", 2, 1);
    drop("one.csv", text);
    drop("two.csv", text);
    assertThat(
            server
                .get("/spectra?view=bands&s=" + key("one.csv", 0) + "&s=" + key("two.csv", 0))
                .body())
        .contains("blue (one.csv)", "blue (two.csv)");
  }
}
