package parfield.care;

/** How a group of corals stands at one place: what of peak and dose is outside its ranges. */
public enum Standing {
  /** The highest PPFD of the day is below its range. */
  TOO_DIM("too dim"),
  /** The peak is in its range, but the dose of the day is below. */
  DAY_TOO_LITTLE("bright enough, but too little in a day"),
  /** Peak and dose are in their ranges. */
  FITS("fits"),
  /** The peak is in its range, but the dose of the day is above. */
  DAY_TOO_MUCH("not too bright, but too much in a day"),
  /** The highest PPFD of the day is above its range. */
  TOO_BRIGHT("too bright");

  private final String words;

  Standing(String words) {
    this.words = words;
  }

  /** In a few words. */
  public String words() {
    return words;
  }
}
