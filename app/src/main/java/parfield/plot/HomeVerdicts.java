package parfield.plot;

import java.util.List;
import java.util.Optional;
import parfield.care.CoralGroup;
import parfield.care.Standing;

/**
 * How a group of corals would stand at every place of a plane.
 *
 * @param peakLow lower ends of the intervals of the highest PPFD of the day
 * @param peakHigh upper ends, on the same nodes
 * @param doseLow lower ends of the intervals of the dose, on the same nodes
 * @param doseHigh upper ends, on the same nodes
 * @param group who
 */
record HomeVerdicts(
    Lattice peakLow, Lattice peakHigh, Lattice doseLow, Lattice doseHigh, CoralGroup group)
    implements Verdicts {
  @Override
  public List<Verdict> all() {
    return List.of(
        Verdict.IN,
        Verdict.BELOW,
        Verdict.DOSE_BELOW,
        Verdict.DOSE_ABOVE,
        Verdict.ABOVE,
        Verdict.OPEN);
  }

  @Override
  public Verdict at(double u, double v) {
    double peak = peakLow.at(u, v);
    double dose = doseLow.at(u, v);
    // Surfaces that are smooth through both ends may cross by a hair between two cells.
    return of(
        group.surely(
            peak, Math.max(peak, peakHigh.at(u, v)), dose, Math.max(dose, doseHigh.at(u, v))));
  }

  private static Verdict of(Optional<Standing> standing) {
    if (standing.isEmpty()) {
      return Verdict.OPEN;
    }
    return switch (standing.get()) {
      case TOO_DIM -> Verdict.BELOW;
      case DAY_TOO_LITTLE -> Verdict.DOSE_BELOW;
      case FITS -> Verdict.IN;
      case DAY_TOO_MUCH -> Verdict.DOSE_ABOVE;
      case TOO_BRIGHT -> Verdict.ABOVE;
    };
  }

  @Override
  public Lattice margin(Verdict verdict) {
    // In shares of the ranges' upper ends, so that PPFD and dose can be weighed against each other.
    double mostPeak = group.ppfd().to();
    double mostDose = group.dliTo();
    Lattice below = peakHigh.with(peakHigh, (p, q) -> (group.ppfd().from() - p) / mostPeak);
    Lattice above = peakLow.with(peakLow, (p, q) -> (p - mostPeak) / mostPeak);
    Lattice neither = below.with(above, (p, q) -> -Math.max(p, q));
    return switch (verdict) {
      case BELOW -> below;
      case ABOVE -> above;
      case DOSE_BELOW ->
          doseHigh.with(neither, (d, n) -> Math.min((group.dliFrom() - d) / mostDose, n));
      case DOSE_ABOVE -> doseLow.with(neither, (d, n) -> Math.min((d - mostDose) / mostDose, n));
      case IN ->
          peakLow
              .with(peakHigh, (p, q) -> Math.min(p - group.ppfd().from(), mostPeak - q) / mostPeak)
              .with(
                  doseLow.with(
                      doseHigh, (d, e) -> Math.min(d - group.dliFrom(), mostDose - e) / mostDose),
                  Math::min);
      case OPEN -> throw new IllegalArgumentException("what is open has no outline of its own");
    };
  }

  @Override
  public List<String> wordings(Verdict verdict) {
    return switch (verdict) {
      case IN -> List.of("home for " + group.name(), "home");
      case BELOW -> List.of("too little: peak under " + Ticks.text(group.ppfd().from()), "too dim");
      case DOSE_BELOW ->
          List.of("too little: dose under " + Ticks.text(group.dliFrom()), "dose too small");
      case DOSE_ABOVE ->
          List.of("too much: dose over " + Ticks.text(group.dliTo()), "dose too great");
      case ABOVE -> List.of("too much: peak over " + Ticks.text(group.ppfd().to()), "too bright");
      case OPEN -> List.of("too close to call", "too close");
    };
  }

  @Override
  public Optional<String> inKey(Verdict verdict, double share) {
    return verdict == Verdict.IN || share > 0
        ? Optional.of(wordings(verdict).get(0))
        : Optional.empty();
  }

  @Override
  public int columns() {
    return peakLow.x().length;
  }

  @Override
  public int rows() {
    return peakLow.y().length;
  }
}
