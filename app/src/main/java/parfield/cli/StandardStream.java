package parfield.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * Standard output or standard error as UTF-8, which remembers if something could not be written.
 * For one thread.
 */
final class StandardStream extends OutputStream {
  private final OutputStream out;
  private IOException failure;

  StandardStream(FileDescriptor descriptor) {
    this(new FileOutputStream(descriptor));
  }

  StandardStream(OutputStream out) {
    this.out = out;
  }

  PrintWriter writer() {
    return new PrintWriter(new OutputStreamWriter(this, StandardCharsets.UTF_8));
  }

  /** Why something was lost; empty if nothing was, or if the reader has had enough, as head has. */
  Optional<String> lost() {
    return Optional.ofNullable(failure)
        .map(e -> String.valueOf(e.getMessage()))
        .filter(reason -> !reason.contains("Broken pipe"));
  }

  @Override
  public void write(int b) throws IOException {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int count) throws IOException {
    try {
      out.write(bytes, from, count);
    } catch (IOException e) {
      failure = failure == null ? e : failure;
      throw e;
    }
  }
}
