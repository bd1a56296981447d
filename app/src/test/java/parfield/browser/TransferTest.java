package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.Elsewhere;
import parfield.web.TestServer;

/** A light model of another tank in a real browser: brought in, read against, updated. */
class TransferTest {
  /** No search lasts so long unless something is broken [ms]. */
  private static final int LONG = 300_000;

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

  private static void await(Locator place) {
    place.waitFor(new Locator.WaitForOptions().setTimeout(LONG));
  }

  /** Looks at the page in every size and theme. */
  private static void everywhere(String address, String text) {
    for (int[] size : List.of(Screens.LAPTOP, Screens.PHONE)) {
      for (ColorScheme theme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
        Page page = screens.page(size, theme);
        page.navigate(address);
        await(page.getByText(text).first());
        Screens.accessible(page);
        page.context().close();
      }
    }
  }

  private static FilePayload file(String name, byte[] content) {
    return new FilePayload(name, "application/json", content);
  }

  @Test
  @DisplayName("from the file to advice that three readings have updated, by keyboard")
  void wholeWay() {
    UUID id = Elsewhere.put(server, "Deep tank", Elsewhere.setup());
    String bench = server.address("/bench/" + id);
    Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(bench + "/model");
    Screens.accessible(page);
    page.getByText("Or begin with a model of another tank").focus();
    page.keyboard().press("Enter");
    page.waitForURL(bench + "/transfer");
    everywhere(bench + "/transfer", "Bring a model in");

    page.locator("#file").setInputFiles(file("model.json", "{}".getBytes(StandardCharsets.UTF_8)));
    page.locator("button.main").focus();
    page.keyboard().press("Enter");
    await(page.locator("#fault-file"));
    Screens.accessible(page);
    page.locator("[role=alert] a").focus();
    page.keyboard().press("Enter");
    assertThat(page.evaluate("() => document.activeElement.id")).isEqualTo("file");

    page.locator("#file").setInputFiles(file("model.json", Elsewhere.model()));
    page.locator("#name").fill("Their bench");
    page.keyboard().press("Enter");
    await(page.locator("#found"));
    page.reload();
    assertThat(page.locator("#found").innerText())
        .contains("By the model Their bench, before any reading", "no reading yet");
    assertThat(page.locator(".places .spot").count()).isEqualTo(3);
    everywhere(bench + "/transfer", "The three readings that would confirm it");
    Screens.shoot(page, "transfer");
    Page phone = screens.page(Screens.PHONE, ColorScheme.LIGHT);
    phone.navigate(bench + "/transfer");
    Screens.shoot(phone, "transfer-phone");
    phone.context().close();

    String before = page.locator("#found .hang").innerText();
    page.locator("#reading-1").focus();
    page.keyboard().type("dim");
    page.keyboard().press("Tab");
    page.keyboard().type("3000");
    page.keyboard().press("Enter");
    await(page.locator("#fault-reading-1"));
    assertThat(page.locator("#reading-1").inputValue()).isEqualTo("dim");
    assertThat(page.locator("#reading-2").inputValue()).isEqualTo("3000");
    assertThat(page.getByLabel("it is right: keep it").count()).isEqualTo(1);
    Screens.accessible(page);

    List<String> expected =
        page.locator("[id^=where-reading]").allInnerTexts().stream()
            .map(words -> words.replaceAll(".*should show (\\d+).*", "$1"))
            .toList();
    for (int i = 0; i < 3; i++) {
      page.locator("#reading-" + (i + 1)).fill(expected.get(i) + ",0");
    }
    page.keyboard().press("Enter");
    await(page.getByText("What the readings of this tank made of it"));
    assertThat(page.locator("#found").innerText())
        .contains("after the readings of this tank", "after the readings", "confirming-1 3");
    assertThat(page.locator("#found .hang").innerText())
        .as("the readings are what was expected")
        .isEqualTo(before);
    everywhere(bench + "/transfer", "What the readings of this tank made of it");

    page.getByText("Make it this bench's light model").click();
    await(page.getByText("This model was fitted over another tank"));
    everywhere(bench + "/model", "This model was fitted over another tank");
    screens.nothingFailed();
  }

  @Test
  @DisplayName("the three places are read in Measure, one after the other")
  void inMeasure() {
    UUID id = Elsewhere.put(server, "Measured tank", Elsewhere.setup());
    String bench = server.address("/bench/" + id);
    Page page = screens.page(Screens.PHONE, ColorScheme.LIGHT);
    page.navigate(bench + "/transfer");
    page.locator("#file").setInputFiles(file("theirs.json", Elsewhere.model()));
    page.locator("button.main").click();
    await(page.getByText("Read them in Measure instead"));
    page.getByText("Read them in Measure instead").click();
    page.waitForURL("**/measure/**");
    UUID survey = server.workspace().surveys().named(id, "confirming-1").id();
    for (String value : List.of("140", "110", "160")) {
      page.locator("#entry").fill(value);
      page.keyboard().press("Enter");
      page.waitForFunction("() => document.getElementById('entry').value === ''");
    }
    for (int i = 0; server.workspace().readings().of(survey).size() < 3; i++) {
      assertThat(i).as("tries until all three are stored").isLessThan(300);
      page.waitForTimeout(100);
    }
    page.navigate(bench + "/transfer");
    page.getByText("Apply it again").click();
    await(page.getByText("What the readings of this tank made of it"));
    assertThat(page.locator("#found").innerText()).contains("confirming-1 1");
    screens.nothingFailed();
  }
}
