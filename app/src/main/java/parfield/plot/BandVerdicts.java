package parfield.plot;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.survey.Band;

/**
 * How every place of a plane stands to a band.
 *
 * @param low lower ends of the intervals
 * @param high upper ends, on the same nodes
 * @param band the wanted range
 */
record BandVerdicts(Lattice low, Lattice high, Band band) implements Verdicts {
  @Override
  public List<Verdict> all() {
    return List.of(Verdict.BELOW, Verdict.IN, Verdict.ABOVE, Verdict.OPEN);
  }

  @Override
  public Lattice margin(Verdict verdict) {
    return low.with(high, (from, to) -> margin(verdict, from, to));
  }

  @Override
  public Verdict at(double u, double v) {
    return of(low.at(u, v), high.at(u, v));
  }

  @Override
  public List<String> wordings(Verdict verdict) {
    String from = Ticks.text(band.from());
    String to = Ticks.text(band.to());
    return switch (verdict) {
      case BELOW -> List.of("below " + from, "below");
      case IN -> List.of("in " + band.name() + " " + from + "–" + to, "in " + band.name(), "in");
      case ABOVE -> List.of("above " + to, "above");
      case OPEN -> List.of("too close to call", "too close");
      case DOSE_BELOW, DOSE_ABOVE -> List.of();
    };
  }

  @Override
  public Optional<String> inKey(Verdict verdict, double share) {
    return Optional.of(
        String.format(Locale.ROOT, "%s: %.0f %%", wordings(verdict).get(0), 100 * share));
  }

  @Override
  public int columns() {
    return low.x().length;
  }

  @Override
  public int rows() {
    return low.y().length;
  }

  private Verdict of(double from, double to) {
    for (Verdict verdict : new Verdict[] {Verdict.IN, Verdict.BELOW, Verdict.ABOVE}) {
      if (margin(verdict, from, to) >= 0) {
        return verdict;
      }
    }
    return Verdict.OPEN;
  }

  private double margin(Verdict verdict, double from, double to) {
    double inside = Math.min(from - band.from(), band.to() - to);
    return switch (verdict) {
      case IN -> inside;
      case BELOW -> band.from() - to;
      case ABOVE -> from - band.to();
      case OPEN -> -Math.max(inside, Math.max(band.from() - to, from - band.to()));
      case DOSE_BELOW, DOSE_ABOVE -> -1;
    };
  }
}
