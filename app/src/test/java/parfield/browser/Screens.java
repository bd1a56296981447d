package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.LoadState;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** A real browser, where there is one: Debian's Chromium. Nothing is fetched. */
final class Screens implements AutoCloseable {
  /** A laptop's screen. */
  static final int[] LAPTOP = {1280, 800};

  /** A phone's. */
  static final int[] PHONE = {390, 844};

  private final Playwright playwright;
  private final Browser browser;
  private final List<String> complaints = new ArrayList<>();

  private Screens(Playwright playwright, Browser browser) {
    this.playwright = playwright;
    this.browser = browser;
  }

  /** Starts the browser; the test is skipped, with what to do, where there is none. */
  static Screens start() {
    Optional<Path> chromium = chromium();
    Assumptions.assumeTrue(
        chromium.isPresent(),
        "browser tests need Chromium: install the package chromium, and run them again");
    Map<String, String> environment = new HashMap<>(System.getenv());
    environment.put("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1");
    Playwright playwright = Playwright.create(new Playwright.CreateOptions().setEnv(environment));
    Browser browser =
        playwright
            .chromium()
            .launch(
                new BrowserType.LaunchOptions()
                    .setExecutablePath(chromium.get())
                    .setArgs(
                        List.of(
                            "--no-sandbox",
                            "--disable-gpu",
                            "--disable-quic",
                            "--no-first-run",
                            "--disable-background-networking",
                            "--disable-component-update",
                            "--disable-sync")));
    return new Screens(playwright, browser);
  }

  private static Optional<Path> chromium() {
    Stream<String> folders =
        Stream.concat(
            Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator)),
            Stream.of("/usr/bin"));
    return folders
        .flatMap(
            folder -> Stream.of("chromium", "chromium-browser").map(name -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .findFirst();
  }

  /** A page of a size and a theme; what the browser complains of is noted. */
  Page page(int[] size, ColorScheme theme) {
    BrowserContext context =
        browser.newContext(
            new Browser.NewContextOptions()
                .setViewportSize(size[0], size[1])
                .setColorScheme(theme));
    context.setDefaultTimeout(20_000);
    Page page = context.newPage();
    page.onConsoleMessage(this::note);
    page.onPageError(error -> complaints.add(error));
    return page;
  }

  private void note(ConsoleMessage message) {
    // A refused form answers 4xx on purpose, and some tests cut the network: the browser reports
    // both as a failed load.
    boolean meant =
        message.text().contains("the server responded with")
            || message.text().contains("net::ERR_INTERNET_DISCONNECTED")
            || message.text().contains("net::ERR_FAILED")
            || message.text().contains("net::ERR_CONNECTION_REFUSED");
    if (message.type().equals("error") && !meant) {
      complaints.add(message.text());
    }
  }

  /** Nothing failed in the browser so far: no script, no policy. */
  void nothingFailed() {
    assertThat(complaints).isEmpty();
  }

  /** No violation that the automated checker of WCAG knows of, and no sideways scrolling. */
  static void accessible(Page page) {
    List<Rule> violations = new AxeBuilder(page).analyze().getViolations();
    assertThat(violations)
        .as(page.url())
        .extracting(
            rule -> rule.getId() + ": " + rule.getHelp() + " " + rule.getNodes().get(0).getHtml())
        .isEmpty();
    assertThat(
            page.evaluate(
                "document.documentElement.scrollWidth - document.documentElement.clientWidth"))
        .as("scrolls sideways: " + page.url())
        .isEqualTo(0);
  }

  /** Leaves a picture of a page under docs/screens, with -Dscreens=true. */
  static void shoot(Page page, String name) {
    if (Boolean.getBoolean("screens")) {
      page.waitForLoadState(LoadState.NETWORKIDLE);
      page.evaluate("scrollTo(0, 0)");
      page.screenshot(new Page.ScreenshotOptions().setPath(target(name)).setFullPage(true));
    }
  }

  /** Leaves a picture of a part of a page. */
  static void shoot(Locator part, String name) {
    if (Boolean.getBoolean("screens")) {
      part.screenshot(new Locator.ScreenshotOptions().setPath(target(name)));
    }
  }

  private static Path target(String name) {
    return Path.of("..", "docs", "screens", name + ".png");
  }

  @Override
  public void close() {
    browser.close();
    playwright.close();
  }
}
