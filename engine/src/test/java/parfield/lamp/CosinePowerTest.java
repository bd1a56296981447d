package parfield.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.SeededLaw;

class CosinePowerTest {
  /** CIE e-ILV 17-27-077: half the peak at half the beam angle to each side. */
  @Test
  void halfTheLightLeavesAtTheEdgeOfTheBeam() {
    SeededLaw.holds(
        300,
        random -> {
          double angle = Math.toRadians(5 + 170 * random.nextDouble());
          CosinePower lobe = CosinePower.ofBeamAngle(80, angle);
          assertThat(lobe.intensity(angle / 2, 1.3)).isCloseTo(40, within(1e-9));
          assertThat(lobe.intensity(0, 0)).isEqualTo(80);
        });
  }

  /** cos^m 60° = ½ for m = 1: Lambert's law has a beam angle of 120°. */
  @Test
  void lambertHasABeamOf120Degrees() {
    assertThat(CosinePower.ofBeamAngle(1, Math.toRadians(120)).exponent())
        .isCloseTo(1, within(1e-12));
    // m = ln ½ / ln cos 45° = 2 for 90°.
    assertThat(CosinePower.ofBeamAngle(1, Math.toRadians(90)).exponent())
        .isCloseTo(2, within(1e-12));
  }

  /** 2π I / (m + 1): 4π/2 for isotropic below the horizon, π for Lambert; PHYSICS: 418.879 / 2. */
  @ParameterizedTest
  @CsvSource({"100, 0, 628.3185", "100, 1, 314.1593", "100, 2, 209.4395"})
  void fluxIsTheClosedForm(double peak, double exponent, double expected) {
    assertThat(new CosinePower(peak, exponent).photonFlux()).isCloseTo(expected, within(1e-4));
  }

  /** The closed form against ∫ I sin γ dγ dC by the midpoint rule. */
  @Test
  void fluxIsTheIntegralOfItsIntensity() {
    SeededLaw.holds(
        50,
        random -> {
          CosinePower lobe = new CosinePower(100 * random.nextDouble(), 6 * random.nextDouble());
          double sum = 0;
          int steps = 4000;
          for (int i = 0; i < steps; i++) {
            double gamma = Math.PI / 2 * (i + 0.5) / steps;
            sum += 2 * Math.PI * lobe.intensity(gamma, 0) * Math.sin(gamma);
          }
          double flux = sum * Math.PI / 2 / steps;
          assertThat(flux).isCloseTo(lobe.photonFlux(), within(1e-4 * lobe.photonFlux() + 1e-12));
        });
  }

  @Test
  void isDarkAboveTheHorizonAndTheSameAround() {
    CosinePower lobe = new CosinePower(100, 0.5);
    assertThat(lobe.intensity(Math.toRadians(90.001), 0)).isZero();
    assertThat(lobe.intensity(Math.PI, 0)).isZero();
    assertThat(lobe.around(0.4, new double[] {0, 1, 2, 3})).containsOnly(lobe.intensity(0.4, 0));
    assertThat(lobe.axiallySymmetric()).isTrue();
    assertThat(lobe.quadrantSymmetric()).isTrue();
  }

  @Test
  void scalesEveryIntensity() {
    IntensityDistribution half = new CosinePower(100, 2).scaled(0.5);
    assertThat(half.intensity(0.7, 0.2)).isEqualTo(new CosinePower(100, 2).intensity(0.7, 0.2) / 2);
    assertThat(half.around(0.7, new double[] {0.2})[0]).isEqualTo(half.intensity(0.7, 0.2));
    assertThat(half.axiallySymmetric()).isTrue();
    assertThat(half.quadrantSymmetric()).isTrue();
  }

  @Test
  void refusesWhatIsNoLobe() {
    assertThatThrownBy(() -> new CosinePower(-1, 2))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a cosine-power lobe needs peak and exponent of 0 or more; got -1.0 and 2.0");
    assertThatThrownBy(() -> new CosinePower(1, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a cosine-power lobe needs peak and exponent of 0 or more; got 1.0 and NaN");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-45, 0, Double.NaN})
  void refusesABeamAngleThatCannotBe(double degrees) {
    assertThatThrownBy(() -> CosinePower.ofBeamAngle(1, Math.toRadians(degrees)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a beam angle must lie between 0 and 180 degrees; got " + degrees);
    assertThatThrownBy(() -> CosinePower.ofBeamAngle(1, Math.PI))
        .hasMessage("a beam angle must lie between 0 and 180 degrees; got 180.0");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.5, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesAFactorThatCannotBe(double factor) {
    assertThatThrownBy(() -> new CosinePower(1, 1).scaled(factor))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an intensity factor must be 0 or more; got " + factor);
  }
}
