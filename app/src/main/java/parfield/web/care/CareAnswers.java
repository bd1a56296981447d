package parfield.web.care;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import parfield.answer.AcclimationAnswer;
import parfield.answer.AskedDay;
import parfield.answer.Bench;
import parfield.answer.CalendarAnswer;
import parfield.answer.DayAnswer;
import parfield.answer.FieldPrediction;
import parfield.answer.HomesAnswer;
import parfield.answer.PowerAnswer;
import parfield.answer.Refusal;
import parfield.care.CoralGroup;
import parfield.care.DailyProgram;
import parfield.care.HadLight;
import parfield.field.FieldSolver;
import parfield.fit.LightModel;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/**
 * All that the page answers, by the same classes as the command line.
 *
 * @param day the light of the day
 * @param homes who can live where
 * @param steps towards the light, or why there are none
 * @param power of the rig, or why there is none
 */
public record CareAnswers(
    DayAnswer day, HomesAnswer homes, Part<AcclimationAnswer> steps, Part<PowerAnswer> power) {
  /** A part of the page: there, or refused for a reason that a person can mend. */
  public record Part<T>(Optional<T> answer, List<String> refused) {
    static <T> Part<T> of(Supplier<T> ask) {
      try {
        return new Part<>(Optional.of(ask.get()), List.of());
      } catch (Refusal e) {
        List<String> why = new ArrayList<>(List.of(e.problem().title()));
        e.problem().hints().forEach(hint -> why.add(hint.message()));
        return new Part<>(Optional.empty(), why);
      }
    }
  }

  static CareAnswers of(
      Bench bench, LightModel model, FieldSolver solver, AskedCare asked, LengthUnit unit) {
    String source = bench.setup().source();
    Rig rig = bench.rig(asked.text("rig"));
    DailyProgram program =
        AskedDay.program(rig, asked.text("lit"), asked.text("ramp"), asked.channels());
    Place place = asked.place(bench, unit);
    List<CoralGroup> groups = AskedCare.groups(bench);
    DayAnswer day =
        DayAnswer.of(
            source,
            model,
            solver,
            rig,
            program,
            place,
            List.of(asked.mapDepth(bench, unit)),
            FieldPrediction.CELL,
            groups);
    return new CareAnswers(
        day,
        HomesAnswer.of(source, model, solver, rig, program, groups, 3, 3)
            .withPlanes(day.planes())
            .withSection(model, solver, FieldPrediction.CELL),
        Part.of(() -> steps(bench, model, solver, asked, unit)),
        Part.of(
            () ->
                PowerAnswer.of(
                    source, model, rig, program, asked.tariff(), asked.text("currency"))));
  }

  /** The steps alone, which cost little. */
  static AcclimationAnswer steps(
      Bench bench, LightModel model, FieldSolver solver, AskedCare asked, LengthUnit unit) {
    Rig rig = bench.rig(asked.text("rig"));
    HadLight had = asked.had(bench);
    return AcclimationAnswer.of(
        bench.setup().source(),
        model,
        solver,
        rig,
        AskedDay.program(rig, asked.text("lit"), asked.text("ramp"), asked.channels()),
        asked.place(bench, unit),
        asked.first(),
        had,
        had.known().pace());
  }

  /** The calendar of the steps and the day. */
  static CalendarAnswer calendar(AcclimationAnswer plan, int revision) {
    return new CalendarAnswer(
        plan.source(),
        plan.rig(),
        plan.program(),
        plan.schedule(),
        Optional.of(plan.maintenance().cleanEveryDays()),
        revision,
        List.of());
  }
}
