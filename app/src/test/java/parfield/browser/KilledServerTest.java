package parfield.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;
import parfield.workspace.Location;
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

  @Test
  @DisplayName("kill -9 of the server between and during entries: all there, none twice")
  void killed() throws Exception {
    Screens screens = Screens.start();
    UUID survey = survey();
    UUID bench;
    try (Workspace workspace =
        Workspace.open(Location.parse(folder.resolve("workspace.db").toString()))) {
      bench = workspace.surveys().get(survey).bench();
    }
    SplittableRandom random = new SplittableRandom(SEED);
    int port = freePort();
    Set<Integer> entered = new HashSet<>();
    try {
      serve(port);
      Page page = screens.page(Screens.LAPTOP, ColorScheme.LIGHT);
      page.navigate("http://localhost:" + port + "/bench/" + bench + "/measure/" + survey);
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
            program.destroyForcibly().waitFor();
          }
          if (page.locator("#later").isVisible()) {
            page.locator("#later").click();
          }
        }
        serve(port);
      }
      page.waitForFunction(
          "() => document.getElementById('sync-words').textContent === 'All stored'",
          null,
          new Page.WaitForFunctionOptions().setTimeout(60_000));
      page.context().close();
    } finally {
      program.destroyForcibly().waitFor();
      screens.close();
    }
    try (Workspace workspace =
        Workspace.open(Location.parse(folder.resolve("workspace.db").toString()))) {
      List<ReadingRevision> stored = workspace.readings().of(survey);
      assertThat(stored)
          .as("seed %d", SEED)
          .extracting(reading -> (int) reading.entry().value().orElseThrow())
          .containsExactlyInAnyOrderElementsOf(entered);
      assertThat(stored)
          .allMatch(reading -> workspace.readings().history(reading.reading()).size() == 1);
    }
  }
}
