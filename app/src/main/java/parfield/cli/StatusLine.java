package parfield.cli;

import java.io.PrintWriter;
import java.util.Locale;

/**
 * One line on a terminal that tells how far the work has come, and is gone when it is done. Where
 * standard error is no terminal it says nothing.
 */
final class StatusLine implements AutoCloseable {
  /** Set by the launcher, which alone can tell whether standard error is a terminal. */
  static final String TERMINAL = "parfield.terminal";

  private static final int WIDTH = 79;
  private static final int BAR = 20;

  private final PrintWriter err;
  private final boolean shown;
  private int length;

  /** A line on {@code err}, shown or not. */
  StatusLine(PrintWriter err, boolean shown) {
    this.err = err;
    this.shown = shown;
  }

  /** A line on standard error. */
  static StatusLine on(PrintWriter err) {
    return new StatusLine(err, Boolean.getBoolean(TERMINAL));
  }

  /** Shows words in place of those before. */
  void show(String words) {
    if (!shown) {
      return;
    }
    String line = words.length() > WIDTH ? words.substring(0, WIDTH - 1) + "…" : words;
    err.print("\r" + line + " ".repeat(Math.max(0, length - line.length())));
    err.flush();
    length = line.length();
  }

  /** Shows a bar, a share of the work done, and words. */
  void show(double share, String words) {
    int full = (int) Math.round(BAR * Math.max(0, Math.min(1, share)));
    show(
        String.format(
            Locale.ROOT,
            "[%s%s] %3.0f %%  %s",
            "#".repeat(full),
            " ".repeat(BAR - full),
            100 * share,
            words));
  }

  /** Wipes the line. */
  @Override
  public void close() {
    if (length > 0) {
      err.print("\r" + " ".repeat(length) + "\r");
      err.flush();
    }
  }
}
