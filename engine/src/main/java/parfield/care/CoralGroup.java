package parfield.care;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.survey.Band;

/**
 * Corals that want alike light: a range of the highest PPFD of the day and one of its dose. Both
 * must hold: a peak within its range over too long a day is still too much.
 *
 * @param ppfd wanted range of the highest PPFD of the day, named like the group [µmol m⁻² s⁻¹]
 * @param dliFrom least daily light integral [mol m⁻² d⁻¹], 0 or more
 * @param dliTo greatest daily light integral [mol m⁻² d⁻¹], above {@code dliFrom}
 * @param certainty how far the ranges are to be trusted
 * @param source where they come from
 */
public record CoralGroup(
    Band ppfd, double dliFrom, double dliTo, Certainty certainty, String source) {
  public CoralGroup {
    Objects.requireNonNull(ppfd, "ppfd");
    Objects.requireNonNull(certainty, "certainty");
    Objects.requireNonNull(source, "source");
    if (!(dliFrom >= 0) || !(dliTo > dliFrom) || Double.isInfinite(dliTo)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "group %s: its daily light integral must run upward from 0 mol m⁻² d⁻¹ or more; got"
                  + " %s to %s",
              ppfd.name(),
              dliFrom,
              dliTo));
    }
  }

  /** What the bench calls it. */
  public String name() {
    return ppfd.name();
  }

  /** Whether a peak is in its range, ends included [µmol m⁻² s⁻¹]. */
  public boolean bright(double peak) {
    return peak >= ppfd.from() && peak <= ppfd.to();
  }

  /** Whether a daily light integral is in its range, ends included [mol m⁻² d⁻¹]. */
  public boolean dosed(double dli) {
    return dli >= dliFrom && dli <= dliTo;
  }

  /**
   * How the group stands under some light.
   *
   * @param peak highest PPFD of the day [µmol m⁻² s⁻¹]
   * @param dli daily light integral [mol m⁻² d⁻¹]
   */
  public Standing under(double peak, double dli) {
    if (peak > ppfd.to()) {
      return Standing.TOO_BRIGHT;
    }
    if (peak < ppfd.from()) {
      return Standing.TOO_DIM;
    }
    if (dli > dliTo) {
      return Standing.DAY_TOO_MUCH;
    }
    return dli < dliFrom ? Standing.DAY_TOO_LITTLE : Standing.FITS;
  }

  /**
   * What the intervals of a place's light say for certain. A peak that is surely outside its range
   * is told before a dose that is; a dose that is surely outside is told even where the peak is
   * open, for no peak makes it suit.
   *
   * @param peakLow lower end of the highest PPFD of the day [µmol m⁻² s⁻¹]
   * @param peakHigh upper end
   * @param dliLow lower end of the daily light integral [mol m⁻² d⁻¹]
   * @param dliHigh upper end
   * @return empty where the intervals leave it open
   */
  public Optional<Standing> surely(double peakLow, double peakHigh, double dliLow, double dliHigh) {
    if (peakLow > ppfd.to()) {
      return Optional.of(Standing.TOO_BRIGHT);
    }
    if (peakHigh < ppfd.from()) {
      return Optional.of(Standing.TOO_DIM);
    }
    if (dliLow > dliTo) {
      return Optional.of(Standing.DAY_TOO_MUCH);
    }
    if (dliHigh < dliFrom) {
      return Optional.of(Standing.DAY_TOO_LITTLE);
    }
    boolean fits =
        peakLow >= ppfd.from() && peakHigh <= ppfd.to() && dliLow >= dliFrom && dliHigh <= dliTo;
    return fits ? Optional.of(Standing.FITS) : Optional.empty();
  }
}
