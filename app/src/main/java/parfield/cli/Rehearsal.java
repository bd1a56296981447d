package parfield.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;
import parfield.report.Printing;
import parfield.web.Server;
import parfield.workspace.Location;
import parfield.workspace.Workspace;

/**
 * Goes once through what makes people wait for the program: its help, the first page of the bench
 * in the browser, and printing. The launcher notes the classes that this takes, and has them at
 * hand from then on; nothing else uses it, and it leaves nothing behind.
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
    Printing.prepare();
    Path folder = Files.createTempDirectory("parfield-rehearsal");
    try (Workspace workspace = Workspace.open(Location.parse(folder.resolve("w.db").toString()));
        Server server = Server.start(workspace, new Server.Options(0, false, Version.number()));
        InputStream page = URI.create(server.address()).toURL().openStream()) {
      page.readAllBytes();
    } finally {
      delete(folder);
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
