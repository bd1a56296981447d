package parfield.workspace;

import java.util.List;

/**
 * A part of a list.
 *
 * @param <T> what is listed
 * @param items of this part
 * @param total how many there are in all
 */
public record Page<T>(List<T> items, long total) {
  public Page {
    items = List.copyOf(items);
  }
}
