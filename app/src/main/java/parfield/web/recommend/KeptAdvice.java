package parfield.web.recommend;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parfield.answer.Numbers;
import parfield.answer.RecommendationAnswer;
import parfield.units.LengthUnit;
import parfield.web.bench.AdviceDocument;
import parfield.workspace.Result;

/**
 * A recommendation as it is kept: the answer that the command line gives, word by word and number
 * by number, with the curves of its choices.
 *
 * @param result as it is stored
 * @param document what it holds
 */
public record KeptAdvice(Result result, JsonNode document) {
  static KeptAdvice read(Result result, byte[] bytes) {
    return new KeptAdvice(result, AdviceDocument.read(bytes));
  }

  /** The answer in JSON, as the command line gives it. */
  public JsonNode answer() {
    return document.get("answer");
  }

  /** The answer as text. */
  public String text(LengthUnit unit) {
    return document.path(unit.symbol()).path("text").asText();
  }

  /** A picture: {@code heights} or {@code spacings}. */
  public Optional<String> picture(String name, LengthUnit unit) {
    JsonNode svg = document.path(unit.symbol()).path(name);
    return svg.isTextual() ? Optional.of(svg.asText()) : Optional.empty();
  }

  /** Number of the band that the first demand of coverage is about, among those of the figures. */
  public int aim() {
    String aim = document.path("aim").asText();
    JsonNode bands = answer().path("options").path(0).path("figures").path(0).path("coverage");
    for (int b = 0; b < bands.size(); b++) {
      if (bands.get(b).path("band").asText().equals(aim)) {
        return b;
      }
    }
    return 0;
  }

  /** Whether the search came to its end. */
  public boolean complete() {
    return answer().path("complete").asBoolean();
  }

  /** Every option of the answer by a name for addresses, the ranked ones first. */
  public Map<String, Choice> choices() {
    Map<String, Choice> all = new LinkedHashMap<>();
    add(all, "option", answer().path("options"));
    add(all, "trade", answer().path("trade_off"));
    return all;
  }

  private static void add(Map<String, Choice> all, String kind, JsonNode options) {
    for (int i = 0; i < options.size(); i++) {
      String name = kind + "-" + (i + 1);
      all.put(name, new Choice(name, options.get(i)));
    }
  }

  /** The ranked options. */
  public List<Choice> options() {
    return some("option");
  }

  /** The options of which none beats another. */
  public List<Choice> tradeOff() {
    return some("trade");
  }

  private List<Choice> some(String kind) {
    return choices().values().stream().filter(c -> c.name().startsWith(kind)).toList();
  }

  /** An option by its name; the best if there is none of that name. */
  public Choice choice(String name) {
    Map<String, Choice> all = choices();
    return all.getOrDefault(name == null ? "" : name, all.values().iterator().next());
  }

  /**
   * Sentences of one kind: {@code statements} or {@code cautions}, in which no length stands, or
   * one of {@link RecommendationAnswer#words}.
   */
  public List<String> sentences(String kind, LengthUnit unit) {
    JsonNode words = document.path(unit.symbol()).path("words").path(kind);
    JsonNode found = words.isMissingNode() ? answer().path(kind) : words;
    List<String> sentences = new ArrayList<>();
    for (JsonNode sentence : found) {
      sentences.add(sentence.isTextual() ? sentence.asText() : earlier(kind, sentence, unit));
    }
    return sentences;
  }

  /** A sentence of a recommendation that was stored before sentences were. */
  private static String earlier(String kind, JsonNode of, LengthUnit unit) {
    return switch (kind) {
      case "next_readings" ->
          String.format(
              Locale.ROOT,
              "At x %s, y %s, depth %s %s the meter should show %s (%s–%s) %s.",
              length(of, "x_cm", unit),
              length(of, "y_cm", unit),
              length(of, "depth_cm", unit),
              unit.symbol(),
              Numbers.ppfd(of.at("/expected_umol_m2_s/value").asDouble()),
              Numbers.ppfd(of.at("/expected_umol_m2_s/low").asDouble()),
              Numbers.ppfd(of.at("/expected_umol_m2_s/high").asDouble()),
              Numbers.PPFD);
      case "measured" ->
          String.format(
              Locale.ROOT,
              "%s: %s with %s %s %s high; meter %s",
              of.path("survey").asText(),
              Numbers.count(of.path("readings").asInt(), "reading"),
              Numbers.count(of.path("fixtures").asInt(), "fixture"),
              length(of, "height_cm", unit),
              unit.symbol(),
              of.path("meter").asText());
      default -> of.path("in_words").asText();
    };
  }

  private static String length(JsonNode of, String key, LengthUnit unit) {
    return Numbers.length(LengthUnit.CM.toMetres(of.path(key).asDouble()), unit);
  }
}
