package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;

/** From an empty workspace to a recommendation, in a real browser. */
class FlowTest {
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

  /** Goes by Tab to something and presses a key there, as a person without a pointer would. */
  private static void reach(Page page, String words, String key) {
    for (int i = 0; i < 80; i++) {
      page.keyboard().press("Tab");
      Object focused =
          page.evaluate(
              "(document.activeElement?.textContent || document.activeElement?.value || '').trim()");
      if (String.valueOf(focused).equals(words)) {
        page.keyboard().press(key);
        return;
      }
    }
    throw new AssertionError("the keyboard does not reach: " + words);
  }

  @Test
  @DisplayName("the whole flow by keyboard, then each screen at both sizes, light and dark")
  void flow() {
    Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(server.address("/"));
    assertThat(page.locator("h1").innerText()).contains("What does your light do");
    Screens.accessible(page);
    Screens.shoot(page.locator(".welcome"), "first-run");

    reach(page, "Open the sample bench", "Enter");
    page.waitForURL("**/measure");
    String bench = page.url().replace("/measure", "");
    Screens.accessible(page);

    page.navigate(bench + "/model");
    reach(page, "Fit the light model", "Enter");
    page.getByText("The model misses a reading by").waitFor();

    page.navigate(bench + "/recommend");
    reach(page, "Recommend", "Enter");
    page.locator("#advice").waitFor(new Locator.WaitForOptions().setTimeout(60_000));
    assertThat(page.locator(".hang").innerText()).contains("bar");
    page.locator(".trade a.point").first().focus();
    page.keyboard().press("ArrowRight");
    page.keyboard().press("Enter");
    page.waitForURL("**option=**");

    page.navigate(bench + "/publish");
    reach(page, "Make the report", "Enter");
    page.getByText("See it").waitFor(new Locator.WaitForOptions().setTimeout(90_000));
    reach(page, "See it", "Enter");
    page.waitForURL("**/report.html");
    assertThat(page.locator(".answer").evaluate("e => getComputedStyle(e).borderTopStyle"))
        .as("the style that the page brings is let in")
        .isEqualTo("solid");
    Screens.accessible(page);
    Screens.shoot(page, "report");
    Page phone = screens.page(Screens.PHONE, ColorScheme.LIGHT);
    phone.navigate(page.url());
    Screens.accessible(phone);
    phone.context().close();

    page.navigate(bench + "/explore");
    page.locator("[data-figures] tbody tr").first().waitFor();
    String before = page.locator("[data-caption=plan-a]").innerText();
    page.locator("[data-rig=a] input[type=range]").first().focus();
    for (int i = 0; i < 8; i++) {
      page.keyboard().press("ArrowRight");
    }
    page.waitForFunction(
        "text => document.querySelector('[data-caption=plan-a]').textContent !== text", before);
    page.locator("[data-view=plan-a]").focus();
    page.keyboard().press("ArrowRight");
    page.waitForFunction(
        "() => document.querySelector('[data-reading]').textContent.includes('µmol m⁻² s⁻¹')");

    for (ColorScheme theme : new ColorScheme[] {ColorScheme.LIGHT, ColorScheme.DARK}) {
      for (int[] size : new int[][] {Screens.LAPTOP, Screens.PHONE}) {
        Page each = screens.page(size, theme);
        for (String step :
            new String[] {"setup", "measure", "model", "explore", "recommend", "publish", "care"}) {
          each.navigate(bench + "/" + step);
          if (step.equals("explore")) {
            each.locator("[data-figures] tbody tr").first().waitFor();
          }
          Screens.accessible(each);
          if (theme == ColorScheme.LIGHT) {
            Screens.shoot(each, step + (size == Screens.PHONE ? "-phone" : ""));
          }
        }
        each.navigate(bench + "/measure");
        each.locator("main a[href*='/measure/']").first().click();
        each.waitForURL("**/measure/*");
        each.locator("#plan .point").first().waitFor();
        Screens.accessible(each);
        if (theme == ColorScheme.LIGHT) {
          Screens.shoot(each, "survey" + (size == Screens.PHONE ? "-phone" : ""));
        }
        each.context().close();
      }
    }
    screens.nothingFailed();
  }

  @Test
  @DisplayName("tank, fixtures and light in three dimensions are drawn")
  void solid() {
    java.util.UUID id = server.sample();
    server.post("/bench/" + id + "/model/fit", java.util.Map.of());
    Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(server.address("/bench/" + id + "/model"));
    page.getByText("The model misses a reading by").waitFor();
    page.navigate(server.address("/bench/" + id + "/explore"));
    page.locator("[data-figures] tbody tr").first().waitFor();
    page.locator("[data-solid] summary").click();
    page.waitForFunction(
        "() => document.querySelector('[data-solid-told]').textContent.includes('% of the water')");
    page.locator("[data-solid]").scrollIntoViewIfNeeded();
    assertThat(page.locator("[data-view=solid]").screenshot().length).isGreaterThan(5_000);
    Screens.shoot(page, "explore-solid");
    screens.nothingFailed();
  }
}
