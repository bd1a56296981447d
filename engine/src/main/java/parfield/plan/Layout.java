package parfield.plan;

/** How several fixtures hang beside each other. */
public enum Layout {
  /** In a row along the tank's length, equally spaced. */
  ROW,
  /** Four at the corners of a rectangle with the proportions of the tank. */
  TWO_BY_TWO
}
