package parfield.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import parfield.answer.AskedDay;
import parfield.answer.Bench;
import parfield.answer.Refusal;
import parfield.care.CoralGroup;
import parfield.care.DailyProgram;
import parfield.care.Livestock;
import parfield.formats.DayText;
import parfield.formats.Nearest;
import parfield.rig.Rig;
import picocli.CommandLine.Option;

/** When the channels of a rig are lit. */
final class DayOptions {
  @Option(
      names = "--rig",
      required = true,
      paramLabel = "RIG",
      description = "Name of a rig of the setup, measured or not, at the dials of the plateau.")
  private String rig;

  @Option(
      names = "--lit",
      paramLabel = "FROM-TO",
      description =
          "From when to when all channels are lit, ramps included; over midnight where the end is"
              + " not after the start. Default: what the setup states under day, else "
              + DayText.LIT
              + ".")
  private String lit;

  @Option(
      names = "--ramp",
      paramLabel = "TIME",
      description =
          "How long dials climb and fall, evenly, as in 90min or 0. Default: what the setup states"
              + " under day, else "
              + DayText.RAMP
              + ".")
  private String ramp;

  @Option(
      names = "--channel",
      paramLabel = "NAME=DAY",
      description =
          "What differs for a channel: NAME=FROM-TO/UP/DOWN@LEVEL, as in"
              + " violet=09:00-21:00/2h/1h@60, ramps and level (percent of its dial) as needed, or"
              + " NAME=off. Once for each lit spell; in place of what the setup states for that channel.")
  private List<String> channels = new ArrayList<>();

  Rig rig(Bench bench) {
    return bench.rig(rig);
  }

  /** What the options say, and for the rest what the bench states. */
  DailyProgram program(Bench bench, Rig of) {
    return AskedDay.program(
        of,
        lit == null ? AskedDay.stated(bench).lit() : lit,
        ramp == null ? AskedDay.stated(bench).ramp() : ramp,
        AskedDay.channels(bench, of, channels));
  }

  /** The bench's groups by name; those asked for, or all. */
  static List<CoralGroup> groups(Bench bench, List<String> names) {
    Map<String, CoralGroup> all = Livestock.with(bench.setup().livestock());
    if (names.isEmpty()) {
      return List.copyOf(all.values());
    }
    List<CoralGroup> groups = new ArrayList<>();
    for (String name : names) {
      if (!all.containsKey(name)) {
        throw Refusal.of(
            name + " is no group of corals",
            Nearest.of(name, all.keySet())
                .map(nearest -> "did you mean " + nearest + "?")
                .orElse("there are " + String.join(", ", all.keySet())));
      }
      groups.add(all.get(name));
    }
    return groups;
  }
}
