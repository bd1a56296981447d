package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.workspace.ReadingRevision;
import parfield.workspace.Workspace;

/**
 * An older copy of the workspace is put back, as after a damaged disk, while a page is open that
 * knows more than the copy.
 */
class RestoredCopyTest {
  @TempDir private Path folder;

  private static void type(Page page, int value) {
    page.locator("#entry").pressSequentially(String.valueOf(value));
    page.keyboard().press("Enter");
    page.waitForFunction("() => document.getElementById('entry').value === ''");
  }

  private static void until(Page page, String id, String words) {
    try {
      page.waitForFunction(
          "([id, words]) => document.getElementById(id).textContent.includes(words)",
          List.of(id, words),
          new Page.WaitForFunctionOptions().setTimeout(30_000));
    } catch (PlaywrightException e) {
      throw new AssertionError(
          id + " should say: " + words + "; it says: " + page.locator("#" + id).textContent(), e);
    }
  }

  @Test
  @DisplayName("what a page had stored and the copy does not hold is shown, and can be sent again")
  void restored() throws Exception {
    Screens screens = Screens.start();
    ServerProcess server = ServerProcess.in(folder);
    try {
      server.start();
      Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
      page.navigate(server.page());
      page.locator("#plan .point").first().waitFor();
      type(page, 101);
      until(page, "sync-words", "All stored");
      server.end();
      Files.copy(server.file(""), server.file(".copy"));
      server.start();
      type(page, 102);
      type(page, 103);
      until(page, "sync-words", "All stored");
      until(page, "next-count", "3 of 20 read");
      server.end();
      Files.delete(server.file(""));
      Files.deleteIfExists(server.file("-wal"));
      Files.deleteIfExists(server.file("-shm"));
      Files.copy(server.file(".copy"), server.file(""));
      server.start();

      until(page, "next-count", "1 of 20 read");
      until(page, "troubles", "103 is not stored. It was stored once, and the workspace no longer");
      page.navigate(server.page());
      until(page, "troubles", "2 readings are kept on this device alone.");
      page.getByText("Send all 2 again").click();
      until(page, "next-count", "3 of 20 read");
      until(page, "sync-words", "All stored");
      assertThat(page.locator("#troubles").isVisible()).isFalse();
      page.context().close();
      screens.nothingFailed();
    } finally {
      server.kill();
      screens.close();
    }
    try (Workspace workspace = server.workspace()) {
      List<ReadingRevision> stored = workspace.readings().of(server.survey());
      assertThat(stored)
          .extracting(reading -> (int) reading.entry().value().orElseThrow())
          .containsExactlyInAnyOrder(101, 102, 103);
    }
  }
}
