package parfield.care;

/** How far a range of light for living things is to be trusted. */
public enum Certainty {
  /** Handed down, or read somewhere without a measurement behind it. */
  LOW("low"),
  /** Seen by the person who states it, in tanks like this one. */
  FAIR("fair"),
  /** Measured and published; the source names it. */
  GOOD("good");

  private final String word;

  Certainty(String word) {
    this.word = word;
  }

  /** As written in files. */
  public String word() {
    return word;
  }
}
