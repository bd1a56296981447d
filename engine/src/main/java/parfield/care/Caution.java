package parfield.care;

/**
 * What every recommendation to hang and dial a fixture must say beside its figures.
 *
 * <p>General prudence, no source; local codes and licensed people decide in each case.
 */
public enum Caution {
  /** Bright light and eyes. */
  EYES(
      "Eyes",
      "violet and ultraviolet light look dimmer than they are: do not look into a lit fixture or at"
          + " its reflection, and dim it before you lean over the tank"),
  /** Electricity beside water. */
  ELECTRICITY(
      "Electricity near water",
      "unplug fixtures before hands go into the water; keep plugs dry, with drip loops, behind a"
          + " residual-current device"),
  /** A weight over a tank. */
  LOAD(
      "Hanging load",
      "glass and people are below: hang fixtures from points rated for several times their weight,"
          + " with a second line"),
  /** Living things under more light than they are used to. */
  ANIMALS(
      "Animals",
      "raise the light slowly, over weeks; watch them, and step back at the first sign of harm"),
  /** Who has the last word. */
  CODES("Local codes", "they, and licensed people, decide on wiring and fixing"),
  /** What the figures are worth. */
  NO_GUARANTEE(
      "No guarantee",
      "these are estimates from the readings of one bench; measure again once it hangs");

  private final String about;
  private final String words;

  Caution(String about, String words) {
    this.about = about;
    this.words = words;
  }

  /** What it is about, in a word or two. */
  public String about() {
    return about;
  }

  /** The caution as a sentence without its full stop. */
  public String inWords() {
    return about + ": " + words;
  }
}
