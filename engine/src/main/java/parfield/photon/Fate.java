package parfield.photon;

/** How a packet ends: every launched photon is counted under one of these. */
public enum Fate {
  /** Left the lamp and missed the opening. */
  SPILLED,
  /** Stopped by rim, brace or mesh. */
  STOPPED,
  /** Turned back above the water: by the surface or a lid. */
  RETURNED,
  /** Left through a pane, above or below the water line. */
  THROUGH_PANES,
  /** Came out of the water and left upward. */
  ESCAPED,
  /** Left through an open lower face: only in media without a bottom. */
  BELOW,
  /** Absorbed by the water. */
  WATER,
  /** Absorbed by what covers the panes. */
  PANES,
  /** Absorbed by the bottom. */
  BOTTOM,
  /** Absorbed by rock. */
  ROCK,
  /**
   * Given up: the balance of the games of chance that end faint packets, which is zero on average.
   */
  DROPPED
}
