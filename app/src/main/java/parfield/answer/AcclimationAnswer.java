package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import parfield.care.Acclimation;
import parfield.care.Caution;
import parfield.care.CoralGroup;
import parfield.care.DailyProgram;
import parfield.care.HadLight;
import parfield.care.Maintenance;
import parfield.care.Pace;
import parfield.care.Schedule;
import parfield.care.Standing;
import parfield.care.StopSign;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/**
 * The way from the light that a coral had to that of a rig.
 *
 * @param source name of the setup
 * @param rig at the wanted setting
 * @param program its day
 * @param place of the coral
 * @param first day
 * @param plan the steps
 * @param maintenance how the light falls with time, as assumed
 * @param files that were left
 */
public record AcclimationAnswer(
    String source,
    Rig rig,
    DailyProgram program,
    Place place,
    LocalDate first,
    Acclimation plan,
    Maintenance maintenance,
    List<String> files)
    implements Answer {
  /** Share of the first light at which it is time to read again. */
  private static final double READ_AGAIN = 0.9;

  public AcclimationAnswer {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(plan, "plan");
    files = List.copyOf(files);
  }

  /** Plans the steps for a coral at a place. */
  public static AcclimationAnswer of(
      String source,
      LightModel model,
      FieldSolver solver,
      Rig rig,
      DailyProgram program,
      Place place,
      LocalDate first,
      HadLight had,
      Pace pace) {
    try {
      Acclimation plan =
          Acclimation.plan(
              rig, program, model.predict(solver, rig, Places.of(List.of(place))), had, pace);
      return new AcclimationAnswer(
          source,
          rig,
          program,
          place,
          first,
          plan,
          Maintenance.common(program.photoperiod().toMinutes() / 60.0),
          List.of());
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage());
    }
  }

  /** This answer with files that were left. */
  public AcclimationAnswer leaving(List<String> left) {
    return new AcclimationAnswer(source, rig, program, place, first, plan, maintenance, left);
  }

  /** What to dial on which days. */
  public Schedule schedule() {
    return Schedule.of(rig, program, first, Optional.of(plan));
  }

  /** What is to be done, in a sentence without its full stop. */
  public String summary() {
    if (plan.ratio() <= 1) {
      return "The coral had as much light or more: no steps are needed; watch for browning and for"
          + " stretching";
    }
    return String.format(
        Locale.ROOT,
        "Up to %s times the light it had (%s): %s in %s, each at most %s %% up",
        Numbers.fixed(plan.ratio(), 1),
        plan.had().known().words(),
        Numbers.count(plan.steps().size() - 1, "rise"),
        Numbers.count(plan.daysToWanted(), "day"),
        Numbers.plain(100 * (plan.pace().rise() - 1), 1));
  }

  /** Why the wanted light does not suit a group, by the best estimate; empty if it does. */
  public Optional<String> unfit(CoralGroup group) {
    Acclimation.Step wanted = plan.steps().get(plan.steps().size() - 1);
    Standing standing = group.under(wanted.peak().value(), wanted.dli().value());
    return standing == Standing.FITS
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT,
                "for %s the light of this place is %s: no steps make it suit; choose another place,"
                    + " or dial the rig down",
                group.name(),
                standing.words()));
  }

  /** Days of a step, as in {@code 2026-12-01 to 2026-12-07}. */
  public String days(Acclimation.Step step) {
    return first.plusDays(step.firstDay())
        + (step.firstDay() == plan.daysToWanted()
            ? " on"
            : " to " + first.plusDays(step.end() - 1L));
  }

  /** Dials of a step, as in {@code blue 60, white 45}; of alike hangings once. */
  public String dials(Acclimation.Step step) {
    List<String> all = new ArrayList<>();
    step.settings().stream()
        .distinct()
        .forEach(
            setting -> {
              Map<String, Double> dials = new TreeMap<>(setting.dials());
              List<String> words = new ArrayList<>();
              dials.forEach((name, percent) -> words.add(name + " " + Numbers.plain(percent, 1)));
              all.add(words.isEmpty() ? "all 100" : String.join(", ", words));
            });
    return String.join("; ", all);
  }

  /** What a step rises by, as in {@code +18 %}, with a mark where the dials are too coarse. */
  public String rise(Acclimation.Step step) {
    return Numbers.signed(100 * (step.rise() - 1), 0) + (step.coarse() ? " coarse" : "");
  }

  /** Signs at which to step back, then those at which to hold. */
  public static List<String> signs() {
    List<String> all = new ArrayList<>();
    Arrays.stream(StopSign.values())
        .filter(StopSign::stepsBack)
        .forEach(sign -> all.add("step back: " + sign.words()));
    Arrays.stream(StopSign.values())
        .filter(sign -> !sign.stepsBack())
        .forEach(sign -> all.add("hold: " + sign.words()));
    return all;
  }

  /** How the light falls with time, as sentences without their full stops. */
  public List<String> later() {
    return List.of(
        maintenance.inWords(),
        String.format(
            Locale.ROOT,
            "by that, age leaves %s %% of the light in a year and %s %% in three; just before a"
                + " cleaning dirt leaves %s %% of that; read again by %s, when age alone has taken a"
                + " tenth",
            Numbers.percent(maintenance.age(365)),
            Numbers.percent(maintenance.age(3 * 365)),
            Numbers.percent(maintenance.dirtiest()),
            maintenance.agedBelow(first, READ_AGAIN)),
        "new or freshly cleaned lamps are brighter than the old: take them as a step of their own");
  }

  /** What to mind. */
  public static List<String> cautions() {
    return List.of(
        Caution.ANIMALS.inWords(), Caution.EYES.inWords(), Caution.ELECTRICITY.inWords());
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "Towards rig %s of %s, at %s, %s deep\n",
            rig.name(),
            source,
            Numbers.spot(place, unit),
            Numbers.withUnit(place.depth(), unit)));
    AskedDay.words(program).forEach(line -> text.append(Lines.item(line)));
    text.append('\n').append(summary()).append(".\n\n");
    Table table =
        new Table(
            "rlrrrrl",
            "step",
            "days",
            "light (%)",
            "rise (%)",
            "peak (" + Numbers.PPFD + ")",
            "DLI (" + DayAnswer.MOL + ")",
            "dials (%)");
    for (int k = 0; k < plan.steps().size(); k++) {
      Acclimation.Step step = plan.steps().get(k);
      table.row(
          String.format(Locale.ROOT, "%d", k + 1),
          days(step),
          Numbers.percent(step.given()),
          rise(step),
          Numbers.ppfd(step.peak()),
          DayAnswer.dose(step.dli()),
          dials(step));
    }
    text.append(table.text());
    if (plan.steps().stream().anyMatch(Acclimation.Step::coarse)) {
      text.append(
          "\nCoarse: whole percents on the dials rise faster than the pace there, so that the step"
              + " is held twice as long.\n");
    }
    text.append(Lines.section("Signs to stop at", signs()));
    text.append(Lines.section("Rules", Acclimation.rules()));
    text.append(Lines.section("Later", later()));
    text.append(
        "\nPaces and signs are common practice, no source. Intervals run from 5 to 95 %, the meter's"
            + " scale error included.\n");
    text.append(Lines.section("Cautions", cautions()));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("setup", source);
    json.put("rig", rig.name());
    Json.strings(json, "program", AskedDay.words(program));
    Json.place(json.putObject("place"), place);
    json.put("first_day", first.toString());
    json.put("known", plan.had().known().words());
    Json.number(json, "ratio", plan.ratio());
    Json.number(json, "rise_at_most", plan.pace().rise());
    json.put("days_to_wanted", plan.daysToWanted());
    ArrayNode steps = json.putArray("steps");
    for (Acclimation.Step step : plan.steps()) {
      ObjectNode entry = steps.addObject();
      entry.put("from", first.plusDays(step.firstDay()).toString());
      entry.put("days", step.days());
      Json.number(entry, "light", step.given());
      Json.number(entry, "rise", step.rise());
      entry.put("coarse", step.coarse());
      Json.ppfd(entry, "peak", step.peak());
      DayAnswer.dli(entry, "dli", step.dli());
      ArrayNode settings = entry.putArray("settings");
      step.settings()
          .forEach(
              setting -> {
                ObjectNode dials = settings.addObject();
                setting.dials().forEach((name, percent) -> Json.number(dials, name, percent));
              });
    }
    ArrayNode months = json.putArray("maintenance");
    for (int month = 0; month <= 12; month++) {
      ObjectNode entry = months.addObject();
      entry.put("day", first.plusMonths(month).toString());
      Json.number(entry, "factor", maintenance.factor(first, first.plusMonths(month)));
    }
    Json.strings(json, "stop_signs", signs());
    Json.strings(json, "rules", Acclimation.rules());
    Json.strings(json, "later", later());
    Json.strings(json, "cautions", cautions());
    Json.strings(json, "files", files);
    return json;
  }
}
