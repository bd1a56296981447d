package parfield.plan;

import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import parfield.units.LengthUnit;

/**
 * A change beyond the search that was worked out in full because nothing within it met the demands.
 *
 * @param kind what is changed
 * @param factor by how much, where the change is one of degree: brightness, width of the optics; 1
 *     otherwise
 * @param option the best option with the change
 * @param without the best option without it, by the same coarse figures
 */
public record Remedy(Kind kind, double factor, Option option, Option without) {
  /** Gain of merit from which a change counts as help. */
  private static final double HELP = 0.02;

  /** What may be changed. */
  public enum Kind {
    /** One fixture more. */
    ONE_MORE_FIXTURE,
    /** A mounting height below the lowest looked at. */
    LOWER,
    /** A mounting height above the highest looked at. */
    HIGHER,
    /** Fixtures that give more light. */
    BRIGHTER,
    /** Optics that spread the same light wider. */
    WIDER_OPTICS,
    /** Optics that draw the same light together. */
    NARROWER_OPTICS,
    /** Channels dialled without keeping their ratio. */
    FREE_MIX
  }

  public Remedy {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(option, "option");
    Objects.requireNonNull(without, "without");
  }

  /** Whether the change brings the demands nearer. */
  public boolean helps() {
    return option.merit() > without.merit() + HELP;
  }

  /** The change and what it does, as a sentence. */
  public String inWords(LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "%s %s: %s meets all demands with probability %s, %s without%s.",
        change(),
        effect(),
        option.inWords(unit),
        option.probability().inWords(),
        without.probability().inWords(),
        IntStream.range(0, without.verdicts().size())
            .filter(k -> without.verdicts().get(k).standing() != Verdict.Standing.MET)
            .mapToObj(
                k ->
                    String.format(
                        Locale.ROOT,
                        "; %s: %s, %s without",
                        without.verdicts().get(k).demand().inWords(unit),
                        figure(option, k),
                        figure(without, k)))
            .collect(Collectors.joining()));
  }

  private String effect() {
    if (!helps()) {
      return "would not help";
    }
    return option.probability().value() > Verdict.FAILED_TO
        ? "would help"
        : "would come nearer without getting there";
  }

  private static String figure(Option of, int k) {
    Verdict verdict = of.verdicts().get(k);
    return Wording.figure(verdict.demand(), verdict.value());
  }

  private String change() {
    return switch (kind) {
      case ONE_MORE_FIXTURE -> "One more fixture";
      case LOWER -> "Hanging lower than the heights looked at";
      case HIGHER -> "Hanging higher than the heights looked at";
      case BRIGHTER -> String.format(Locale.ROOT, "Fixtures %.1f times as bright", factor);
      case WIDER_OPTICS -> String.format(Locale.ROOT, "Optics %.0f %% wider", 100 * (factor - 1));
      case NARROWER_OPTICS ->
          String.format(Locale.ROOT, "Optics %.0f %% narrower", 100 * (1 - factor));
      case FREE_MIX -> "Dialling the channels without keeping their ratio, another colour,";
    };
  }
}
