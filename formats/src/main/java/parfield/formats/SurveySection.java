package parfield.formats;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.rig.Rig;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.tank.Tank;

/** One of the setup's {@code surveys}: readings taken with a rig and a meter. */
final class SurveySection {
  private final Map<String, Optional<Rig>> rigs;
  private final Map<String, Optional<MeterSection.Read>> meters;
  private final Optional<Tank> tank;
  private final Lengths lengths;
  private final Sources sources;

  /** A reader of surveys; rigs and meters are empty where they are stated but wrong. */
  SurveySection(
      Map<String, Optional<Rig>> rigs,
      Map<String, Optional<MeterSection.Read>> meters,
      Optional<Tank> tank,
      Lengths lengths,
      Sources sources) {
    this.rigs = rigs;
    this.meters = meters;
    this.tank = tank;
    this.lengths = lengths;
    this.sources = sources;
  }

  /** The survey, empty if anything about it is wrong. */
  Optional<Survey> read(String name, Entry entry) {
    int faults = entry.notes().count();
    Optional<Section> section = entry.section("rig", "meter", "readings", "depth");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section survey = section.get();
    // That no rig at all is stated is a fault of its own already.
    Optional<Rig> rig = rigs.isEmpty() ? Optional.empty() : named(survey, "rig", rigs);
    Optional<MeterSection.Read> meter = named(survey, "meter", meters);
    OptionalDouble depth = depth(survey);
    List<Reading> readings =
        survey
            .required("readings", "name the file of readings, as in readings: low.csv")
            .map(
                file ->
                    sources.readings(file, new ReadingsFile.Context(lengths.unit(), depth, tank)))
            .orElse(List.of());
    return entry.notes().count() > faults || rig.isEmpty() || meter.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Survey(
                name, rig.get(), under(name, meter.get(), rig.get(), entry.notes()), readings));
  }

  /** A meter under a rig's light: as it is, unless it is stated how it sees colour. */
  private static Meter under(String survey, MeterSection.Read read, Rig rig, Notes notes) {
    return read.sensor()
        .map(sensor -> SensorEntry.under(survey, read.meter(), sensor, rig, notes))
        .orElse(read.meter());
  }

  private OptionalDouble depth(Section survey) {
    double depth =
        survey
            .optional("depth")
            .map(
                value ->
                    value.number(
                        lengths.notNegative(), "state the depth of readings that state none"))
            .orElse(Double.NaN);
    return Double.isNaN(depth) ? OptionalDouble.empty() : OptionalDouble.of(depth);
  }

  private static <T> Optional<T> named(Section survey, String key, Map<String, Optional<T>> known) {
    Optional<Entry> stated = survey.required(key, "name one of the " + key + "s");
    Optional<String> name = stated.flatMap(entry -> entry.text("name one of the " + key + "s"));
    if (name.isEmpty()) {
      return Optional.empty();
    }
    if (!known.containsKey(name.get())) {
      stated
          .get()
          .unknown(
              stated.get().path() + " is not stated",
              name.get(),
              known.keySet(),
              "state it under " + key + "s");
      return Optional.empty();
    }
    return known.get(name.get());
  }
}
