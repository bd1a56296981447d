package parfield.web.meter;

import java.util.Objects;

/** What one line of a meter was. Immutable. */
sealed interface Heard {
  /**
   * A number.
   *
   * @param value what the meter showed [µmol m⁻² s⁻¹], 0 or more
   * @param typed the digits as they stood in the line
   * @param step of the last digit shown [µmol m⁻² s⁻¹], as 0.1 for {@code 71.5}
   */
  record Value(double value, String typed, double step) implements Heard {
    public Value {
      Objects.requireNonNull(typed, "typed");
      if (!(value >= 0) || !(step > 0)) {
        throw new IllegalArgumentException(
            "a meter's number must be 0 or more, in steps above 0; got " + value + ", " + step);
      }
    }
  }

  /**
   * A line that is not used.
   *
   * @param shown the line, shortened, with a mark for what cannot be printed
   * @param why as the end of a sentence
   */
  record Ignored(String shown, String why) implements Heard {
    public Ignored {
      Objects.requireNonNull(shown, "shown");
      Objects.requireNonNull(why, "why");
    }
  }
}
