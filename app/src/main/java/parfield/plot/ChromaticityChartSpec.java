package parfield.plot;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.spectrum.Chromaticity;

/**
 * Colours of lights in the diagram of even differences.
 *
 * @param caption title and summary
 * @param lights one to twenty
 */
public record ChromaticityChartSpec(Caption caption, List<Light> lights) {
  /** The most lights that one diagram can name. */
  public static final int MOST_LIGHTS = 20;

  public ChromaticityChartSpec {
    Objects.requireNonNull(caption, "caption");
    lights = List.copyOf(lights);
    if (lights.isEmpty() || lights.size() > MOST_LIGHTS) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a diagram of colours shows 1 to %d lights; got %d: draw several",
              MOST_LIGHTS,
              lights.size()));
    }
  }

  /**
   * One light.
   *
   * @param name written beside it
   * @param colour where it stands
   */
  public record Light(String name, Chromaticity colour) {
    public Light {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(colour, "colour");
    }
  }
}
