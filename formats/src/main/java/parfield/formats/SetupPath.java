package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Where a value stands in a setup, from its root.
 *
 * @param steps from the root; none for the root itself
 */
public record SetupPath(List<Step> steps) {
  /** One step down. */
  public sealed interface Step {}

  /**
   * Into a key of the format; space, hyphen and underscore are the same, and so are capitals.
   *
   * @param key as docs/FORMATS.md writes it
   */
  public record Key(String key) implements Step {
    public Key {
      Objects.requireNonNull(key, "key");
    }
  }

  /**
   * Into an entry that a person named: letter by letter.
   *
   * @param name of the entry
   */
  public record Name(String name) implements Step {
    public Name {
      Objects.requireNonNull(name, "name");
    }
  }

  /**
   * Into a list.
   *
   * @param index from 0
   */
  public record At(int index) implements Step {
    public At {
      if (index < 0) {
        throw new IllegalArgumentException("an index counts from 0; got " + index);
      }
    }
  }

  public SetupPath {
    steps = List.copyOf(steps);
  }

  /** The whole document. */
  public static SetupPath root() {
    return new SetupPath(List.of());
  }

  /** A key below this place. */
  public SetupPath key(String key) {
    return plus(new Key(key));
  }

  /** A named entry below this place. */
  public SetupPath name(String name) {
    return plus(new Name(name));
  }

  /** An element of the list at this place, counted from 0. */
  public SetupPath at(int index) {
    return plus(new At(index));
  }

  private SetupPath plus(Step step) {
    List<Step> longer = new ArrayList<>(steps);
    longer.add(step);
    return new SetupPath(longer);
  }

  /** The place that holds this one; the root holds itself. */
  public SetupPath parent() {
    return steps.isEmpty() ? this : new SetupPath(steps.subList(0, steps.size() - 1));
  }

  /** The last step. */
  Step last() {
    return steps.get(steps.size() - 1);
  }

  /** The path as messages about a setup write it, as in {@code rigs.low.hang[1].x}. */
  public String text() {
    StringBuilder text = new StringBuilder();
    for (Step step : steps) {
      if (step instanceof At at) {
        text.append('[').append(at.index() + 1).append(']');
      } else {
        String name = written(step);
        text.append(text.isEmpty() ? "" : ".").append(Notes.shown(name));
      }
    }
    return text.toString();
  }

  /** The path as one address that names it and nothing else: steps behind slashes (RFC 6901). */
  public String pointer() {
    StringBuilder text = new StringBuilder();
    for (Step step : steps) {
      String name = step instanceof At at ? String.valueOf(at.index()) : written(step);
      text.append('/').append(name.replace("~", "~0").replace("/", "~1"));
    }
    return text.toString();
  }

  /** A key or a name as it is written where it does not stand yet. */
  static String written(Step step) {
    if (step instanceof Key key) {
      return key.key();
    }
    if (step instanceof Name name) {
      return name.name();
    }
    throw new IllegalArgumentException("an index is no key");
  }

  /** Whether a key in a document is meant by a step. */
  static boolean matches(Step step, String key) {
    return step instanceof Key wanted
        ? Section.canonical(key).equals(Section.canonical(wanted.key()))
        : step instanceof Name name && name.name().equals(key);
  }
}
