package parfield.plan;

import java.util.List;
import java.util.Objects;

/**
 * Where to begin over one tank of a list.
 *
 * @param tank the tank, as stated
 * @param option the best rig of a coarse search with its dials, figures and probabilities; their
 *     intervals hold what is not known of the tank and of another specimen of the fixture
 * @param assumptions what was assumed rather than stated, as sentences
 */
public record StartingPoint(NamedTank tank, Option option, List<String> assumptions) {
  public StartingPoint {
    Objects.requireNonNull(tank, "tank");
    Objects.requireNonNull(option, "option");
    assumptions = List.copyOf(assumptions);
  }
}
