package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.optics.Agitation;
import parfield.tank.Tank;

class EdgeBlurTest {
  private static final Tank STRONG = Tank.of(.9, .6, .5).withSurface(Agitation.STRONG);

  /** A blurred edge moves light, it takes none: what lies between two edges is their distance. */
  @Test
  void keepsWhatPasses() {
    SeededLaw.holds(
        200,
        random -> {
          EdgeBlur blur = EdgeBlur.of(.1 * random.nextDouble(), .6 * random.nextDouble(), STRONG);
          double share = random.nextDouble();
          double from = .3;
          double to = from + 2 * blur.margin() + random.nextDouble();
          double passed =
              GaussLegendre.integral(
                  from - blur.margin(),
                  to + blur.margin(),
                  400,
                  x -> blur.between(x, from, to, share));
          assertThat(passed).isCloseTo(to - from, within(1e-5));
        });
  }

  @Test
  void risesFromDarkToOpenAndIsHalfAtTheEdge() {
    SeededLaw.holds(
        200,
        random -> {
          EdgeBlur blur =
              EdgeBlur.of(.01 + .1 * random.nextDouble(), .1 + random.nextDouble(), STRONG);
          double share = random.nextDouble();
          assertThat(blur.between(0, 0, 9, share)).isCloseTo(.5, within(1e-12));
          assertThat(blur.between(-1.001 * blur.margin(), 0, 9, share)).isZero();
          assertThat(blur.between(1.001 * blur.margin(), 0, 9, share)).isEqualTo(1);
          double last = 0;
          for (double x = -blur.margin(); x <= blur.margin(); x += blur.margin() / 20) {
            assertThat(blur.between(x, 0, 9, share)).isGreaterThanOrEqualTo(last);
            last = blur.between(x, 0, 9, share);
          }
        });
  }

  /** Variance of the blur at the surface, by hand: size²/12 seen through the water's share. */
  @Test
  void isAsWideAsTheSourceSeenThroughTheCrossing() {
    EdgeBlur blur = EdgeBlur.of(.06, .3, STRONG.withSurface(Agitation.STILL));
    double mean = 0;
    double square = 0;
    double step = 1e-5;
    double waterShare = .6;
    for (double x = -.2; x < .2; x += step) {
      double density = (blur.between(x + step, 0, 9, .4) - blur.between(x, 0, 9, .4)) / step;
      mean += density * x * step;
      square += density * x * x * step;
    }
    assertThat(mean).isCloseTo(0, within(1e-4));
    assertThat(square).isCloseTo(waterShare * waterShare * .06 * .06 / 12, within(.01 * .0001));
  }

  @Test
  void aPointOverStillWaterCastsSharpShadows() {
    EdgeBlur sharp = EdgeBlur.of(0, .5, STRONG.withSurface(Agitation.STILL));
    assertThat(sharp.margin()).isZero();
    assertThat(sharp.between(1e-9, 0, 1, .5)).isEqualTo(1);
    assertThat(sharp.between(-1e-9, 0, 1, .5)).isZero();
  }
}
