package parfield.formats;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * What the surveys of a setup say about their readings, found in its text, so that a name of a file
 * can be changed there and nothing else.
 *
 * @param readings the file that the survey names, if it names one
 * @param depth whether it states a depth of readings that state none
 * @param grid whether it states where to read
 */
public record SurveyKeys(Optional<String> readings, boolean depth, boolean grid) {
  /**
   * Reads the keys of every survey.
   *
   * @param file what the setup is called in messages
   * @param text of the setup
   * @return by name of the survey, in the order of the setup; none if it states none
   * @throws InvalidFile if the text is no YAML
   */
  public static Map<String, SurveyKeys> of(String file, String text) {
    Map<String, SurveyKeys> all = new LinkedHashMap<>();
    surveys(file, text)
        .forEach(
            (name, survey) ->
                all.put(
                    name,
                    new SurveyKeys(
                        value(survey, "readings")
                            .filter(ScalarNode.class::isInstance)
                            .map(node -> ((ScalarNode) node).getValue()),
                        value(survey, "depth").isPresent(),
                        value(survey, "grid").isPresent())));
    return all;
  }

  /**
   * Names the files of readings anew.
   *
   * @param file what the setup is called in messages
   * @param text of the setup
   * @param names of files by survey; a survey that the setup does not state is passed over
   * @return the text, changed in these places only
   * @throws InvalidFile if the text is no YAML
   */
  public static String withReadings(String file, String text, Map<String, String> names) {
    int[] points = text.codePoints().toArray();
    TreeMap<Integer, Edit> edits = new TreeMap<>();
    surveys(file, text)
        .forEach(
            (survey, node) -> {
              if (names.containsKey(survey)) {
                Edit edit = edit(node, quoted(names.get(survey)));
                edits.put(edit.from(), edit);
              }
            });
    StringBuilder edited = new StringBuilder();
    int at = 0;
    for (Edit edit : edits.values()) {
      edited.append(new String(points, at, edit.from() - at)).append(edit.text());
      at = edit.to();
    }
    return edited.append(new String(points, at, points.length - at)).toString();
  }

  /**
   * A piece of text in place of another.
   *
   * @param from index of the first code point that goes
   * @param to index after the last
   * @param text that comes
   */
  private record Edit(int from, int to, String text) {}

  private static Edit edit(MappingNode survey, String name) {
    Optional<Node> stated = value(survey, "readings");
    if (stated.isPresent()) {
      return new Edit(index(stated.get().getStartMark()), index(stated.get().getEndMark()), name);
    }
    NodeTuple first = survey.getValue().get(0);
    Mark start = first.getKeyNode().getStartMark().orElseThrow();
    String separator =
        survey.getFlowStyle() == FlowStyle.FLOW ? ", " : "\n" + " ".repeat(start.getColumn());
    return new Edit(start.getIndex(), start.getIndex(), "readings: " + name + separator);
  }

  private static int index(Optional<Mark> mark) {
    return mark.orElseThrow().getIndex();
  }

  private static String quoted(String name) {
    return name.matches("[A-Za-z0-9_./-]*[A-Za-z][A-Za-z0-9_./-]*") && !name.startsWith("-")
        ? name
        : "'" + name.replace("'", "''") + "'";
  }

  private static Map<String, MappingNode> surveys(String file, String text) {
    Map<String, MappingNode> surveys = new LinkedHashMap<>();
    Node root = Yaml.parse(file, text, new Notes()).node();
    if (root instanceof MappingNode top
        && value(top, "surveys").orElse(null) instanceof MappingNode all) {
      for (NodeTuple survey : all.getValue()) {
        if (survey.getKeyNode() instanceof ScalarNode name
            && survey.getValueNode() instanceof MappingNode keys
            && !keys.getValue().isEmpty()) {
          surveys.put(name.getValue().strip(), keys);
        }
      }
    }
    return surveys;
  }

  private static Optional<Node> value(MappingNode map, String key) {
    return map.getValue().stream()
        .filter(
            entry ->
                entry.getKeyNode() instanceof ScalarNode name
                    && Section.canonical(name.getValue()).equals(key))
        .map(NodeTuple::getValueNode)
        .findFirst();
  }
}
