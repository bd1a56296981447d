package parfield.web.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import parfield.survey.Band;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.survey.SurveyPlan;
import parfield.tank.Tank;
import parfield.units.LengthUnit;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;
import parfield.workspace.SurveySummary;

/**
 * A survey that is being measured: what is to be read, at one revision of the bench's setup.
 * Immutable.
 *
 * @param summary of it as it is stored
 * @param revision of the setup
 * @param plan rig, meter and grid; empty if the setup does not state the survey or has faults
 * @param tank that is read; empty if the setup has faults
 * @param bands that the bench wants
 * @param unit in which the setup states lengths
 */
public record OpenSurvey(
    SurveySummary summary,
    long revision,
    Optional<SurveyPlan> plan,
    Optional<Tank> tank,
    List<Band> bands,
    LengthUnit unit) {
  public OpenSurvey {
    Objects.requireNonNull(summary, "summary");
    Objects.requireNonNull(plan, "plan");
    Objects.requireNonNull(tank, "tank");
    bands = List.copyOf(bands);
    Objects.requireNonNull(unit, "unit");
  }

  /** Its id. */
  public UUID id() {
    return summary.id();
  }

  /**
   * The places of the grid in the order of visiting. Where somebody has read a place already, its
   * point names that reading. Without a grid, the places that were read are the points.
   */
  List<GridPoint> points(List<ReadingRevision> readings) {
    List<GridPoint> points = new ArrayList<>();
    if (plan.flatMap(SurveyPlan::grid).isEmpty()) {
      readings.stream()
          .filter(reading -> reading.entry().kind() == Entry.Kind.GRID)
          .forEach(
              reading ->
                  points.add(
                      new GridPoint(
                          reading.reading(), reading.entry().place(), points.size() + 1)));
      return points;
    }
    plan.flatMap(SurveyPlan::grid)
        .ifPresent(
            grid ->
                grid.places()
                    .forEach(
                        place -> {
                          GridPoint own = GridPoint.of(id(), place, points.size() + 1);
                          points.add(
                              readings.stream()
                                  .filter(
                                      reading ->
                                          reading.entry().kind() == Entry.Kind.GRID
                                              && own.at(reading.entry().place()))
                                  .findFirst()
                                  .map(
                                      reading ->
                                          new GridPoint(reading.reading(), place, own.order()))
                                  .orElse(own));
                        }));
    return points;
  }

  /** The readings of the grid that count, with their stored revisions in the same order. */
  record Counted(Survey survey, List<ReadingRevision> revisions) {}

  /** The grid readings that count as the engine sees them; empty if there is none or no plan. */
  Optional<Counted> counted(List<ReadingRevision> readings) {
    List<ReadingRevision> grid =
        readings.stream()
            .filter(reading -> !reading.withdrawn() && reading.entry().kind() == Entry.Kind.GRID)
            .toList();
    if (grid.isEmpty() || plan.isEmpty()) {
      return Optional.empty();
    }
    SurveyPlan stated = plan.get();
    List<Reading> values =
        grid.stream()
            .map(
                reading ->
                    new Reading(0, reading.entry().place(), reading.entry().value().getAsDouble()))
            .toList();
    return Optional.of(
        new Counted(new Survey(stated.name(), stated.rig(), stated.meter(), values), grid));
  }
}
