package parfield.answer;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import parfield.units.LengthUnit;

/**
 * A report that was left.
 *
 * @param folder where
 * @param files what each file holds, by its name, in the order in which they were left
 * @param recommendation that it tells of
 */
public record ReportAnswer(
    String folder, Map<String, String> files, RecommendationAnswer recommendation)
    implements Answer {
  public ReportAnswer {
    Objects.requireNonNull(folder, "folder");
    files = Collections.unmodifiableMap(new LinkedHashMap<>(files));
    Objects.requireNonNull(recommendation, "recommendation");
  }

  @Override
  public String text(LengthUnit unit) {
    Table table = new Table("ll", "in " + folder, "what it holds");
    files.forEach(table::row);
    return recommendation.answer(unit) + "\n" + table.text();
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
