package parfield.plan;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import parfield.units.LengthUnit;

/**
 * A demand that the recommended option does not surely meet: by how much it falls short, and how
 * well it could be met if nothing else were asked.
 *
 * @param verdict on the demand, of the recommended option
 * @param alone the option of the search that was sought for this demand alone, judged by all
 *     demands
 */
public record Shortfall(Verdict verdict, Option alone) {
  public Shortfall {
    Objects.requireNonNull(verdict, "verdict");
    Objects.requireNonNull(alone, "alone");
  }

  /**
   * By how much the best estimate misses the demand, in the demanded figure's own unit; 0 if it
   * meets it though not surely.
   */
  public double missing() {
    double value = verdict.value().value();
    Demand demand = verdict.demand();
    return Math.max(0, Math.max(demand.least() - value, value - demand.most()));
  }

  /** The verdict on this demand of the option that was sought for it alone. */
  public Verdict verdictAlone() {
    return alone.verdicts().stream()
        .filter(v -> v.demand().equals(verdict.demand()))
        .findFirst()
        .orElseThrow();
  }

  /** The other demands that the option sought for this demand alone does not surely meet. */
  public List<Verdict> atTheCostOf() {
    return alone.verdicts().stream()
        .filter(v -> !v.demand().equals(verdict.demand()))
        .filter(v -> v.standing() != Verdict.Standing.MET)
        .toList();
  }

  /** What fails, by how much, and what it could reach alone, as sentences. */
  public String inWords(LengthUnit unit) {
    Demand demand = verdict.demand();
    return String.format(
        Locale.ROOT,
        "%s: %s. The recommended option reaches %s, %s. %s",
        Wording.capital(demand.inWords(unit)),
        verdict.standing().words(),
        Wording.figure(demand, verdict.value()),
        missing() > 0 ? Wording.amount(demand, missing()) + " off" : "too near the limit",
        aloneInWords(unit));
  }

  private String aloneInWords(LengthUnit unit) {
    String figure = Wording.figure(verdict.demand(), verdictAlone().value());
    if (verdictAlone().standing() != Verdict.Standing.MET) {
      return String.format(
          "Even if nothing else were asked it would reach %s: %s.", figure, alone.inWords(unit));
    }
    String cost =
        atTheCostOf().stream()
            .map(
                v ->
                    String.format(
                        "%s, %s", v.demand().inWords(unit), Wording.figure(v.demand(), v.value())))
            .collect(Collectors.joining("; "));
    return String.format(
        "If nothing else were asked it would be met, %s: %s%s.",
        figure, alone.inWords(unit), cost.isEmpty() ? "" : "; at the cost of " + cost);
  }
}
