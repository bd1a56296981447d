package parfield.care;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.fit.PredictedField;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.plan.Dials;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.units.Estimate;

/**
 * From the light that a coral had to the light that it shall have: steps of one factor, each held
 * for some days.
 *
 * <p>Careful at both ends: the plan begins where even the bright end of the new light is no more
 * than the coral had. Immutable.
 *
 * @param had the light before
 * @param ratio bright end of the wanted light over the light before; 1 or less needs no raising
 * @param pace of the steps
 * @param steps from the first day to the wanted light, at least one
 */
public record Acclimation(HadLight had, double ratio, Pace pace, List<Step> steps) {
  /** By how much a step may exceed its factor before it is called coarse. */
  private static final double TOLERANCE = 1.005;

  /** How often the first step is tried a little lower, and by how much each time. */
  private static final int SHRINKS = 12;

  private static final double SHRINK = 0.005;

  /** By how much a dose may exceed another by rounding alone. */
  private static final double ROUNDING = 1 + 1e-9;

  /** Most steps of a plan: so many are no plan. */
  private static final int MOST = 60;

  /**
   * One step.
   *
   * @param firstDay counted from 0
   * @param days how long it is held
   * @param share of the wanted light that the step is meant to give, 0 to 1
   * @param given share of the wanted dose that the whole percents of its dials give
   * @param settings of the rig's hangings, in their order, in whole percent
   * @param peak highest PPFD of the day at the coral [µmol m⁻² s⁻¹]
   * @param dli daily light integral at the coral [mol m⁻² d⁻¹]
   * @param rise factor over the step before in the best estimate of the dose; over the light that
   *     the coral had, of the first
   * @param coarse whether the dials are too coarse for the pace: then it is held twice as long
   */
  public record Step(
      int firstDay,
      int days,
      double share,
      double given,
      List<Setting> settings,
      Estimate peak,
      Estimate dli,
      double rise,
      boolean coarse) {
    public Step {
      settings = List.copyOf(settings);
      Objects.requireNonNull(peak, "peak");
      Objects.requireNonNull(dli, "dli");
    }

    /** The day after its last, counted from 0. */
    public int end() {
      return firstDay + days;
    }
  }

  public Acclimation {
    Objects.requireNonNull(had, "had");
    Objects.requireNonNull(pace, "pace");
    steps = List.copyOf(steps);
  }

  /**
   * Plans the steps.
   *
   * @param rig at the setting that the coral shall have in the end
   * @param program its day
   * @param field of the rig at the coral's place, the only one
   * @param had the light before
   * @param pace of the steps
   * @throws IllegalArgumentException if the wanted light is none, or so many steps are needed that
   *     the light before must be a mistake
   */
  public static Acclimation plan(
      Rig rig, DailyProgram program, PredictedField field, HadLight had, Pace pace) {
    DayLight wanted = DayLight.of(field, DayOutputs.of(program, rig));
    double ratio = had.ratio(wanted.peak()[0].high(), wanted.dli()[0].high());
    if (!(ratio > 0)) {
      throw new IllegalArgumentException(
          "the rig gives no light at the coral's place: dial it, or choose another place");
    }
    if (pace.steps(ratio) > MOST) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the wanted light is %.0f times what the coral had: %d steps are needed, at most %d"
                  + " make a plan; check the light it had, or begin in a dimmer place",
              ratio,
              pace.steps(ratio),
              MOST));
    }
    return new Acclimation(
        had,
        ratio,
        pace,
        steps(rig, program, field, Math.max(1, ratio), pace, pace.days(), List.of()));
  }

  /**
   * Steps that begin at the whole light over {@code factor}, the first held for some days; at the
   * settings {@code begin} if there are any.
   */
  private static List<Step> steps(
      Rig rig,
      DailyProgram program,
      PredictedField field,
      double factor,
      Pace pace,
      int firstDays,
      List<Setting> begin) {
    double full = DayLight.of(field, DayOutputs.of(program, rig)).dli(0, 0);
    int rises = pace.steps(factor);
    List<Step> steps = new ArrayList<>();
    int day = 0;
    double before = full / factor;
    List<Setting> last = List.of();
    for (int k = 0; k <= rises; k++) {
      double share = rises == 0 ? 1 : Math.pow(factor, (double) k / rises - 1);
      boolean given = k == 0 && !begin.isEmpty();
      List<Setting> settings = given ? begin : k == rises ? settings(rig) : scaled(rig, share);
      if (settings.equals(last)) {
        // Whole percents make no difference: the step before goes on.
        Step held = steps.remove(steps.size() - 1);
        steps.add(longer(held, pace.days()));
        day += pace.days();
        continue;
      }
      DayLight light = DayLight.of(field, DayOutputs.of(program, hung(rig, settings)));
      // Whole percents may round the first step above what the coral had: then a little less.
      boolean shrinks = k == 0 && !given && rises > 0;
      for (int i = 1; shrinks && i <= SHRINKS && light.dli(0, 0) > before * ROUNDING; i++) {
        settings = scaled(rig, share * (1 - SHRINK * i));
        light = DayLight.of(field, DayOutputs.of(program, hung(rig, settings)));
      }
      double dose = light.dli(0, 0);
      double rise = dose / before;
      boolean coarse = rise > (steps.isEmpty() ? 1 : pace.rise()) * TOLERANCE;
      int days = (steps.isEmpty() ? firstDays : pace.days()) * (coarse ? 2 : 1);
      steps.add(
          new Step(
              day,
              days,
              share,
              dose / full,
              settings,
              light.peak()[0],
              light.dli()[0],
              rise,
              coarse));
      day += days;
      before = dose;
      last = settings;
    }
    return steps;
  }

  private static Step longer(Step step, int days) {
    return new Step(
        step.firstDay(),
        step.days() + days,
        step.share(),
        step.given(),
        step.settings(),
        step.peak(),
        step.dli(),
        step.rise(),
        step.coarse());
  }

  private static List<Setting> settings(Rig rig) {
    return rig.hangings().stream().map(Hanging::setting).toList();
  }

  private static List<Setting> scaled(Rig rig, double share) {
    return rig.hangings().stream()
        .map(
            hanging -> {
              Fixture fixture = hanging.fixture();
              double[] outputs = fixture.outputs(hanging.setting());
              for (int c = 0; c < outputs.length; c++) {
                outputs[c] *= share;
              }
              return Dials.settingFor(fixture, outputs);
            })
        .toList();
  }

  /** A rig with each hanging at a setting of its own. */
  static Rig hung(Rig rig, List<Setting> settings) {
    List<Hanging> hangings = new ArrayList<>();
    for (int h = 0; h < settings.size(); h++) {
      hangings.add(rig.hangings().get(h).withSetting(settings.get(h)));
    }
    return new Rig(rig.name(), rig.tank(), hangings);
  }

  /** Days from the first to the one from which on the wanted light is kept. */
  public int daysToWanted() {
    return steps.get(steps.size() - 1).firstDay();
  }

  /**
   * The plan after a stop sign: back to the step before, held twice as long, then on in smaller and
   * longer steps.
   *
   * @param step in which the sign was seen, counted from 0
   * @param rig at the wanted setting
   * @param program its day
   * @param field of the rig at the coral's place
   */
  public Acclimation steppedBack(int step, Rig rig, DailyProgram program, PredictedField field) {
    Step back = steps.get(Math.max(0, step - 1));
    // In the first step there is none before: one rise below it.
    double share = step == 0 ? back.given() / pace.rise() : back.given();
    Pace slower = pace.slower();
    return new Acclimation(
        had,
        ratio,
        slower,
        steps(
            rig,
            program,
            field,
            Math.max(1, 1 / share),
            slower,
            2 * pace.days(),
            step == 0 ? List.of() : back.settings()));
  }

  /** What to do at a stop sign, as sentences. */
  public static List<String> rules() {
    return List.of(
        "look at the animal every day, at the same hour, before the lamps reach their plateau",
        "at a sign to hold: stay at the step until it has passed for a week, then go on",
        "at a sign to step back, or if a sign to hold lasts three days: go back one step the same"
            + " day, stay there for two steps' time, then go on with steps of half the rise",
        "after a step back in the first step: shade the animal, or put it deeper or further aside",
        "do not make up for lost days: the plan shifts, it is not caught up with");
  }
}
