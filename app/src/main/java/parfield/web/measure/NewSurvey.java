package parfield.web.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import parfield.formats.Setup;
import parfield.web.bench.SetupBlocks;
import parfield.web.bench.YamlText;

/**
 * A survey that a person wants to begin, as it was typed.
 *
 * @param name what it shall be called
 * @param rig name of the rig that hangs
 * @param meter name of the meter
 * @param depths to read at, in the setup's unit, separated by spaces or semicolons
 * @param columns cells along the length; empty for the usual cells
 * @param rows cells from front to back; empty for the usual cells
 */
public record NewSurvey(
    String name, String rig, String meter, String depths, String columns, String rows) {
  private static final int LONGEST_NAME = 60;
  private static final int MOST_CELLS = 100;
  private static final int MOST_DEPTHS = 20;

  public NewSurvey {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(rig, "rig");
    Objects.requireNonNull(meter, "meter");
    Objects.requireNonNull(depths, "depths");
    Objects.requireNonNull(columns, "columns");
    Objects.requireNonNull(rows, "rows");
  }

  /** What is wrong with it, by field; empty if it can be stated. */
  Map<String, String> faults(Setup setup) {
    Map<String, String> faults = new LinkedHashMap<>();
    if (name.isBlank()) {
      faults.put("name", "Give the survey a name, as in low or 2 weeks later");
    } else if (name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
      faults.put(
          "name",
          String.format(
              Locale.ROOT,
              "A name is one line of at most %d characters; this has %d",
              LONGEST_NAME,
              name.length()));
    } else if (setup.plans().containsKey(name.strip())) {
      faults.put("name", "The bench has a survey " + name.strip() + ": choose another name");
    }
    if (!setup.rigs().containsKey(rig)) {
      faults.put(
          "rig", "Choose one of the bench's rigs: " + String.join(", ", setup.rigs().keySet()));
    }
    if (!setup.meters().containsKey(meter)) {
      faults.put(
          "meter",
          "Choose one of the bench's meters: " + String.join(", ", setup.meters().keySet()));
    }
    depthFault(setup).ifPresent(fault -> faults.put("depths", fault));
    if (columns.isBlank() != rows.isBlank()) {
      faults.put(
          columns.isBlank() ? "columns" : "rows", "Fill in both columns and rows, or neither");
    }
    cellFault(columns).ifPresent(fault -> faults.putIfAbsent("columns", fault));
    cellFault(rows).ifPresent(fault -> faults.putIfAbsent("rows", fault));
    return faults;
  }

  private Optional<String> depthFault(Setup setup) {
    String unit = setup.length().symbol();
    double deepest = setup.length().fromMetres(setup.tank().depth());
    String how =
        String.format(
            Locale.ROOT,
            "type depths from the surface down, above 0 to %s %s, as in 10 25",
            shown(deepest),
            unit);
    List<String> parts = parts();
    if (parts.isEmpty()) {
      return Optional.of("No depth: " + how);
    }
    if (parts.size() > MOST_DEPTHS) {
      return Optional.of(
          String.format(Locale.ROOT, "%d depths; at most %d are taken", parts.size(), MOST_DEPTHS));
    }
    for (String part : parts) {
      double depth = number(part);
      if (!(depth > 0 && depth <= deepest + 1e-9)) {
        return Optional.of(part + ": " + how);
      }
    }
    return Optional.empty();
  }

  private static Optional<String> cellFault(String typed) {
    if (typed.isBlank()) {
      return Optional.empty();
    }
    double cells = number(typed.strip());
    return cells >= 1 && cells <= MOST_CELLS && cells == Math.rint(cells)
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT, "%s: type a whole number from 1 to %d", typed.strip(), MOST_CELLS));
  }

  private List<String> parts() {
    return List.of(depths.strip().split("[\\s;]+")).stream()
        .map(part -> part.replaceAll("(?i)(cm|in|″|\")$", ""))
        .map(part -> part.endsWith(",") ? part.substring(0, part.length() - 1) : part)
        .filter(part -> !part.isEmpty())
        .toList();
  }

  private static double number(String text) {
    return text.matches("\\d{1,6}([.,]\\d{1,6})?")
        ? Double.parseDouble(text.replace(',', '.'))
        : Double.NaN;
  }

  private static String shown(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  /** The survey as one line of a setup's {@code surveys}. */
  String entry() {
    List<String> numbers = new ArrayList<>();
    parts().forEach(part -> numbers.add(shown(number(part))));
    String cells =
        columns.isBlank()
            ? ""
            : String.format(
                Locale.ROOT,
                ", columns: %.0f, rows: %.0f",
                number(columns.strip()),
                number(rows.strip()));
    return String.format(
        Locale.ROOT,
        "%s: {rig: %s, meter: %s, grid: {depths: [%s]%s}}",
        YamlText.quoted(name.strip()),
        YamlText.quoted(rig),
        YamlText.quoted(meter),
        String.join(", ", numbers),
        cells);
  }

  /**
   * A setup's text with this survey first among its surveys; all else is left as it is.
   *
   * @throws parfield.answer.Refusal if the text is written in a way that cannot be changed
   */
  String addedTo(String text) {
    return SetupBlocks.prepend(text, "surveys", name.strip(), List.of(entry()), entry());
  }
}
