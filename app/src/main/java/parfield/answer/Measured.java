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
public final class Measured {
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
    sentences(surveys, unit).forEach(sentence -> text.append(Lines.item(sentence)));
    return text.toString();
  }

  /** What each survey holds and was read with, a line each. */
  public static List<String> sentences(List<Survey> surveys, LengthUnit unit) {
    return surveys.stream().map(survey -> line(survey, unit)).toList();
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

  /** What each meter's readings were corrected for, a sentence each. */
  public static List<String> corrections(List<Survey> surveys) {
    return surveys.stream().map(Survey::meter).distinct().map(Measured::correction).toList();
  }

  private static String correction(Meter meter) {
    return String.format(
        Locale.ROOT,
        "%s: immersion factor %s, %s; ambient light %s %s taken off first; for the colour of the"
            + " light readings are multiplied by %s; place good to %s cm along x and y; steps of %s"
            + " %s.",
        meter.name(),
        Numbers.plain(meter.immersion(), 3),
        meter.applied() ? "already in the readings" : "applied to the readings",
        Numbers.plain(meter.ambient(), 2),
        Numbers.PPFD,
        Numbers.plain(meter.spectralFactor(), 3),
        Numbers.plain(100 * meter.positionError(), 2),
        Numbers.plain(meter.resolution(), 2),
        Numbers.PPFD);
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
