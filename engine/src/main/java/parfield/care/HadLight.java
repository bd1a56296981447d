package parfield.care;

import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The light that a coral had before, its low end where only a range is known.
 *
 * @param known what it is known from
 * @param peak highest PPFD of its day [µmol m⁻² s⁻¹], above 0, if known
 * @param dli its daily light integral [mol m⁻² d⁻¹], above 0, if known; one of the two is
 */
public record HadLight(Pace.Known known, OptionalDouble peak, OptionalDouble dli) {
  public HadLight {
    Objects.requireNonNull(known, "known");
    if (peak.isEmpty() && dli.isEmpty()) {
      throw new IllegalArgumentException(
          "the light that a coral had needs a PPFD or a daily light integral; got neither");
    }
    for (OptionalDouble light : new OptionalDouble[] {peak, dli}) {
      if (light.isPresent() && !(light.getAsDouble() > 0)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the light that a coral had must be above 0; got %s; from the dark, begin at the low"
                    + " end of its group",
                light.getAsDouble()));
      }
    }
  }

  /** Not known, and then the low end of what its group is given. */
  public static HadLight unknown(CoralGroup group) {
    return new HadLight(
        Pace.Known.UNKNOWN,
        group.ppfd().from() > 0 ? OptionalDouble.of(group.ppfd().from()) : OptionalDouble.empty(),
        group.dliFrom() > 0 ? OptionalDouble.of(group.dliFrom()) : OptionalDouble.empty());
  }

  /** By how much a light exceeds it: the greater of the ratios of peak and dose. */
  public double ratio(double newPeak, double newDli) {
    double ratio = 0;
    if (peak.isPresent()) {
      ratio = newPeak / peak.getAsDouble();
    }
    if (dli.isPresent()) {
      ratio = Math.max(ratio, newDli / dli.getAsDouble());
    }
    return ratio;
  }
}
