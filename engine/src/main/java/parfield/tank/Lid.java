package parfield.tank;

import java.util.Locale;

/** What lies over the opening. */
public sealed interface Lid {
  /** Nothing. */
  record None() implements Lid {}

  /**
   * A mesh: lets its open fraction through at every angle.
   *
   * @param openFraction 0 to 1
   */
  record Mesh(double openFraction) implements Lid {
    public Mesh {
      if (!(openFraction >= 0 && openFraction <= 1)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "a mesh's open fraction runs from 0 to 1; got %s", openFraction));
      }
    }
  }

  /**
   * A clear sheet in air: transmits as a slab at the ray's angle.
   *
   * @param refractiveIndex of the sheet, 1 or more; glass 1.52, acrylic 1.49
   */
  record Clear(double refractiveIndex) implements Lid {
    public Clear {
      if (!(refractiveIndex >= 1 && refractiveIndex < 3)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a clear lid's refractive index runs from 1 to 3; got %s",
                refractiveIndex));
      }
    }
  }
}
