package parfield.web.setup;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.demo.DemoBench;
import parfield.web.TestServer;

/** The forms of the setup, sent as a browser sends them. */
class FormScreenTest {
  private static final String SETUP = DemoBench.files(1).get(DemoBench.SETUP);

  @TempDir private static Path folder;
  private static TestServer server;
  private UUID id;

  @BeforeAll
  static void start() {
    server = TestServer.start(folder);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  @BeforeEach
  void bench() {
    id = server.sample();
  }

  private HttpResponse<String> send(long revision, String button, String... fields) {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("revision", String.valueOf(revision));
    form.put("unit", "cm");
    form.put("do", button);
    for (int i = 0; i < fields.length; i += 2) {
      form.put(fields[i], fields[i + 1]);
    }
    return server.post("/bench/" + id + "/setup/form", form);
  }

  private HttpResponse<String> save(String... fields) {
    return send(1, "save", fields);
  }

  private String stored() {
    return server.workspace().benches().setup(id).text();
  }

  private String page() {
    return server.get("/bench/" + id + "/setup").body();
  }

  /** What stands beside a field: from its label to the next one. */
  private static String beside(String page, String name) {
    int at = page.indexOf("name=\"" + name + "\"");
    assertThat(at).as(name).isPositive();
    int end = page.indexOf("<label", at);
    return page.substring(page.lastIndexOf("<label", at), end < 0 ? page.length() : end);
  }

  @ParameterizedTest(name = "{0}: {1}")
  @DisplayName("each kind of field changes its own value in the text, and nothing else")
  @CsvSource(
      delimiter = '|',
      value = {
        "/tank/length | 121,5 | length: 120 | length: 121.5",
        "/tank/width | 22 in | width: 55 | width: 55.88",
        "/tank/water | 500 mm | water: 50 | water: 50",
        "/tank/rim | '' | '  rim: 2\n' | ''",
        "/tank/freeboard | 3 | 'room: {height: 60}' | 'room: {height: 60}\n  freeboard: 3'",
        "/tank/bottom/reflectance | 25 % | 0.30 | 0.25",
        "/tank/surface | strong | gentle | strong",
        "/tank/yellowing | 0.1 1/m | yellowing: 0.05 | yellowing: 0.1",
        "/tank/walls/left | coralline | left: film | left: coralline",
        "/tank/walls/back/clear | 0.4 | back: painted | SHARES",
        "/tank/lid/mesh | 0.7 | 'room: {height: 60}' | 'room: {height: 60}\n  lid: {mesh: 0.7}'",
        "/fixtures/bar/length | 46 | length: 44 | length: 46",
        "/fixtures/bar/emitters/0/x | -17 | x: -16.5 | x: -17",
        "/fixtures/bar/channels/blue/watts | 50 W | watts: 48 | watts: 50",
        "/fixtures/bar/channels/violet/spectrum | spectra/blue.csv | spectra/violet.csv |"
            + " spectra/blue.csv",
        "/fixtures/bar/channels/blue/output | 0: 0; 40: 0,3; 100: 1 | watts: 48 |"
            + " 'watts: 48, output: {0: 0, 40: 0.3, 100: 1}'",
        "/fixtures/bar/dials/overall/scales | blue | '[blue, white]' | '[blue]'",
        "/rigs/low/hang/1/x | 80 | 'x: 88, y: 27.5, height: 18' | 'x: 80, y: 27.5, height: 18'",
        "/rigs/high/hang/0/yaw | 90° | 'x: 32, y: 27.5, height: 32' |"
            + " 'x: 32, y: 27.5, height: 32, yaw: 90'",
        "/rigs/high/dials/violet | 35 | 'violet: 100}\nmeters' | 'violet: 35}\nmeters'",
        "/meters/probe/applied | false | applied: true | applied: false",
        "/meters/probe/scale error | 4 % | scale_error: 0.05 | scale_error: 0.04",
        "/meters/probe/ambient | 1 µmol m⁻² s⁻¹ | ambient: 0 | ambient: 1",
        "/surveys/low/grid/depths | 10; 25 | 'readings: low.csv}' |"
            + " 'readings: low.csv, grid: {depths: [10, 25]}}'",
        "/bands/soft/to | 150 | to: 160 | to: 150",
        "name:/bands/soft | weich | '  soft: {' | '  weich: {'",
      })
  void valid(String field, String typed, String old, String changed) {
    HttpResponse<String> answer =
        changed.equals("SHARES")
            ? save(
                field,
                typed,
                "/tank/walls/back/diffuse",
                "0.2",
                "/tank/walls/back/cover",
                "behind",
                "/tank/walls/back",
                FormField.BY_PARTS)
            : save(field, typed);
    String wanted =
        changed.equals("SHARES") ? "back: {clear: 0.4, diffuse: 0.2, cover: behind}" : changed;

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(302);
    assertThat(SETUP).contains(old);
    int at = SETUP.indexOf(old);
    assertThat(stored())
        .isEqualTo(SETUP.substring(0, at) + wanted + SETUP.substring(at + old.length()));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @DisplayName("what cannot be is told beside its field, stays as typed, and is not stored")
  @CsvSource(
      delimiter = '|',
      value = {
        "/tank/length | long | long is no number: type one as in 71.5 or 71,5",
        "/tank/length | 1,200 | 1,200 may mean 1200 or 1.200: type the one you mean",
        "/tank/length | 3 miles | miles is no unit of length here",
        "/tank/length | -5 | 'got -5, allowed above 0 to 2000 cm; state the inner length'",
        "/tank/length | '' | state the inner length of the tank",
        "/tank/rim | 40 | 'got 40, allowed 0 to below 27.5 cm'",
        "/tank/bottom/reflectance | 1,4 | 'got 1.4, allowed 0 to below 1'",
        "/tank/yellowing | 5 cm | 'cm is not the unit of this field, which is 1/m'",
        "/tank/walls/left/clear | 1.5 | 'got 1.5, allowed 0 to 1'",
        "/fixtures/bar/emitters/2/x | 30 | 'got 30, allowed -22 to 22 cm'",
        "/fixtures/bar/channels/blue/watts | -1 | 'got -1, allowed 0 to 100000 W'",
        "/fixtures/bar/channels/blue/output | half | 'type pairs of dial and share of full output'",
        "/fixtures/bar/channels/blue/output | 0: 0; 100: 0.9 | 1",
        "/rigs/low/hang/0/height | 0 | 'got 0, allowed above 0 to 2000 cm'",
        "/rigs/low/hang/0/height | 70 | 'at most 60 cm, the room above the tank'",
        "/rigs/low/hang/0/fixture | lamp | 'got lamp, allowed bar; '",
        "/rigs/low/dials/blue | 120 | 'got 120, allowed 0 to 100 %'",
        "/meters/probe/immersion | 9 | 'got 9, allowed 0.5 to 3'",
        "/surveys/low/grid/depths | 80 | 'got 80, allowed above 0 to 50 cm'",
        "/surveys/low/meter | '' | name one of the meters",
        "/bands/soft/from | 500 | 'from below to'",
        "name:/bands/soft | stony | stony is taken already: choose another name",
        "name:/bands/soft | '' | 'a name cannot be empty'",
      })
  void invalid(String field, String typed, String words) {
    HttpResponse<String> answer =
        field.equals("/tank/walls/left/clear")
            ? save(
                field,
                typed,
                "/tank/walls/left",
                FormField.BY_PARTS,
                "/tank/walls/left/diffuse",
                "0.1",
                "/tank/walls/left/cover",
                "water")
            : save(field, typed);

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(stored()).isEqualTo(SETUP);
    String page = answer.body().replace("&#34;", "\"").replace("&#39;", "'");
    assertThat(page).contains("nothing was stored, what you typed stands below");
    String summary = page.substring(page.indexOf("id=\"faults\""), page.indexOf("set-up"));
    assertThat(summary).contains(words).contains("href=\"#at");
    // A fault of a whole row, list or entry stands there.
    String near =
        List.of("from below to", "at most 60 cm, the room above the tank").contains(words)
            ? page.substring(page.indexOf("<div class=\"fault\">"))
            : beside(page, field);
    assertThat(near).contains(words);
    if (!typed.isEmpty()) {
      assertThat(beside(page, field)).contains(typed);
    }
    Matcher link = Pattern.compile("href=\"#(at[^\"]+)\"").matcher(summary);
    while (link.find()) {
      assertThat(page).contains("id=\"" + link.group(1) + "\"");
    }
  }

  @Test
  @DisplayName("all that was typed stays when one field is wrong, and is stored together later")
  void nothingCleared() {
    HttpResponse<String> wrong = save("/tank/length", "130", "/bands/soft/to", "many");

    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(beside(wrong.body(), "/tank/length")).contains("value=\"130\"");
    assertThat(stored()).isEqualTo(SETUP);

    assertThat(save("/tank/length", "130", "/bands/soft/to", "170").statusCode()).isEqualTo(302);
    assertThat(stored())
        .isEqualTo(SETUP.replace("length: 120", "length: 130").replace("to: 160", "to: 170"));
    assertThat(server.workspace().benches().setup(id).revision()).isEqualTo(2);
  }

  @Test
  @DisplayName("what is no number and what is out of range are told together")
  void allAtOnce() {
    HttpResponse<String> wrong = save("/tank/length", "long", "/rigs/low/hang/0/height", "0");

    assertThat(wrong.body()).contains("2 things are to mend");
    assertThat(beside(wrong.body(), "/tank/length")).contains("long is no number");
    assertThat(beside(wrong.body(), "/rigs/low/hang/0/height")).contains("got 0, allowed above 0");
  }

  @Test
  @DisplayName("a form that changes nothing makes no revision")
  void unchanged() {
    assertThat(save("/tank/length", " 120 ", "name:/bands/soft", "soft").statusCode())
        .isEqualTo(302);
    assertThat(server.workspace().benches().setup(id).revision()).isEqualTo(1);
  }

  @Test
  @DisplayName("in inches lengths are shown and typed in inches, and stored in the file's unit")
  void inches() {
    HttpResponse<String> page =
        server.send(
            server
                .request("/bench/" + id + "/setup")
                .header("Accept", "text/html")
                .header("Cookie", "parfield-length=in")
                .GET()
                .build());
    assertThat(beside(page.body(), "/tank/length")).contains("inner length, in").contains("47.244");

    // What was shown and not changed stays to its last digit.
    server.post(
        "/bench/" + id + "/setup/form",
        Map.of(
            "revision",
            "1",
            "unit",
            "in",
            "/tank/length",
            "47.244",
            "/tank/width",
            "22",
            "/tank/water",
            "50 cm"));
    assertThat(stored()).isEqualTo(SETUP.replace("width: 55", "width: 55.88"));
  }

  @Test
  @DisplayName("a page that is behind is told, with what was typed and what is stored meanwhile")
  void stale() {
    save("/tank/length", "130", "/rigs/low/hang/0/x", "40");
    send(2, "remove:/bands/soft");

    HttpResponse<String> answer =
        send(1, "save", "/tank/length", "125", "/tank/rim", "3", "/bands/soft/to", "177");

    assertThat(answer.statusCode()).isEqualTo(409);
    assertThat(answer.body())
        .contains("stored revision 3 meanwhile")
        .contains("bands.soft.to: 177")
        .contains("name=\"revision\" value=\"3\"");
    assertThat(beside(answer.body(), "/tank/length"))
        .contains("value=\"125\"")
        .contains("stored meanwhile: 130");
    assertThat(beside(answer.body(), "/tank/rim")).contains("value=\"3\"");
    assertThat(beside(answer.body(), "/rigs/low/hang/0/x")).contains("value=\"40\"");
    assertThat(stored()).contains("length: 130");

    send(3, "save", "/tank/length", "125", "/tank/rim", "3");
    assertThat(stored()).contains("length: 125").contains("rim: 3").contains("x: 40");
  }

  @Test
  @DisplayName("another name is another name wherever the setup speaks of it")
  void renames() {
    HttpResponse<String> answer =
        save(
            "name:/fixtures/bar", "long bar",
            "name:/fixtures/bar/channels/blue", "royal",
            "name:/fixtures/bar/dials/overall", "all: together",
            "name:/rigs/high", "up",
            "name:/meters/probe", "sensor",
            "name:/bands/stony", "hard");

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(302);
    assertThat(stored())
        .isEqualTo(
            SETUP
                .replace("  bar:\n", "  long bar:\n")
                .replace("fixture: bar", "fixture: long bar")
                .replace("      blue: {spectrum", "      royal: {spectrum")
                .replace("[blue, white]", "[royal, white]")
                .replace("overall: {scales", "'all: together': {scales")
                .replace("overall: 100, blue: 100", "'all: together': 100, royal: 100")
                .replace("  high:\n", "  up:\n")
                .replace("rig: high", "rig: up")
                .replace("  probe:\n", "  sensor:\n")
                .replace("meter: probe", "meter: sensor")
                .replace("  stony: {", "  hard: {")
                .replace("band: stony", "band: hard"));
  }

  @Test
  @DisplayName("a survey with readings keeps its name, under which they are kept")
  void surveysKeepTheirNames() {
    assertThat(beside(page(), "name:/surveys/low"))
        .contains("readonly")
        .contains("its readings are kept under this name");
    assertThat(save("name:/surveys/low", "other").statusCode()).isEqualTo(302);
    assertThat(stored()).isEqualTo(SETUP);
  }

  @Test
  @DisplayName("whatever is added is whole: each can be stored at once, and taken away again")
  void additions() {
    List<String> places =
        List.of(
            "/fixtures",
            "/rigs",
            "/meters",
            "/surveys",
            "/bands",
            "/fixtures/bar/emitters",
            "/fixtures/bar/channels",
            "/fixtures/bar/dials",
            "/rigs/low/hang",
            "/tank/braces",
            "/tank/opaque");
    long revision = 1;
    for (String place : places) {
      assertThat(send(revision, "add:" + place).statusCode()).as(place).isEqualTo(302);
      assertThat(server.workspace().benches().setup(id).revision()).isEqualTo(++revision);
    }
    String page = page();
    assertThat(page).contains("name:/fixtures/fixture\"").contains("name:/rigs/rig\"");
    for (String gone :
        List.of(
            "/fixtures/fixture",
            "/surveys/survey",
            "/rigs/rig",
            "/meters/meter",
            "/bands/band",
            "/fixtures/bar/emitters/4",
            "/fixtures/bar/dials/master",
            "/fixtures/bar/channels/channel",
            "/rigs/low/hang/2",
            "/tank/braces/0",
            "/tank/opaque/0")) {
      assertThat(send(revision, "remove:" + gone).statusCode()).as(gone).isEqualTo(302);
      revision++;
    }
    assertThat(stored()).isEqualTo(SETUP);
  }

  @Test
  @DisplayName("what is still named elsewhere cannot be taken away, and it is said where")
  void stillNeeded() {
    HttpResponse<String> answer = send(1, "remove:/rigs/low");

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(beside(answer.body(), "/surveys/low/rig"))
        .contains("is not stated: got low, allowed high; ");
    assertThat(stored()).isEqualTo(SETUP);
  }

  @Test
  @DisplayName("what is missing is told at the field that it belongs into")
  void missing() {
    HttpResponse<String> answer = save("/meters/probe/response", "generic even");

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(beside(answer.body(), "/meters/probe/calibrated under"))
        .contains("state the light that the sensor was calibrated under");
    assertThat(beside(answer.body(), "/meters/probe/response"))
        .contains("<option value=\"generic even\" selected>");
  }

  @Test
  @DisplayName("odd but possible values are kept, with a word beside them")
  void odd() {
    save("/tank/length", "450", "/rigs/low/hang/0/x", "-10");
    assertThat(stored()).contains("length: 450");
    String page = page();
    assertThat(beside(page, "/tank/length")).contains("450 cm is unusual for a tank");
    assertThat(beside(page, "/rigs/low/hang/0/x")).contains("-10 cm is beside the tank");
  }

  @Test
  @DisplayName("names may hold any letters: they are shown as such and come back the same")
  void hostileNames() {
    String name = "<b>\"&'/~ 𝄞{},:#</b>";
    assertThat(save("name:/fixtures/bar", name).statusCode()).isEqualTo(302);
    String page = page();
    assertThat(page).doesNotContain("<b>");
    String at = "/fixtures/" + name.replace("~", "~0").replace("/", "~1");
    assertThat(send(2, "save", at + "/length", "47").statusCode()).isEqualTo(302);
    assertThat(stored()).contains("length: 47").doesNotContain("fixture: bar");
  }

  @Test
  @DisplayName("a stored text that is no YAML is shown as text, with its faults")
  void noYaml() {
    server.workspace().benches().saveSetup(id, 1, "tank: {length: 90\n", "test");

    HttpResponse<String> answer = server.get("/bench/" + id + "/setup");
    assertThat(answer.headers().firstValue("Location").orElse("")).endsWith("/setup/text");
    HttpResponse<String> text = server.get("/bench/" + id + "/setup/text");
    assertThat(text.body()).contains("this is not YAML").contains("tank: {length: 90");
  }

  @Test
  @DisplayName("a setup with faults is shown as forms, with the faults beside the fields")
  void faultyStored() {
    server.workspace().benches().saveSetup(id, 1, SETUP.replace("rim: 2", "rim: wide"), "test");

    String page = page();
    assertThat(page).contains("the setup is stored as it is");
    assertThat(beside(page, "/tank/rim")).contains("value=\"wide\"").contains("got wide");
    assertThat(send(2, "save", "/tank/rim", "3").statusCode()).isEqualTo(302);
    assertThat(stored()).isEqualTo(SETUP.replace("rim: 2", "rim: 3"));
  }

  @Test
  @DisplayName("a button for what is not there is refused, and so is a form without a revision")
  void nonsense() {
    assertThat(send(1, "remove:/nothing").statusCode()).isEqualTo(422);
    assertThat(send(1, "add:/tank").statusCode()).isEqualTo(422);
    assertThat(server.post("/bench/" + id + "/setup/form", Map.of("do", "save")).statusCode())
        .isEqualTo(422);
    assertThat(stored()).isEqualTo(SETUP);
  }
}
