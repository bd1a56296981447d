package parfield.formats;

import java.util.List;
import java.util.Optional;
import parfield.survey.Meter;
import parfield.survey.SpectralSensor;

/** One of the setup's {@code meters}: what is known of a sensor and its errors. */
final class MeterSection {
  /** Taken where none is stated: a calibration good to 5 %; common practice, no source. */
  private static final double SCALE_ERROR = 0.05;

  /** Taken where none is stated: 2 % of each reading; common practice, no source. */
  private static final double REPEAT_ERROR = 0.02;

  /** Taken where none is stated: the sensor stands within half a centimetre [m]. */
  private static final double POSITION_ERROR = 0.005;

  /** Taken where none is stated: whole numbers on the display [µmol m⁻² s⁻¹]. */
  private static final double RESOLUTION = 1;

  private static final String PPFD = "µmol/m²/s";
  private static final Limit SHARE = Limit.between(0, 1);

  /**
   * What was read of a meter.
   *
   * @param meter as it is under any light
   * @param sensor how it sees colour, if that is stated
   */
  record Read(Meter meter, Optional<SpectralSensor> sensor) {}

  private MeterSection() {}

  /** The meter, empty if anything about it is wrong. */
  static Optional<Read> read(String name, Entry entry, Lengths lengths, Sources sources) {
    int faults = entry.notes().count();
    Optional<Section> section =
        entry.isNothing()
            ? Optional.of(new Section(entry, List.of(), List.of()))
            : entry.section(
                "immersion",
                "applied",
                "ambient",
                "scale error",
                "repeat error",
                "position error",
                "resolution",
                "response",
                "calibrated under");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    try (Section meter = section.get()) {
      boolean applied = applied(meter);
      double immersion =
          meter
              .optional("immersion")
              .map(
                  value ->
                      value.number(
                          Limit.between(0.5, 3, ""),
                          "state true over shown value under water, as the sensor's maker does"))
              .orElse(1.0);
      double ambient =
          meter.number(
              "ambient",
              0,
              Limit.between(0, 10_000, PPFD),
              "state what the meter shows under water with the fixture off");
      double scale = meter.number("scale error", SCALE_ERROR, SHARE, "write 5 % as 0.05");
      double repeat = meter.number("repeat error", REPEAT_ERROR, SHARE, "write 2 % as 0.02");
      double position =
          meter.number(
              "position error",
              lengths.unit().fromMetres(POSITION_ERROR),
              lengths.notNegative(),
              "state how far off its place the sensor may stand");
      double resolution =
          meter.number(
              "resolution",
              RESOLUTION,
              Limit.between(0, 1000, PPFD),
              "state the smallest step of the display");
      Optional<SpectralSensor> sensor = SensorEntry.read(meter, sources);
      if (entry.notes().count() > faults) {
        return Optional.empty();
      }
      return Optional.of(
          new Read(
              new Meter(
                  name,
                  immersion,
                  applied,
                  ambient,
                  scale,
                  repeat,
                  lengths.metres(position),
                  resolution),
              sensor));
    }
  }

  /**
   * Whether readings hold the immersion factor already. It may be left out only where no factor is
   * stated either: then both are taken as done, and that is noted.
   */
  private static boolean applied(Section meter) {
    Optional<Boolean> applied = meter.optional("applied").flatMap(Entry::truth);
    if (meter.has("immersion") && !meter.has("applied")) {
      meter.missing(
          "applied", "state true if the readings hold the immersion factor already, false if not");
    } else if (!meter.has("immersion") && applied.isPresent() && !applied.get()) {
      meter.missing("immersion", "state the factor that is still to be applied");
    } else if (!meter.has("immersion") && !meter.has("applied")) {
      meter.taken("immersion", "1");
      meter.taken("applied", "true (readings hold the immersion factor already)");
    }
    return applied.orElse(true);
  }
}
