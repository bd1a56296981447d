package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.options.ColorScheme;
import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;

/** A survey is taken in a real browser: by hand, by paste, by meter, with everything in the way. */
class MeasureTest {
  private static final String STORED = "All stored";

  @TempDir private static Path folder;
  private static Screens screens;
  private static TestServer server;
  private static UUID bench;
  private static int surveys;

  private String base;
  private UUID survey;

  @BeforeAll
  static void start() {
    screens = Screens.start();
    server = TestServer.start(folder);
    bench = server.sample();
  }

  @AfterAll
  static void stop() {
    if (server != null) {
      server.close();
      screens.close();
    }
  }

  @BeforeEach
  void begin() {
    // 4 columns, 3 rows, and the eight places at the panes: twenty.
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
    survey = UUID.fromString(base.substring(base.lastIndexOf('/') + 1));
  }

  @AfterEach
  void scriptsHeld() {
    screens.nothingFailed();
  }

  private Page open(int[] size) {
    Page page = screens.page(size, ColorScheme.LIGHT);
    open(page);
    return page;
  }

  private void open(Page page) {
    page.navigate(server.address(base));
    page.locator("#plan .point").first().waitFor();
  }

  /** Waits until an element holds a text; says what it held instead. */
  private static void until(Page page, String id, String words) {
    try {
      page.waitForFunction(
          "([id, words]) => document.getElementById(id).textContent.includes(words)",
          List.of(id, words),
          new Page.WaitForFunctionOptions().setTimeout(45_000));
    } catch (PlaywrightException e) {
      throw new AssertionError(
          id + " should say: " + words + "; it says: " + page.locator("#" + id).textContent(), e);
    }
  }

  private static void sync(Page page, String words) {
    until(page, "sync-words", words);
  }

  private static void count(Page page, int read) {
    until(page, "next-count", read + " of 20 read");
  }

  /** Types values one after the other with Enter, waiting until each has left the field. */
  private static void type(Page page, int... values) {
    for (int value : values) {
      page.locator("#entry").fill("");
      page.locator("#entry").pressSequentially(String.valueOf(value));
      page.keyboard().press("Enter");
      page.waitForFunction("() => document.getElementById('entry').value === ''");
    }
  }

  private List<ReadingRevision> stored(Entry.Kind kind) {
    return server.workspace().readings().of(survey).stream()
        .filter(reading -> reading.entry().kind() == kind && !reading.withdrawn())
        .toList();
  }

  /** Each value is stored once, at a place of its own, and by one write. */
  private void storedOnce(int... values) {
    List<ReadingRevision> stored = stored(Entry.Kind.GRID);
    assertThat(stored)
        .extracting(reading -> (int) reading.entry().value().orElseThrow())
        .containsExactlyInAnyOrder(java.util.Arrays.stream(values).boxed().toArray(Integer[]::new));
    Set<Object> places = new HashSet<>();
    stored.forEach(reading -> places.add(reading.entry().place()));
    assertThat(places).hasSameSizeAs(stored);
    assertThat(stored)
        .as("each was written once")
        .allMatch(reading -> server.workspace().readings().history(reading.reading()).size() == 1);
  }

  private boolean holds(double value) {
    return stored(Entry.Kind.GRID).stream()
        .anyMatch(reading -> reading.entry().value().orElseThrow() == value);
  }

  private static int[] from101(int count) {
    return java.util.stream.IntStream.rangeClosed(101, 100 + count).toArray();
  }

  @Test
  @DisplayName("the network is cut during entry and comes back: all there, none twice")
  void networkCut() {
    Page page = open(Screens.LAPTOP);
    type(page, 101, 102);
    count(page, 2);
    sync(page, STORED);

    page.context().setOffline(true);
    type(page, 103, 104, 105);
    sync(page, "3 waiting on this device");
    assertThat(page.locator("#next-count").innerText()).isEqualTo("5 of 20 read");
    storedOnce(101, 102);
    type(page, 106);
    page.context().setOffline(false);
    sync(page, STORED);
    type(page, 107);
    count(page, 7);
    sync(page, STORED);

    storedOnce(101, 102, 103, 104, 105, 106, 107);
    page.context().close();
  }

  @Test
  @DisplayName("answers are lost, not requests: what is sent again is stored once")
  void answersLost() {
    Page page = open(Screens.LAPTOP);
    int[] lost = {0};
    page.route(
        "**/readings",
        route -> {
          if (lost[0]++ < 2) {
            route.fetch();
            route.abort();
          } else {
            route.resume();
          }
        });
    type(page, 101, 102, 103);
    count(page, 3);
    sync(page, STORED);

    assertThat(lost[0]).isGreaterThan(2);
    storedOnce(101, 102, 103);
    page.context().close();
  }

  @Test
  @DisplayName("a tab is closed with readings waiting: the next one sends them")
  void tabClosed() {
    Page page = open(Screens.LAPTOP);
    BrowserContext context = page.context();
    type(page, 101);
    count(page, 1);
    sync(page, STORED);
    context.setOffline(true);
    type(page, 102, 103);
    sync(page, "2 waiting");
    page.close();
    context.setOffline(false);

    Page again = context.newPage();
    open(again);
    sync(again, STORED);

    storedOnce(101, 102, 103);
    assertThat(again.locator("#next-count").innerText()).isEqualTo("3 of 20 read");
    context.close();
  }

  @Test
  @DisplayName("two devices enter other values for one place: both are shown, a person chooses")
  void conflict() {
    Page laptop = open(Screens.LAPTOP);
    Page phone = open(Screens.PHONE);
    phone.context().setOffline(true);
    type(phone, 210);
    sync(phone, "1 waiting");
    type(laptop, 100);
    count(laptop, 1);
    sync(laptop, STORED);
    phone.context().setOffline(false);

    Locator choice = phone.locator(".conflict-box");
    choice.waitFor();
    assertThat(choice.innerText())
        .contains("you entered 210")
        .contains("entered 100 meanwhile")
        .contains("Both are kept until you choose");
    assertThat(stored(Entry.Kind.GRID).get(0).entry().value()).hasValue(100);
    Screens.accessible(phone);
    Screens.shoot(phone, "survey-two-values-phone");
    phone.reload();
    choice.waitFor();
    phone.getByText("Take mine: 210").click();
    choice.waitFor(
        new Locator.WaitForOptions()
            .setState(com.microsoft.playwright.options.WaitForSelectorState.DETACHED));
    sync(phone, STORED);

    List<ReadingRevision> history =
        server.workspace().readings().history(stored(Entry.Kind.GRID).get(0).reading());
    assertThat(history)
        .extracting(revision -> revision.entry().value().orElseThrow())
        .as("no update is lost: both values stay in the history")
        .containsExactly(100.0, 210.0);
    laptop.waitForFunction(
        "() => [...document.querySelectorAll('#table input')].some(cell => cell.value === '210')");
    laptop.context().close();
    phone.context().close();
  }

  @Test
  @DisplayName("two tabs of one browser, half typed: no value replaces another unasked")
  void twoTabs() {
    Page first = open(Screens.LAPTOP);
    Page second = first.context().newPage();
    open(second);
    second.locator("#skip").focus();
    type(first, 101);
    count(second, 1);
    // The second tab has moved on with the first; both stand at the second place now.
    first.locator("#entry").pressSequentially("10");
    type(second, 102);
    count(first, 2);
    first.locator("#entry").pressSequentially("3");
    first.keyboard().press("Enter");
    Locator choice = first.locator(".conflict-box");
    choice.waitFor();
    assertThat(choice.innerText()).contains("you entered 103").contains("entered 102 meanwhile");
    first.getByText("Take theirs: 102").click();

    second.locator("#skip").focus();
    first.context().setOffline(true);
    type(first, 104);
    count(second, 3);
    type(second, 105);
    count(first, 4);
    first.context().setOffline(false);
    sync(first, STORED);
    sync(second, STORED);
    storedOnce(101, 102, 104, 105);
    first.context().close();
  }

  @Test
  @DisplayName("a block is pasted: shown first, then entered as one change that undo takes back")
  void paste() {
    Page page = open(Screens.LAPTOP);
    page.locator("#paste-open").click();
    page.locator("#paste-text")
        .fill(
            """
            101\t\t\t102\t\t\t103
            \t104\t105\t\t106\t107\t
            108\t109\t110\t\t111\t112\t113
            \t114\t115\t\t116\t117\t
            118\t\t\t119\t\t\tabc""");
    page.locator("#paste-preview table").waitFor();
    assertThat(page.locator("#paste-preview").innerText()).contains("abc");
    assertThat(stored(Entry.Kind.GRID)).isEmpty();
    Screens.accessible(page);
    page.locator("#paste-confirm").click();
    count(page, 19);
    sync(page, STORED);
    storedOnce(from101(19));
    // The first row of the block is the back of the tank, its first cell the left.
    assertThat(page.locator("#table tbody tr").first().locator("input").first().inputValue())
        .isEqualTo("101");

    page.locator("#undo").click();
    count(page, 0);
    sync(page, STORED);
    assertThat(stored(Entry.Kind.GRID)).isEmpty();
    page.locator("#redo").click();
    count(page, 19);
    page.context().close();
  }

  @Test
  @DisplayName("a grid is entered by the keyboard alone, with the drift reading in between")
  void keyboard() {
    Page page = open(Screens.LAPTOP);
    assertThat(page.evaluate("document.activeElement.id")).isEqualTo("entry");
    for (int i = 1; i <= 9; i++) {
      page.keyboard().type(String.valueOf(100 + i));
      page.keyboard().press("Enter");
      page.waitForFunction("() => document.getElementById('entry').value === ''");
    }
    page.getByText("The first place again, for drift").waitFor();
    page.keyboard().type("102");
    page.keyboard().press("Enter");
    for (int i = 10; i <= 17; i++) {
      page.waitForFunction("() => document.getElementById('entry').value === ''");
      page.keyboard().type(String.valueOf(100 + i));
      page.keyboard().press("Enter");
    }
    page.waitForFunction("() => document.getElementById('entry').value === ''");
    page.keyboard().type("102");
    page.keyboard().press("Enter");
    for (int i = 18; i <= 20; i++) {
      page.waitForFunction("() => document.getElementById('entry').value === ''");
      page.keyboard().type(String.valueOf(100 + i));
      page.keyboard().press("Enter");
    }
    page.getByText("All places are read.").first().waitFor();
    sync(page, STORED);
    storedOnce(from101(20));
    assertThat(stored(Entry.Kind.DRIFT)).hasSize(2);

    // Undo and redo, then one value mended in the table.
    page.keyboard().press("Control+z");
    count(page, 19);
    page.waitForFunction("() => !document.getElementById('redo').disabled");
    page.keyboard().press("Control+y");
    count(page, 20);
    page.locator("#table input").first().focus();
    page.keyboard().press("ArrowRight");
    page.keyboard().type("150");
    page.keyboard().press("Enter");
    // The page is asked for nothing more: what counts is that it is stored.
    for (int i = 0; i < 450 && !holds(150); i++) {
      page.waitForTimeout(100);
    }
    assertThat(holds(150)).isTrue();
    page.context().close();
  }

  @Test
  @DisplayName("a meter that types like a keyboard, without a pause: each number at its own place")
  void burst() {
    Page page = open(Screens.LAPTOP);
    page.locator("#entry").focus();
    for (int i = 101; i <= 108; i++) {
      page.keyboard().insertText(String.valueOf(i));
      page.keyboard().press("Enter");
    }
    count(page, 8);
    sync(page, STORED);
    storedOnce(from101(8));
    assertThat(
            stored(Entry.Kind.GRID).stream()
                .sorted(java.util.Comparator.comparingInt(reading -> reading.entry().order())))
        .extracting(reading -> (int) reading.entry().value().orElseThrow())
        .as("in the order of the places")
        .containsExactly(101, 102, 103, 104, 105, 106, 107, 108);
    page.context().close();
  }

  @Test
  @DisplayName("on a phone the drift place comes back after eight readings, and can wait")
  void driftOnAPhone() {
    Page page = open(Screens.PHONE);
    type(page, 101, 102, 103, 104, 105, 106, 107, 108);
    until(page, "next-heading", "Next place");
    type(page, 109);
    page.getByText("The first place again, for drift").waitFor();
    page.locator("#later").click();
    until(page, "next-heading", "Next place");
    type(page, 110);
    count(page, 10);
    sync(page, STORED);
    assertThat(stored(Entry.Kind.GRID)).hasSize(10);
    assertThat(stored(Entry.Kind.DRIFT)).isEmpty();
    assertThat(
            page.evaluate(
                "Math.min(...[...document.querySelectorAll('.entry button, .entry input, .entry select,"
                    + " .meter button')].filter(e => e.offsetParent && e.type !== 'checkbox').map(e"
                    + " => e.getBoundingClientRect().height)) >= 44"))
        .as("every target is 44 px high")
        .isEqualTo(true);
    Screens.accessible(page);
    page.context().close();
  }

  /** Posts what a meter shows, ten times a second. */
  private final class Probe implements AutoCloseable {
    private final String token;
    private final Thread thread = new Thread(this::run, "probe");
    private volatile double shown;
    private volatile boolean ended;
    private volatile Throwable failed;

    Probe(double first) throws Exception {
      token =
          new com.fasterxml.jackson.databind.ObjectMapper()
              .readTree(server.get(base + "/meter").body())
              .get("token")
              .asText();
      shown = first;
      thread.start();
    }

    void show(double value) {
      shown = value;
    }

    private void run() {
      try {
        for (int i = 0; !ended; i++) {
          String line = String.format(java.util.Locale.ROOT, "%.1f\n", shown + 0.1 * (i % 3));
          HttpResponse<String> answer =
              server.send(
                  server
                      .request(base + "/meter")
                      .header("Authorization", "Bearer " + token)
                      .POST(BodyPublishers.ofString(line))
                      .build());
          assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
          TimeUnit.MILLISECONDS.sleep(90);
        }
      } catch (Throwable e) {
        failed = e;
      }
    }

    @Override
    public void close() {
      ended = true;
      try {
        thread.join();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      assertThat(failed).isNull();
    }
  }

  private static void meter(Page page, String words) {
    until(page, "meter-words", words);
  }

  @Test
  @DisplayName(
      "a posted meter takes its readings by itself: each rest once, at the place that is next")
  void postedMeter() throws Exception {
    Page page = open(Screens.LAPTOP);
    Page phone = open(Screens.PHONE);
    try (Probe probe = new Probe(30)) {
      meter(page, "Holds still");
      page.locator("#meter-auto").check();
      meter(page, "Waits until the probe is moved");
      assertThat(phone.locator("#meter-auto").isChecked()).isFalse();
      probe.show(120);
      count(page, 1);
      meter(page, "Taken: move the probe on");
      probe.show(90);
      count(page, 2);
      // The other device takes over; this one no longer takes.
      phone.locator("#meter-auto").check();
      page.getByText("Another page takes the readings.").waitFor();
      probe.show(60);
      count(phone, 3);
      count(page, 3);
      Screens.accessible(page);
      Screens.accessible(phone);
      Screens.shoot(page, "survey-meter");
      Screens.shoot(phone, "survey-meter-phone");

      // Half a number stands in the field: the meter waits, and the person's number goes first.
      phone.locator("#entry").fill("7");
      probe.show(200);
      phone.getByText("You are typing: the meter waits.").waitFor();
      meter(phone, "Holds still");
      phone.locator("#entry").fill("77");
      phone.keyboard().press("Enter");
      count(phone, 4);
      meter(phone, "Waits until the probe is moved");

      // Enter in the empty field takes what is shown.
      phone.locator("#entry").press("Enter");
      count(phone, 5);
      sync(phone, STORED);
    }
    meter(phone, "Silent");
    List<ReadingRevision> stored = stored(Entry.Kind.GRID);
    assertThat(stored)
        .extracting(reading -> (int) reading.entry().value().orElseThrow())
        .containsExactlyInAnyOrder(120, 90, 60, 77, 200);
    assertThat(stored.stream().filter(r -> r.entry().origin() == Entry.Origin.POSTED)).hasSize(4);
    page.context().close();
    phone.context().close();
  }

  @Test
  @DisplayName("what a meter took while its page's network is cut for good waits and is sent later")
  void meterAndNetworkCut() throws Exception {
    Page page = open(Screens.LAPTOP);
    try (Probe probe = new Probe(30)) {
      meter(page, "Holds still");
      page.locator("#meter-auto").check();
      meter(page, "Waits until the probe is moved");
      page.route("**/readings", route -> route.abort());
      probe.show(120);
      sync(page, "1 waiting");
      probe.show(80);
      sync(page, "2 waiting");
      page.unroute("**/readings");
      sync(page, STORED);
    }
    storedOnce(120, 80);
    page.context().close();
  }
}
