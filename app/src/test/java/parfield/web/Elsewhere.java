package parfield.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import parfield.answer.BenchFit;
import parfield.cli.Run;
import parfield.field.FastSolver;
import parfield.formats.ModelFile;
import parfield.formats.SetupFile;

/**
 * The small invented bench and the light model that is fitted to it, and another tank under the
 * same kind of fixture: deeper, under a mesh, without a reading.
 */
public final class Elsewhere {
  /** The light model of the small bench, fitted once. */
  private static final class Fitted {
    static final byte[] MODEL =
        ModelFile.bytes(
            BenchFit.of(
                    List.copyOf(
                        SetupFile.gather(
                                "setup.yaml",
                                file("setup.yaml"),
                                Map.of(
                                    "low.csv", file("low.csv"),
                                    "high.csv", file("high.csv"),
                                    "white.csv", file("white.csv")))
                            .setup()
                            .surveys()
                            .values()),
                    new FastSolver())
                .model());
  }

  private Elsewhere() {}

  private static byte[] file(String name) {
    try (var in = Run.class.getResourceAsStream("bench/" + name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The model's file. */
  public static byte[] model() {
    return Fitted.MODEL.clone();
  }

  /** The setup of the other tank. */
  public static String setup() {
    String text = new String(file("setup.yaml"), StandardCharsets.UTF_8);
    return text.substring(0, text.indexOf("surveys:"))
            .replace("water: 40", "water: 45")
            .replace("back: film}", "back: painted}")
            .replace("surface: still", "surface: still\n  lid: {mesh: 0.85}")
        + text.substring(text.indexOf("bands:")).replace("coverage: 0.60", "coverage: 0.45");
  }

  /** Puts a bench with this setup into a server's workspace; its id. */
  public static UUID put(TestServer server, String name, String setup) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("setup.yaml", setup.getBytes(StandardCharsets.UTF_8));
    files.put("white.csv", file("white.csv"));
    return server.workspace().benchFiles().take(name, false, "setup.yaml", files, "test").bench();
  }

  /** Sends a file to the page as its form would. */
  static HttpResponse<String> bring(
      TestServer server, UUID bench, String filename, byte[] content, String name) {
    String boundary = "----a-boundary-of-the-test";
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    part(body, boundary, "name=\"name\"", name.getBytes(StandardCharsets.UTF_8));
    part(
        body,
        boundary,
        "name=\"file\"; filename=\"" + filename.replace("\"", "%22") + "\"",
        content);
    body.writeBytes(("--" + boundary + "--\r\n").getBytes(StandardCharsets.UTF_8));
    return server.send(
        server
            .request("/bench/" + bench + "/transfer/models")
            .header("Origin", server.server().address())
            .header("Accept", "text/html")
            .header("Content-Type", "multipart/form-data; boundary=" + boundary)
            .POST(BodyPublishers.ofByteArray(body.toByteArray()))
            .build());
  }

  private static void part(
      ByteArrayOutputStream body, String boundary, String what, byte[] content) {
    body.writeBytes(
        ("--" + boundary + "\r\nContent-Disposition: form-data; " + what + "\r\n\r\n")
            .getBytes(StandardCharsets.UTF_8));
    body.writeBytes(content);
    body.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
  }
}
