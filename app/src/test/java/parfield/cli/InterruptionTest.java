package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ctrl-C, sent to a process of its own. */
class InterruptionTest {
  @TempDir private Path folder;

  @Test
  void interruptedSearchPrintsTheBestFoundSoFar() throws Exception {
    Path setup = Run.bench(folder);

    JsonNode answer =
        interrupted("best so far", "recommend", "--json", "--heights", "10:50:0.5", setup);

    assertThat(answer.get("complete").asBoolean()).isFalse();
    assertThat(answer.get("options")).isNotEmpty();
    assertThat(answer.get("rigs_looked_at").asInt()).isLessThan(81);
  }

  @Test
  void interruptedValidationPrintsWhatIsKnown() throws Exception {
    JsonNode answer = interrupted("half-space", "validate", "--json", "--until", "0.1%");

    assertThat(answer.get("complete").asBoolean()).isFalse();
    assertThat(answer.get("agrees").asBoolean()).isFalse();
    assertThat(answer.at("/published/0/verdict").asText()).isEqualTo("agrees");
    assertThat(answer.get("published").size()).isLessThan(100);
    assertThat(answer.get("tanks")).isEmpty();
  }

  @Test
  void interruptedCountingPrintsWhatIsKnown() throws Exception {
    Path setup = Run.bench(folder);

    JsonNode answer =
        interrupted(
            "million packets",
            "field",
            "--json",
            "--rig",
            "low",
            "--depth",
            "15",
            "--solver",
            "reference",
            "--until",
            "0.001%",
            setup);

    assertThat(answer.at("/reference/packets").asLong()).isPositive();
    assertThat(answer.at("/reference/largest_standard_error").asDouble()).isGreaterThan(1e-5);
    assertThat(answer.get("places")).isNotEmpty();
  }

  /** What a run prints that is interrupted once it has said some words. */
  private static JsonNode interrupted(String words, Object... args) throws Exception {
    assumeThat(Files.isExecutable(Path.of("/bin/kill"))).as("there is /bin/kill here").isTrue();
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-D" + StatusLine.TERMINAL + "=true",
                "-cp",
                System.getProperty("java.class.path"),
                "parfield.cli.Parfield"));
    for (Object arg : args) {
      command.add(String.valueOf(arg));
    }
    Process process = new ProcessBuilder(command).start();
    try {
      await(words, process.getErrorStream());
      new ProcessBuilder("/bin/kill", "-INT", String.valueOf(process.pid())).start().waitFor();
      JsonNode answer =
          new ObjectMapper()
              .readTree(
                  new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isEqualTo(ExitCode.INTERRUPTED);
      return answer;
    } finally {
      process.destroyForcibly();
    }
  }

  private static void await(String words, InputStream err) throws Exception {
    BufferedReader reader = new BufferedReader(new InputStreamReader(err, StandardCharsets.UTF_8));
    StringBuilder seen = new StringBuilder();
    while (seen.indexOf(words) < 0) {
      int next = reader.read();
      assertThat(next).as("standard error ended after: %s", seen).isNotNegative();
      seen.append((char) next);
    }
  }
}
