package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** Holds docs/COMMANDS.md to the program. */
class DocumentedCommandsTest {
  private static final List<String> SHARED = List.of("--help", "--version", "--json", "--length");

  @TempDir private Path folder;

  private static String page() throws IOException {
    return Files.readString(Path.of("../docs/COMMANDS.md"));
  }

  /** The part of the page between a heading and the next of its rank. */
  private static String section(String heading) throws IOException {
    String page = page();
    int from = page.indexOf("\n## " + heading + "\n");
    assertThat(from).as("heading %s", heading).isNotNegative();
    int to = page.indexOf("\n## ", from + 4);
    return page.substring(from, to < 0 ? page.length() : to);
  }

  @Test
  void everyOptionOfEveryCommandIsDescribedInItsSection() throws IOException {
    for (CommandLine command : new CommandLine(new Parfield()).getSubcommands().values()) {
      assertDescribed(command.getCommandName(), command);
      for (CommandLine question : command.getSubcommands().values()) {
        assertDescribed(command.getCommandName() + " " + question.getCommandName(), question);
      }
    }
  }

  private static void assertDescribed(String heading, CommandLine command) throws IOException {
    String section = section(heading);
    List<String> described = new ArrayList<>(SHARED);
    Matcher rows = Pattern.compile("(?m)^\\| `(--[a-z-]+)").matcher(section);
    while (rows.find()) {
      described.add(rows.group(1));
    }
    List<String> names =
        command.getCommandSpec().options().stream().map(OptionSpec::longestName).toList();
    // What all commands share is described once.
    if (!names.contains("--json")) {
      described.remove("--json");
    }
    if (!names.contains("--length")) {
      described.remove("--length");
    }
    if (names.contains("--unit")) {
      described.add("--unit");
    }
    assertThat(names).as("options of %s", heading).containsExactlyInAnyOrderElementsOf(described);
  }

  @Test
  void everyExampleIsUnderstood() throws IOException {
    List<String> examples =
        section("Examples").lines().filter(line -> line.startsWith("parfield ")).toList();

    assertThat(examples).hasSizeGreaterThan(5);
    for (String example : examples) {
      new CommandLine(new Parfield()).parseArgs(example.substring(9).split(" "));
    }
  }

  @Test
  void everyKeyOfTheJsonIsNamed() throws IOException {
    Path setup = Run.bench(folder);
    Path hard = folder.resolve("hard.yaml");
    Run.write(hard, Run.read("bench/setup.yaml").replace("coverage: 0.60", "coverage: 0.99"));
    Path model = folder.resolve("model.json");
    Run.bench(folder, "low.csv", "22.5,20,15,379", "22.5,20,15,3790");
    List<Run> runs =
        List.of(
            Run.parfield("check", setup, "--json"),
            Run.parfield("stats", setup, "--json"),
            Run.parfield("fit", setup, "--out", model, "--json"),
            Run.parfield(
                "field", setup, "--model", model, "--rig", "low", "--depth", "15", "--json"),
            Run.parfield("recommend", hard, "--model", model, "--heights", "15,20", "--json"));

    Set<String> keys = new TreeSet<>();
    for (String approved :
        List.of(
            "describe",
            "compare",
            "depths",
            "blend",
            "mix",
            "parts",
            "meter",
            "meter-surveys",
            "eyes")) {
      Path answer = Path.of("src/test/resources/approved/spectrum-" + approved + ".json");
      collectKeys(new ObjectMapper().readTree(answer.toFile()), keys);
    }
    for (Run run : runs) {
      assertThat(run.err()).isEmpty();
      collectKeys(new ObjectMapper().readTree(run.out()), keys);
    }
    // Names that the setup chooses.
    keys.remove("white");
    String page = page();
    assertThat(keys)
        .hasSizeGreaterThan(80)
        .allSatisfy(
            key ->
                assertThat(page)
                    .as("key %s", key)
                    .containsPattern("[`\"]" + Pattern.quote(key) + "[`\"]"));
  }

  private static void collectKeys(JsonNode node, Set<String> keys) {
    node.fieldNames().forEachRemaining(keys::add);
    node.forEach(child -> collectKeys(child, keys));
  }
}
