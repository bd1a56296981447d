package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.survey.Survey;
import parfield.tank.Place;

/** What an update by readings found, for people. */
final class UpdateReport {
  /** A meter's scale is told where it is off by this. */
  private static final double WORTH_TELLING = 0.005;

  private UpdateReport() {}

  /** The update with its model's report told anew. */
  static ModelUpdate told(ModelUpdate update, FitReport before, List<Survey> surveys) {
    Conditions conditions = Conditions.of(surveys.get(0).rig().tank());
    LightModel model = update.model();
    List<String> statements = new ArrayList<>(statements(update, surveys));
    statements.addAll(before.statements());
    FitReport report =
        new FitReport(
            TankFindings.of(conditions, model.best(), model.draws()),
            residuals(update),
            List.of(),
            statements,
            before.relativeResidual());
    return new ModelUpdate(
        new LightModel(model.best(), model.draws(), model.discrepancy(), report),
        update.meterCorrection(),
        update.setAside(),
        update.expected(),
        update.surprise());
  }

  private static List<FitReport.Residual> residuals(ModelUpdate update) {
    List<FitReport.Residual> residuals = new ArrayList<>();
    for (ModelUpdate.Expected one : update.expected()) {
      residuals.add(
          new FitReport.Residual(
              one.survey(), one.index(), one.ppfd(), one.after(), one.sigmas(), ""));
    }
    for (ModelUpdate.SetAside one : update.setAside()) {
      residuals.add(
          new FitReport.Residual(
              one.survey(), one.index(), one.ppfd(), one.expected(), one.sigmas(), words(one)));
    }
    return residuals;
  }

  private static List<String> statements(ModelUpdate update, List<Survey> surveys) {
    List<String> statements = new ArrayList<>();
    int believed = update.expected().size();
    statements.add(
        String.format(
            Locale.ROOT,
            "The model was updated by %d reading%s taken over this tank.",
            believed,
            believed == 1 ? "" : "s"));
    update.setAside().forEach(one -> statements.add(words(one)));
    if (update.surprising()) {
      statements.add(
          String.format(
              Locale.ROOT,
              "The readings lie farther from what was expected than chance allows (%.1f times the"
                  + " square of the stated errors): something is stated wrong, or the fixture is"
                  + " another one. Check the tank, the dials and the meter, or read a whole grid and"
                  + " fit this tank by itself.",
              update.surprise()));
    }
    double correction = update.meterCorrection() - 1;
    if (Math.abs(correction) >= WORTH_TELLING) {
      statements.add(
          String.format(
              Locale.ROOT,
              "Meter %s seems to show %.1f %% too %s; the PPFD told here is corrected for it.",
              surveys.get(0).meter().name(),
              100 * Math.abs(correction),
              correction > 0 ? "little" : "much"));
    }
    return statements;
  }

  private static String words(ModelUpdate.SetAside one) {
    Place place = one.place();
    String where =
        String.format(
            Locale.ROOT,
            "Reading %d of survey %s, at x %s, y %s, depth %s cm,",
            one.index() + 1,
            one.survey(),
            cm(place.x()),
            cm(place.y()),
            cm(place.depth()));
    if (one.sigmas() == 0) {
      return where + " shows no light: it tells nothing and was set aside. Read it again.";
    }
    return String.format(
        Locale.ROOT,
        "%s shows %.0f where %.0f µmol m⁻² s⁻¹ was expected by the model and the other readings, %.0f"
            + " standard errors off: it was set aside. Read it again.",
        where,
        one.ppfd(),
        one.expected(),
        one.sigmas());
  }

  private static String cm(double metres) {
    String text = String.format(Locale.ROOT, "%.1f", 100 * metres);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
