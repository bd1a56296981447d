package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.options.ColorScheme;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;
import parfield.workspace.Location;
import parfield.workspace.ReadingRevision;
import parfield.workspace.Workspace;

/**
 * An older copy of the workspace is put back, as after a damaged disk, while a page is open that
 * knows more than the copy.
 */
class RestoredCopyTest {
  @TempDir private Path folder;
  private Process program;

  private void serve(int port) throws IOException {
    program =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "parfield.cli.Parfield",
                "serve",
                "--port",
                String.valueOf(port),
                "--workspace",
                folder.resolve("workspace.db").toString())
            .redirectErrorStream(true)
            .start();
    BufferedReader said =
        new BufferedReader(new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8));
    StringBuilder all = new StringBuilder();
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      all.append(line).append('\n');
      if (line.startsWith("Ctrl-C")) {
        return;
      }
    }
    throw new AssertionError("the server did not start: " + all);
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private UUID survey() {
    try (TestServer server = TestServer.start(folder)) {
      UUID bench = server.sample();
      server.post(
          "/bench/" + bench + "/measure",
          java.util.Map.of(
              "name", "walk", "rig", "low", "meter", "probe", "depths", "15", "columns", "4",
              "rows", "3"));
      return server.workspace().surveys().named(bench, "walk").id();
    }
  }

  private Path file(String ending) {
    return folder.resolve("workspace.db" + ending);
  }

  private void end() throws InterruptedException {
    program.destroy();
    program.waitFor();
  }

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
    UUID survey = survey();
    UUID bench;
    try (Workspace workspace =
        Workspace.open(Location.parse(folder.resolve("workspace.db").toString()))) {
      bench = workspace.surveys().get(survey).bench();
    }
    int port = freePort();
    String address = "http://localhost:" + port + "/bench/" + bench + "/measure/" + survey;
    try {
      serve(port);
      Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
      page.navigate(address);
      page.locator("#plan .point").first().waitFor();
      type(page, 101);
      until(page, "sync-words", "All stored");
      end();
      Files.copy(file(""), file(".copy"));
      serve(port);
      type(page, 102);
      type(page, 103);
      until(page, "sync-words", "All stored");
      until(page, "next-count", "3 of 20 read");
      end();
      Files.delete(file(""));
      Files.deleteIfExists(file("-wal"));
      Files.deleteIfExists(file("-shm"));
      Files.copy(file(".copy"), file(""));
      serve(port);

      until(page, "next-count", "1 of 20 read");
      until(page, "troubles", "103 is not stored. It was stored once, and the workspace no longer");
      page.navigate(address);
      until(page, "troubles", "2 readings are kept on this device alone.");
      page.getByText("Send all 2 again").click();
      until(page, "next-count", "3 of 20 read");
      until(page, "sync-words", "All stored");
      assertThat(page.locator("#troubles").isVisible()).isFalse();
      page.context().close();
      screens.nothingFailed();
    } finally {
      program.destroyForcibly().waitFor();
      screens.close();
    }
    try (Workspace workspace =
        Workspace.open(Location.parse(folder.resolve("workspace.db").toString()))) {
      List<ReadingRevision> stored = workspace.readings().of(survey);
      assertThat(stored)
          .extracting(reading -> (int) reading.entry().value().orElseThrow())
          .containsExactlyInAnyOrder(101, 102, 103);
    }
  }
}
