package parfield.formats;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import parfield.care.CoralGroup;
import parfield.lamp.Fixture;
import parfield.plan.Demand;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Meter;
import parfield.survey.SpectralSensor;
import parfield.survey.Survey;
import parfield.survey.SurveyPlan;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * A bench as its setup file states it, with every file it names already read. Immutable; all
 * lengths in metres, maps in the file's order.
 *
 * @param source name of the setup file
 * @param length unit in which the file states lengths, for display
 * @param tank the tank
 * @param room free space above it
 * @param fixtures by name
 * @param rigs by name
 * @param meters by name, as they are under any light
 * @param sensors how meters see colour, by meter's name, of those that state it
 * @param plans what is to be read, by survey's name, of every survey
 * @param surveys by name, those that hold readings, each with its meter as it is under that
 *     survey's light
 * @param bands by name
 * @param livestock groups of corals by name, as far as the bench states its own
 * @param day when the channels are lit, if the bench states it
 * @param demands what the plan must meet
 * @param assumptions what was taken without being stated, one plain sentence each
 */
public record Setup(
    String source,
    LengthUnit length,
    Tank tank,
    Room room,
    Map<String, Fixture> fixtures,
    Map<String, Rig> rigs,
    Map<String, Meter> meters,
    Map<String, SpectralSensor> sensors,
    Map<String, SurveyPlan> plans,
    Map<String, Survey> surveys,
    Map<String, Band> bands,
    Map<String, CoralGroup> livestock,
    Optional<StatedDay> day,
    List<Demand> demands,
    List<String> assumptions) {
  public Setup {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(tank, "tank");
    Objects.requireNonNull(room, "room");
    fixtures = ordered(fixtures);
    rigs = ordered(rigs);
    meters = ordered(meters);
    sensors = ordered(sensors);
    plans = ordered(plans);
    surveys = ordered(surveys);
    bands = ordered(bands);
    livestock = ordered(livestock);
    Objects.requireNonNull(day, "day");
    demands = List.copyOf(demands);
    assumptions = List.copyOf(assumptions);
  }

  private static <T> Map<String, T> ordered(Map<String, T> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }
}
