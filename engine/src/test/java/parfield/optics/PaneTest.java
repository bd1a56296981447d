package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class PaneTest {
  private static final double WATER = 1.34;

  /** Two faces in normal incidence, by hand: R = (r₁ + r₂ − 2 r₁r₂) / (1 − r₁r₂). */
  @Test
  void reflectsAtNormalIncidenceAsTwoFaces() {
    double near = Math.pow((WATER - Pane.GLASS) / (WATER + Pane.GLASS), 2);
    double far = Math.pow((Pane.GLASS - 1) / (Pane.GLASS + 1), 2);
    double expected = (near + far - 2 * near * far) / (1 - near * far);
    assertThat(Pane.reflectance(1, WATER, Pane.GLASS, 1)).isCloseTo(expected, within(1e-15));
    // .0040 and .0426 by hand; together .0462.
    assertThat(expected).isCloseTo(.0462, within(5e-5));
  }

  /** Light in water meets air behind glass: total past 48.268°, whatever the glass. */
  @Test
  void reflectsAllPastTheCriticalAngleOfWaterAgainstAir() {
    for (double glass : new double[] {1.34, 1.49, 1.52, 1.9}) {
      assertThat(Pane.reflectance(Math.cos(Math.toRadians(48.27)), WATER, glass, 1)).isEqualTo(1);
      assertThat(Pane.reflectance(0, WATER, glass, 1)).as("grazing").isEqualTo(1);
      assertThat(Pane.reflectance(Math.cos(Math.toRadians(48.26)), WATER, glass, 1)).isLessThan(1);
    }
  }

  /** A slab of the first medium's index is no slab: one boundary is left. */
  @Test
  void aSlabOfTheSameIndexIsOneBoundary() {
    SeededLaw.holds(
        500,
        random -> {
          double cosine = random.nextDouble();
          assertThat(Pane.reflectance(cosine, WATER, WATER, 1))
              .isCloseTo(Interface.reflectance(cosine, WATER, 1), within(1e-12));
        });
  }

  /** A pane between alike media reflects a ray and the ray that runs back alike. */
  @Test
  void reflectsTheSameBothWays() {
    SeededLaw.holds(
        500,
        random -> {
          double slab = 1.4 + .5 * random.nextDouble();
          double sine = random.nextDouble();
          double inWater = sine / WATER;
          double down = Pane.reflectance(Math.sqrt(1 - sine * sine), 1, slab, WATER);
          double up = Pane.reflectance(Math.sqrt(1 - inWater * inWater), WATER, slab, 1);
          assertThat(down).isCloseTo(up, within(1e-9)).isBetween(0.0, 1.0);
        });
  }
}
