package parfield.tank;

/** One of the four vertical panes. */
public enum Side {
  /** The pane at x = 0. */
  LEFT,
  /** The pane at x = length. */
  RIGHT,
  /** The pane at y = 0, toward the person. */
  FRONT,
  /** The pane at y = width. */
  BACK
}
