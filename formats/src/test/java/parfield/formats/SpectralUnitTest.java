package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.formats.SpectralUnit.Quantity;
import parfield.spectrum.Scale;

/** Units of spectra as instruments and people write them; factors by arithmetic of prefixes. */
class SpectralUnitTest {
  @ParameterizedTest
  @CsvSource({
    "W/m2/nm, ENERGY, IRRADIANCE, 1",
    "W m-2 nm-1, ENERGY, IRRADIANCE, 1",
    "W/(m²·nm), ENERGY, IRRADIANCE, 1",
    "W·m⁻²·nm⁻¹, ENERGY, IRRADIANCE, 1",
    "mW/m^2/nm, ENERGY, IRRADIANCE, 1e-3",
    "µW/cm²/nm, ENERGY, IRRADIANCE, 1e-2",
    "uW/cm^2/nm, ENERGY, IRRADIANCE, 1e-2",
    "W/m2/um, ENERGY, IRRADIANCE, 1e-3",
    "W/nm, ENERGY, FLUX, 1",
    "mW per nm, ENERGY, FLUX, 1e-3",
    "µmol m⁻² s⁻¹ nm⁻¹, PHOTONS, IRRADIANCE, 1",
    "μmol/m²/s/nm, PHOTONS, IRRADIANCE, 1",
    "umol/s/nm, PHOTONS, FLUX, 1",
    "mol photons m-2 s-1 nm-1, PHOTONS, IRRADIANCE, 1e6",
    "counts, COUNTS, RELATIVE, 1",
    "ADU, COUNTS, RELATIVE, 1",
    "relative photon flux, PHOTONS, RELATIVE, 1",
    "energy, ENERGY, RELATIVE, 1",
    "W/m2, ENERGY, RELATIVE, 1",
    "W/m2/sr/nm, ENERGY, RELATIVE, 1",
  })
  void readsAUnit(String text, Quantity quantity, Scale scale, double factor) {
    SpectralUnit unit = SpectralUnit.of(text).orElseThrow();

    assertThat(unit.quantity()).isEqualTo(quantity);
    assertThat(unit.scale()).isEqualTo(scale);
    assertThat(unit.factor())
        .isCloseTo(factor, org.assertj.core.data.Percentage.withPercentage(1e-9));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "intensity", "lm/nm", "nm", "m2", "%", "S", "lux", "a.u.", "x"})
  void takesNothingElseForAUnit(String text) {
    assertThat(SpectralUnit.of(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "Blue [µmol/m²/s/nm], Blue, IRRADIANCE",
    "blue_uW_cm2_nm, blue, IRRADIANCE",
    "royal blue photons, royal blue, RELATIVE",
    "relative_photon_flux, '', RELATIVE",
    "Spectral irradiance (W/m2/nm), '', IRRADIANCE",
    "relative power (W/nm), '', RELATIVE",
  })
  void tellsNameFromUnit(String head, String name, Scale scale) {
    SpectralUnit.Head read = SpectralUnit.head(head);

    assertThat(read.name()).isEqualTo(name);
    assertThat(read.unit().orElseThrow().scale()).isEqualTo(scale);
  }

  @Test
  void findsAUnitWithinALineAboutTheMeasurement() {
    assertThat(SpectralUnit.within("Units: uW/cm2/nm, boxcar 3"))
        .contains(SpectralUnit.of("uW/cm2/nm").orElseThrow());
    assertThat(SpectralUnit.within("made up, not measured; arbitrary W/nm; 380-780"))
        .contains(SpectralUnit.relative(Quantity.ENERGY));
    assertThat(SpectralUnit.within("Integration time 100 ms")).isEmpty();
  }
}
