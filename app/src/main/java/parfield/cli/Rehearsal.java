package parfield.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.stream.Stream;
import parfield.demo.DemoBench;
import parfield.web.Server;
import parfield.workspace.Location;
import parfield.workspace.Workspace;

/**
 * Goes once through what makes people wait for the program: its help, the first page of the bench
 * in the browser, and the way from readings to a printed report. The launcher notes the classes
 * that this takes, and has them at hand from then on; nothing else uses it, and it leaves nothing
 * behind.
 */
final class Rehearsal {
  private Rehearsal() {}

  /**
   * Rehearses.
   *
   * @param args none
   * @throws IOException if the first page cannot be had
   */
  public static void main(String[] args) throws IOException {
    PrintWriter unheard = new PrintWriter(Writer.nullWriter());
    Parfield.run(unheard, unheard, "--help");
    Path folder = Files.createTempDirectory("parfield-rehearsal");
    try (Workspace workspace = Workspace.open(Location.parse(folder.resolve("w.db").toString()));
        Server server = Server.start(workspace, new Server.Options(0, false, Version.number()));
        InputStream page = URI.create(server.address()).toURL().openStream()) {
      page.readAllBytes();
      advise(folder, unheard);
    } finally {
      delete(folder);
    }
  }

  /** From readings to a printed report, over one rig. */
  private static void advise(Path folder, PrintWriter unheard) throws IOException {
    for (Map.Entry<String, String> file : DemoBench.files(1).entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.writeString(path, file.getValue());
    }
    String setup = folder.resolve(DemoBench.SETUP).toString();
    String model = folder.resolve("model.json").toString();
    String report = folder.resolve("report").toString();
    Parfield.run(unheard, unheard, "fit", setup, "--out", model);
    Parfield.run(
        unheard,
        unheard,
        "report",
        setup,
        "--model",
        model,
        "--heights",
        "20",
        "--spacings",
        "56",
        "--out",
        report);
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
