package parfield.answer;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import parfield.units.LengthUnit;

/**
 * What the demo left and what it found.
 *
 * @param folder where
 * @param files what each file holds, by its name, in the order in which they were left
 * @param recommendation for the invented bench
 */
public record DemoAnswer(
    String folder, Map<String, String> files, RecommendationAnswer recommendation)
    implements Answer {
  public DemoAnswer {
    Objects.requireNonNull(folder, "folder");
    files = Collections.unmodifiableMap(new LinkedHashMap<>(files));
    Objects.requireNonNull(recommendation, "recommendation");
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append("An invented bench: nothing of it was measured, nothing of it can be bought.\n\n");
    text.append(recommendation.answer(unit));
    Table table = new Table("ll", "in " + folder, "what it holds");
    files.forEach(table::row);
    text.append('\n').append(table.text());
    text.append("\nThe same by hand\n");
    String setup = " " + folder + "/setup.yaml";
    text.append("  parfield check").append(setup).append('\n');
    text.append("  parfield stats").append(setup).append('\n');
    text.append("  parfield fit").append(setup).append(" --out model.json\n");
    text.append("  parfield field").append(setup);
    text.append(" --model model.json --rig high --depth 25 --svg map.svg\n");
    text.append("  parfield recommend").append(setup).append(" --model model.json\n");
    text.append("  parfield report").append(setup).append(" --model model.json --out report\n");
    return text.toString();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("folder", folder);
    ObjectNode left = json.putObject("files");
    files.forEach(left::put);
    json.set("recommendation", recommendation.json());
    return json;
  }
}
