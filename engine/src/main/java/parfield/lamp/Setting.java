package parfield.lamp;

import java.util.Collections;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a person dials: a percentage for each dial that was touched; a dial not named stands at 100.
 *
 * @param dials setting [%] by the dial's name (a channel or a master), each 0 to 100
 */
public record Setting(Map<String, Double> dials) {
  public Setting {
    dials = Collections.unmodifiableMap(new TreeMap<>(dials));
    dials.forEach(
        (name, percent) -> {
          if (!(percent >= 0 && percent <= 100)) {
            throw new IllegalArgumentException(
                String.format(Locale.ROOT, "dial %s runs from 0 to 100 %%; got %s", name, percent));
          }
        });
  }

  /** The setting with every dial at 100. */
  public static Setting full() {
    return new Setting(Map.of());
  }

  /** The percentage of one dial, 100 where it is not named. */
  public double percent(String dial) {
    return dials.getOrDefault(dial, 100.0);
  }
}
