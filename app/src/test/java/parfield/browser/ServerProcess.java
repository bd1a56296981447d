package parfield.browser;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import parfield.web.TestServer;
import parfield.workspace.Location;
import parfield.workspace.Workspace;

/**
 * The server as a process of its own, which can be killed, over a workspace with a survey to type
 * readings into; always at the same port, so that an open page finds it again.
 */
final class ServerProcess {
  private final Path folder;
  private final int port;
  private final UUID bench;
  private final UUID survey;
  private Process program;

  private ServerProcess(Path folder, int port, UUID bench, UUID survey) {
    this.folder = folder;
    this.port = port;
    this.bench = bench;
    this.survey = survey;
  }

  /** A server over a new workspace with the sample bench and an empty survey; not started. */
  static ServerProcess in(Path folder) throws IOException {
    int port;
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = socket.getLocalPort();
    }
    try (TestServer server = TestServer.start(folder)) {
      UUID bench = server.sample();
      server.post(
          "/bench/" + bench + "/measure",
          Map.of(
              "name", "walk", "rig", "low", "meter", "probe", "depths", "15", "columns", "4",
              "rows", "3"));
      UUID survey = server.workspace().surveys().named(bench, "walk").id();
      return new ServerProcess(folder, port, bench, survey);
    }
  }

  UUID survey() {
    return survey;
  }

  /** The page on which readings of the survey are typed. */
  String page() {
    return "http://localhost:" + port + "/bench/" + bench + "/measure/" + survey;
  }

  /** A file of the workspace by what its name ends in. */
  Path file(String ending) {
    return folder.resolve("workspace.db" + ending);
  }

  /** Opens the workspace, while no server runs. */
  Workspace workspace() {
    return Workspace.open(Location.parse(file("").toString()));
  }

  /** Starts it and waits until it answers. */
  void start() throws IOException {
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
                file("").toString())
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

  /** Ends it as a person would. */
  void end() throws InterruptedException {
    program.destroy();
    program.waitFor();
  }

  /** Ends it as a power cut would, if it was started. */
  void kill() throws InterruptedException {
    if (program != null) {
      program.destroyForcibly().waitFor();
    }
  }
}
