package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;

/** A search that outlives its page, and what it found under the keyboard, in a real browser. */
class BackgroundWorkTest {
  /** No search lasts so long unless something is broken [ms]. */
  private static final int LONG = 300_000;

  @TempDir private static Path folder;
  private static Screens screens;
  private static TestServer server;
  private static String bench;

  @BeforeAll
  static void start() {
    screens = Screens.start();
    server = TestServer.start(folder);
    UUID id = server.sample();
    bench = server.address("/bench/" + id);
    server.post("/bench/" + id + "/model/fit", Map.of());
    Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(bench + "/model");
    await(page.getByText("The model misses a reading by"));
    page.context().close();
  }

  @AfterAll
  static void stop() {
    if (server != null) {
      server.close();
      screens.close();
    }
  }

  private static void await(Locator place) {
    place.waitFor(new Locator.WaitForOptions().setTimeout(LONG));
  }

  private static Page recommend(Map<String, String> fields) {
    Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(bench + "/recommend");
    fields.forEach((field, value) -> page.locator("#" + field).fill(value));
    page.locator("button.main", new Page.LocatorOptions().setHasText("Recommend")).click();
    return page;
  }

  @Test
  @DisplayName("a page that is loaded again finds the search, and its best when it is stopped")
  void reload() {
    Page page = recommend(Map.of("counts", "1, 2, 3, 4", "heights", "6:60:1"));
    await(page.locator("[data-work]"));
    String work = page.locator("[data-work]").getAttribute("data-work");

    page.reload();
    assertThat(page.locator("[data-work]").getAttribute("data-work")).isEqualTo(work);
    Page other = screens.page(Screens.PHONE, ColorScheme.LIGHT);
    other.navigate(bench + "/recommend");
    assertThat(other.locator("[data-work]").getAttribute("data-work")).isEqualTo(work);
    assertThat(other.locator("#heights").inputValue()).isEqualTo("6:60:1");

    await(page.locator("[data-cancel]"));
    assertThat(page.locator("[data-cancel]").innerText()).isEqualTo("Cancel, keep the best so far");
    page.locator("[data-cancel]").click();
    await(page.getByText("The search was stopped: this is the best found by then"));
    await(other.getByText("The search was stopped: this is the best found by then"));
    screens.nothingFailed();
  }

  @Test
  @DisplayName("arrow keys walk the options of the plot as they lie, and come round")
  void arrows() {
    Page page = recommend(Map.of("counts", "1, 2", "heights", "18, 25, 32", "spacings", "50, 60"));
    await(page.locator(".trade a.point").nth(1));
    Locator points = page.locator(".trade a.point");
    String place =
        "() => document.activeElement.querySelector('g')?.getCTM().e + '|' +"
            + " document.activeElement.getAttribute('href')";
    points.first().focus();
    Set<String> seen = new LinkedHashSet<>();
    for (int i = 0; i < points.count(); i++) {
      page.keyboard().press("ArrowRight");
      seen.add(String.valueOf(page.evaluate(place)));
    }

    assertThat(seen).as("each option once").hasSize(points.count());
    List<Double> across =
        seen.stream().map(at -> Double.valueOf(at.substring(0, at.indexOf('|')))).toList();
    int falls = 0;
    for (int i = 1; i < across.size(); i++) {
      falls += across.get(i) < across.get(i - 1) ? 1 : 0;
    }
    assertThat(falls).as("from left to right, round once at most: %s", across).isLessThan(2);

    page.keyboard().press("ArrowLeft");
    page.keyboard().press("ArrowRight");
    assertThat(String.valueOf(page.evaluate(place)))
        .isEqualTo(List.copyOf(seen).get(seen.size() - 1));
    String chosen =
        String.valueOf(page.evaluate("() => document.activeElement.getAttribute('href')"));
    page.keyboard().press("Enter");
    page.waitForURL(url -> url.endsWith(chosen));
    assertThat(page.locator(".trade a.chosen").count()).isPositive();
    screens.nothingFailed();
  }

  @Test
  @DisplayName("one token is one colour by day and another by night, by system or by choice")
  void tokens() {
    String ink = "() => getComputedStyle(document.documentElement).getPropertyValue('--ink')";
    Page light = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    Page dark = screens.page(Screens.LAPTOP, ColorScheme.DARK);
    light.navigate(server.address("/"));
    dark.navigate(server.address("/"));
    Object day = light.evaluate(ink);
    Object night = dark.evaluate(ink);
    assertThat(day).isEqualTo("rgb(29, 36, 38)");
    assertThat(night).isEqualTo("rgb(230, 233, 232)");

    light.locator("[data-choose-theme]").click();
    dark.locator("[data-choose-theme]").click();
    assertThat(light.evaluate(ink)).isEqualTo(night);
    assertThat(dark.evaluate(ink)).isEqualTo(day);
    screens.nothingFailed();
  }
}
