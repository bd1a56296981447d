package parfield.plot;

import java.util.Locale;
import java.util.Objects;

/**
 * What stands over a picture and is read out where it cannot be seen.
 *
 * @param title short name of the picture, not blank
 * @param summary what it shows in one sentence; empty if there is nothing to add
 */
public record Caption(String title, String summary) {
  public Caption {
    Objects.requireNonNull(summary, "summary");
    if (title.isBlank()) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a picture needs a title; got \"%s\"", title));
    }
  }
}
