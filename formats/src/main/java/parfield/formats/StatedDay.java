package parfield.formats;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * The daily program that a setup states, as it was written: every text can be read by {@link
 * DayText}.
 *
 * @param lit from when to when all channels are lit
 * @param ramp how long dials climb and fall
 * @param channels what differs for a channel, by its name: one text a lit spell, at least one
 */
public record StatedDay(String lit, String ramp, Map<String, List<String>> channels) {
  /** What is taken where a setup states nothing. */
  public static final StatedDay USUAL = new StatedDay(DayText.LIT, DayText.RAMP, Map.of());

  public StatedDay {
    Objects.requireNonNull(lit, "lit");
    Objects.requireNonNull(ramp, "ramp");
    Map<String, List<String>> copied = new LinkedHashMap<>();
    channels.forEach((name, texts) -> copied.put(name, List.copyOf(texts)));
    channels = Collections.unmodifiableMap(copied);
  }
}
