package parfield.answer;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import parfield.plan.Planner;
import parfield.plan.Probability;

/** A probability as {@code recommend --json} puts it, and back. */
public final class ProbabilityJson {
  /** How many truths a light model has. */
  private static final int ALL = 96;

  /** To what the share of the truths is rounded, and some more. */
  private static final double ROUNDED = 1e-3;

  private ProbabilityJson() {}

  /** Puts the share of the truths, its interval, and what was counted. */
  static void put(ObjectNode json, Probability probability) {
    Json.number(json, "probability", probability.value());
    Json.number(json, "probability_low", probability.low());
    Json.number(json, "probability_high", probability.high());
    json.put("truths_met", probability.met());
    json.put("truths", probability.truths());
  }

  /**
   * The probability of an option, or of one of its demands. Answers that were kept before it was
   * said how many truths were counted hold the share alone: they counted few in a coarse search,
   * else all of the light model.
   */
  public static Probability of(JsonNode json) {
    double share = json.path("probability").asDouble();
    double few = share * Planner.FEW_DRAWS;
    int usual = Math.abs(few - Math.rint(few)) < ROUNDED ? Planner.FEW_DRAWS : ALL;
    int truths = json.path("truths").asInt(usual);
    return new Probability(json.path("truths_met").asInt((int) Math.round(truths * share)), truths);
  }
}
