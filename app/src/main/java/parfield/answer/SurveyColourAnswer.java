package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.spectrum.Finding;
import parfield.spectrum.SensorResponse;
import parfield.survey.SpectralCorrection;
import parfield.survey.Survey;
import parfield.units.LengthUnit;

/**
 * What the colour of each survey's light does to its readings.
 *
 * @param source name of the setup
 * @param seen the surveys whose meter states how it sees colour, at least one
 */
public record SurveyColourAnswer(String source, List<Seen> seen) implements Answer {
  public SurveyColourAnswer {
    Objects.requireNonNull(source, "source");
    seen = List.copyOf(seen);
  }

  /**
   * One survey.
   *
   * @param survey with its meter as it is under the survey's light
   * @param response of that meter
   * @param correction what is done to its readings
   */
  public record Seen(
      Survey survey, SensorResponse response, Finding<SpectralCorrection> correction) {
    public Seen {
      Objects.requireNonNull(survey, "survey");
      Objects.requireNonNull(response, "response");
      Objects.requireNonNull(correction, "correction");
    }
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append("What the colour of the light does to the readings of " + source + "\n\n");
    Table table =
        new Table("lllrrr", "survey", "meter", "response", "F", "readings ×", "scale error (%)");
    Table parts = new Table("lllrr", "survey", "fixture", "channel", "of the PPFD (%)", "F");
    List<String> none = new ArrayList<>();
    for (Seen one : seen) {
      Optional<SpectralCorrection> found = one.correction().toOptional();
      table.row(
          one.survey().name(),
          one.survey().meter().name(),
          one.response().name(),
          found.map(value -> Numbers.fixed(value.spectralFactor(), 3)).orElse("not defined"),
          found.map(value -> Numbers.fixed(value.factor(), 3)).orElse(Numbers.NONE),
          Numbers.finePercent(one.survey().meter().scaleError()));
      found.ifPresent(
          correction ->
              correction
                  .parts()
                  .forEach(
                      part ->
                          parts.row(
                              one.survey().name(),
                              part.fixture(),
                              part.channel(),
                              Numbers.percent(part.share()),
                              Numbers.fixed(1 / part.shownOverTrue(), 3))));
      if (one.correction() instanceof Finding.NotDefined<SpectralCorrection> reason) {
        none.add(one.survey().name() + ": " + reason.reason());
      }
    }
    text.append(table.text()).append('\n').append(parts.text());
    text.append(
        """

        True PPFD is reading × F. Readings are multiplied only where the response was measured; what \
        remains
        uncertain is in the scale error. Shares of the channels are guessed from watts and dials.
        """);
    text.append(Lines.section("Not defined", none));
    return text.toString();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("setup", source);
    ArrayNode array = json.putArray("surveys");
    for (Seen one : seen) {
      ObjectNode entry = array.addObject();
      entry.put("survey", one.survey().name());
      entry.put("meter", one.survey().meter().name());
      entry.put("response", one.response().name());
      entry.put("standing", one.response().standing().name().toLowerCase(Locale.ROOT));
      Json.number(
          entry, "spectral_factor", one.correction().map(SpectralCorrection::spectralFactor));
      Json.number(entry, "readings_times", one.correction().map(SpectralCorrection::factor));
      Json.number(entry, "scale_error", one.survey().meter().scaleError());
      entry.put(
          "reason",
          one.correction() instanceof Finding.NotDefined<SpectralCorrection> none
              ? none.reason()
              : null);
      ArrayNode parts = entry.putArray("channels");
      one.correction()
          .toOptional()
          .ifPresent(
              correction ->
                  correction
                      .parts()
                      .forEach(
                          part -> {
                            ObjectNode channel = parts.addObject();
                            channel.put("fixture", part.fixture());
                            channel.put("channel", part.channel());
                            Json.number(channel, "share_of_ppfd", part.share());
                            Json.number(channel, "spectral_factor", 1 / part.shownOverTrue());
                          }));
    }
    return json;
  }
}
