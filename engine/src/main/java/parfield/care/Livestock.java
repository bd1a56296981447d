package parfield.care;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import parfield.survey.Band;

/** The groups that are taken where a bench states no others: common practice, no source. */
public final class Livestock {
  private static final Map<String, CoralGroup> COMMON = read();

  private Livestock() {}

  /** The groups by name, in the order of the table. */
  public static Map<String, CoralGroup> common() {
    return COMMON;
  }

  /** The common groups, those of a bench in place of its namesakes and after the others. */
  public static Map<String, CoralGroup> with(Map<String, CoralGroup> stated) {
    Map<String, CoralGroup> all = new LinkedHashMap<>(COMMON);
    all.putAll(stated);
    return Collections.unmodifiableMap(all);
  }

  private static Map<String, CoralGroup> read() {
    Map<String, CoralGroup> groups = new LinkedHashMap<>();
    try (InputStream in = Livestock.class.getResourceAsStream("livestock.csv");
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      boolean head = true;
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (line.isBlank() || line.startsWith("#")) {
          continue;
        }
        if (head) {
          head = false;
          continue;
        }
        CoralGroup group = group(line.split(",", 7));
        groups.put(group.name(), group);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("livestock.csv in this program cannot be read", e);
    }
    return Collections.unmodifiableMap(groups);
  }

  private static CoralGroup group(String[] cells) {
    return new CoralGroup(
        new Band(cells[0], Double.parseDouble(cells[1]), Double.parseDouble(cells[2])),
        Double.parseDouble(cells[3]),
        Double.parseDouble(cells[4]),
        Certainty.valueOf(cells[5].toUpperCase(Locale.ROOT)),
        cells[6].replace("\"", ""));
  }
}
