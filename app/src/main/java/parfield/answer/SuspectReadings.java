package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.survey.Suspicion;
import parfield.units.LengthUnit;

/**
 * The readings of a survey that look wrong.
 *
 * @param survey whose readings
 * @param suspicions at least one
 */
public record SuspectReadings(Survey survey, List<Suspicion> suspicions) {
  public SuspectReadings {
    Objects.requireNonNull(survey, "survey");
    suspicions = List.copyOf(suspicions);
  }

  /** All of them as lines, or that there are none. */
  static String text(List<SuspectReadings> all, LengthUnit unit) {
    if (all.isEmpty()) {
      return "No reading looks wrong.\n";
    }
    StringBuilder text =
        new StringBuilder("Readings that look wrong (none was left out; look at them again)\n");
    for (SuspectReadings suspects : all) {
      for (Suspicion suspicion : suspects.suspicions()) {
        text.append(
            String.format(
                Locale.ROOT,
                "  - %s, %s: %s\n",
                suspects.survey().name(),
                suspects.where(suspicion, unit),
                suspicion.reason()));
      }
    }
    return text.toString();
  }

  private String where(Suspicion suspicion, LengthUnit unit) {
    List<Reading> readings =
        suspicion.readings().stream().map(index -> survey.readings().get(index)).toList();
    String lines =
        String.join(
            ", ",
            readings.stream()
                .map(Reading::line)
                .distinct()
                .map(line -> line == 0 ? Numbers.NONE : String.valueOf(line))
                .limit(8)
                .toList());
    Reading first = readings.get(0);
    String place =
        String.format(
            Locale.ROOT,
            "x %s, y %s, depth %s",
            Numbers.length(first.place().x(), unit),
            Numbers.length(first.place().y(), unit),
            Numbers.withUnit(first.place().depth(), unit));
    return readings.size() == 1
        ? String.format(
            Locale.ROOT, "line %s (%s, %s)", lines, place, Numbers.plain(first.value(), 2))
        : String.format(
            Locale.ROOT,
            "lines %s%s (the first at %s)",
            lines,
            readings.size() > 8 ? " …" : "",
            place);
  }

  /** All of them as an array. */
  static ArrayNode json(List<SuspectReadings> all) {
    ArrayNode array = JsonNodeFactory.instance.arrayNode();
    for (SuspectReadings suspects : all) {
      for (Suspicion suspicion : suspects.suspicions()) {
        ObjectNode entry = array.addObject();
        entry.put("survey", suspects.survey().name());
        entry.put("kind", suspicion.kind().name().toLowerCase(Locale.ROOT));
        entry.put("reason", suspicion.reason());
        ArrayNode readings = entry.putArray("readings");
        for (int index : suspicion.readings()) {
          Reading reading = suspects.survey().readings().get(index);
          ObjectNode where = readings.addObject();
          where.put("line", reading.line());
          Json.place(where, reading.place());
          Json.ppfd(where, "shown", reading.value());
        }
      }
    }
    return array;
  }
}
