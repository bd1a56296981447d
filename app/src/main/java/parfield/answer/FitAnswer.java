package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.fit.FitReport;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.units.LengthUnit;

/**
 * What a fit found.
 *
 * @param surveys that were fitted, at least one
 * @param report of the fit
 * @param model name of the model file that was left
 */
public record FitAnswer(List<Survey> surveys, FitReport report, String model) implements Answer {
  public FitAnswer {
    surveys = List.copyOf(surveys);
    Objects.requireNonNull(report, "report");
    Objects.requireNonNull(model, "model");
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(Measured.text(surveys, unit));
    text.append(
        String.format(
            Locale.ROOT,
            "The model misses a reading by %s %% of its light (robust standard deviation).\n",
            Numbers.finePercent(report.relativeResidual())));
    if (!report.findings().isEmpty()) {
      text.append('\n').append(findings(report, unit).text());
    }
    if (!report.crossValidation().isEmpty()) {
      text.append('\n').append(crossValidation(report, unit).text());
    }
    if (!report.statements().isEmpty()) {
      text.append("\nWhat the readings tell\n");
      report.statements().forEach(sentence -> text.append(Lines.item(sentence)));
    }
    text.append('\n').append(misfits(unit));
    text.append("\nThe model is in ").append(model).append(".\n");
    return text.toString();
  }

  /** Conditions of the bench, as stated and as fitted. */
  public static Table findings(FitReport report, LengthUnit unit) {
    Table table = new Table("lrr", "condition", "stated", "fitted (5–95 %)");
    for (FitReport.Finding found : report.findings()) {
      FitReport.Finding finding = FitWords.finding(found, unit);
      table.row(
          finding.name(), Numbers.plain(finding.stated(), 3), Numbers.plain(finding.fitted(), 3));
    }
    return table;
  }

  /** Errors of predicting what was held out. */
  public static Table crossValidation(FitReport report, LengthUnit unit) {
    Table table =
        new Table(
            "lrrr",
            "predicted while held out",
            "median |error| (%)",
            "90th percentile (%)",
            "error of the mean (%)");
    for (FitReport.CrossValidation held : report.crossValidation()) {
      table.row(
          FitWords.heldOut(held, unit),
          Numbers.finePercent(held.median()),
          Numbers.finePercent(held.percentile90()),
          Numbers.finePercent(held.meanError()));
    }
    return table;
  }

  private List<FitReport.Residual> suspected() {
    return report.residuals().stream().filter(r -> !r.suspicion().isEmpty()).toList();
  }

  private String misfits(LengthUnit unit) {
    if (suspected().isEmpty()) {
      return "Every reading fits the model.\n";
    }
    StringBuilder text =
        new StringBuilder("Readings that do not fit the model (they hardly counted)\n");
    for (FitReport.Residual residual : suspected()) {
      Reading reading = reading(residual);
      text.append(
          Lines.item(
              String.format(
                  Locale.ROOT,
                  "%s, line %d (x %s, y %s, depth %s): read %s where the model says %s %s: %s",
                  residual.survey(),
                  reading.line(),
                  Numbers.length(reading.place().x(), unit),
                  Numbers.length(reading.place().y(), unit),
                  Numbers.withUnit(reading.place().depth(), unit),
                  Numbers.ppfd(residual.measured()),
                  Numbers.ppfd(residual.predicted()),
                  Numbers.PPFD,
                  residual.suspicion())));
    }
    return text.toString();
  }

  private Reading reading(FitReport.Residual residual) {
    return surveys.stream()
        .filter(survey -> survey.name().equals(residual.survey()))
        .findFirst()
        .orElseThrow()
        .readings()
        .get(residual.index());
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("model", model);
    json.set("measured", Measured.json(surveys));
    Json.number(json, "relative_residual", report.relativeResidual());
    ArrayNode conditions = json.putArray("conditions");
    for (FitReport.Finding finding : report.findings()) {
      ObjectNode entry = conditions.addObject();
      entry.put("name", finding.name());
      Json.number(entry, "stated", finding.stated());
      Json.number(entry, "fitted", finding.fitted());
    }
    ArrayNode validation = json.putArray("cross_validation");
    for (FitReport.CrossValidation held : report.crossValidation()) {
      ObjectNode entry = validation.addObject();
      entry.put("held_out", held.heldOut());
      Json.number(entry, "median_relative_error", held.median());
      Json.number(entry, "percentile_90_relative_error", held.percentile90());
      Json.number(entry, "relative_error_of_mean", held.meanError());
    }
    ArrayNode statements = json.putArray("statements");
    report.statements().forEach(statements::add);
    ArrayNode misfits = json.putArray("misfits");
    for (FitReport.Residual residual : suspected()) {
      ObjectNode entry = misfits.addObject();
      entry.put("survey", residual.survey());
      Reading reading = reading(residual);
      entry.put("line", reading.line());
      Json.place(entry, reading.place());
      Json.ppfd(entry, "measured", residual.measured());
      Json.ppfd(entry, "predicted", residual.predicted());
      Json.number(entry, "sigmas", residual.sigmas());
      entry.put("reason", residual.suspicion());
    }
    return json;
  }
}
