package parfield.lamp;

import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A dial that scales several channels at once and leaves the others alone.
 *
 * @param name the name on the dial
 * @param scales names of the channels it scales
 */
public record Master(String name, SortedSet<String> scales) {
  public Master {
    Objects.requireNonNull(name, "name");
    scales = java.util.Collections.unmodifiableSortedSet(new TreeSet<>(scales));
  }
}
