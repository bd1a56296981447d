package parfield.spectrum;

import java.util.List;

/**
 * What a reading must be multiplied by because the light is of another colour than the sensor was
 * calibrated under.
 *
 * <p>F = [∫ S_test s_ideal · ∫ S_cal s_rel] / [∫ S_test s_rel · ∫ S_cal s_ideal], CIE e-ILV
 * 17-25-115 (spectral mismatch correction factor), here of photons: S photon spectra, s_ideal 1
 * over 400–700 nm. True PPFD = reading × F.
 */
public final class SpectralFactor {
  private SpectralFactor() {}

  /**
   * F of one light.
   *
   * @param response of the sensor
   * @param test the light that is read
   * @param calibration the light it was calibrated under, with photons of PAR that it sees
   * @return F, 1 for an ideal sensor; not defined where the sensor shows nothing under the light,
   *     or the light holds no PAR
   * @throws IllegalArgumentException if the sensor shows nothing under the calibration's light
   */
  public static Finding<Double> of(
      SensorResponse response, PhotonSpectrum test, PhotonSpectrum calibration) {
    double shownCalibration = response.signal(calibration);
    double trueCalibration = calibration.parPhotons();
    if (!(shownCalibration > 0) || !(trueCalibration > 0)) {
      throw new IllegalArgumentException(
          String.format(
              "a sensor of response %s cannot have been calibrated under a light that it does not"
                  + " see, or that holds no PAR; name another light",
              response.name()));
    }
    if (response.standing() == SensorResponse.Standing.IDEAL) {
      return Finding.of(1.0);
    }
    double shown = response.signal(test);
    double trueLight = test.parPhotons();
    if (!(trueLight > 0)) {
      return Finding.notDefined("the light holds no photons within 400 to 700 nm");
    }
    if (!(shown > 0)) {
      return Finding.notDefined("a sensor of response " + response.name() + " shows nothing of it");
    }
    return Finding.of((trueLight * shownCalibration) / (shown * trueCalibration));
  }

  /**
   * What a sensor shows of a light, over the light's PPFD: 1/F.
   *
   * @param response of the sensor
   * @param test the light that is read, with photons of PAR
   * @param calibration the light it was calibrated under
   * @return 1 for an ideal sensor, 0 where it shows nothing
   */
  public static double shownOverTrue(
      SensorResponse response, PhotonSpectrum test, PhotonSpectrum calibration) {
    return of(response, test, calibration).toOptional().map(f -> 1 / f).orElse(0.0);
  }

  /**
   * F of a mix: what each channel gives over what the sensor shows of it, summed apart. The same as
   * {@link #of} of the summed spectra.
   *
   * @param response of the sensor
   * @param channels their light at full output, all of one scale
   * @param outputs fraction of full output, one a channel, one above 0
   * @param calibration the light it was calibrated under
   */
  public static Finding<Double> ofMix(
      SensorResponse response,
      List<ChannelLight> channels,
      List<Double> outputs,
      PhotonSpectrum calibration) {
    return of(
        response,
        Superposition.of(channels.stream().map(ChannelLight::spectrum).toList(), outputs),
        calibration);
  }
}
