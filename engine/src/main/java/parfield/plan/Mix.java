package parfield.plan;

/** What the search may do with the channels' shares of the light. */
public enum Mix {
  /** The ratio of the channels stays as the bench dials it: the colour is the person's choice. */
  KEPT,
  /** Every channel is searched on its own. */
  FREE
}
