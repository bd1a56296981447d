package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;

/** The page Care in a real browser: asked, answered and mended by keyboard. */
class CareTest {
  @TempDir private static Path folder;
  private static Screens screens;
  private static TestServer server;
  private static String care;

  @BeforeAll
  static void start() {
    screens = Screens.start();
    server = TestServer.start(folder);
    UUID id = server.sample();
    server.post("/bench/" + id + "/model/fit", Map.of());
    Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(server.address("/bench/" + id + "/model"));
    page.getByText("The model misses a reading by")
        .waitFor(new Locator.WaitForOptions().setTimeout(60_000));
    page.context().close();
    care = server.address("/bench/" + id + "/care");
  }

  @AfterAll
  static void stop() {
    if (server != null) {
      server.close();
      screens.close();
    }
  }

  private static Page open(int[] size, ColorScheme theme) {
    Page page = screens.page(size, theme);
    page.setDefaultNavigationTimeout(60_000);
    return page;
  }

  /** Every picture of the page is there, and says in words what it shows. */
  private static void pictured(Page page) {
    page.waitForFunction(
        "() => [...document.querySelectorAll('.pictures img')].every(img => img.complete &&"
            + " img.naturalWidth > 0)");
    for (Locator picture : page.locator(".pictures img").all()) {
      assertThat(picture.getAttribute("alt")).hasSizeGreaterThan(60);
    }
  }

  @Test
  @DisplayName("maps of a depth and a group, their tables, faults and their cure, by keyboard")
  void asked() {
    Page page = open(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(care);
    pictured(page);
    assertThat(page.locator(".pictures img").count()).isEqualTo(4);
    page.locator("#maps").focus();
    page.keyboard().type("30,0 cm");
    page.locator("#group").selectOption("small polyps");
    page.locator("#maps").focus();
    page.keyboard().press("Enter");
    page.waitForURL("**maps=30**");
    pictured(page);
    assertThat(page.locator("img[src*='dose.svg']").getAttribute("alt"))
        .contains("30 cm deep", "Mean ", "mol m⁻² d⁻¹; intervals from 5 to 95 %");
    assertThat(page.locator("img[src*='homes.svg']").getAttribute("alt"))
        .contains("30 cm deep", "For small polyps, by area: home ");
    Locator table = page.locator("summary", named("The map as a table"));
    table.focus();
    page.keyboard().press("Enter");
    assertThat(page.locator("details[open] tbody tr").count()).isEqualTo(3);
    Screens.accessible(page);

    page.locator("#lit").fill("late");
    page.locator("#x").fill("400");
    page.locator("#tariff").fill("0,30");
    page.keyboard().press("Enter");
    page.waitForURL("**lit=late**");
    assertThat(page.locator("#fault-lit").innerText()).contains("got late");
    assertThat(page.locator("#lit").getAttribute("aria-describedby")).isEqualTo("fault-lit");
    assertThat(page.locator("#tariff").inputValue()).isEqualTo("0,30");
    assertThat(page.locator("#maps").inputValue()).isEqualTo("30,0 cm");
    Screens.accessible(page);
    Screens.shoot(page, "care-faults");
    page.locator(".problem a").nth(1).focus();
    page.keyboard().press("Enter");
    assertThat(page.evaluate("() => location.hash")).isEqualTo("#x");

    page.locator("#lit").fill("09:00-19:00");
    page.locator("#x").fill("60");
    page.keyboard().press("Enter");
    page.waitForURL("**lit=09**");
    pictured(page);
    assertThat(page.locator(".fault").count()).isZero();
    screens.nothingFailed();
  }

  private static Page.LocatorOptions named(String text) {
    return new Page.LocatorOptions().setHasText(text);
  }

  @Test
  @DisplayName("answers with every table open, and faults, at both sizes, light and dark")
  void accessible() {
    for (ColorScheme theme : new ColorScheme[] {ColorScheme.LIGHT, ColorScheme.DARK}) {
      for (int[] size : new int[][] {Screens.LAPTOP, Screens.PHONE}) {
        Page page = open(size, theme);
        page.navigate(care + "?rig=high&maps=20");
        pictured(page);
        if (theme == ColorScheme.LIGHT) {
          Screens.shoot(page, "care" + (size == Screens.PHONE ? "-phone" : ""));
        }
        page.evaluate("() => document.querySelectorAll('details').forEach(d => d.open = true)");
        Screens.accessible(page);
        page.navigate(care + "?lit=late&maps=900&revision=1.5&channels=none");
        assertThat(page.locator(".fault").count()).isEqualTo(4);
        Screens.accessible(page);
        page.context().close();
      }
    }
    screens.nothingFailed();
  }
}
