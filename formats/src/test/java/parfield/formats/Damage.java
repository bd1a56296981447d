package parfield.formats;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.SplittableRandom;

/** Spoils bytes at random: cuts, repeats, swaps, and puts in what parsers stumble over. */
final class Damage {
  private static final String[] STUMBLES = {
    "",
    "0",
    "-1",
    "1e999",
    "NaN",
    ".inf",
    "\"",
    "'",
    "\n",
    "\t",
    " ",
    "{",
    "}",
    "[",
    "]",
    ",",
    ";",
    ":",
    "#",
    "&a ",
    "*a",
    "!t ",
    "|\n",
    ">\n",
    "? ",
    "- ",
    "---\n",
    "...\n",
    "%",
    "\0",
    "\\",
    "null",
    "~",
    "true",
    "é",
    "\uD83D\uDC20",
    "\uFEFF",
    "depth 15 cm",
    "x",
    "y",
    "x,y,depth,ppfd",
    "9".repeat(400),
    "1,234",
    "<<: *a",
    "@",
    "`",
    "\r",
    "\u0085",
    "\u2028"
  };

  private Damage() {}

  static byte[] of(byte[] sound, SplittableRandom random) {
    byte[] bytes = sound;
    int times = random.nextInt(1, 6);
    for (int i = 0; i < times; i++) {
      bytes = once(bytes, random);
    }
    return bytes;
  }

  private static byte[] once(byte[] bytes, SplittableRandom random) {
    int at = random.nextInt(bytes.length + 1);
    int length = Math.min(bytes.length - at, random.nextInt(1, 40));
    byte[] piece = Arrays.copyOfRange(bytes, at, at + length);
    return switch (random.nextInt(6)) {
      case 0 -> Arrays.copyOf(bytes, at);
      case 1 -> join(bytes, at, at + length, new byte[0]);
      case 2 -> join(bytes, at, at, piece);
      case 3 -> {
        int other = random.nextInt(bytes.length + 1);
        yield join(bytes, other, other, piece);
      }
      case 4 -> {
        byte[] changed = bytes.clone();
        if (at < changed.length) {
          changed[at] = (byte) random.nextInt(256);
        }
        yield changed;
      }
      default -> {
        String stumble = STUMBLES[random.nextInt(STUMBLES.length)];
        int to = random.nextBoolean() ? at : at + length;
        yield join(bytes, at, to, stumble.getBytes(StandardCharsets.UTF_8));
      }
    };
  }

  private static byte[] join(byte[] bytes, int from, int to, byte[] middle) {
    byte[] joined = new byte[from + middle.length + bytes.length - to];
    System.arraycopy(bytes, 0, joined, 0, from);
    System.arraycopy(middle, 0, joined, from, middle.length);
    System.arraycopy(bytes, to, joined, from + middle.length, bytes.length - to);
    return joined;
  }
}
