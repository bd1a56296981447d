package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;
import parfield.workspace.Result;

/** Rigs explored in a real browser: each fixture moved by itself, rocks as they are. */
class ExploreTest {
  /** Moves of each kind. */
  private static final int TIMES = Integer.getInteger("times", 3);

  private static final String ROCKS =
      """
        aquascape:
          ledge: {box: {length: 35, width: 15, height: 8}, x: 30, y: 38, above bottom: 12, yaw: 25}
          heap: {ellipsoid: {length: 40, width: 25, height: 22}, x: 78, y: 27, above bottom: -2}
      """;

  @TempDir private static Path folder;
  private static Screens screens;
  private static TestServer server;

  @BeforeAll
  static void start() {
    screens = Screens.start();
    server = TestServer.start(folder);
  }

  @AfterAll
  static void stop() {
    if (server != null) {
      server.close();
      screens.close();
    }
  }

  private static UUID fitted() {
    return fitted("");
  }

  private static UUID fitted(String rocks) {
    UUID id = server.sample();
    if (!rocks.isEmpty()) {
      String text = server.workspace().benches().setup(id).text();
      server.post(
          "/bench/" + id + "/setup",
          Map.of("revision", "1", "text", text.replace("  rim: 2\n", "  rim: 2\n" + rocks)));
    }
    server.post("/bench/" + id + "/model/fit", Map.of());
    for (int i = 0; i < 1_200; i++) {
      if (!server.workspace().results().list(id, Result.Kind.MODEL, 1).isEmpty()) {
        return id;
      }
      LockSupport.parkNanos(50_000_000);
    }
    throw new IllegalStateException("the fit did not end within a minute");
  }

  private static Page open(UUID id, int[] size, ColorScheme theme) {
    Page page = screens.page(size, theme);
    page.navigate(server.address("/bench/" + id + "/explore"));
    page.locator("[data-figures] tbody tr").first().waitFor();
    page.locator("[data-grips=a] .grip").first().waitFor();
    return page;
  }

  private static Locator grip(Page page, int i) {
    return page.locator("[data-grips=a] .grip").nth(i);
  }

  private static Locator number(Page page, String label) {
    return page.locator("[data-rig=a] .field:has(label:text-is('" + label + "')) input").last();
  }

  private static Locator button(Page page, String words) {
    return page.locator("[data-rig=a] button:text-is('" + words + "')");
  }

  /** Waits until the picture shows other light than a moment ago. */
  private static void otherLight(Page page, String before) {
    page.waitForFunction(
        "text => document.querySelector('[data-caption=plan-a]').textContent !== text", before);
  }

  private static String light(Page page) {
    return page.locator("[data-caption=plan-a]").innerText();
  }

  @Test
  @DisplayName("a fixture is moved by keys, pointer and numbers; its twin, undo and row follow")
  void oneFixture() {
    UUID id = fitted();
    Page page = open(id, Screens.LAPTOP, ColorScheme.LIGHT);
    String light = light(page);
    grip(page, 0).focus();
    page.keyboard().press("ArrowRight");
    page.keyboard().press("Shift+ArrowUp");
    otherLight(page, light);
    page.locator("[data-rig=a] summary").click();
    assertThat(number(page, "x of its centre, cm").inputValue()).isEqualTo("33");
    assertThat(number(page, "y of its centre, cm").inputValue()).isEqualTo("32.5");
    assertThat(grip(page, 0).getAttribute("aria-label"))
        .isEqualTo("bar 1: x 33, y 32.5, height 18 cm, turned 0°. Arrow keys move it.");
    assertThat(page.locator("[data-hung]").innerText())
        .isEqualTo("bar 1: x 33, y 32.5, height 18 cm");

    button(page, "Undo the last move").click();
    assertThat(number(page, "x of its centre, cm").inputValue()).isEqualTo("32");
    assertThat(number(page, "y of its centre, cm").inputValue()).isEqualTo("27.5");
    assertThat(button(page, "Back to an even row").isDisabled()).isTrue();

    light = light(page);
    grip(page, 1).scrollIntoViewIfNeeded();
    BoundingBox box = grip(page, 1).boundingBox();
    double x = box.x + box.width / 2;
    double y = box.y + box.height / 2;
    double scale =
        ((Number) page.evaluate("document.querySelector('[data-view=plan-a]').plane.w / 120"))
            .doubleValue();
    page.mouse().move(x, y);
    page.mouse().down();
    page.mouse().move(x - 5 * scale, y);
    page.mouse().move(x - 10 * scale, y + 8 * scale);
    page.mouse().up();
    otherLight(page, light);
    assertThat(page.locator("[data-rig=a] select").inputValue()).isEqualTo("1");
    assertThat(number(page, "x of its centre, cm").inputValue()).isEqualTo("78");
    assertThat(number(page, "y of its centre, cm").inputValue()).isEqualTo("19.5");
    number(page, "Its height, cm").fill("0,25 m");
    number(page, "Turn about the vertical, °").fill("30");
    number(page, "Tilt about its length, °").fill("−10");
    assertThat(page.locator("[data-grips=a] .turn").getAttribute("aria-valuenow")).isEqualTo("30");
    page.locator("[data-grips=a] .turn").focus();
    page.keyboard().press("Shift+ArrowLeft");
    page.keyboard().press("ArrowRight");
    assertThat(number(page, "Turn about the vertical, °").inputValue()).isEqualTo("34");

    page.locator("#rig-name").fill("own");
    page.locator("#take").click();
    page.getByText("The setup has the rig own now.").waitFor();
    assertThat(server.workspace().benches().setup(id).text())
        .contains("x: 78, y: 19.5, height: 25, tilt: -10, yaw: 34");

    button(page, "Back to an even row").click();
    assertThat(number(page, "y of its centre, cm").inputValue()).isEqualTo("23.5");
    assertThat(number(page, "Its height, cm").inputValue()).isEqualTo("21.5");
    assertThat(number(page, "Turn about the vertical, °").inputValue()).isEqualTo("0");
    assertThat(button(page, "Back to an even row").isDisabled()).isTrue();
    screens.nothingFailed();
  }

  @Test
  @DisplayName("what is no number within the limits is told beside its field and kept")
  void nonsense() {
    Page page = open(fitted(), Screens.LAPTOP, ColorScheme.LIGHT);
    page.locator("[data-rig=a] summary").click();
    String[][] typed = {
      {
        "x of its centre, cm",
        "12o",
        "12o: o is not the unit of this field, which is cm: type the" + " number alone"
      },
      {"y of its centre, cm", "900", "got 900, allowed −30 to 85 cm: type a number within"},
      {"Its height, cm", "", "type a number from 1 to 80 cm"},
      {"Tilt about its length, °", "<b>", "<b> is no number: type one from −90 to 90°"},
      {"Number of fixtures", "2.5", "2.5 is no whole number: type one from 1 to 6"},
      {"Height, cm", "1,234", "1,234 may mean 1234 or 1.234: type the one you mean"},
    };
    for (String[] each : typed) {
      Locator field = number(page, each[0]);
      field.fill(each[1]);
      String fault = field.getAttribute("aria-describedby");
      assertThat(page.locator("#" + fault).innerText()).isEqualTo(each[2]);
      assertThat(field.getAttribute("aria-invalid")).isEqualTo("true");
    }
    assertThat(number(page, "y of its centre, cm").inputValue()).isEqualTo("900");
    assertThat(grip(page, 0).getAttribute("aria-label")).startsWith("bar 1: x 32, y 27.5");
    Screens.accessible(page);
    screens.nothingFailed();
  }

  @Test
  @DisplayName("two rigs are compared with fixtures moved in either; accessible at every size")
  void compared() {
    UUID id = fitted();
    for (ColorScheme theme : new ColorScheme[] {ColorScheme.LIGHT, ColorScheme.DARK}) {
      for (int[] size : new int[][] {Screens.LAPTOP, Screens.PHONE}) {
        Page page = open(id, size, theme);
        page.locator("#compare").check();
        page.locator("#rig-b").selectOption("low");
        page.waitForFunction(
            "() => document.querySelector('[data-caption=difference]').textContent.includes('100"
                + " %')");
        Locator second = page.locator("[data-grips=b] .grip").first();
        second.focus();
        for (int i = 0; i < 3; i++) {
          page.keyboard().press("Shift+ArrowDown");
        }
        page.waitForFunction(
            "() => !document.querySelector('[data-caption=difference]').textContent.includes('100"
                + " %')");
        assertThat(grip(page, 0).getAttribute("aria-label")).contains("y 27.5");
        assertThat(second.getAttribute("aria-label")).contains("y 12.5");
        page.locator("[data-rig=b] summary").click();
        Screens.accessible(page);
        assertThat(
                ((Number)
                        page.evaluate(
                            "() => Math.min(...[...document.querySelectorAll('.grips button')].map(b"
                                + " => Math.min(b.offsetWidth, b.offsetHeight)))"))
                    .doubleValue())
            .isGreaterThanOrEqualTo(44);
        if (theme == ColorScheme.LIGHT) {
          Screens.shoot(page, "explore-single" + (size == Screens.PHONE ? "-phone" : ""));
        }
        page.context().close();
      }
    }
    screens.nothingFailed();
  }

  @Test
  @DisplayName("rocks are drawn in every view and told in words")
  void rocks() {
    UUID id = fitted(ROCKS);
    Page page = open(id, Screens.LAPTOP, ColorScheme.LIGHT);
    page.locator("#depth-number").fill("38");
    page.locator("[data-solid] summary").click();
    page.waitForFunction(
        "() => document.querySelector('[data-solid-told]').textContent.includes('% of the water')");
    assertThat(page.locator("[data-solid-told]").innerText())
        .endsWith(
            "Rocks: ledge, a box of 35 × 15 × 8 cm at x 30, y 38; heap, an ellipsoid of 40 × 25 ×"
                + " 22 cm at x 78, y 27.");
    assertThat(page.locator("[data-view=solid]").screenshot().length).isGreaterThan(5_000);
    page.getByText("The plane as a table").click();
    // The heap fills the middle: of the table's places, x 78 and y 27.5 lie in it.
    assertThat(page.locator("[data-table] tbody tr").nth(3).locator("td").nth(6).innerText())
        .isEqualTo("rock");
    assertThat(page.locator("[data-table] tbody").innerText()).doesNotContain("NaN");
    Screens.accessible(page);
    Screens.shoot(page.locator("[data-view=solid]"), "explore-rocks");
    Screens.shoot(page.locator("[data-views]"), "explore-rocks-plans");
    screens.nothingFailed();
  }

  @Test
  @DisplayName("each move of the hand is followed by a picture; -Dtimes=40 tells how long it waits")
  void times() {
    Page page = open(fitted(), Screens.LAPTOP, ColorScheme.LIGHT);
    page.waitForTimeout(2_500);
    Locator ranges = page.locator("[data-rig=a] > .field input[type=range]");
    ranges.last().focus();
    time(page, "dial", i -> page.keyboard().press("ArrowLeft"));
    ranges.first().focus();
    time(page, "height", i -> page.keyboard().press("ArrowRight"));
    grip(page, 0).focus();
    time(page, "fixture by keys", i -> page.keyboard().press("ArrowRight"));
    grip(page, 0).scrollIntoViewIfNeeded();
    BoundingBox box = grip(page, 0).boundingBox();
    double x = box.x + box.width / 2;
    double y = box.y + box.height / 2;
    page.mouse().move(x, y);
    page.mouse().down();
    time(page, "fixture dragged", i -> page.mouse().move(x - 4 * i, y + 2 * i));
    page.mouse().up();
  }

  private static void time(Page page, String what, IntConsumer act) {
    int warming = TIMES / 4;
    double[] times =
        IntStream.rangeClosed(1, TIMES)
            .mapToDouble(
                i -> {
                  page.evaluate("globalThis.parfieldTimes = []");
                  act.accept(i);
                  page.waitForFunction("() => globalThis.parfieldTimes.length > 0");
                  double time =
                      ((Number) page.evaluate("globalThis.parfieldTimes[0]")).doubleValue();
                  page.waitForTimeout(50);
                  return time;
                })
            .skip(warming)
            .sorted()
            .toArray();
    assertThat(times).as("a picture for each move").hasSize(TIMES - warming);
    System.out.printf(
        Locale.ROOT,
        "%s: median %.0f ms, 95th percentile %.0f ms of %d%n",
        what,
        times[times.length / 2],
        times[(int) Math.ceil(0.95 * times.length) - 1],
        times.length);
  }
}
