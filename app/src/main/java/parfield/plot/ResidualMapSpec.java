package parfield.plot;

import java.util.List;
import java.util.Objects;

/**
 * How far readings of one plane lie from the model, where they were taken.
 *
 * @param caption title and summary
 * @param scene the tank seen from above, with what hangs over it
 * @param residuals at least none
 */
public record ResidualMapSpec(Caption caption, Scene scene, List<Residual> residuals) {
  public ResidualMapSpec {
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(scene, "scene");
    residuals = List.copyOf(residuals);
  }

  /**
   * One reading.
   *
   * @param x along the tank [m]
   * @param y from the front pane [m]
   * @param relative measured over predicted, less 1
   * @param marked whether it looks wrong
   */
  public record Residual(double x, double y, double relative, boolean marked) {}
}
