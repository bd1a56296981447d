package parfield.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.tank.Place;

/**
 * A program that stores readings as fast as it can is killed at random moments: what it had
 * acknowledged is there afterwards, once. Runs as often as {@code -Dparfield.kills} says.
 */
class KillTest {
  private static final int KILLS = Integer.getInteger("parfield.kills", 10);
  private static final int LANES = 2;
  private static final long SEED = Long.getLong("parfield.seed", 20260506);

  @TempDir private Path folder;

  @Test
  @DisplayName("every acknowledged reading survives kill -9, and none is there twice")
  void killed() throws InterruptedException, ExecutionException {
    // Most of the time a program starts: two at once, each with a file of its own.
    ExecutorService lanes = Executors.newFixedThreadPool(LANES);
    try {
      List<Future<?>> runs = new ArrayList<>();
      for (int lane = 0; lane < LANES; lane++) {
        int own = lane;
        runs.add(
            lanes.submit(
                () -> {
                  killed(own, KILLS / LANES + (own < KILLS % LANES ? 1 : 0));
                  return null;
                }));
      }
      for (Future<?> run : runs) {
        run.get();
      }
    } finally {
      lanes.shutdownNow();
    }
  }

  private void killed(int lane, int kills) throws IOException, InterruptedException {
    Location location = new Location.File(folder.resolve("workspace-" + lane + ".db"));
    UUID survey;
    try (Workspace workspace = Workspace.open(location)) {
      UUID bench = workspace.benches().create("bench", false, "", Map.of(), "Ann").bench();
      survey = workspace.surveys().named(bench, "low").id();
    }
    SplittableRandom random = new SplittableRandom(SEED + lane);
    Map<UUID, Double> acknowledged = new HashMap<>();
    for (int run = 0; run < kills; run++) {
      int before = acknowledged.size();
      kill(location, survey, random.nextInt(1, 60), random.nextInt(0, 20), acknowledged);
      assertThat(acknowledged.size()).as("run %d, seed %d", run, SEED).isGreaterThan(before);
      try (Workspace workspace = Workspace.open(location)) {
        check(workspace, survey, acknowledged, run);
      }
    }
  }

  private static void check(
      Workspace workspace, UUID survey, Map<UUID, Double> acknowledged, int run) {
    List<ReadingRevision> stored = workspace.readings().of(survey);
    Map<UUID, Double> values = new HashMap<>();
    stored.forEach(reading -> values.put(reading.reading(), reading.entry().value().orElseThrow()));
    assertThat(values).as("run %d, seed %d", run, SEED).containsAllEntriesOf(acknowledged);
    // Each carries its own number: one that is there twice would show.
    assertThat(stored)
        .as("run %d, seed %d", run, SEED)
        .extracting(reading -> reading.entry().value().orElseThrow() + reading.entry().typed())
        .doesNotHaveDuplicates();
    // One that was stored but not acknowledged may be there at the end of each run.
    assertThat(stored.size()).isBetween(acknowledged.size(), acknowledged.size() + run + 1);
    assertThat(workspace.surveys().get(survey))
        .matches(it -> it.readings() == stored.size() && it.sequence() == stored.size());
  }

  /** Starts a writer, and kills it a while after it acknowledged some readings. */
  private static void kill(
      Location location, UUID survey, int after, int milliseconds, Map<UUID, Double> acknowledged)
      throws IOException, InterruptedException {
    Process writer =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                Writer.class.getName(),
                location.toString(),
                survey.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(writer.getInputStream(), StandardCharsets.UTF_8))) {
      List<String> heard = new ArrayList<>();
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        heard.add(line);
        if (heard.size() == after) {
          TimeUnit.MILLISECONDS.sleep(milliseconds);
          // By its handle: what it printed stays to be read.
          writer.toHandle().destroyForcibly();
        }
      }
      for (String line : heard) {
        String[] parts = line.split(" ");
        // A line that was cut short acknowledges nothing.
        if (parts.length == 3) {
          acknowledged.put(UUID.fromString(parts[0]), Double.parseDouble(parts[1]));
        }
      }
    } finally {
      writer.destroyForcibly().waitFor();
    }
  }

  /** Stores readings until it is killed, and prints each when it is stored. */
  static final class Writer {
    private Writer() {}

    public static void main(String[] arguments) {
      try (Workspace workspace = Workspace.open(Location.parse(arguments[0]))) {
        UUID survey = UUID.fromString(arguments[1]);
        for (int i = 0; i < 100_000; i++) {
          UUID reading = UUID.randomUUID();
          ReadingWrite write =
              new ReadingWrite(
                  UUID.randomUUID(),
                  reading,
                  0,
                  Entry.typed(new Place(0.1, 0.2, 0.3), i, reading.toString(), i),
                  Instant.now());
          // As a phone does that did not hear the answer: the same write once more.
          for (int again = 0; again < 1 + i % 2; again++) {
            workspace.readings().write(survey, List.of(write), "Ann");
          }
          System.out.println(reading + " " + i + " stored");
          System.out.flush();
        }
      }
    }
  }
}
