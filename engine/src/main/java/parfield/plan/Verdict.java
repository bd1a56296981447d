package parfield.plan;

import java.util.Locale;
import java.util.Objects;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * Whether an option meets a demand, as far as the readings can tell.
 *
 * @param demand what was demanded
 * @param value of the demanded figure, with its 5–95 % interval
 * @param probability that the demand is met
 */
public record Verdict(Demand demand, Estimate value, Probability probability) {
  /** At this probability or above, a demand counts as met. */
  public static final double MET_FROM = 0.9;

  /** At this probability or below, a demand counts as failed. */
  public static final double FAILED_TO = 0.1;

  public Verdict {
    Objects.requireNonNull(demand, "demand");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(probability, "probability");
  }

  /** How a demand stands. */
  public enum Standing {
    /** Met in nearly every truth that the readings allow. */
    MET("met"),
    /** Failed in nearly every truth that the readings allow. */
    FAILED("failed"),
    /** The readings do not decide. */
    TOO_CLOSE_TO_CALL("too close to call");

    private final String words;

    Standing(String words) {
      this.words = words;
    }

    /** In words. */
    public String words() {
      return words;
    }

    /** The standing of something with this probability. */
    static Standing of(Probability probability) {
      if (probability.value() >= MET_FROM) {
        return MET;
      }
      return probability.value() <= FAILED_TO ? FAILED : TOO_CLOSE_TO_CALL;
    }
  }

  /** How the demand stands. */
  public Standing standing() {
    return Standing.of(probability);
  }

  /** How much of the demand the best estimate meets, 0 to 1. */
  double part() {
    return Merit.part(value.value(), demand.least(), demand.most());
  }

  /** The verdict as a sentence: demand, standing, probability, value with interval. */
  public String inWords(LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "%s: %s (probability %s), %s",
        demand.inWords(unit),
        standing().words(),
        probability.inWords(),
        Wording.figure(demand, value));
  }
}
