package parfield.web.meter;

import java.io.File;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * Two serial ports that are joined by a cable which is none: what is written to one is read at the
 * other.
 */
final class PseudoTerminal implements AutoCloseable {
  private final Path meter;
  private final Path port;
  private Process socat;
  private OutputStream out;

  PseudoTerminal(Path folder) {
    boolean there =
        Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
            .anyMatch(path -> Files.isExecutable(Path.of(path, "socat")));
    Assumptions.assumeTrue(
        there,
        "tests of the serial port need socat: install the package socat, and run them again");
    meter = folder.resolve("meter");
    port = folder.resolve("port");
  }

  /** The port that the program opens. */
  String port() {
    return port.toString();
  }

  /** Puts the plug in. */
  void plugIn() throws IOException, InterruptedException {
    socat =
        new ProcessBuilder("socat", "pty,raw,echo=0,link=" + meter, "pty,raw,echo=0,link=" + port)
            .redirectErrorStream(true)
            .start();
    for (int i = 0; i < 500 && !(Files.exists(port) && Files.exists(meter)); i++) {
      TimeUnit.MILLISECONDS.sleep(10);
    }
    out = new FileOutputStream(meter.toFile());
  }

  /** Pulls it. */
  void pull() throws IOException, InterruptedException {
    out.close();
    socat.destroy();
    socat.waitFor();
    Files.deleteIfExists(port);
    Files.deleteIfExists(meter);
  }

  void send(byte[] bytes) {
    try {
      out.write(bytes);
      out.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void send(String text) {
    send(text, StandardCharsets.UTF_8);
  }

  void send(String text, Charset charset) {
    send(text.getBytes(charset));
  }

  @Override
  public void close() {
    if (socat != null) {
      socat.destroy();
    }
  }
}
