package parfield.spectrum;

import java.util.Optional;
import java.util.function.Function;

/**
 * A figure that some light has and other light has not: a value, or the reason in words why there
 * is none. Never a number where the definition gives none.
 *
 * @param <T> what is found
 */
public sealed interface Finding<T> {
  /**
   * The figure is defined.
   *
   * @param value the figure
   */
  record Defined<T>(T value) implements Finding<T> {}

  /**
   * The figure is not defined for this light.
   *
   * @param reason why, as words that complete "not defined: "
   */
  record NotDefined<T>(String reason) implements Finding<T> {}

  /** A defined figure. */
  static <T> Finding<T> of(T value) {
    return new Defined<>(value);
  }

  /** No figure, and why. */
  static <T> Finding<T> notDefined(String reason) {
    return new NotDefined<>(reason);
  }

  /** The figure, empty where not defined. */
  default Optional<T> toOptional() {
    return this instanceof Defined<T> defined ? Optional.of(defined.value()) : Optional.empty();
  }

  /** The figure made into another one; the reason stays where there is none. */
  default <R> Finding<R> map(Function<? super T, ? extends R> function) {
    if (this instanceof NotDefined<T> none) {
      return new NotDefined<>(none.reason());
    }
    return new Defined<>(function.apply(((Defined<T>) this).value()));
  }

  /** The figure made into another one that may not be defined either. */
  default <R> Finding<R> flatMap(Function<? super T, Finding<R>> function) {
    if (this instanceof NotDefined<T> none) {
      return new NotDefined<>(none.reason());
    }
    return function.apply(((Defined<T>) this).value());
  }
}
