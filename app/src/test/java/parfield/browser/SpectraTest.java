package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.demo.DemoBench;
import parfield.web.TestServer;
import parfield.web.spectra.Asked;

/** Spectra in a real browser: dropped, laid over each other, slid and mixed. */
class SpectraTest {
  private static final Map<String, String> DEMO = DemoBench.files(1);

  /** Views whose pictures stand in the documents. */
  private static final List<String> SHOWN = List.of("overlay", "water", "mix");

  @TempDir private Path folder;
  private static Screens screens;
  private TestServer server;

  @BeforeAll
  static void open() {
    screens = Screens.start();
  }

  @AfterAll
  static void close() {
    if (screens != null) {
      screens.close();
    }
  }

  @BeforeEach
  void start() {
    server = TestServer.start(folder);
  }

  @AfterEach
  void stop() {
    server.close();
  }

  /** Lets files fall onto the page as a pointer would. */
  private static void drop(Page page, Map<String, String> files) {
    page.evaluate(
        "files => { const carried = new DataTransfer();"
            + " for (const [name, text] of Object.entries(files)) {"
            + " carried.items.add(new File([text], name)); }"
            + " document.querySelector('[data-drop]').dispatchEvent(new DragEvent('drop',"
            + " { dataTransfer: carried, bubbles: true, cancelable: true })); }",
        files);
  }

  private static Map<String, String> demo(String... names) {
    Map<String, String> files = new java.util.LinkedHashMap<>();
    for (String name : names) {
      files.put(name + ".csv", DEMO.get("spectra/" + name + ".csv"));
    }
    return files;
  }

  /** Goes to a view by its button, with the keyboard. */
  private static void view(Page page, String name) {
    page.locator(".views button", new Page.LocatorOptions().setHasText(name)).focus();
    page.keyboard().press("Enter");
    page.locator(".views button[aria-current=page]", new Page.LocatorOptions().setHasText(name))
        .waitFor();
  }

  private static void seen(Page page, String text) {
    page.waitForFunction(
        "text => document.querySelector('[data-seen]').textContent.includes(text)", text);
  }

  @Test
  @DisplayName("files are dropped, laid over a reference, sunk by a slider and mixed, by keyboard")
  void works() {
    Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
    page.navigate(server.address("/spectra"));
    Screens.accessible(page);
    drop(page, Map.of("bad.csv", "nm,relative_photon_flux\n400,1\n410,many\n"));
    page.locator("#refused").waitFor();
    assertThat(page.locator("#refused").innerText()).contains("bad.csv:3", "many");
    Screens.accessible(page);
    drop(page, demo("blue", "white", "violet", "reference"));
    page.waitForURL("**/spectra?s=**");
    assertThat(page.locator("[data-list] input:checked").count()).isEqualTo(4);

    page.locator("#f-ref").focus();
    page.locator("#f-ref").selectOption("reference");
    seen(page, "How alike, at equal PPFD");
    assertThat(page.url()).contains("ref=");

    view(page, "Under water");
    page.locator("#f-light").selectOption("white");
    page.locator("[data-slides=f-depth]").focus();
    for (int i = 0; i < 7; i++) {
      page.keyboard().press("ArrowRight");
    }
    assertThat(page.locator("#f-depth").inputValue()).isEqualTo("57");
    seen(page, "white, 57 cm deep");
    page.waitForFunction(
        "() => document.querySelector('[data-spoken]').textContent.includes('57 cm deep')");
    page.locator("#f-depth").fill("deep");
    page.waitForFunction("() => document.querySelector('#f-depth').ariaInvalid === 'true'");
    assertThat(page.locator("#e-depth").innerText()).contains("deep is no number");
    Screens.accessible(page);
    page.locator("#f-depth").fill("40,5");
    seen(page, "white, 40.5 cm deep");
    assertThat(page.locator("#e-depth").textContent()).isEmpty();

    view(page, "Mix");
    // The reference goes along from view to view; without it, it is a channel as the others are.
    assertThat(page.locator(".dials [data-slides]").count()).isEqualTo(3);
    page.locator("#f-ref").selectOption("none");
    page.waitForFunction("() => document.querySelectorAll('.dials [data-slides]').length === 4");
    page.locator("#f-ref").selectOption("reference");
    page.waitForFunction("() => document.querySelectorAll('.dials [data-slides]').length === 3");
    page.getByLabel("blue, µmol m⁻² s⁻¹").fill("100");
    page.getByLabel("white, µmol m⁻² s⁻¹").fill("80");
    page.getByLabel("violet, µmol m⁻² s⁻¹").fill("20");
    seen(page, "mix beside reference");
    String before = page.locator("[data-seen]").innerText();
    page.locator(".dials [data-slides]").first().focus();
    page.keyboard().press("ArrowLeft");
    page.keyboard().press("ArrowLeft");
    page.waitForFunction(
        "text => document.querySelector('[data-seen]').innerText !== text", before);
    assertThat(page.locator(".dials input[name]").first().inputValue()).isEqualTo("98");
    page.locator("summary", new Page.LocatorOptions().setHasText("Find the nearest")).focus();
    page.keyboard().press("Enter");
    page.locator("button[name=find]").focus();
    page.keyboard().press("Enter");
    page.getByText("The nearest setting, in whole percents").first().waitFor();
    String found = page.locator("[data-seen] tbody tr").first().locator("td").first().innerText();
    assertThat(page.locator(".dials input[name]").first().inputValue()).isEqualTo(found);
    screens.nothingFailed();
  }

  @Test
  @DisplayName("every view at both sizes, light and dark, with and without a bench")
  void accessible() {
    UUID bench = server.sample();
    server.post("/spectra/invented", Map.of());
    StringBuilder chosen = new StringBuilder();
    for (String name : new String[] {"blue", "white", "violet", "reference"}) {
      chosen.append("&s=shelf%2Finvented-").append(name).append(".csv%2F0");
    }
    chosen.append("&ref=shelf%2Finvented-reference.csv%2F0");
    for (String name : new String[] {"blue", "white", "violet"}) {
      chosen.append('&').append(Asked.field("full", "invented-" + name)).append("=80");
    }
    String typed = "&distance=50&width=40&tall=9&ppfd=300";
    for (ColorScheme theme : new ColorScheme[] {ColorScheme.LIGHT, ColorScheme.DARK}) {
      for (int[] size : new int[][] {Screens.LAPTOP, Screens.PHONE}) {
        Page page = screens.page(size, theme);
        for (String view :
            new String[] {"overlay", "bands", "water", "blend", "mix", "parts", "eyes"}) {
          page.navigate(server.address("/spectra?view=" + view + chosen + typed));
          Screens.accessible(page);
          if (theme == ColorScheme.LIGHT && SHOWN.contains(view)) {
            Screens.shoot(page, "spectra-" + view + (size == Screens.PHONE ? "-phone" : ""));
          }
        }
        page.navigate(server.address("/bench/" + bench + "/spectra"));
        assertThat(page.locator(".steps .beside a[aria-current=page]").count()).isEqualTo(1);
        Screens.accessible(page);
        page.context().close();
      }
    }
    screens.nothingFailed();
  }
}
