package parfield.photon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parfield.optics.Interface;
import parfield.optics.PhaseFunction;

/** Even light on layers, where closed forms exist. */
class PlaneParallelTest {
  private static final PhaseFunction NONE = PhaseFunction.isotropic();

  private static PlaneParallel clear(double thickness, double a, OptionalDouble floor) {
    return new PlaneParallel(
        List.of(new PlaneParallel.Medium(thickness, 1.34, a, 0, NONE)),
        1,
        1,
        floor,
        PlaneParallel.Sky.beam(1, 0.5));
  }

  /** Snell, Fresnel and Lambert–Beer for a beam, through a black-bottomed layer. */
  @Test
  void aBeamIsRefractedAndDimmed() {
    PlaneParallelLight light =
        clear(2, 0.4, OptionalDouble.of(0))
            .trace(List.of(0.0, 1.0, 2.0), Effort.packets(400_000, 1));
    double entered = 1 - Interface.reflectance(0.5, 1, 1.34);
    double cosine = Math.sqrt(1 - 0.75 / (1.34 * 1.34));
    for (int i = 0; i < 3; i++) {
      double expected = entered * Math.exp(-0.4 * i / cosine);
      assertThat(light.downwelling(i).value())
          .isCloseTo(expected, within(4 * light.downwelling(i).error() + 1e-12));
      assertThat(light.downwellingScalar(i).value())
          .isCloseTo(light.downwelling(i).value() / cosine, within(1e-9));
      assertThat(light.upwelling(i).value()).isZero();
    }
    assertThat(light.returned().value())
        .isCloseTo(1 - entered, within(4 * light.returned().error()));
  }

  /** What goes in comes out: R + T + A = 1, whatever scatters. */
  @Test
  void allIsAccountedFor() {
    PlaneParallelLight light =
        new PlaneParallel(
                List.of(
                    new PlaneParallel.Medium(1, 1.2, .2, 1, NONE),
                    new PlaneParallel.Medium(2, 1.5, .1, 3, NONE)),
                1,
                1.1,
                OptionalDouble.empty(),
                PlaneParallel.Sky.even(1))
            .trace(List.of(), Effort.packets(100_000, 1));
    double sum =
        light.returned().value()
            + light.escaped().value()
            + light.transmitted().value()
            + light.absorbed(0).value()
            + light.absorbed(1).value()
            + light.ended(Fate.DROPPED).value();
    assertThat(sum).isCloseTo(light.launched().value(), within(1e-9));
    assertThat(light.launched().value()).isCloseTo(1, within(1e-12));
  }

  @Test
  void saysWhatIsWrong() {
    assertThatThrownBy(() -> new PlaneParallel.Medium(0, 1.34, 0, 0, NONE))
        .hasMessageContaining("a thickness above 0")
        .hasMessageContaining("got thickness 0.0");
    assertThatThrownBy(() -> PlaneParallel.Sky.beam(1, 0))
        .hasMessage("the cosine of a beam lies above 0 and at most at 1; got 0.0");
    assertThatThrownBy(() -> clear(1, 0, OptionalDouble.of(1.5)))
        .hasMessage("a bottom's reflectance runs from 0 to 1; got 1.5");
  }
}
