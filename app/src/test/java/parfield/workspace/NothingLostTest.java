package parfield.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.tank.Place;

/** What happens to an SQLite file that is damaged, foreign, of a newer program, or full. */
class NothingLostTest {
  private static final Instant NOON = Instant.parse("2026-05-06T12:00:00Z");

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("workspace.db");
  }

  private Workspace open(Instant now) {
    return Workspace.open(new Location.File(file()), Clock.fixed(now, ZoneOffset.UTC));
  }

  private static UUID fill(Workspace workspace, int readings) {
    UUID bench = workspace.benches().create("bench", false, "a", Map.of(), "Ann").bench();
    UUID survey = workspace.surveys().named(bench, "low").id();
    workspace.readings().write(survey, writes(readings, ""), "Ann");
    return survey;
  }

  private static List<ReadingWrite> writes(int readings, String typed) {
    return Stream.generate(
            () ->
                new ReadingWrite(
                    UUID.randomUUID(),
                    UUID.randomUUID(),
                    0,
                    Entry.typed(new Place(0.1, 0.2, 0.3), 1, typed, 100),
                    NOON))
        .limit(readings)
        .toList();
  }

  /** Opens what cannot be opened, and sees to it that nothing of it changes. */
  private WorkspaceProblem refused() {
    byte[] before = read(file());
    WorkspaceProblem problem =
        catchThrowableOfType(WorkspaceProblem.class, () -> open(NOON.plusSeconds(60)).close());
    assertThat(problem).isNotNull();
    assertThat(problem.kind()).isEqualTo(WorkspaceProblem.Kind.UNREADABLE);
    assertThat(read(file())).isEqualTo(before);
    return problem;
  }

  private static byte[] read(Path path) {
    try {
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  @DisplayName("a damaged file is refused with the backup to restore, which then opens")
  void damaged() throws IOException {
    UUID survey;
    try (Workspace workspace = open(NOON)) {
      survey = fill(workspace, 200);
    }
    open(NOON.plusSeconds(1)).close();
    byte[] sound = read(file());
    Path backup = folder.resolve("workspace.db.backups/2026-05-06T120001.000000Z.db");
    assertThat(backup).isRegularFile();
    SplittableRandom random = new SplittableRandom(7);
    byte[] header = sound.clone();
    Arrays.fill(header, 0, 16, (byte) 'x');
    byte[] page = sound.clone();
    for (int at = sound.length / 2 / 4096 * 4096, i = 0; i < 4096; i++) {
      page[at + i] = (byte) random.nextInt();
    }

    for (byte[] damage :
        List.of(header, page, Arrays.copyOf(sound, sound.length / 2), new byte[0])) {
      Files.write(file(), damage);
      WorkspaceProblem problem = refused();
      assertThat(problem.title()).startsWith(file() + " is damaged or no workspace: ");
      assertThat(problem.hints())
          .containsExactly(
              "it was left as it is",
              String.format(
                  "restore the newest automatic backup: move %1$s away, and %1$s-wal and"
                      + " %1$s-shm if they are there, then copy %2$s to %1$s",
                  file(), backup));
    }

    Files.move(file(), folder.resolve("damaged.db"));
    Files.deleteIfExists(folder.resolve("workspace.db-wal"));
    Files.deleteIfExists(folder.resolve("workspace.db-shm"));
    Files.copy(backup, file());
    try (Workspace workspace = open(NOON.plusSeconds(2))) {
      assertThat(workspace.readings().of(survey)).hasSize(200);
    }
  }

  @Test
  @DisplayName("a journal whose file is gone is refused and left alone")
  void strayJournal() throws IOException {
    Path journal = folder.resolve("workspace.db-wal");
    Path kept = folder.resolve("kept-wal");
    try (Workspace workspace = open(NOON)) {
      fill(workspace, 50);
      Files.copy(journal, kept);
    }
    assertThat(Files.size(kept)).isPositive();
    assertThat(journal).doesNotExist();
    byte[] whole = read(file());

    // The file was deleted, to begin anew, after a crash that left the journal.
    Files.delete(file());
    Files.copy(kept, journal);
    WorkspaceProblem alone =
        catchThrowableOfType(WorkspaceProblem.class, () -> open(NOON.plusSeconds(60)).close());
    assertThat(alone).isNotNull();
    assertThat(file()).doesNotExist();
    assertThat(read(journal)).isEqualTo(read(kept));
    assertThat(alone)
        .hasMessage(journal + " is what is left of a workspace that is no longer there");
    assertThat(alone.hints())
        .containsExactly(
            "it may hold readings: put its workspace "
                + file()
                + " back beside it; or move it away, and a new workspace is made");

    Files.delete(journal);
    Files.write(file(), whole);
    open(NOON.plusSeconds(60)).close();
  }

  @Test
  @DisplayName("what is no workspace is refused and left alone")
  void foreign() throws IOException, SQLException {
    Files.writeString(file(), "x_cm,y_cm,depth_cm,ppfd\n");
    assertThat(refused())
        .hasMessage(file() + " is damaged or no workspace: it is no SQLite database")
        .extracting(problem -> problem.hints().get(1))
        .isEqualTo(
            "there is no automatic backup beside it: restore your own backup of it, or name"
                + " another file to begin anew");

    Files.delete(file());
    sql("CREATE TABLE songs (title TEXT)");
    assertThat(refused())
        .hasMessage(file() + " is a database of something else: it has the tables songs");
  }

  @Test
  @DisplayName("a file of a newer program is refused and left alone")
  void newer() throws SQLException {
    open(NOON).close();
    sql(
        "INSERT INTO flyway_schema_history SELECT installed_rank + 1, '77', 'shape of tomorrow',"
            + " type, 'V77__shape_of_tomorrow.sql', checksum, installed_by, installed_on,"
            + " execution_time, success FROM flyway_schema_history");

    assertThat(refused())
        .hasMessage(
            file()
                + " was written by a newer program: its tables are of version 77, this program"
                + " knows up to 1");
  }

  private void sql(String statement) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement sql = connection.createStatement()) {
      sql.execute(statement);
    }
  }

  @Test
  @DisplayName("a backup is made at start if something changed since the last; the oldest go")
  void automaticBackups() throws IOException {
    open(NOON).close();
    assertThat(backups()).isEmpty();
    UUID survey;
    try (Workspace workspace = open(NOON)) {
      survey = fill(workspace, 1);
      assertThat(workspace.newestBackup()).isEmpty();
    }
    for (int day = 1; day <= 2 * Backups.KEPT + 4; day++) {
      try (Workspace workspace = open(NOON.plusSeconds(86400L * day))) {
        assertThat(workspace.notices()).isEmpty();
        if (day % 2 == 0) {
          workspace.readings().write(survey, writes(1, ""), "Ann");
        }
      }
    }

    // Of days 1, 3, 5 to 23 the last ten.
    assertThat(backups())
        .containsExactlyElementsOf(
            IntStream.range(0, Backups.KEPT)
                .mapToObj(i -> "2026-05-" + (11 + 2 * i) + "T120000.000000Z.db")
                .toList());
  }

  @Test
  @DisplayName("big backups are kept while they take little enough together, two in any case")
  void bigBackups() throws IOException {
    UUID survey;
    try (Workspace workspace = open(NOON)) {
      survey = fill(workspace, 1);
    }
    for (int day = 1; day <= 5; day++) {
      try (Workspace workspace = open(NOON.plusSeconds(86400L * day))) {
        workspace.readings().write(survey, writes(1, ""), "Ann");
      }
    }
    List<Path> all = Backups.all(file());
    long size = Files.size(all.get(0));

    Backups.thin(all, 3 * size);
    assertThat(Backups.all(file())).isEqualTo(all.subList(2, 5));
    Backups.thin(Backups.all(file()), 1);
    assertThat(Backups.all(file())).isEqualTo(all.subList(3, 5));
  }

  private List<String> backups() throws IOException {
    Path folder = Backups.folder(file());
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  @DisplayName("a backup is a workspace of one moment and overwrites nothing")
  void backup() throws IOException {
    Path target = folder.resolve("copy.db");
    UUID survey;
    try (Workspace workspace = open(NOON)) {
      survey = fill(workspace, 3);
      workspace.backup(target);
      workspace.readings().write(survey, writes(2, ""), "Ann");
      assertThatThrownBy(() -> workspace.backup(target))
          .hasMessage(target + " is there already: a backup overwrites nothing");
      assertThatThrownBy(() -> workspace.backup(folder.resolve("no/such/folder.db")))
          .hasMessageStartingWith(
              "the backup " + folder.resolve("no/such/folder.db") + " cannot be made: ");
    }
    try (Workspace workspace = Workspace.open(new Location.File(target))) {
      assertThat(workspace.readings().of(survey)).hasSize(3);
    }
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(path -> path.getFileName().toString()))
          .noneMatch(name -> name.endsWith(".part"));
    }
  }

  @Test
  @DisplayName("where there is no room, what was stored stays and the message says what to do")
  void full() throws SQLException {
    UUID survey;
    try (Workspace workspace = open(NOON)) {
      survey = fill(workspace, 50);
    }
    Location.File location = new Location.File(file());
    try (Workspace workspace = Workspace.limited(location, 80)) {
      WorkspaceProblem problem =
          catchThrowableOfType(
              WorkspaceProblem.class,
              () -> {
                for (int i = 0; i < 1000; i++) {
                  workspace.readings().write(survey, writes(20, "x".repeat(90)), "Ann");
                }
              });

      assertThat(problem).hasMessage("there is no room left for " + file());
      assertThat(problem.kind()).isEqualTo(WorkspaceProblem.Kind.NO_ROOM);
      assertThat(problem.hints())
          .containsExactly(
              "what was entered now is not stored, what was stored before is;"
                  + " free some room on its disk, then enter it again");
      int stored = workspace.readings().of(survey).size();
      assertThat(stored).isGreaterThanOrEqualTo(50);
      assertThat(stored % 20).isEqualTo(10);
      assertThat(workspace.surveys().get(survey).readings()).isEqualTo(stored);
    }
    try (Workspace workspace = open(NOON)) {
      workspace.readings().write(survey, writes(20, "x".repeat(90)), "Ann");
      assertThat(workspace.readings().of(survey)).hasSizeGreaterThan(50);
    }
  }

  @Test
  @DisplayName("two programs may have one file open")
  void shared() {
    try (Workspace one = open(NOON);
        Workspace two = open(NOON)) {
      UUID survey = fill(one, 1);
      two.readings().write(survey, writes(1, ""), "Bo");
      one.readings().write(survey, writes(1, ""), "Ann");
      assertThat(two.readings().of(survey)).hasSize(3);
    }
  }

  @Test
  @DisplayName("a place where no file can be is told as such")
  void unwritable() throws IOException {
    Files.write(folder.resolve("plain"), "text".getBytes(StandardCharsets.UTF_8));
    Path inFile = folder.resolve("plain/workspace.db");

    assertThatThrownBy(() -> Workspace.open(new Location.File(inFile)))
        .isInstanceOf(WorkspaceProblem.class)
        .hasMessageStartingWith("the workspace " + inFile + " cannot be made: ");
    assertThatThrownBy(() -> Workspace.open(new Location.File(folder)))
        .hasMessage(folder + " is no file");
  }
}
