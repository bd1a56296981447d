package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import parfield.field.Departure;
import parfield.units.LengthUnit;
import parfield.validation.Finding;
import parfield.validation.TankComparison;
import parfield.validation.Validation;

/**
 * What a validation found.
 *
 * @param precision standard error relative to a value at which it counts as known
 * @param seed of all chance
 * @param findings published values and what was made of them
 * @param comparisons of the solvers, one a tank
 * @param tanks that there are to compare in
 */
public record ValidationAnswer(
    double precision,
    long seed,
    List<Finding> findings,
    List<TankComparison> comparisons,
    int tanks)
    implements Answer {
  /** Share of figures that chance alone puts beyond three standard errors. */
  private static final double BEYOND_THREE = 0.0027;

  public ValidationAnswer {
    findings = List.copyOf(findings);
    comparisons = List.copyOf(comparisons);
  }

  /** Whether all was looked at. */
  public boolean complete() {
    return findings.size() == Validation.values() && comparisons.size() == tanks;
  }

  /** Whether all was looked at and agrees. */
  public boolean agrees() {
    return complete()
        && count(Finding.Verdict.AGREES) == findings.size()
        && comparisons.stream().allMatch(TankComparison::asStated);
  }

  private long count(Finding.Verdict verdict) {
    return findings.stream().filter(finding -> finding.verdict() == verdict).count();
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "Published cases, known to a standard error of %s %% (seed %d)\n\n",
            digits(100 * precision, 3),
            seed));
    text.append(published());
    text.append(
        String.format(
            Locale.ROOT,
            "\n%d of %d values agree, %d differ, %d stay open",
            count(Finding.Verdict.AGREES),
            Validation.values(),
            count(Finding.Verdict.DIFFERS),
            count(Finding.Verdict.OPEN)));
    int left = Validation.values() - findings.size();
    text.append(left > 0 ? String.format(Locale.ROOT, ", %d were not looked at.\n", left) : ".\n");
    text.append(
        String.format(
            Locale.ROOT,
            "A value agrees within three standard errors and its own rounding, standard error or"
                + " scatter;\nof so many, chance alone makes about %s differ.\n",
            digits(BEYOND_THREE * findings.size(), 1)));
    text.append("\nFast solver against reference: |fast / reference − 1| of PPFD\n\n");
    text.append(compared());
    text.append(
        String.format(
            Locale.ROOT,
            "\nAllowed where the fast solver's assumptions hold: %s %% in the median, %s %% at the"
                + " 95th percentile;\nelsewhere what it says itself, and the reference's own"
                + " standard error on top.\n",
            digits(100 * TankComparison.MOST_TYPICAL, 2),
            digits(100 * TankComparison.MOST_HIGH, 2)));
    if (comparisons.size() < tanks) {
      text.append(
          String.format(Locale.ROOT, "%d tanks were not looked at.\n", tanks - comparisons.size()));
    }
    return text.toString();
  }

  private String published() {
    Table table =
        new Table(
            "lllrrrrl",
            "case",
            "quantity",
            "source",
            "expected",
            "got",
            "error (%)",
            "standard error (%)",
            "verdict");
    for (Finding finding : findings) {
      table.row(
          finding.expected().ofCase(),
          finding.expected().quantity(),
          finding.expected().source(),
          digits(finding.expected().value(), 6),
          digits(finding.got(), 6),
          percent(finding, finding.error()),
          percent(finding, finding.standardError()),
          word(finding.verdict()));
    }
    return table.text();
  }

  private static String percent(Finding finding, double of) {
    double value = finding.expected().value();
    return value == 0 || !Double.isFinite(of)
        ? Numbers.NONE
        : String.format(Locale.ROOT, "%.3f", 100 * of / value).replaceFirst("^-(0\\.0*)$", "$1");
  }

  private String compared() {
    Table table =
        new Table(
            "llrrrrll",
            "tank",
            "stresses",
            "median (%)",
            "95th percentile (%)",
            "mean (%)",
            "standard error (%)",
            "assumptions",
            "verdict");
    for (TankComparison comparison : comparisons) {
      table.row(
          comparison.tank().name(),
          comparison.tank().stresses(),
          String.format(Locale.ROOT, "%.2f", 100 * comparison.median()),
          String.format(Locale.ROOT, "%.2f", 100 * comparison.high()),
          String.format(Locale.ROOT, "%+.2f", 100 * comparison.mean()),
          String.format(Locale.ROOT, "%.2f", 100 * comparison.noise()),
          comparison.holds() ? "hold" : "do not hold",
          comparison.asStated() ? "errs as it says" : "errs more");
    }
    return table.text();
  }

  private static String word(Finding.Verdict verdict) {
    return verdict.name().toLowerCase(Locale.ROOT);
  }

  /** A number with so many digits that count; powers of ten where it is very small or large. */
  private static String digits(double value, int digits) {
    if (value == 0 || !Double.isFinite(value)) {
      return Numbers.plain(value, 1);
    }
    int power = (int) Math.floor(Math.log10(Math.abs(value)));
    if (power < -3 || power > 6) {
      return String.format(Locale.ROOT, "%." + (digits - 1) + "e", value)
          .replaceFirst("\\.?0+e", "e");
    }
    return Numbers.plain(value, Math.max(0, digits - 1 - power));
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("precision", precision);
    json.put("seed", seed);
    json.put("complete", complete());
    json.put("agrees", agrees());
    ArrayNode published = json.putArray("published");
    for (Finding finding : findings) {
      ObjectNode entry = published.addObject();
      entry.put("case", finding.expected().ofCase());
      entry.put("quantity", finding.expected().quantity());
      entry.put("source", finding.expected().source());
      entry.put("expected", finding.expected().value());
      entry.put("tolerance", finding.expected().tolerance());
      significant(entry, "got", finding.got());
      significant(entry, "error", finding.error());
      significant(entry, "standard_error", finding.standardError());
      entry.put("verdict", word(finding.verdict()));
    }
    ArrayNode compared = json.putArray("tanks");
    for (TankComparison comparison : comparisons) {
      ObjectNode entry = compared.addObject();
      entry.put("tank", comparison.tank().name());
      entry.put("stresses", comparison.tank().stresses());
      significant(entry, "median", comparison.median());
      significant(entry, "percentile_95", comparison.high());
      significant(entry, "mean", comparison.mean());
      significant(entry, "standard_error", comparison.noise());
      entry.put("assumptions_hold", comparison.holds());
      ArrayNode left = entry.putArray("left_out");
      Departure.of(comparison.tank().rig().tank())
          .forEach(departure -> left.add(departure.inWords()));
      entry.put("errs_as_it_says", comparison.asStated());
    }
    return json;
  }

  private static void significant(ObjectNode json, String key, double value) {
    if (Double.isFinite(value)) {
      json.put(key, Double.parseDouble(String.format(Locale.ROOT, "%.7e", value)));
    } else {
      json.putNull(key);
    }
  }
}
