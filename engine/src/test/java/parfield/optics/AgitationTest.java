package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class AgitationTest {
  /** Cox and Munk 1954, J. Opt. Soc. Am. 44:838: σ² = .003 + .00512 U, U in m/s. */
  private static double coxAndMunk(double wind) {
    return .003 + .00512 * wind;
  }

  /** The published line at 1, 5 and 10 m/s: .00812, .0286, .0542. */
  @Test
  void variancesAreThoseOfCoxAndMunk() {
    assertThat(coxAndMunk(10)).isCloseTo(.0542, within(1e-9));
    assertThat(Agitation.GENTLE.slopeVariance()).isCloseTo(coxAndMunk(1), within(1e-9));
    assertThat(Agitation.STRONG.slopeVariance()).isCloseTo(coxAndMunk(5), within(1e-9));
    assertThat(Agitation.STILL.slopeVariance()).isZero();
  }
}
