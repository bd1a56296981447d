package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class StandardStreamTest {
  private static StandardStream failing(String reason) {
    return new StandardStream(
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException(reason);
          }
        });
  }

  private static StandardStream written(StandardStream stream) {
    try (PrintWriter writer = stream.writer()) {
      writer.print("µmol");
    }
    return stream;
  }

  @Test
  void writesUtf8WhateverTheTerminalIsSetTo() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();

    assertThat(written(new StandardStream(bytes)).lost()).isEmpty();
    assertThat(bytes.toString(StandardCharsets.UTF_8)).isEqualTo("µmol");
  }

  @Test
  void tellsWhyAnAnswerWasLost() {
    assertThat(written(failing("No space left on device")).lost())
        .contains("No space left on device");
  }

  @Test
  void aReaderThatHasHadEnoughIsNoFault() {
    assertThat(written(failing("Broken pipe")).lost()).isEmpty();
  }
}
