package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import parfield.survey.Meter;
import parfield.survey.Survey;
import parfield.units.LengthUnit;

/** The conditions that readings were taken in: what every figure rests on. */
final class Measured {
  private Measured() {}

  /** One line for each survey. */
  static String text(List<Survey> surveys, LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    int readings = surveys.stream().mapToInt(survey -> survey.readings().size()).sum();
    text.append(
        String.format(
            Locale.ROOT,
            "Measured: %s in %s\n",
            Numbers.count(readings, "reading"),
            Numbers.count(surveys.size(), "survey")));
    for (Survey survey : surveys) {
      text.append(Lines.item(line(survey, unit)));
    }
    return text.toString();
  }

  /** What a survey was taken with, in a line. */
  static String line(Survey survey, LengthUnit unit) {
    Meter meter = survey.meter();
    return String.format(
        Locale.ROOT,
        "%s: %s with %s %s high; meter %s, scale error %s %%, repeat error %s %%",
        survey.name(),
        Numbers.count(survey.readings().size(), "reading"),
        Numbers.count(survey.rig().hangings().size(), "fixture"),
        Numbers.withUnit(survey.rig().meanHeight(), unit),
        meter.name(),
        Numbers.plain(100 * meter.scaleError(), 1),
        Numbers.plain(100 * meter.repeatError(), 1));
  }

  /** One object for each survey. */
  static ArrayNode json(List<Survey> surveys) {
    ArrayNode array = JsonNodeFactory.instance.arrayNode();
    for (Survey survey : surveys) {
      ObjectNode entry = array.addObject();
      entry.put("survey", survey.name());
      entry.put("readings", survey.readings().size());
      entry.put("fixtures", survey.rig().hangings().size());
      Json.length(entry, "height", survey.rig().meanHeight());
      entry.put("meter", survey.meter().name());
      Json.number(entry, "scale_error", survey.meter().scaleError());
      Json.number(entry, "repeat_error", survey.meter().repeatError());
    }
    return array;
  }
}
