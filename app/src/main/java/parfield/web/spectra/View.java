package parfield.web.spectra;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What can be asked of spectra, in the order of the page. */
public enum View {
  OVERLAY("Overlay"),
  BANDS("Bands and colour"),
  WATER("Under water"),
  BLEND("Blend"),
  MIX("Mix"),
  PARTS("Take apart"),
  EYES("Eyes");

  private final String title;

  View(String title) {
    this.title = title;
  }

  /** What it is called. */
  public String title() {
    return title;
  }

  /** Its name in an address. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The view that an address names; the first if it names none that there is. */
  static View of(Optional<String> key) {
    return Arrays.stream(values())
        .filter(view -> key.filter(view.key()::equals).isPresent())
        .findFirst()
        .orElse(OVERLAY);
  }
}
