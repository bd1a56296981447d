package parfield.cli.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Objects;
import parfield.units.LengthUnit;

/**
 * What the demo left and what it found.
 *
 * @param folder where
 * @param files names of all files in it, in the order in which they were left
 * @param recommendation for the invented bench
 */
public record DemoAnswer(String folder, List<String> files, RecommendationAnswer recommendation)
    implements Answer {
  public DemoAnswer {
    Objects.requireNonNull(folder, "folder");
    files = List.copyOf(files);
    Objects.requireNonNull(recommendation, "recommendation");
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append("An invented bench: nothing of it was measured, nothing of it can be bought.\n\n");
    text.append(recommendation.answer(unit));
    text.append("\nIn ").append(folder).append('\n');
    files.forEach(file -> text.append(Lines.item(file)));
    text.append("\nThe same by hand\n");
    String setup = folder + "/setup.yaml";
    text.append("  parfield check ").append(setup).append('\n');
    text.append("  parfield stats ").append(setup).append('\n');
    text.append("  parfield fit ").append(setup).append(" --out model.json\n");
    text.append("  parfield field ").append(setup);
    text.append(" --model model.json --rig high --depth 25\n");
    text.append("  parfield recommend ").append(setup).append(" --model model.json\n");
    return text.toString();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("folder", folder);
    ArrayNode left = json.putArray("files");
    files.forEach(left::add);
    json.set("recommendation", recommendation.json());
    return json;
  }
}
