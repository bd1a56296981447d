package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.fit.ModelUpdate;
import parfield.fit.TransferError;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * What a light model of another tank says of this one: how wrong it may be and why, what readings
 * made of it, and the recommendation with the readings that would confirm it.
 *
 * @param model name of the model that was applied
 * @param recommendation for this tank
 * @param before transfer error of the recommended rig before any reading, taken apart
 * @param update by the readings of this tank
 * @param after error of the recommended rig after it
 * @param left name of the file that the model was left in
 */
public record TransferAnswer(
    String model,
    RecommendationAnswer recommendation,
    TransferError before,
    Optional<ModelUpdate> update,
    Optional<TransferError> after,
    Optional<String> left)
    implements Answer {
  public TransferAnswer {
    Objects.requireNonNull(model, "model");
    Objects.requireNonNull(recommendation, "recommendation");
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(update, "update");
    Objects.requireNonNull(after, "after");
    Objects.requireNonNull(left, "left");
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(model).append(", applied to ").append(recommendation.source()).append("\n\n");
    text.append("Transfer error of true PPFD with the recommended rig (5–95 %)\n");
    text.append(errors().text()).append('\n');
    text.append(parts().text());
    readings(unit)
        .ifPresent(
            table ->
                text.append("\nWhat the readings of this tank made of it\n").append(table.text()));
    text.append('\n').append(recommendation.text(unit));
    left.ifPresent(
        file -> text.append("\nThe model of this tank is in ").append(file).append(".\n"));
    return text.toString();
  }

  /** How far the true PPFD may be from the predicted, of the mean and of a single place. */
  public Table errors() {
    Table table = new Table("lrr", "", "mean of the water (%)", "a single place (%)");
    table.row(
        update.isPresent() ? "before the readings" : "no reading yet",
        percents(before.mean()),
        percents(before.place()));
    after.ifPresent(
        now -> table.row("after the readings", percents(now.mean()), percents(now.place())));
    return table;
  }

  private static String percents(Estimate error) {
    return Numbers.signed(100 * error.low(), 1) + " to " + Numbers.signed(100 * error.high(), 1);
  }

  /** How much of the error before any reading comes from what, each cause by itself. */
  public Table parts() {
    Table table =
        new Table(
            "lrrr",
            "before the readings, by itself",
            "mean (± %)",
            "a single place (± %)",
            "share of the mean's variance (%)");
    for (TransferError.Part part : before.parts()) {
      table.row(
          part.cause().words(),
          Numbers.finePercent(part.ofMean()),
          Numbers.finePercent(part.ofPlace()),
          Numbers.percent(part.shareOfMean()));
    }
    return table;
  }

  /** Every reading of this tank beside what was expected of it; empty if there is none. */
  public Optional<Table> readings(LengthUnit unit) {
    return update.map(done -> readings(done, unit));
  }

  private static Table readings(ModelUpdate update, LengthUnit unit) {
    Table table =
        new Table(
            "llrrrr",
            "reading of this tank",
            "x, y; depth (" + unit.symbol() + ")",
            "PPFD",
            "expected before",
            "standard errors off",
            "the model now");
    for (ModelUpdate.Expected one : update.expected()) {
      table.row(
          one.survey() + " " + (one.index() + 1),
          Numbers.spot(one.place(), unit) + "; " + Numbers.length(one.place().depth(), unit),
          Numbers.ppfd(one.ppfd()),
          Numbers.ppfd(one.before()),
          Numbers.signed(one.sigmas(), 1),
          Numbers.ppfd(one.after()));
    }
    for (ModelUpdate.SetAside one : update.setAside()) {
      table.row(
          one.survey() + " " + (one.index() + 1) + ", set aside",
          Numbers.spot(one.place(), unit) + "; " + Numbers.length(one.place().depth(), unit),
          Numbers.ppfd(one.ppfd()),
          one.sigmas() == 0 ? Numbers.NONE : Numbers.ppfd(one.expected()),
          one.sigmas() == 0 ? Numbers.NONE : Numbers.plain(one.sigmas(), 1),
          Numbers.NONE);
    }
    return table;
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("model", model);
    ObjectNode error = json.putObject("transfer_error");
    Json.number(error, "mean", before.mean());
    Json.number(error, "place", before.place());
    ArrayNode parts = error.putArray("parts");
    for (TransferError.Part part : before.parts()) {
      ObjectNode entry = parts.addObject();
      entry.put("cause", part.cause().name().toLowerCase(Locale.ROOT));
      entry.put("in_words", part.cause().words());
      Json.number(entry, "mean_plus_minus", part.ofMean());
      Json.number(entry, "place_plus_minus", part.ofPlace());
      Json.number(entry, "share_of_mean_variance", part.shareOfMean());
    }
    if (update.isPresent()) {
      json.set("update", json(update.get(), after.orElseThrow()));
    } else {
      json.putNull("update");
    }
    json.put("left_in", left.orElse(null));
    json.set("recommendation", recommendation.json());
    return json;
  }

  private static ObjectNode json(ModelUpdate update, TransferError after) {
    ObjectNode json = Json.object();
    Json.number(json, "mean", after.mean());
    Json.number(json, "place", after.place());
    Json.number(json, "meter_correction", update.meterCorrection());
    Json.number(json, "surprise", update.surprise());
    json.put("surprising", update.surprising());
    ArrayNode readings = json.putArray("readings");
    for (ModelUpdate.Expected one : update.expected()) {
      ObjectNode entry = readings.addObject();
      entry.put("survey", one.survey());
      entry.put("number", one.index() + 1);
      Json.place(entry, one.place());
      Json.ppfd(entry, "ppfd", one.ppfd());
      Json.ppfd(entry, "expected", one.before());
      Json.number(entry, "standard_errors", one.sigmas());
      Json.ppfd(entry, "now", one.after());
    }
    ArrayNode aside = json.putArray("set_aside");
    for (ModelUpdate.SetAside one : update.setAside()) {
      ObjectNode entry = aside.addObject();
      entry.put("survey", one.survey());
      entry.put("number", one.index() + 1);
      Json.place(entry, one.place());
      Json.ppfd(entry, "ppfd", one.ppfd());
      Json.ppfd(entry, "expected", one.expected());
      Json.number(entry, "standard_errors", one.sigmas());
    }
    return json;
  }
}
