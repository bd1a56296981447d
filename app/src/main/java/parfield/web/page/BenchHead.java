package parfield.web.page;

import java.util.List;
import java.util.UUID;

/**
 * The bench that a page is about.
 *
 * @param id of it
 * @param name what people call it
 * @param sample whether it is an invented one
 * @param steps how far each step is
 * @param current the step that the page shows
 */
public record BenchHead(UUID id, String name, boolean sample, List<StepState> steps, Step current) {
  public BenchHead {
    steps = List.copyOf(steps);
  }

  /** Address of a step. */
  public String address(Step step) {
    return "/bench/" + id + "/" + step.path();
  }
}
