package parfield.fit;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.field.FieldSolver;
import parfield.survey.Survey;
import parfield.tank.Place;

/**
 * A light model after a few more readings.
 *
 * @param model the model, with as many draws as before
 * @param meterCorrection what readings of the first survey's meter are to be multiplied by, as far
 *     as the readings tell; the model's PPFD is that of the corrected meter
 * @param setAside readings that were not believed, for a person to read again
 * @param expected what the model before said of each reading that was believed, with what it says
 *     now
 * @param surprise how far the readings lie from what was expected, all together: their weighted
 *     square distance over their number; about 1 for a sound model, see {@link #surprising}
 */
public record ModelUpdate(
    LightModel model,
    double meterCorrection,
    List<SetAside> setAside,
    List<Expected> expected,
    double surprise) {
  /** More readings than this are better fitted anew. */
  public static final int MOST_READINGS = 40;

  public ModelUpdate {
    Objects.requireNonNull(model, "model");
    setAside = List.copyOf(setAside);
    expected = List.copyOf(expected);
  }

  /**
   * A reading that was not believed.
   *
   * @param survey name of its survey
   * @param index in its survey, 0-based
   * @param place where
   * @param ppfd after the meter's corrections [µmol m⁻² s⁻¹]
   * @param expected given the model and all other readings [µmol m⁻² s⁻¹]; 0 where the reading
   *     itself shows no light
   * @param sigmas how many standard errors it lies off, without sign; 0 where it shows no light
   */
  public record SetAside(
      String survey, int index, Place place, double ppfd, double expected, double sigmas) {}

  /**
   * A reading that was believed.
   *
   * @param survey name of its survey
   * @param index in its survey, 0-based
   * @param place where
   * @param ppfd after the meter's corrections [µmol m⁻² s⁻¹]
   * @param before what the most plausible truth said [µmol m⁻² s⁻¹]
   * @param sigmas reading less expectation, in standard errors of both
   * @param after what the most plausible truth says now [µmol m⁻² s⁻¹]
   */
  public record Expected(
      String survey,
      int index,
      Place place,
      double ppfd,
      double before,
      double sigmas,
      double after) {}

  /**
   * Whether the readings lie farther off than chance does in one of a hundred times: then something
   * is stated wrong, or the fixture is another one.
   */
  public boolean surprising() {
    // The 99 % quantile of chi square over its degrees of freedom, after Wilson and Hilferty 1931.
    int n = Math.max(1, expected.size());
    double share = 2.0 / (9 * n);
    double quantile = Math.pow(1 - share + NINETY_NINE * Math.sqrt(share), 3);
    return surprise > quantile;
  }

  private static final double NINETY_NINE = 2.3263;

  /**
   * Updates a model by readings over its tank.
   *
   * @param model of that tank, such as a transferred one
   * @param solver which solver
   * @param surveys of that tank, each with its rig as stated and its meter; the first one's meter
   *     is the one whose readings the model predicts
   * @throws UnfittableException if there is no reading with light, or more than {@value
   *     #MOST_READINGS}; the message says what to do
   */
  public static ModelUpdate of(LightModel model, FieldSolver solver, List<Survey> surveys) {
    int readings = surveys.stream().mapToInt(survey -> survey.readings().size()).sum();
    if (readings == 0) {
      throw new UnfittableException("there is no reading to update the model by; enter one");
    }
    if (readings > MOST_READINGS) {
      throw new UnfittableException(
          String.format(
              Locale.ROOT,
              "%d readings are more than the %d that a model is updated by; they are enough to fit"
                  + " this tank by itself: do that",
              readings,
              MOST_READINGS));
    }
    return UpdateReport.told(new Updating(model, solver, surveys).run(), model.report(), surveys);
  }
}
