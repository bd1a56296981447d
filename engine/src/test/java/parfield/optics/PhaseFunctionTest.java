package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import parfield.ReferenceFolder;

/** Phase functions: normalised, drawn as they are valued, and as published. */
class PhaseFunctionTest {
  static List<PhaseFunction> all() {
    return List.of(
        PhaseFunction.isotropic(),
        new HenyeyGreenstein(0.75),
        new HenyeyGreenstein(0.9),
        new HenyeyGreenstein(-0.3),
        new Rayleigh(),
        TabulatedPhase.averageParticle());
  }

  /** 2π ∫ p dμ = 1, by the midpoint rule in the angle, fine near the forward peak. */
  @ParameterizedTest
  @MethodSource("all")
  void scattersAllThatIsScattered(PhaseFunction phase) {
    double sum = 0;
    int steps = 400_000;
    for (int i = 0; i < steps; i++) {
      double u = (i + 0.5) / steps;
      // θ = π u³ crowds the steps at the peak.
      double angle = Math.PI * u * u * u;
      double width = Math.PI * 3 * u * u / steps;
      sum += 2 * Math.PI * phase.value(Math.cos(angle)) * Math.sin(angle) * width;
    }
    assertThat(sum).isCloseTo(1, within(1e-3));
  }

  /** The share of light below a drawn cosine is the share it was drawn for. */
  @ParameterizedTest
  @MethodSource("all")
  void drawsAsItIsValued(PhaseFunction phase) {
    double before = -1;
    for (double share : new double[] {0.02, 0.1, 0.25, 0.5, 0.75, 0.9}) {
      double cosine = phase.cosineAt(share);
      assertThat(cosine).isGreaterThan(before).isLessThanOrEqualTo(1);
      double sum = 0;
      int steps = 200_000;
      for (int i = 0; i < steps; i++) {
        double mu = -1 + (cosine + 1) * (i + 0.5) / steps;
        sum += 2 * Math.PI * phase.value(mu) * (cosine + 1) / steps;
      }
      assertThat(sum).as("share below %s", cosine).isCloseTo(share, within(2e-3));
      before = cosine;
    }
    assertThat(phase.cosineAt(0)).isCloseTo(-1, within(1e-9));
    assertThat(phase.cosineAt(1)).isCloseTo(1, within(1e-9));
  }

  /** g is the mean cosine: the definition of Henyey and Greenstein 1941. */
  @Test
  void asymmetryIsTheMeanCosine() {
    for (double g : new double[] {-0.5, 0, 0.3, 0.9}) {
      double sum = 0;
      int draws = 100_000;
      for (int i = 0; i < draws; i++) {
        sum += new HenyeyGreenstein(g).cosineAt((i + 0.5) / draws);
      }
      assertThat(sum / draws).isCloseTo(g, within(1e-4));
    }
  }

  /**
   * Half of the light within 3.7 to 4.4°, and a backscattered share of 0.0183: Mobley 1994, Light
   * and Water, for Petzold's average particle (the share from memory).
   */
  @Test
  void averageParticleBackscattersAsPublished() {
    double low = 0;
    double high = 1;
    for (int i = 0; i < 50; i++) {
      double middle = (low + high) / 2;
      if (TabulatedPhase.averageParticle().cosineAt(middle) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    assertThat(low).isCloseTo(0.0183, within(3e-4));
  }

  @Test
  void averageParticleIsThatOfTheReference() {
    PhaseFunction phase = TabulatedPhase.averageParticle();
    double scale = 0;
    for (Map<String, String> row :
        ReferenceFolder.rows("petzold_average_particle_phase_function.csv")) {
      double angle = Math.toRadians(Double.parseDouble(row.get("angle_deg")));
      double published = Double.parseDouble(row.get("phase_function_per_sr"));
      double ratio = phase.value(Math.cos(angle)) / published;
      scale = scale == 0 ? ratio : scale;
      // One factor for all rows: the normalisation, 1 / 0.993.
      assertThat(ratio).isCloseTo(scale, within(1e-3));
    }
    assertThat(scale).isCloseTo(1 / 0.993, within(1e-3));
  }

  @Test
  void saysWhatIsWrong() {
    assertThatThrownBy(() -> new HenyeyGreenstein(1))
        .hasMessage("the asymmetry of a phase function lies between -1 and 1; got 1.0");
    assertThatThrownBy(() -> new TabulatedPhase(new double[] {0, 1}, new double[] {1, 1}))
        .hasMessageContaining("run from 0 to 180 degrees; got 0.0 to 57.29");
    assertThatThrownBy(() -> new TabulatedPhase(new double[] {0, Math.PI}, new double[] {0, 0}))
        .hasMessage("a phase function must scatter somewhere; all values are 0");
    assertThatThrownBy(
            () -> new TabulatedPhase(new double[] {0, Math.PI}, new double[] {1, Double.NaN}))
        .hasMessageContaining("finite and 0 or more; got NaN at 180.0 degrees");
    assertThatThrownBy(() -> Scattering.particles(-0.1))
        .hasMessage("a scattering coefficient must be 0 or more; got -0.1 1/m");
    assertThatThrownBy(() -> new Scattering(0.1, 9, PhaseFunction.isotropic()))
        .hasMessage("the exponent of scattering with wavelength runs from -1 to 5; got 9.0");
  }

  /** b_w of Morel 1974 falls as λ^−4.32: pure_water_scattering.csv, 400 and 500 nm. */
  @Test
  void scatteringFallsWithWavelength() {
    Scattering molecules =
        new Scattering(16.06 * 4.72e-4 * Math.pow(400 / 550.0, 4.32), 4.32, new Rayleigh());
    assertThat(molecules.at(400)).isCloseTo(7.580e-3, within(1e-6));
    assertThat(molecules.at(500)).isCloseTo(2.891e-3, within(1e-6));
  }
}
