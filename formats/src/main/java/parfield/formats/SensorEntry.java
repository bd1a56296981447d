package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import parfield.rig.Rig;
import parfield.spectrum.Finding;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.SensorResponse;
import parfield.survey.Meter;
import parfield.survey.SpectralCorrection;
import parfield.survey.SpectralSensor;

/** How a meter of the setup sees colour, and what that does to a survey read with it. */
final class SensorEntry {
  private static final String CURE =
      "state the light that the sensor was calibrated under, as in calibrated under: illuminant A";

  private SensorEntry() {}

  /** The sensor that a meter states; empty if it states none, or with faults. */
  static Optional<SpectralSensor> read(Section meter, Sources sources) {
    if (!meter.has("response")) {
      meter
          .optional("calibrated under")
          .ifPresent(
              light ->
                  light.fault(
                      light.shown(),
                      "nothing where no response is stated",
                      "state the sensor's response, or delete this"));
      return Optional.empty();
    }
    Optional<SensorResponse> response =
        meter
            .optional("response")
            .flatMap(entry -> named(entry, Sensors.responses(), sources::response));
    Optional<PhotonSpectrum> light =
        meter
            .required("calibrated under", CURE)
            .flatMap(entry -> named(entry, Sensors.lights(), sources::spectrum));
    if (response.isEmpty() || light.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new SpectralSensor(response.get(), light.get()));
    } catch (IllegalArgumentException e) {
      meter.at().fault("", "", e.getMessage());
      return Optional.empty();
    }
  }

  /** What stands under a name that the format knows, else in the file that is named. */
  private static <T> Optional<T> named(
      Entry entry, Map<String, T> known, Function<Entry, Optional<T>> file) {
    Optional<String> name = entry.text("name a file, or one of " + Notes.shown(known.keySet()));
    if (name.isEmpty()) {
      return Optional.empty();
    }
    if (known.containsKey(name.get())) {
      return Optional.of(known.get(name.get()));
    }
    if (name.get().indexOf('.') < 0) {
      List<String> allowed = new ArrayList<>(known.keySet());
      allowed.add("the name of a file");
      entry.unknown(entry.path(), name.get(), allowed, "name a file beside the setup");
      return Optional.empty();
    }
    return file.apply(entry);
  }

  /** The meter under a rig's light; what is done to readings is told as an assumption. */
  static Meter under(String survey, Meter meter, SpectralSensor sensor, Rig rig, Notes notes) {
    Finding<SpectralCorrection> found = SpectralCorrection.of(rig, sensor);
    if (found instanceof Finding.NotDefined<SpectralCorrection> none) {
      notes.assume(
          String.format(
              Locale.ROOT,
              "%s: readings of %s are not corrected for the colour of the light, nor is the error"
                  + " known: %s",
              survey,
              meter.name(),
              none.reason()));
      return meter;
    }
    SpectralCorrection correction = found.toOptional().orElseThrow();
    Meter under = meter.under(correction);
    if (sensor.response().standing() != SensorResponse.Standing.IDEAL) {
      notes.assume(told(survey, sensor.response(), correction, meter, under));
    }
    return under;
  }

  private static String told(
      String survey,
      SensorResponse response,
      SpectralCorrection correction,
      Meter meter,
      Meter under) {
    String done =
        correction.factor() == 1
            ? String.format(
                Locale.ROOT,
                "readings of %s are not corrected for colour, as %s is no measured response (it"
                    + " would make them %.3f times as much)",
                meter.name(),
                response.name(),
                correction.spectralFactor())
            : String.format(
                Locale.ROOT,
                "readings of %s are multiplied by %.3f for the colour of the light",
                meter.name(),
                correction.factor());
    return String.format(
        Locale.ROOT,
        "%s: %s, and the scale error is taken as %.3f instead of %s",
        survey,
        done,
        under.scaleError(),
        NumberText.shown(meter.scaleError()));
  }
}
