package parfield.aquascape;

import java.util.Objects;
import parfield.optics.Reflectance;

/**
 * A rock: opaque, reflecting diffusely.
 *
 * @param name by which it is spoken of
 * @param shape where it is and what it looks like
 * @param reflectance of its surface
 */
public record Rock(String name, Shape shape, Reflectance reflectance) {
  public Rock {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a rock needs a name");
    }
    Objects.requireNonNull(shape, "shape");
    Objects.requireNonNull(reflectance, "reflectance");
  }
}
