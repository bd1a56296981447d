package parfield.survey;

import java.util.Objects;
import java.util.Optional;
import parfield.rig.Rig;

/**
 * What is to be read: a survey before, while and after its readings are taken.
 *
 * @param name what the bench calls it
 * @param rig what hangs over the tank, at which setting
 * @param meter what is read with
 * @param grid where, in the order of visiting; empty where it was not laid down
 */
public record SurveyPlan(String name, Rig rig, Meter meter, Optional<GridPlan> grid) {
  public SurveyPlan {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(rig, "rig");
    Objects.requireNonNull(meter, "meter");
    Objects.requireNonNull(grid, "grid");
  }
}
