package parfield.web.meter;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Cuts what a meter sends into lines, whatever it sends. A line ends with a carriage return, a line
 * feed or both; empty ones are passed over. What is no line of a meter comes out as a line with the
 * reason why. Keeps at most {@link #LONGEST} bytes. For a single thread.
 */
final class LineReader {
  /** Most bytes of a line. */
  static final int LONGEST = 200;

  private static final int SHOWN = 60;

  /** What meters write: printable ASCII and the signs of units. */
  private static final Pattern PLAIN = Pattern.compile("[\\t -~µμ°º⁰¹²³⁻·×−]*");

  private final ByteArrayOutputStream line = new ByteArrayOutputStream();
  private boolean begun;
  private boolean tooLong;

  /**
   * A line.
   *
   * @param text of it, without its end; shortened and made printable if it is not to be used
   * @param trouble why it is not to be used, as the end of a sentence
   */
  record Line(String text, Optional<String> trouble) {
    Line {
      Objects.requireNonNull(text, "text");
      Objects.requireNonNull(trouble, "trouble");
    }
  }

  /**
   * A reader.
   *
   * @param fromTheStart whether the first byte begins a line. A port that is opened while the meter
   *     writes gives the rest of a line first, which may look like a number and is none.
   */
  LineReader(boolean fromTheStart) {
    this.begun = fromTheStart;
  }

  /** The lines that these bytes complete. */
  List<Line> accept(byte[] bytes, int length) {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < length; i++) {
      byte next = bytes[i];
      if (next == '\n' || next == '\r') {
        end().ifPresent(lines::add);
      } else if (line.size() < LONGEST) {
        line.write(next);
      } else {
        tooLong = true;
      }
    }
    return lines;
  }

  /** What stands after the last end of a line, where the sender said that it has ended. */
  Optional<Line> finish() {
    return end();
  }

  private Optional<Line> end() {
    byte[] bytes = line.toByteArray();
    boolean whole = begun;
    boolean cut = tooLong;
    line.reset();
    tooLong = false;
    begun = true;
    if (bytes.length == 0) {
      return Optional.empty();
    }
    String text = decode(bytes);
    if (!whole) {
      return trouble(text, "it may have begun before the connection");
    }
    if (cut) {
      return trouble(
          text,
          String.format(
              Locale.ROOT,
              "it is longer than %d characters: is this the meter's port, and its speed right?",
              LONGEST));
    }
    if (text.indexOf('\0') >= 0) {
      return trouble(
          text, "it holds zero bytes: another encoding, or the speed of the port is wrong");
    }
    if (!PLAIN.matcher(text).matches()) {
      return trouble(
          text,
          "it holds characters that no meter writes: noise, or the speed of the port is wrong");
    }
    return text.isBlank() ? Optional.empty() : Optional.of(new Line(text, Optional.empty()));
  }

  /** As UTF-8; what is none is taken for Latin-1, in which older meters write their µ. */
  private static String decode(byte[] bytes) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      return new String(bytes, StandardCharsets.ISO_8859_1);
    }
  }

  private static Optional<Line> trouble(String text, String why) {
    return Optional.of(new Line(shown(text), Optional.of(why)));
  }

  /** A line as a page can show it: short, and nothing that cannot be printed. */
  static String shown(String text) {
    String printable = text.strip().replaceAll("[^\\t -~µμ°º⁰¹²³⁻·×−]", "�").replace('\t', ' ');
    return printable.length() > SHOWN ? printable.substring(0, SHOWN) + "…" : printable;
  }
}
