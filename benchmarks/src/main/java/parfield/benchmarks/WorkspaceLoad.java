package parfield.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import parfield.tank.Place;
import parfield.workspace.Entry;
import parfield.workspace.Location;
import parfield.workspace.ReadingWrite;
import parfield.workspace.SurveySummary;
import parfield.workspace.Workspace;

/**
 * How long a workspace of 10,000 surveys with 100 readings each takes to list, search and write,
 * and what it does while twenty people write. The argument is where to make it: a new file, or the
 * URL of an empty PostgreSQL database.
 */
public final class WorkspaceLoad {
  private static final int BENCHES = 1000;
  private static final int SURVEYS = 10;
  private static final int READINGS = 100;
  private static final int CALLS = 200;
  private static final int WRITERS = 20;
  private static final int SECONDS = 60;
  private static final int PER_SECOND = 50;
  private static final List<String> WORDS =
      List.of("Long", "Cube", "Lagoon", "Frag", "Nano", "Pillar", "Ånga", "Öresund", "Shelf");

  private final SplittableRandom random = new SplittableRandom(1);
  private final List<UUID> benches = new ArrayList<>();
  private final List<UUID> surveys = new ArrayList<>();

  private WorkspaceLoad() {}

  /**
   * Prints the figures.
   *
   * @param arguments the location
   * @throws Exception if a writer fails
   */
  public static void main(String[] arguments) throws Exception {
    Locale.setDefault(Locale.ROOT);
    Location location = Location.parse(arguments[0]);
    WorkspaceLoad load = new WorkspaceLoad();
    try (Workspace workspace = Workspace.open(location)) {
      load.fill(workspace);
    }
    long start = System.nanoTime();
    try (Workspace workspace = Workspace.open(location)) {
      System.out.printf("open, with its check and backup: %.0f ms%n", since(start));
      System.out.println(workspace.holdings());
      if (location instanceof Location.File file) {
        System.out.printf("size of the file: %.0f MB%n", size(file.path()) / 1e6);
      }
      start = System.nanoTime();
      try (Workspace again = Workspace.open(location)) {
        System.out.printf(
            "open again, nothing changed: %.0f ms, %d notices%n",
            since(start), again.notices().size());
      }
      System.out.println("| what | median, ms | 99 %, ms | most, ms |");
      System.out.println("|---|---|---|---|");
      load.reads(workspace);
      load.writes(workspace);
      load.crowd(workspace);
      start = System.nanoTime();
      List<String> faults = workspace.check();
      System.out.printf("check of all: %.0f ms, %s%n", since(start), faults);
    }
  }

  private static long size(Path file) throws IOException {
    return Files.size(file);
  }

  private static double since(long start) {
    return (System.nanoTime() - start) / 1e6;
  }

  private void fill(Workspace workspace) {
    long start = System.nanoTime();
    for (int bench = 0; bench < BENCHES; bench++) {
      String name = WORDS.get(bench % WORDS.size()) + " bench " + bench;
      UUID id = workspace.benches().create(name, false, "parfield: 1\n", Map.of(), "load").bench();
      benches.add(id);
      for (int survey = 0; survey < SURVEYS; survey++) {
        UUID made = workspace.surveys().named(id, "height " + survey).id();
        surveys.add(made);
        List<ReadingWrite> writes = new ArrayList<>();
        for (int reading = 0; reading < READINGS; reading++) {
          writes.add(write(reading));
        }
        workspace.readings().write(made, writes, "load");
      }
    }
    System.out.printf("filled in %.0f s%n", since(start) / 1000);
  }

  private ReadingWrite write(int order) {
    Place place = new Place(random.nextDouble(), random.nextDouble(), 0.25);
    int value = random.nextInt(40, 400);
    return new ReadingWrite(
        new UUID(random.nextLong(), random.nextLong()),
        new UUID(random.nextLong(), random.nextLong()),
        0,
        Entry.typed(place, order, String.valueOf(value), value),
        Instant.now());
  }

  private void reads(Workspace workspace) {
    time("benches, first 50", () -> workspace.benches().list("", 50, 0));
    time("benches, last 50", () -> workspace.benches().list("", 50, BENCHES - 50));
    time("benches that hold a text", () -> workspace.benches().list("angA", 50, 0));
    time("surveys, first 50", () -> workspace.surveys().list("", 50, 0));
    time("surveys, last 50", () -> workspace.surveys().list("", 50, surveys.size() - 50));
    time("surveys that hold a text", () -> workspace.surveys().list("height 7", 50, 0));
    time("surveys that hold no such text", () -> workspace.surveys().list("nowhere", 50, 0));
    time("surveys of one bench", () -> workspace.surveys().of(benches.get(0)));
    time(
        "readings of one survey",
        () -> workspace.readings().of(surveys.get(random.nextInt(surveys.size()))));
    time(
        "changes of one survey since one before the last",
        () -> {
          SurveySummary survey =
              workspace.surveys().get(surveys.get(random.nextInt(surveys.size())));
          workspace.readings().changesSince(survey.id(), survey.sequence() - 1);
        });
  }

  private void writes(Workspace workspace) {
    time(
        "one reading, written and on the disk",
        () ->
            workspace
                .readings()
                .write(surveys.get(random.nextInt(surveys.size())), List.of(write(0)), "load"));
    time(
        "a block of 100 readings",
        () -> {
          List<ReadingWrite> block = new ArrayList<>();
          for (int i = 0; i < READINGS; i++) {
            block.add(write(i));
          }
          workspace
              .readings()
              .writeTogether(surveys.get(random.nextInt(surveys.size())), block, "load");
        });
    time(
        "undo and redo",
        () -> {
          UUID survey = surveys.get(random.nextInt(surveys.size()));
          workspace.readings().undo(survey, UUID.randomUUID(), "load");
          workspace.readings().redo(survey, UUID.randomUUID(), "load");
        });
  }

  private static void time(String what, Runnable call) {
    for (int i = 0; i < CALLS / 4; i++) {
      call.run();
    }
    double[] times = new double[CALLS];
    for (int i = 0; i < CALLS; i++) {
      long start = System.nanoTime();
      call.run();
      times[i] = since(start);
    }
    print(what, times);
  }

  private static void print(String what, double[] times) {
    Arrays.sort(times);
    System.out.printf(
        "| %s | %.2f | %.2f | %.2f |%n",
        what, times[times.length / 2], times[times.length * 99 / 100], times[times.length - 1]);
  }

  /** Twenty people who write at a steady pace, and read back what changed after each. */
  private void crowd(Workspace workspace) throws InterruptedException, ExecutionException {
    ExecutorService people = Executors.newFixedThreadPool(WRITERS);
    List<Future<List<Double>>> answers = new ArrayList<>();
    long pace = TimeUnit.SECONDS.toNanos(WRITERS) / PER_SECOND;
    long begin = System.nanoTime();
    for (int person = 0; person < WRITERS; person++) {
      List<ReadingWrite> writes = new ArrayList<>();
      for (int i = 0; i < SECONDS * PER_SECOND / WRITERS; i++) {
        writes.add(write(i));
      }
      UUID survey = surveys.get(person / 2);
      long offset = person * pace / WRITERS;
      answers.add(people.submit(() -> enter(workspace, survey, writes, begin + offset, pace)));
    }
    List<Double> all = new ArrayList<>();
    for (Future<List<Double>> answer : answers) {
      all.addAll(answer.get());
    }
    people.shutdown();
    Collections.sort(all);
    print(
        String.format(
            Locale.ROOT,
            "%d people, %d readings a second for %d s: written, and changes read",
            WRITERS,
            PER_SECOND,
            SECONDS),
        all.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private static List<Double> enter(
      Workspace workspace, UUID survey, List<ReadingWrite> writes, long begin, long pace)
      throws InterruptedException {
    List<Double> times = new ArrayList<>();
    long known = workspace.surveys().get(survey).sequence();
    long due = begin;
    for (ReadingWrite write : writes) {
      TimeUnit.NANOSECONDS.sleep(Math.max(0, due - System.nanoTime()));
      // From when it was due: waiting for one's turn counts.
      workspace.readings().write(survey, List.of(write), "load");
      known = workspace.readings().changesSince(survey, known).sequence();
      times.add(since(due));
      due += pace;
    }
    return times;
  }
}
