package parfield.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class StretchedIntensityTest {
  /** Flux of a cosine-power lobe is 2π I(0) / (m + 1) in closed form, for Lambert's law π I(0). */
  @Test
  void keepsTheFlux() {
    CosinePower lambert = new CosinePower(100, 1);
    for (double stretch : new double[] {0.5, 0.8, 1.25}) {
      StretchedIntensity stretched = StretchedIntensity.keepingFlux(lambert, stretch);
      int steps = 20_000;
      double step = Math.PI / 2 / steps;
      double flux = 0;
      for (int i = 0; i < steps; i++) {
        double gamma = (i + 0.5) * step;
        flux += stretched.intensity(gamma, 0) * 2 * Math.PI * Math.sin(gamma) * step;
      }
      assertThat(flux).isCloseTo(Math.PI * 100, within(0.05));
    }
  }

  @Test
  void movesTheHalfPeakAngle() {
    CosinePower beam = CosinePower.ofBeamAngle(100, Math.toRadians(60));
    StretchedIntensity wider = new StretchedIntensity(beam, 1.25, 1);
    assertThat(wider.intensity(Math.toRadians(37.5), 0)).isCloseTo(50, within(1e-9));
    assertThat(wider.intensity(Math.toRadians(91), 0)).isZero();
    assertThat(wider.axiallySymmetric()).isTrue();
    assertThat(wider.quadrantSymmetric()).isTrue();
  }

  @Test
  void refusesWhatIsNoStretch() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new StretchedIntensity(new CosinePower(1, 1), 0, 1))
        .withMessage(
            "a distribution is stretched by a factor above 0 with a gain of 0 or more; got 0.0 and"
                + " 1.0");
  }
}
