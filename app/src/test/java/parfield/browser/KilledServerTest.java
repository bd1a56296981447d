package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.workspace.ReadingRevision;
import parfield.workspace.Workspace;

/**
 * The server is killed while a person enters readings, and started again: none is lost or doubled.
 */
class KilledServerTest {
  private static final int KILLS = 3;
  private static final int BETWEEN = 4;
  private static final long SEED = Long.getLong("parfield.seed", 20261130);

  @TempDir private Path folder;

  @Test
  @DisplayName("kill -9 of the server between and during entries: all there, none twice")
  void killed() throws Exception {
    Screens screens = Screens.start();
    ServerProcess server = ServerProcess.in(folder);
    SplittableRandom random = new SplittableRandom(SEED);
    Set<Integer> entered = new HashSet<>();
    try {
      server.start();
      Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
      page.navigate(server.page());
      page.locator("#plan .point").first().waitFor();
      for (int kill = 0; kill < KILLS; kill++) {
        for (int i = 0; i < BETWEEN; i++) {
          int value = 101 + entered.size();
          page.locator("#entry").pressSequentially(String.valueOf(value));
          page.keyboard().press("Enter");
          page.waitForFunction("() => document.getElementById('entry').value === ''");
          entered.add(value);
          if (i == 1) {
            TimeUnit.MILLISECONDS.sleep(random.nextInt(0, 60));
            server.kill();
          }
          if (page.locator("#later").isVisible()) {
            page.locator("#later").click();
          }
        }
        server.start();
      }
      page.waitForFunction(
          "() => document.getElementById('sync-words').textContent === 'All stored'",
          null,
          new Page.WaitForFunctionOptions().setTimeout(60_000));
      page.context().close();
    } finally {
      server.kill();
      screens.close();
    }
    try (Workspace workspace = server.workspace()) {
      List<ReadingRevision> stored = workspace.readings().of(server.survey());
      assertThat(stored)
          .as("seed %d", SEED)
          .extracting(reading -> (int) reading.entry().value().orElseThrow())
          .containsExactlyInAnyOrderElementsOf(entered);
      assertThat(stored)
          .allMatch(reading -> workspace.readings().history(reading.reading()).size() == 1);
    }
  }
}
