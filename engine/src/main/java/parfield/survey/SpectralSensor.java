package parfield.survey;

import java.util.Objects;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.SensorResponse;
import parfield.spectrum.SpectralFactor;

/**
 * How a meter's sensor sees colour.
 *
 * @param response signal per photon by wavelength
 * @param calibration the light under which its display was made right
 */
public record SpectralSensor(SensorResponse response, PhotonSpectrum calibration) {
  public SpectralSensor {
    Objects.requireNonNull(response, "response");
    Objects.requireNonNull(calibration, "calibration");
    // A sensor that cannot have been calibrated so is refused here, not at its first survey.
    SpectralFactor.of(response, calibration, calibration);
  }
}
