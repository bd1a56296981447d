package parfield.plan;

import java.util.Objects;

/**
 * How far a search has come.
 *
 * @param share of the work done, 0 to 1
 * @param evaluated rigs looked at so far
 * @param best option so far, by the search's own coarse figures until it is done
 */
public record Progress(double share, int evaluated, Option best) {
  public Progress {
    Objects.requireNonNull(best, "best");
  }
}
