package parfield.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import parfield.tank.Place;

/** Random changes of one survey, held to lists in memory. */
final class RandomWalk {
  private final Workspace workspace;
  private final UUID survey;
  private final long seed;
  private final SplittableRandom random;

  /** Every value that a reading ever had, by reading; empty where it was withdrawn. */
  private final Map<UUID, List<Optional<Double>>> model = new LinkedHashMap<>();

  private final Deque<Step> done = new ArrayDeque<>();
  private final Deque<Step> undone = new ArrayDeque<>();
  private final List<ReadingWrite> sent = new ArrayList<>();
  private long sequence;

  /** What readings held before and after one change. */
  private record Step(Map<UUID, Optional<Double>> before, Map<UUID, Optional<Double>> after) {}

  RandomWalk(Workspace workspace, UUID survey, long seed) {
    this.workspace = workspace;
    this.survey = survey;
    this.seed = seed;
    this.random = new SplittableRandom(seed);
  }

  void run(int changes) {
    for (int i = 0; i < changes; i++) {
      long before = sequence;
      switch (random.nextInt(8)) {
        case 0, 1 -> undo();
        case 2 -> redo();
        case 3 -> again();
        case 4 -> write(true);
        default -> write(false);
      }
      check(before);
    }
  }

  private void write(boolean together) {
    List<ReadingWrite> writes = new ArrayList<>();
    List<Boolean> sound = new ArrayList<>();
    Map<UUID, Long> revisions = new LinkedHashMap<>();
    model.forEach((reading, values) -> revisions.put(reading, (long) values.size()));
    for (int i = random.nextInt(1, 5); i > 0; i--) {
      List<UUID> known = List.copyOf(revisions.keySet());
      boolean isNew = known.isEmpty() || random.nextInt(3) == 0;
      UUID reading = isNew ? id() : known.get(random.nextInt(known.size()));
      long revision = revisions.getOrDefault(reading, 0L);
      boolean stale = random.nextInt(5) == 0;
      Entry entry = Entry.typed(new Place(0.1, 0.2, 0.3), i, "", random.nextInt(1000));
      writes.add(
          new ReadingWrite(
              id(),
              reading,
              stale ? revision + random.nextInt(1, 3) : revision,
              random.nextInt(6) == 0 ? entry.withdrawn() : entry,
              Instant.EPOCH));
      sound.add(!stale);
      if (!stale) {
        revisions.put(reading, revision + 1);
      }
    }
    List<WriteResult> results =
        together
            ? workspace.readings().writeTogether(survey, writes, "Ann")
            : workspace.readings().write(survey, writes, "Ann");
    Optional<Step> open = Optional.empty();
    for (int i = 0; i < writes.size(); i++) {
      assertThat(results.get(i) instanceof WriteResult.Written)
          .as("seed %d, write %s", seed, writes.get(i))
          .isEqualTo(sound.get(i));
      if (sound.get(i)) {
        if (open.isEmpty() || !together) {
          open = Optional.of(new Step(new LinkedHashMap<>(), new LinkedHashMap<>()));
          done.push(open.get());
          undone.clear();
          sequence++;
        }
        apply(writes.get(i), open.get());
        sent.add(writes.get(i));
      }
    }
  }

  private void apply(ReadingWrite write, Step step) {
    step.before().putIfAbsent(write.reading(), now(write.reading()));
    Optional<Double> value = write.entry().value().stream().boxed().findFirst();
    step.after().put(write.reading(), value);
    model.computeIfAbsent(write.reading(), reading -> new ArrayList<>()).add(value);
  }

  private Optional<Double> now(UUID reading) {
    List<Optional<Double>> values = model.getOrDefault(reading, List.of());
    return values.isEmpty() ? Optional.empty() : values.get(values.size() - 1);
  }

  private void again() {
    if (!sent.isEmpty()) {
      ReadingWrite write = sent.get(random.nextInt(sent.size()));
      assertThat(workspace.readings().write(survey, List.of(write), "Bo").get(0))
          .as("seed %d, again %s", seed, write)
          .isInstanceOf(WriteResult.Written.class);
    }
  }

  private void undo() {
    List<ReadingRevision> changed = workspace.readings().undo(survey, id(), "Bo");
    assertThat(changed.isEmpty()).as("seed %d", seed).isEqualTo(done.isEmpty());
    if (!done.isEmpty()) {
      Step step = done.pop();
      undone.push(step);
      sequence++;
      step.before().forEach((reading, value) -> model.get(reading).add(value));
    }
  }

  private void redo() {
    List<ReadingRevision> changed = workspace.readings().redo(survey, id(), "Bo");
    assertThat(changed.isEmpty()).as("seed %d", seed).isEqualTo(undone.isEmpty());
    if (!undone.isEmpty()) {
      Step step = undone.pop();
      done.push(step);
      sequence++;
      step.after().forEach((reading, value) -> model.get(reading).add(value));
    }
  }

  private void check(long before) {
    Changes changes = workspace.readings().changesSince(survey, before);
    assertThat(changes.sequence()).as("seed %d", seed).isEqualTo(sequence);
    assertThat(changes.canUndo()).as("seed %d", seed).isEqualTo(!done.isEmpty());
    assertThat(changes.canRedo()).as("seed %d", seed).isEqualTo(!undone.isEmpty());
    List<ReadingRevision> all = workspace.readings().of(survey);
    assertThat(all).as("seed %d", seed).hasSize(model.size());
    for (ReadingRevision reading : all) {
      List<Optional<Double>> values = model.get(reading.reading());
      assertThat(reading.revision()).as("seed %d", seed).isEqualTo(values.size());
      assertThat(reading.entry().value().stream().boxed().findFirst())
          .as("seed %d", seed)
          .isEqualTo(now(reading.reading()));
    }
    long counted = model.keySet().stream().filter(reading -> now(reading).isPresent()).count();
    assertThat(workspace.surveys().get(survey).readings())
        .as("seed %d", seed)
        .isEqualTo((int) counted);
  }

  private UUID id() {
    return new UUID(random.nextLong(), random.nextLong());
  }
}
