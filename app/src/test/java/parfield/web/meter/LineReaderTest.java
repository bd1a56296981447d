package parfield.web.meter;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Bytes of a meter become lines, whatever comes. */
class LineReaderTest {
  private static List<LineReader.Line> read(LineReader reader, byte[] bytes) {
    return reader.accept(bytes, bytes.length);
  }

  private static List<LineReader.Line> read(String text, Charset charset) {
    return read(new LineReader(true), text.getBytes(charset));
  }

  private static List<LineReader.Line> read(String text) {
    return read(text, StandardCharsets.UTF_8);
  }

  @Test
  @DisplayName("a line ends with CR, LF or both; empty ones are none")
  void ends() {
    assertThat(read("71.5\r\n72\r73\n\n \r\n74\n"))
        .extracting(LineReader.Line::text)
        .containsExactly("71.5", "72", "73", "74");
  }

  @Test
  @DisplayName("a line may come in any pieces")
  void pieces() {
    LineReader reader = new LineReader(true);

    assertThat(read(reader, "71".getBytes(StandardCharsets.UTF_8))).isEmpty();
    assertThat(read(reader, ".5\r".getBytes(StandardCharsets.UTF_8)))
        .extracting(LineReader.Line::text)
        .containsExactly("71.5");
    assertThat(read(reader, "\n7".getBytes(StandardCharsets.UTF_8))).isEmpty();
    assertThat(reader.finish()).map(LineReader.Line::text).hasValue("7");
    assertThat(reader.finish()).isEmpty();
  }

  @Test
  @DisplayName("the rest of a line that began before the connection is not used: 3.4 of 123.4")
  void halfLineAtTheStart() {
    List<LineReader.Line> lines =
        read(new LineReader(false), "3.4\n123.5\n".getBytes(StandardCharsets.UTF_8));

    assertThat(lines.get(0).trouble()).hasValue("it may have begun before the connection");
    assertThat(lines.get(1)).isEqualTo(new LineReader.Line("123.5", java.util.Optional.empty()));
  }

  @Test
  @DisplayName("µ is read in UTF-8 and in Latin-1")
  void encodings() {
    assertThat(read("71 µmol\n", StandardCharsets.UTF_8).get(0).text()).isEqualTo("71 µmol");
    assertThat(read("71 µmol\n", StandardCharsets.ISO_8859_1).get(0).text()).isEqualTo("71 µmol");
  }

  @Test
  @DisplayName("UTF-16, zero bytes and noise are told apart and not used")
  void wrongEncodings() {
    assertThat(read("71.5\n", StandardCharsets.UTF_16LE).get(0).trouble())
        .hasValue("it holds zero bytes: another encoding, or the speed of the port is wrong");
    assertThat(read("12\u00023.4\n").get(0))
        .isEqualTo(
            new LineReader.Line(
                "12�3.4",
                java.util.Optional.of(
                    "it holds characters that no meter writes: noise, or the speed of the port is"
                        + " wrong")));
    assertThat(
            read(new LineReader(true), new byte[] {'1', (byte) 0xC3, '2', '\n'}).get(0).trouble())
        .as("a byte that is neither UTF-8 nor a sign of a unit")
        .isPresent();
  }

  @Test
  @DisplayName("a line without an end is cut, told once, and the next is read")
  void tooLong() {
    List<LineReader.Line> lines = read("9".repeat(100_000) + "\n71.5\n");

    assertThat(lines).hasSize(2);
    assertThat(lines.get(0).text()).hasSizeLessThan(70).endsWith("…");
    assertThat(lines.get(0).trouble())
        .hasValue(
            "it is longer than 200 characters: is this the meter's port, and its speed right?");
    assertThat(lines.get(1).text()).isEqualTo("71.5");
  }

  @Test
  @DisplayName("however bytes are cut into pieces, the lines are the same; any bytes do")
  void anyBytesInAnyPieces() {
    long seed = Long.getLong("parfield.seed", 20261130);
    SplittableRandom random = new SplittableRandom(seed);
    for (int round = 0; round < 300; round++) {
      byte[] bytes = new byte[random.nextInt(1, 900)];
      for (int i = 0; i < bytes.length; i++) {
        bytes[i] = (byte) (random.nextInt(8) == 0 ? '\n' : random.nextInt(-128, 128));
      }
      List<LineReader.Line> whole = read(new LineReader(false), bytes);
      LineReader reader = new LineReader(false);
      List<LineReader.Line> pieces = new ArrayList<>();
      for (int at = 0; at < bytes.length; ) {
        int length = Math.min(bytes.length - at, random.nextInt(1, 20));
        pieces.addAll(reader.accept(java.util.Arrays.copyOfRange(bytes, at, at + length), length));
        at += length;
      }

      assertThat(pieces).as("seed %d, round %d", seed, round).isEqualTo(whole);
    }
  }
}
