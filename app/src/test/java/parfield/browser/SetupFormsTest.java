package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;

/** The setup in a real browser: drawn, dragged, moved by keys and typed. */
class SetupFormsTest {
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

  private static Page open(UUID id, int[] size, ColorScheme theme) {
    Page page = screens.page(size, theme);
    page.navigate(server.address("/bench/" + id + "/setup"));
    page.locator("[data-plan] .hung").first().waitFor();
    return page;
  }

  private static Locator field(Page page, String name) {
    return page.locator("[name='" + name + "']");
  }

  private static void drag(Page page, Locator what, double dx, double dy) {
    what.scrollIntoViewIfNeeded();
    BoundingBox box = what.boundingBox();
    double x = box.x + box.width / 2;
    double y = box.y + box.height / 2;
    page.mouse().move(x, y);
    page.mouse().down();
    page.mouse().move(x + dx / 2, y + dy / 2);
    page.mouse().move(x + dx, y + dy);
    page.mouse().up();
  }

  /** Pixels of the screen in a centimetre of a drawing. */
  private static double scale(Page page, String view) {
    return ((Number)
            page.evaluate(
                "view => { const svg = document.querySelector(view + ' svg'); return"
                    + " svg.getScreenCTM().a; }",
                view))
        .doubleValue();
  }

  @Test
  @DisplayName("a fixture is dragged, to scale, and its fields hold where it went")
  void drag() {
    UUID id = server.sample();
    Page page = open(id, Screens.LAPTOP, ColorScheme.LIGHT);
    double plan = scale(page, "[data-plan]");
    drag(page, page.locator("[data-plan] .hung .body").first(), 20 * plan, -5 * plan);
    assertThat(field(page, "/rigs/low/hang/0/x").inputValue()).isEqualTo("52");
    assertThat(field(page, "/rigs/low/hang/0/y").inputValue()).isEqualTo("32.5");
    assertThat(page.locator("[data-plan-words]").innerText())
        .isEqualTo(
            "120 by 55 cm from above, under rig low: bar at x 52, y 32.5; bar at x 88, y 27.5.");

    double side = scale(page, "[data-side]");
    drag(page, page.locator("[data-side] .hung .body").nth(1), 0, -7 * side);
    assertThat(field(page, "/rigs/low/hang/1/height").inputValue()).isEqualTo("25");
    assertThat(field(page, "/rigs/low/hang/1/x").inputValue()).isEqualTo("88");
    assertThat(page.locator("[data-side-words]").innerText())
        .isEqualTo("50 cm of water from the front; bar 18 cm above it; bar 25 cm above it.");

    page.locator(".save-bar button").click();
    page.waitForURL("**/setup");
    assertThat(server.workspace().benches().setup(id).text())
        .contains("{fixture: bar, x: 52, y: 32.5, height: 18}")
        .contains("{fixture: bar, x: 88, y: 27.5, height: 25}");
    screens.nothingFailed();
  }

  @Test
  @DisplayName("arrows move by 1 cm, with Shift by 10; what is typed is drawn")
  void keysAndFields() {
    Page page = open(server.sample(), Screens.LAPTOP, ColorScheme.LIGHT);
    Locator second = page.locator("[data-plan] .hung").nth(1);
    second.focus();
    page.keyboard().press("ArrowLeft");
    page.keyboard().press("ArrowUp");
    page.keyboard().press("ArrowUp");
    page.keyboard().press("Shift+ArrowLeft");
    assertThat(field(page, "/rigs/low/hang/1/x").inputValue()).isEqualTo("77");
    assertThat(field(page, "/rigs/low/hang/1/y").inputValue()).isEqualTo("29.5");
    assertThat(page.evaluate("document.activeElement.dataset.row")).isEqualTo("/rigs/low/hang/1");
    assertThat(page.locator("[data-told]").innerText()).isEqualTo("x 77, y 29.5 cm");

    page.locator("[data-side] .hung").first().focus();
    page.keyboard().press("Shift+ArrowUp");
    page.keyboard().press("ArrowDown");
    assertThat(field(page, "/rigs/low/hang/0/height").inputValue()).isEqualTo("27");

    field(page, "/rigs/low/hang/0/x").fill("0,5 m");
    field(page, "/tank/length").fill("150");
    page.waitForFunction(
        "() => document.querySelector('[data-plan-words]').textContent.startsWith('150 by 55 cm')");
    assertThat(page.locator("[data-plan-words]").innerText()).contains("bar at x 50, y 27.5");
    assertThat(page.locator("[data-pending]").innerText())
        .isEqualTo("5 fields changed, not stored yet");

    page.locator("#drawn-rig").selectOption("high");
    assertThat(page.locator("[data-plan-words]").innerText()).contains("under rig high");
    screens.nothingFailed();
  }

  @Test
  @DisplayName("a rock is added, dragged in both views and moved by keys; its fields follow")
  void rock() {
    UUID id = server.sample();
    Page page = open(id, Screens.LAPTOP, ColorScheme.LIGHT);
    page.getByText("Add a rock").click();
    page.locator("[data-plan] .rock").waitFor();
    String rock = "/tank/aquascape/rock";
    Locator above = page.locator("[data-plan] .rock");
    double plan = scale(page, "[data-plan]");
    drag(page, above.locator(".body"), -10 * plan, -12 * plan);
    assertThat(field(page, rock + "/x").inputValue()).isEqualTo("50");
    assertThat(field(page, rock + "/y").inputValue()).isEqualTo("39.5");
    double side = scale(page, "[data-side]");
    drag(page, page.locator("[data-side] .rock .body"), 0, -6 * side);
    assertThat(field(page, rock + "/above bottom").inputValue()).isEqualTo("6");
    assertThat(page.locator("[data-side-words]").innerText())
        .endsWith("Rocks: rock from 6 to 21 cm above the bottom.");

    page.locator("[data-side] .rock").focus();
    page.keyboard().press("ArrowDown");
    page.keyboard().press("Shift+ArrowRight");
    assertThat(page.locator("[data-told]").innerText()).isEqualTo("x 60, above bottom 5 cm");
    page.locator("[name='shape:" + rock + "']").selectOption("ellipsoid");
    page.locator("[data-plan] .rock ellipse").waitFor();
    field(page, rock + "/yaw").fill("45");
    assertThat(page.locator("[data-plan] .rock").getAttribute("aria-label"))
        .startsWith("rock, ellipsoid: x 60, y 39.5, foot 5 cm above the bottom");
    Screens.accessible(page);
    Screens.shoot(page.locator(".drawing"), "setup-rock");

    page.locator(".save-bar button").click();
    page.waitForURL("**/setup");
    assertThat(server.workspace().benches().setup(id).text())
        .contains(
            "rock: {ellipsoid: {length: 24, width: 16.5, height: 15}, x: 60, y: 39.5, above"
                + " bottom: 5, yaw: 45}");
    screens.nothingFailed();
  }

  /** Goes by Tab until something with these words, this name or this label has the focus. */
  private static void reach(Page page, String wanted) {
    for (int i = 0; i < 250; i++) {
      page.keyboard().press("Tab");
      Object focused =
          page.evaluate(
              "() => { const at = document.activeElement; return [at.name, (at.textContent ||"
                  + " '').trim(), at.getAttribute('aria-label'), at.dataset?.row].join('|'); }");
      if (String.valueOf(focused).contains(wanted)) {
        return;
      }
    }
    throw new AssertionError("the keyboard does not reach: " + wanted);
  }

  private static void type(Page page, String field, String value) {
    reach(page, field + "|");
    page.keyboard().press("Control+a");
    page.keyboard().type(value);
  }

  @Test
  @DisplayName("by keyboard alone from a blank bench to a setup of one's own")
  void keyboardAlone() throws IOException {
    try (TestServer empty = TestServer.start(Files.createDirectories(folder.resolve("empty")))) {
      keyboardAlone(empty);
    }
  }

  private static void keyboardAlone(TestServer empty) {
    Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(empty.address("/"));
    reach(page, "|Begin a bench|");
    page.keyboard().press("Enter");
    page.waitForURL("**/setup");
    page.locator("[data-plan] .hung").waitFor();
    UUID id = UUID.fromString(page.url().replaceAll(".*/bench/([0-9a-f-]+)/.*", "$1"));

    reach(page, "/rigs/first/hang/0");
    page.keyboard().press("ArrowRight");
    type(page, "/tank/length", "12o");
    type(page, "/tank/water", "45");
    page.keyboard().press("Enter");
    page.locator("#faults").waitFor();
    assertThat(page.locator("#faults").innerText())
        .contains("12o: o is no unit of length here: type the number alone");
    assertThat(field(page, "/tank/length").inputValue()).isEqualTo("12o");
    assertThat(field(page, "/tank/water").inputValue()).isEqualTo("45");
    assertThat(field(page, "/rigs/first/hang/0/x").inputValue()).isEqualTo("46");
    Screens.accessible(page);

    reach(page, "12o: o is no unit");
    page.keyboard().press("Enter");
    assertThat(page.evaluate("document.activeElement.name")).isEqualTo("/tank/length");
    page.keyboard().press("Control+a");
    page.keyboard().type("120");
    reach(page, "Add a band");
    page.keyboard().press("Enter");
    page.waitForURL("**/setup#*");
    type(page, "name:/bands/band", "shade");
    page.keyboard().press("Enter");
    page.waitForURL("**/setup");

    assertThat(empty.workspace().benches().setup(id).text())
        .contains("# A beginning: change what is different on your bench.")
        .contains("length: 120")
        .contains("water: 45")
        .contains("x: 46")
        .contains("shade: {from: 100, to: 200}");
    screens.nothingFailed();
  }

  @Test
  @DisplayName("forms, drawing and text are accessible at both sizes, light and dark")
  void accessible() {
    UUID id = server.sample();
    for (ColorScheme theme : new ColorScheme[] {ColorScheme.LIGHT, ColorScheme.DARK}) {
      for (int[] size : new int[][] {Screens.LAPTOP, Screens.PHONE}) {
        Page page = open(id, size, theme);
        String look =
            (size == Screens.PHONE ? "-phone" : "") + (theme == ColorScheme.DARK ? "-dark" : "");
        Screens.accessible(page);
        Screens.shoot(page.locator(".drawing"), "setup-drawing" + look);
        page.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true; })");
        field(page, "/tank/walls/left").selectOption("as follows");
        Screens.accessible(page);
        field(page, "/rigs/low/hang/0/height").fill("0");
        page.locator(".save-bar button").click();
        page.locator("#faults").waitFor();
        Screens.accessible(page);
        page.navigate(server.address("/bench/" + id + "/setup/text"));
        Screens.accessible(page);
        if (size == Screens.PHONE) {
          page.navigate(server.address("/bench/" + id + "/setup"));
          page.locator("[data-plan] .hung").first().waitFor();
          assertThat(
                  page.evaluate(
                      "() => Math.min(...[...document.querySelectorAll('.hung .grip, main button,"
                          + " main input:not([type=hidden]), main select')].map(e =>"
                          + " e.getBoundingClientRect()).filter(r => r.width > 0).map(r =>"
                          + " r.height))"))
              .satisfies(height -> assertThat(((Number) height).doubleValue()).isGreaterThan(43.9));
        }
        page.context().close();
      }
    }
    screens.nothingFailed();
  }
}
