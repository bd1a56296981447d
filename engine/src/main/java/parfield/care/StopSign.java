package parfield.care;

/**
 * What to look for while the light is raised. Common practice, no source; a vet or an experienced
 * keeper decides in each case.
 */
public enum StopSign {
  /** Bleaching. */
  PALING("tissue turns pale or white, first where the light is brightest", true),
  /** Tissue loss. */
  BARE("skeleton shows through, or tissue comes off", true),
  /** Polyps stay in. */
  CLOSED("polyps or mantles stay closed through two days while the lamps are lit", false),
  /** Shrinking away. */
  SHRUNK("flesh shrinks, curls away from the light, or stretches out at night only", false),
  /** Slime. */
  SLIME("more slime than usual for two days", false);

  private final String words;
  private final boolean stepBack;

  StopSign(String words, boolean stepBack) {
    this.words = words;
    this.stepBack = stepBack;
  }

  /** The sign, as part of a sentence. */
  public String words() {
    return words;
  }

  /** Whether to step back at once; else hold, and step back if it does not pass. */
  public boolean stepsBack() {
    return stepBack;
  }
}
