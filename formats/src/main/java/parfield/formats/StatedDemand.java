package parfield.formats;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A demand as the setup file states it, not yet understood.
 *
 * @param line where it stands, 1-based
 * @param column where it stands, 1-based
 * @param entries its keys and values in the file's order: numbers, text, lists and maps
 */
public record StatedDemand(int line, int column, Map<String, Object> entries) {
  public StatedDemand {
    entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
  }
}
