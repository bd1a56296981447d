package parfield.formats;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.rig.Rig;
import parfield.survey.GridPlan;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.survey.SurveyPlan;
import parfield.tank.Tank;

/** One of the setup's {@code surveys}: readings taken with a rig and a meter. */
final class SurveySection {
  private final Map<String, Optional<Rig>> rigs;
  private final Map<String, Optional<MeterSection.Read>> meters;
  private final Optional<Tank> tank;
  private final Lengths lengths;
  private final Sources sources;
  private final Map<String, List<Reading>> held;

  /**
   * What was read of a survey.
   *
   * @param plan what is to be read
   * @param taken the readings, if there are any
   */
  record Read(SurveyPlan plan, Optional<Survey> taken) {}

  /**
   * A reader of surveys; rigs and meters are empty where they are stated but wrong. Readings that
   * are held stand for the file that the survey names.
   */
  SurveySection(
      Map<String, Optional<Rig>> rigs,
      Map<String, Optional<MeterSection.Read>> meters,
      Optional<Tank> tank,
      Lengths lengths,
      Sources sources,
      Map<String, List<Reading>> held) {
    this.rigs = rigs;
    this.meters = meters;
    this.tank = tank;
    this.lengths = lengths;
    this.sources = sources;
    this.held = held;
  }

  /** The survey, empty if anything about it is wrong. */
  Optional<Read> read(String name, Entry entry) {
    int faults = entry.notes().count();
    Optional<Section> section = entry.section("rig", "meter", "readings", "depth", "grid");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section survey = section.get();
    // That no rig at all is stated is a fault of its own already.
    Optional<Rig> rig = rigs.isEmpty() ? Optional.empty() : named(survey, "rig", rigs);
    Optional<MeterSection.Read> meter = named(survey, "meter", meters);
    OptionalDouble depth = depth(survey);
    Optional<GridPlan> grid =
        survey.optional("grid").flatMap(value -> GridEntry.read(value, tank, lengths));
    List<Reading> readings =
        held.containsKey(name)
            ? held(name, survey, entry)
            : file(survey, grid)
                .map(file -> sources.readings(file, context(depth)))
                .orElse(List.of());
    if (entry.notes().count() > faults || rig.isEmpty() || meter.isEmpty()) {
      return Optional.empty();
    }
    Meter under = under(name, meter.get(), rig.get(), entry.notes());
    return Optional.of(
        new Read(
            new SurveyPlan(name, rig.get(), under, grid),
            readings.isEmpty()
                ? Optional.empty()
                : Optional.of(new Survey(name, rig.get(), under, readings))));
  }

  /** The file of readings; a survey that says where to read may name none yet. */
  private static Optional<Entry> file(Section survey, Optional<GridPlan> grid) {
    return grid.isPresent()
        ? survey.optional("readings")
        : survey.required("readings", "name the file of readings, as in readings: low.csv");
  }

  private ReadingsFile.Context context(OptionalDouble depth) {
    return new ReadingsFile.Context(lengths.unit(), depth, tank);
  }

  private List<Reading> held(String name, Section survey, Entry entry) {
    survey.optional("readings");
    List<Reading> readings = held.get(name);
    if (tank.isPresent()) {
      List<String> outside =
          readings.stream()
              .map(Reading::place)
              .filter(place -> !tank.get().contains(place))
              .map(
                  place ->
                      String.format(
                          Locale.ROOT,
                          "x %s, y %s, depth %s",
                          shown(place.x()),
                          shown(place.y()),
                          shown(place.depth())))
              .toList();
      if (!outside.isEmpty()) {
        entry.fault(
            outside.size() + " readings outside the water: " + String.join("; ", outside),
            "places within the tank",
            "make the tank as large as it is, or take these readings back");
      }
    }
    return readings;
  }

  private String shown(double metres) {
    return NumberText.shown(lengths.unit().fromMetres(metres));
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
