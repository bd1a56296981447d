package parfield.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.tank.Place;

/** What a workspace keeps to, whichever database it is in. */
abstract class WorkspaceContract {
  private static final Instant TYPED = Instant.parse("2026-03-04T05:06:07.000008Z");

  @TempDir Path folder;

  private Workspace workspace;

  /** A location that holds nothing yet. */
  abstract Location fresh() throws Exception;

  @BeforeEach
  void open() throws Exception {
    workspace = Workspace.open(fresh());
  }

  @AfterEach
  void close() {
    workspace.close();
  }

  private UUID bench() {
    return workspace.benches().create("bench", false, "parfield: 1\n", Map.of(), "Ann").bench();
  }

  private UUID survey() {
    return workspace.surveys().named(bench(), "low").id();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Entry entry(double value) {
    return Entry.typed(new Place(0.1, 0.2, 0.3), 1, "typed " + value, value);
  }

  private static ReadingWrite write(UUID reading, long basedOn, Entry entry) {
    return new ReadingWrite(UUID.randomUUID(), reading, basedOn, entry, TYPED);
  }

  private ReadingRevision written(UUID survey, ReadingWrite write) {
    WriteResult result = workspace.readings().write(survey, List.of(write), "Ann").get(0);
    assertThat(result).isInstanceOf(WriteResult.Written.class);
    return ((WriteResult.Written) result).revision();
  }

  @Test
  @DisplayName("what a bench was made of comes back, and after opening again too")
  void createdBench() {
    String text = "parfield: 1 # Kommentar, déjà vu\r\n\ttab: \"'\\\"\n";
    SetupRevision made =
        workspace
            .benches()
            .create(" Long tank ", true, text, Map.of("spectra/blue.csv", bytes("a")), "Ann");

    workspace.close();
    workspace = Workspace.open(workspace.location());

    SetupRevision kept = workspace.benches().setup(made.bench());
    assertThat(kept).isEqualTo(made);
    assertThat(kept.revision()).isEqualTo(1);
    assertThat(kept.text()).isEqualTo(text);
    assertThat(workspace.bytes(kept.files().get("spectra/blue.csv"))).isEqualTo(bytes("a"));
    BenchSummary bench = workspace.benches().get(made.bench());
    assertThat(bench.name()).isEqualTo("Long tank");
    assertThat(bench.sample()).isTrue();
    assertThat(bench.putAway()).isFalse();
  }

  @Test
  @DisplayName("benches are found by a part of their name, capitals and accents aside")
  void searchedBenches() {
    for (String name : List.of("Långtank", "100 % reef", "under_score", "back\\slash")) {
      workspace.benches().create(name, false, "", Map.of(), "Ann");
    }

    assertThat(found("LANG")).containsExactly("Långtank");
    assertThat(found("%")).containsExactly("100 % reef");
    assertThat(found("_")).containsExactly("under_score");
    assertThat(found("\\")).containsExactly("back\\slash");
    assertThat(found("nothing")).isEmpty();
    assertThat(found("")).containsExactly("back\\slash", "under_score", "100 % reef", "Långtank");
    Page<BenchSummary> second = workspace.benches().list("", 3, 3);
    assertThat(second.total()).isEqualTo(4);
    assertThat(second.items()).extracting(BenchSummary::name).containsExactly("Långtank");
  }

  private List<String> found(String search) {
    return workspace.benches().list(search, 10, 0).items().stream()
        .map(BenchSummary::name)
        .toList();
  }

  @Test
  @DisplayName("a bench that is put away is out of the lists, with its surveys, and comes back")
  void putAway() {
    UUID survey = survey();
    UUID bench = workspace.surveys().get(survey).bench();

    workspace.benches().putAway(bench);

    assertThat(found("")).isEmpty();
    assertThat(workspace.surveys().list("", 10, 0).items()).isEmpty();
    assertThat(workspace.benches().listPutAway("ben", 10, 0).items()).hasSize(1);
    workspace.benches().bringBack(bench);
    workspace.benches().rename(bench, "Übung");
    assertThat(found("ubung")).containsExactly("Übung");
    assertThat(workspace.surveys().list("übung", 10, 0).total()).isEqualTo(1);
  }

  @Test
  @DisplayName("a setup saved over somebody else's is refused with what is there now")
  void staleSetup() {
    UUID bench = bench();
    SetupRevision second = workspace.benches().saveSetup(bench, 1, "Bo's", "Bo");

    StaleSetup refused =
        catchThrowableOfType(
            StaleSetup.class, () -> workspace.benches().saveSetup(bench, 1, "Ann's", "Ann"));

    assertThat(refused)
        .hasMessage("the setup was changed meanwhile: revision 2 by Bo; yours is based on 1");
    assertThat(refused.current()).isEqualTo(second);
    assertThat(workspace.benches().setup(bench)).isEqualTo(second);
  }

  @Test
  @DisplayName("undo and redo walk the revisions of a setup, files too, and append")
  void setupUndo() {
    Benches benches = workspace.benches();
    UUID bench =
        benches
            .create("bench", false, "one", Map.of("a", bytes("1"), "b", bytes("2")), "Ann")
            .bench();
    benches.save(bench, 1, "two", Map.of("a", bytes("3")), Set.of("b"), "Ann");
    benches.saveSetup(bench, 2, "three", "Ann");

    assertThat(benches.undo(bench, 3, "Bo").orElseThrow().text()).isEqualTo("two");
    assertThat(benches.undo(bench, 4, "Bo").orElseThrow())
        .matches(setup -> setup.text().equals("one") && setup.who().equals("Bo"))
        .matches(setup -> setup.files().equals(benches.setup(bench, 1).files()));
    assertThat(benches.undo(bench, 5, "Bo")).isEmpty();
    assertThat(benches.canUndo(bench)).isFalse();
    assertThat(benches.redo(bench, 5, "Bo").orElseThrow())
        .matches(setup -> setup.text().equals("two"))
        .matches(setup -> setup.files().equals(benches.setup(bench, 2).files()));
    assertThat(benches.canRedo(bench)).isTrue();
    benches.saveSetup(bench, 6, "other", "Ann");
    assertThat(benches.canRedo(bench)).isFalse();
    assertThat(benches.redo(bench, 7, "Bo")).isEmpty();
    assertThat(benches.undo(bench, 7, "Bo").orElseThrow().text()).isEqualTo("two");
    assertThat(benches.undo(bench, 8, "Bo").orElseThrow().text()).isEqualTo("one");
    assertThat(benches.history(bench))
        .extracting(SetupRevision::text)
        .containsExactly("one", "two", "three", "two", "one", "two", "other", "two", "one");
  }

  @Test
  @DisplayName("a reading comes back as it was entered, to the last bit")
  void reading() {
    UUID survey = survey();
    UUID reading = UUID.randomUUID();
    Entry entry =
        new Entry(
            new Place(0.1 + 0.2, 1.0 / 3, Double.MIN_VALUE),
            -7,
            "1,5e2 µmol",
            OptionalDouble.of(Math.nextUp(150.0)),
            Entry.Origin.SERIAL,
            Entry.Kind.DRIFT,
            true);

    ReadingRevision answered = written(survey, write(reading, 0, entry));

    assertThat(answered.entry()).isEqualTo(entry);
    assertThat(answered.when()).isEqualTo(TYPED);
    assertThat(workspace.readings().get(reading)).isEqualTo(answered);
    assertThat(workspace.readings().of(survey)).containsExactly(answered);
    assertThat(workspace.surveys().get(survey).readings()).isEqualTo(1);
    assertThat(workspace.benches().list("", 1, 0).items().get(0).readings()).isEqualTo(1);
  }

  @Test
  @DisplayName("a write that is sent again is done once and answered as the first time")
  void sentAgain() {
    UUID survey = survey();
    UUID reading = UUID.randomUUID();
    ReadingWrite first = write(reading, 0, entry(100));
    ReadingRevision done = written(survey, first);
    written(survey, write(reading, 1, entry(120)));

    List<WriteResult> again = workspace.readings().write(survey, List.of(first, first), "Ann");

    assertThat(again).containsOnly(new WriteResult.Written(first.id(), done)).hasSize(2);
    assertThat(workspace.readings().history(reading)).hasSize(2);
  }

  @Test
  @DisplayName("a write based on an older revision is a conflict and touches nothing")
  void conflict() {
    UUID survey = survey();
    UUID reading = UUID.randomUUID();
    written(survey, write(reading, 0, entry(100)));
    ReadingRevision now = written(survey, write(reading, 1, entry(120)));
    ReadingWrite stale = write(reading, 1, entry(130));
    ReadingWrite ghost = write(UUID.randomUUID(), 4, entry(1));
    ReadingWrite sound = write(UUID.randomUUID(), 0, entry(5));

    List<WriteResult> results =
        workspace.readings().write(survey, List.of(stale, ghost, sound), "Bo");

    assertThat(results.get(0)).isEqualTo(new WriteResult.Conflict(stale.id(), Optional.of(now)));
    assertThat(results.get(1)).isEqualTo(new WriteResult.Conflict(ghost.id(), Optional.empty()));
    assertThat(results.get(2)).isInstanceOf(WriteResult.Written.class);
    assertThat(workspace.readings().get(reading)).isEqualTo(now);
  }

  @Test
  @DisplayName("a reading of another survey is refused, and with it all that was sent beside it")
  void otherSurvey() {
    UUID survey = survey();
    UUID other = survey();
    UUID reading = UUID.randomUUID();
    written(survey, write(reading, 0, entry(100)));
    ReadingWrite sound = write(UUID.randomUUID(), 0, entry(1));

    assertThatThrownBy(
            () ->
                workspace
                    .readings()
                    .write(other, List.of(sound, write(reading, 1, entry(2))), "Ann"))
        .isInstanceOf(WorkspaceProblem.class)
        .hasMessage("reading " + reading + " belongs to survey " + survey + ", not to " + other);
    assertThat(workspace.readings().of(other)).isEmpty();
  }

  @Test
  @DisplayName("undo takes back one change, a pasted block at once, and sent again only once")
  void undo() {
    UUID survey = survey();
    Readings readings = workspace.readings();
    UUID one = UUID.randomUUID();
    UUID two = UUID.randomUUID();
    UUID three = UUID.randomUUID();
    readings.write(survey, List.of(write(one, 0, entry(1)), write(two, 0, entry(2))), "Ann");
    readings.writeTogether(
        survey,
        List.of(write(one, 1, entry(11)), write(three, 0, entry(3)), write(one, 2, entry(111))),
        "Ann");
    UUID request = UUID.randomUUID();

    List<ReadingRevision> undone = readings.undo(survey, request, "Bo");

    assertThat(readings.undo(survey, request, "Bo")).isEqualTo(undone);
    assertThat(undone).extracting(ReadingRevision::reading).containsExactlyInAnyOrder(one, three);
    assertThat(readings.get(one).entry()).isEqualTo(entry(1));
    assertThat(readings.get(three).withdrawn()).isTrue();
    assertThat(workspace.surveys().get(survey).readings()).isEqualTo(2);
    readings.undo(survey, UUID.randomUUID(), "Bo");
    assertThat(readings.get(two).withdrawn()).isTrue();
    assertThat(readings.get(one).withdrawn()).isFalse();
    readings.redo(survey, UUID.randomUUID(), "Bo");
    readings.redo(survey, UUID.randomUUID(), "Bo");
    assertThat(readings.redo(survey, UUID.randomUUID(), "Bo")).isEmpty();
    assertThat(readings.get(one).entry()).isEqualTo(entry(111));
    assertThat(readings.get(three).entry()).isEqualTo(entry(3));
    assertThat(readings.history(one))
        .extracting(ReadingRevision::cause)
        .containsExactly(Cause.WRITE, Cause.WRITE, Cause.WRITE, Cause.UNDO, Cause.REDO);
  }

  @Test
  @DisplayName("undo and redo of who has not seen the last change take nothing back")
  void unseen() {
    UUID survey = survey();
    Readings readings = workspace.readings();
    ReadingWrite mine = write(UUID.randomUUID(), 0, entry(1));
    ReadingRevision first = written(survey, mine);
    assertThat(readings.undo(survey, UUID.randomUUID(), Seen.upTo(first.sequence()), "Ann"))
        .hasSize(1);
    UUID again = UUID.randomUUID();
    assertThat(readings.redo(survey, again, Seen.upTo(2), "Ann")).hasSize(1);
    ReadingWrite theirs = write(UUID.randomUUID(), 0, entry(2));
    readings.write(survey, List.of(theirs), "Bo");

    for (Seen seen : List.of(Seen.upTo(3), Seen.after(mine.id()), Seen.after(again))) {
      assertThatThrownBy(() -> readings.undo(survey, UUID.randomUUID(), seen, "Ann"))
          .isInstanceOfSatisfying(
              WorkspaceProblem.class,
              problem -> {
                assertThat(problem.kind()).isEqualTo(WorkspaceProblem.Kind.STALE);
                assertThat(problem)
                    .hasMessage(
                        "the readings were changed, last by Bo, since what you would take back");
                assertThat(problem.hints())
                    .containsExactly(
                        "nothing was taken back: look at what is there now, then ask again");
              });
      assertThatThrownBy(() -> readings.redo(survey, UUID.randomUUID(), seen, "Ann"))
          .hasMessage("the readings were changed, last by Bo, since what you would bring back");
    }
    assertThat(readings.get(theirs.reading()).withdrawn()).isFalse();

    UUID undo = UUID.randomUUID();
    readings.undo(survey, undo, Seen.after(theirs.id()), "Bo");
    readings.undo(survey, UUID.randomUUID(), Seen.after(undo), "Bo");
    assertThat(readings.of(survey)).allMatch(ReadingRevision::withdrawn);
    assertThat(readings.undo(survey, undo, Seen.after(theirs.id()), "Bo"))
        .extracting(ReadingRevision::reading)
        .containsExactly(theirs.reading());
  }

  @Test
  @DisplayName("an undo that found nothing takes back nothing later when it is sent again")
  void undoOfNothing() {
    UUID survey = survey();
    UUID request = UUID.randomUUID();
    assertThat(workspace.readings().undo(survey, request, Seen.upTo(0), "Ann")).isEmpty();
    ReadingRevision later = written(survey, write(UUID.randomUUID(), 0, entry(1)));

    assertThatThrownBy(() -> workspace.readings().undo(survey, request, Seen.upTo(0), "Ann"))
        .isInstanceOf(WorkspaceProblem.class);
    assertThat(workspace.readings().get(later.reading())).isEqualTo(later);
  }

  @Test
  @DisplayName("the id of a write that is stored does not pass for one of another reading")
  void idUsedTwice() {
    UUID survey = survey();
    ReadingWrite first = write(UUID.randomUUID(), 0, entry(1));
    written(survey, first);
    UUID other = UUID.randomUUID();
    ReadingWrite same = new ReadingWrite(first.id(), other, 0, entry(2), TYPED);

    assertThatThrownBy(() -> workspace.readings().write(survey, List.of(same), "Ann"))
        .isInstanceOf(WorkspaceProblem.class)
        .hasMessage(
            "write %s is stored already, of reading %s; it cannot be of %s too",
            first.id(), first.reading(), other);
    assertThat(workspace.readings().of(survey)).hasSize(1);
  }

  @Test
  @DisplayName("changes since a sequence number are those and no others")
  void changes() {
    UUID survey = survey();
    Readings readings = workspace.readings();
    assertThat(readings.changesSince(survey, 0)).isEqualTo(new Changes(0, List.of(), false, false));
    ReadingRevision first = written(survey, write(UUID.randomUUID(), 0, entry(1)));
    ReadingRevision second = written(survey, write(UUID.randomUUID(), 0, entry(2)));

    assertThat(readings.changesSince(survey, 0))
        .isEqualTo(new Changes(2, List.of(first, second), true, false));
    assertThat(readings.changesSince(survey, 1))
        .isEqualTo(new Changes(2, List.of(second), true, false));
    List<ReadingRevision> undone = readings.undo(survey, UUID.randomUUID(), "Bo");
    assertThat(readings.changesSince(survey, 2)).isEqualTo(new Changes(3, undone, true, true));
  }

  @Test
  @DisplayName(
      "a survey is made once for each name of a bench, and keeps its readings when renamed")
  void namedSurveys() {
    UUID bench = bench();
    SurveySummary low = workspace.surveys().named(bench, "low");
    SurveySummary high = workspace.surveys().named(bench, "Hög");

    assertThat(workspace.surveys().named(bench, "low")).isEqualTo(low);
    assertThat(workspace.surveys().of(bench)).containsExactly(low, high);
    assertThat(workspace.surveys().list("hog", 10, 0).items()).containsExactly(high);
    assertThatThrownBy(() -> workspace.surveys().rename(low.id(), "Hög"))
        .hasMessage("bench bench has a survey Hög already");
    workspace.surveys().rename(low.id(), "lower");
    assertThat(workspace.surveys().named(bench, "lower").id()).isEqualTo(low.id());
  }

  @Test
  @DisplayName("a result is found by the digest of its inputs, with what it was made of")
  void results() {
    UUID survey = survey();
    UUID bench = workspace.surveys().get(survey).bench();
    Result.Inputs inputs = new Result.Inputs("d1", 1, Map.of(survey, 0L), "0.1.0");

    Result saved = workspace.results().save(bench, Result.Kind.MODEL, inputs, bytes("{}"), "Ann");
    Result later = workspace.results().save(bench, Result.Kind.MODEL, inputs, bytes("[]"), "Bo");

    assertThat(workspace.results().latest(bench, Result.Kind.MODEL, "d1")).contains(later);
    assertThat(workspace.results().latest(bench, Result.Kind.MODEL, "d2")).isEmpty();
    assertThat(workspace.results().latest(bench, Result.Kind.RECOMMENDATION, "d1")).isEmpty();
    assertThat(workspace.results().list(bench, Result.Kind.MODEL, 9)).containsExactly(later, saved);
    assertThat(workspace.results().holds(bench, Result.Kind.MODEL, saved.document())).isTrue();
    assertThat(workspace.results().holds(bench, Result.Kind.TRANSFERRED, saved.document()))
        .isFalse();
    assertThat(workspace.results().get(saved.id())).isEqualTo(saved);
    assertThat(workspace.bytes(saved.document())).isEqualTo(bytes("{}"));
  }

  @Test
  @DisplayName("the shelf holds fixtures and spectra, and keeps what it held")
  void shelf() {
    Shelf shelf = workspace.shelf();
    shelf.put(ShelfItem.Kind.FIXTURE, "bar", "length: 40", Map.of("s/b.csv", bytes("1")), "Ann");
    ShelfItem spectrum =
        shelf.put(ShelfItem.Kind.SPECTRUM, "bar", "a note", Map.of("b.csv", bytes("2")), "Ann");
    ShelfItem second =
        shelf.put(ShelfItem.Kind.FIXTURE, "bar", "length: 44", Map.of("b.csv", bytes("2")), "Bo");

    assertThat(second.revision()).isEqualTo(2);
    assertThat(shelf.get(ShelfItem.Kind.FIXTURE, "bar")).isEqualTo(second);
    assertThat(shelf.list(ShelfItem.Kind.SPECTRUM, "BA", 9, 0))
        .isEqualTo(new Page<>(List.of(spectrum), 1));
    shelf.remove(ShelfItem.Kind.FIXTURE, "bar");
    assertThat(shelf.list(ShelfItem.Kind.FIXTURE, "", 9, 0).total()).isZero();
    assertThatThrownBy(() -> shelf.get(ShelfItem.Kind.FIXTURE, "bar"))
        .hasMessage("there is no fixture \"bar\" on the shelf");
    assertThat(shelf.put(ShelfItem.Kind.FIXTURE, "bar", "", Map.of(), "Ann").revision())
        .isEqualTo(3);
  }

  @Test
  @DisplayName("what is not there is told as such")
  void missing() {
    UUID nobody = new UUID(0, 0);

    for (Runnable asked :
        List.<Runnable>of(
            () -> workspace.benches().get(nobody),
            () -> workspace.benches().setup(nobody),
            () -> workspace.benches().saveSetup(nobody, 1, "", "Ann"),
            () -> workspace.benches().rename(nobody, "x"),
            () -> workspace.surveys().named(nobody, "x"),
            () -> workspace.surveys().get(nobody),
            () -> workspace.readings().write(nobody, List.of(), "Ann"),
            () -> workspace.readings().undo(nobody, nobody, "Ann"),
            () -> workspace.readings().changesSince(nobody, 0),
            () -> workspace.readings().history(nobody),
            () -> workspace.results().get(nobody))) {
      assertThatThrownBy(asked::run)
          .isInstanceOfSatisfying(
              WorkspaceProblem.class,
              problem -> assertThat(problem.kind()).isEqualTo(WorkspaceProblem.Kind.NOT_FOUND))
          .hasMessageContaining(nobody.toString());
    }
  }

  @Test
  @DisplayName("texts that no database holds, and names that lead out of a folder, are refused")
  void texts() {
    Benches benches = workspace.benches();
    UUID bench = bench();

    assertThatThrownBy(() -> benches.saveSetup(bench, 1, "a\0b", "Ann"))
        .hasMessage("a setup holds a character that is none: delete it, or save as UTF-8");
    assertThatThrownBy(() -> benches.rename(bench, " "))
        .hasMessage("the name of a bench must not be empty: give it a name");
    assertThatThrownBy(() -> benches.rename(bench, "x".repeat(201)))
        .hasMessage("the name of a bench may hold 200 characters; got 201: shorten it");
    for (String name : List.of("../a", "/a", "a/../b", "a//b", "a\\b", "c:a", "", "a/.")) {
      assertThatThrownBy(
              () -> benches.save(bench, 1, "", Map.of(name, bytes("x")), Set.of(), "Ann"))
          .as(name)
          .hasMessage(
              "\""
                  + name
                  + "\" is no name of a file beside a setup; allowed are names as in"
                  + " spectra/blue.csv: rename it");
    }
    assertThat(benches.setup(bench).revision()).isEqualTo(1);
  }

  @Test
  @DisplayName("two who change the same readings at the same time lose nothing")
  void concurrentWriters() throws InterruptedException, ExecutionException {
    int writers = 4;
    int each = 25;
    UUID survey = survey();
    UUID shared = UUID.randomUUID();
    written(survey, write(shared, 0, entry(0)));
    ExecutorService pool = Executors.newFixedThreadPool(writers);
    List<Future<?>> done = new ArrayList<>();
    for (int writer = 0; writer < writers; writer++) {
      done.add(
          pool.submit(
              () -> {
                for (int i = 0; i < each; i++) {
                  written(survey, write(UUID.randomUUID(), 0, entry(1)));
                  addOne(survey, shared);
                }
              }));
    }
    for (Future<?> future : done) {
      future.get();
    }
    pool.shutdown();

    int all = writers * each;
    assertThat(workspace.readings().get(shared).entry().value()).hasValue(all);
    assertThat(workspace.readings().history(shared)).hasSize(all + 1);
    assertThat(workspace.surveys().get(survey))
        .matches(it -> it.readings() == all + 1 && it.sequence() == 2L * all + 1);
    assertThat(workspace.readings().changesSince(survey, 0).readings())
        .extracting(ReadingRevision::sequence)
        .doesNotHaveDuplicates()
        .isSorted();
  }

  /** Adds one to a reading, again and again until nobody came between. */
  private void addOne(UUID survey, UUID reading) {
    while (true) {
      ReadingRevision now = workspace.readings().get(reading);
      ReadingWrite write =
          write(reading, now.revision(), entry(now.entry().value().orElseThrow() + 1));
      if (workspace.readings().write(survey, List.of(write), "Ann").get(0)
          instanceof WriteResult.Written) {
        return;
      }
    }
  }

  @Test
  @DisplayName("random writes, conflicts, repeats, undo and redo do what a plain model does")
  void randomWalks() {
    for (long seed = 1; seed <= 4; seed++) {
      new RandomWalk(workspace, survey(), seed).run(150);
    }
  }

  /** A workspace with something of everything in it. */
  static void fill(Workspace workspace) {
    UUID bench =
        workspace
            .benches()
            .create("Bänk \"1\"", true, "eins", Map.of("a/b.csv", bytes("1")), "Ann")
            .bench();
    workspace
        .benches()
        .save(bench, 1, "zwei\n\u2028#", Map.of("c", new byte[70_000]), Set.of(), "");
    workspace.benches().undo(bench, 2, "Bo");
    UUID survey = workspace.surveys().named(bench, "low").id();
    new RandomWalk(workspace, survey, 99).run(40);
    Result.Inputs inputs = new Result.Inputs("d1", 2, Map.of(survey, 3L), "0.1.0");
    workspace.results().save(bench, Result.Kind.MODEL, inputs, bytes("{}"), "Ann");
    workspace.results().save(bench, Result.Kind.TRANSFERRED, inputs, bytes("{}"), "Ann");
    workspace.results().save(bench, Result.Kind.TRANSFER, inputs, bytes("{1}"), "Ann");
    workspace.shelf().put(ShelfItem.Kind.MODEL, "theirs", "bar", Map.of("m", bytes("3")), "Ann");
    workspace.shelf().put(ShelfItem.Kind.FIXTURE, "bar", "x", Map.of("s", bytes("2")), "Ann");
    workspace.shelf().put(ShelfItem.Kind.FIXTURE, "bar", "y", Map.of(), "Bo");
    workspace.shelf().put(ShelfItem.Kind.SPECTRUM, "gone", "", Map.of(), "Bo");
    workspace.shelf().remove(ShelfItem.Kind.SPECTRUM, "gone");
    UUID away = workspace.benches().create("away", false, "", Map.of(), "Ann").bench();
    workspace.benches().putAway(away);
  }

  private static UUID bench(Workspace workspace) {
    return workspace.benches().list("", 1, 0).items().get(0).id();
  }

  @Test
  @DisplayName("a whole workspace goes into an archive and comes back with every revision")
  void archive() throws Exception {
    fill(workspace);
    Path archive = folder.resolve("all.zip");
    Path again = folder.resolve("again.zip");
    workspace.exportTo(archive);

    try (Workspace other = Workspace.open(fresh())) {
      Taken taken = other.importFrom(archive);
      assertThat(taken).isEqualTo(new Taken(2, 0, 1, workspaceReadings(workspace), 3, 3));
      other.exportTo(again);
      assertThat(Files.readAllBytes(again)).isEqualTo(Files.readAllBytes(archive));
      assertThat(other.check()).isEmpty();
      UUID bench = bench(other);
      assertThat(other.benches().redo(bench, 3, "Bo").orElseThrow().text())
          .isEqualTo("zwei\n\u2028#");

      assertThat(other.importFrom(archive)).isEqualTo(new Taken(0, 2, 0, 0, 0, 0));
      assertThat(other.benches().setup(bench).revision()).isEqualTo(4);
    }
    assertThat(workspace.check()).isEmpty();
  }

  private static long workspaceReadings(Workspace workspace) {
    return workspace.surveys().of(bench(workspace)).stream()
        .mapToLong(survey -> workspace.readings().of(survey.id()).size())
        .sum();
  }

  @Test
  @DisplayName("what is added stands beside what is there")
  void archiveBeside() throws Exception {
    fill(workspace);
    Path archive = folder.resolve("all.zip");
    workspace.exportTo(archive);

    try (Workspace other = Workspace.open(fresh())) {
      other.benches().create("own", false, "", Map.of(), "Bo");
      other.shelf().put(ShelfItem.Kind.FIXTURE, "bar", "own", Map.of(), "Bo");
      other.importFrom(archive);

      assertThat(other.benches().list("", 9, 0).total()).isEqualTo(2);
      assertThat(other.shelf().get(ShelfItem.Kind.FIXTURE, "bar").text()).isEqualTo("own");
      assertThat(other.check()).isEmpty();
    }
  }
}
