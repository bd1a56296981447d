package parfield.workspace;

import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/**
 * Fixtures, spectra and light models that all benches share; earlier revisions of each are kept.
 */
public final class Shelf {
  private static final int LONGEST_TEXT = 1 << 20;

  private final Database database;
  private final Clock clock;

  Shelf(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Puts something on the shelf, or another revision of it.
   *
   * @param kind what it is
   * @param name of it, unique among its kind
   * @param text the fixture's entry of a setup file, or a note on a spectrum or model
   * @param files that belong to it by name, folders separated by a slash
   * @param who puts it there
   * @return what lies there now
   */
  public ShelfItem put(
      ShelfItem.Kind kind, String name, String text, Map<String, byte[]> files, String who) {
    String checked = Texts.name("a name on the shelf", name);
    Texts.check("a text on the shelf", text, LONGEST_TEXT);
    return database.write(
        handle -> {
          long now = Times.micros(clock.instant());
          long revision =
              handle
                  .createQuery(
                      "INSERT INTO shelf (kind, name, folded, revision, removed)"
                          + " VALUES (:kind, :name, :folded, 1, :removed)"
                          + " ON CONFLICT (kind, name) DO UPDATE"
                          + " SET revision = shelf.revision + 1, removed = :removed"
                          + " RETURNING revision")
                  .bind("kind", kind.name())
                  .bind("name", checked)
                  .bind("folded", Texts.folded(checked))
                  .bind("removed", false)
                  .mapTo(Long.class)
                  .one();
          handle
              .createUpdate(
                  "INSERT INTO shelf_revisions (kind, name, revision, text, who, written)"
                      + " VALUES (:kind, :name, :revision, :text, :who, :now)")
              .bind("kind", kind.name())
              .bind("name", checked)
              .bind("revision", revision)
              .bind("text", text)
              .bind("who", Texts.check("who", who, 100))
              .bind("now", now)
              .execute();
          Map<String, StoredFile> stored = new TreeMap<>();
          new TreeMap<>(files)
              .forEach(
                  (file, bytes) -> {
                    StoredFile content = Contents.put(handle, bytes);
                    stored.put(FileNames.check(file), content);
                    handle
                        .createUpdate(
                            "INSERT INTO shelf_files (kind, name, revision, file, digest)"
                                + " VALUES (:kind, :name, :revision, :file, :digest)")
                        .bind("kind", kind.name())
                        .bind("name", checked)
                        .bind("revision", revision)
                        .bind("file", file)
                        .bind("digest", content.digest())
                        .execute();
                  });
          return new ShelfItem(kind, checked, revision, text, stored, who, Times.instant(now));
        });
  }

  /**
   * What lies on the shelf under a name.
   *
   * @throws WorkspaceProblem if nothing does
   */
  public ShelfItem get(ShelfItem.Kind kind, String name) {
    return database.read(
        handle ->
            items(
                    handle,
                    "s.kind = :kind AND s.name = :name",
                    Map.of("kind", kind.name(), "name", name, "limit", 1, "offset", 0))
                .stream()
                .findFirst()
                .orElseThrow(() -> missing(kind, name)));
  }

  /**
   * What lies on the shelf, by name.
   *
   * @param kind what to look for
   * @param search what the name holds, capitals and accents aside; empty for all
   * @param limit most of them
   * @param offset how many to skip
   */
  public Page<ShelfItem> list(ShelfItem.Kind kind, String search, int limit, int offset) {
    String where = "s.kind = :kind AND s.folded LIKE :search ESCAPE '!'";
    return database.read(
        handle ->
            new Page<>(
                items(
                    handle,
                    where,
                    Map.of(
                        "kind",
                        kind.name(),
                        "search",
                        Texts.pattern(search),
                        "limit",
                        limit,
                        "offset",
                        offset)),
                handle
                    .createQuery(
                        "SELECT count(*) FROM shelf s WHERE s.removed = :removed AND " + where)
                    .bind("removed", false)
                    .bind("kind", kind.name())
                    .bind("search", Texts.pattern(search))
                    .mapTo(Long.class)
                    .one()));
  }

  /**
   * Takes something off the shelf; its revisions are kept, and putting the name there again follows
   * them.
   *
   * @throws WorkspaceProblem if nothing of that name lies there
   */
  public void remove(ShelfItem.Kind kind, String name) {
    int removed =
        database.write(
            handle ->
                handle
                    .createUpdate(
                        "UPDATE shelf SET removed = :yes"
                            + " WHERE kind = :kind AND name = :name AND removed = :no")
                    .bind("yes", true)
                    .bind("no", false)
                    .bind("kind", kind.name())
                    .bind("name", name)
                    .execute());
    if (removed == 0) {
      throw missing(kind, name);
    }
  }

  private static WorkspaceProblem missing(ShelfItem.Kind kind, String name) {
    return WorkspaceProblem.notFound(
        String.format(
            Locale.ROOT,
            "there is no %s \"%s\" on the shelf",
            kind.name().toLowerCase(Locale.ROOT),
            name));
  }

  private static List<ShelfItem> items(Handle handle, String where, Map<String, ?> values) {
    return handle
        .createQuery(
            "SELECT s.kind, s.name, s.revision, r.text, r.who, r.written FROM shelf s"
                + " JOIN shelf_revisions r"
                + " ON r.kind = s.kind AND r.name = s.name AND r.revision = s.revision"
                + " WHERE s.removed = :removed AND "
                + where
                + " ORDER BY s.folded, s.name LIMIT :limit OFFSET :offset")
        .bind("removed", false)
        .bindMap(values)
        .map(
            (row, context) ->
                new ShelfItem(
                    ShelfItem.Kind.valueOf(row.getString("kind")),
                    row.getString("name"),
                    row.getLong("revision"),
                    row.getString("text"),
                    files(
                        handle,
                        row.getString("kind"),
                        row.getString("name"),
                        row.getLong("revision")),
                    row.getString("who"),
                    Times.instant(row.getLong("written"))))
        .list();
  }

  private static Map<String, StoredFile> files(
      Handle handle, String kind, String name, long revision) {
    Map<String, StoredFile> files = new TreeMap<>();
    handle
        .createQuery(
            "SELECT f.file, f.digest, c.size FROM shelf_files f"
                + " JOIN contents c ON c.digest = f.digest"
                + " WHERE f.kind = :kind AND f.name = :name AND f.revision = :revision")
        .bind("kind", kind)
        .bind("name", name)
        .bind("revision", revision)
        .map(
            (row, context) ->
                files.put(row.getString(1), new StoredFile(row.getString(2), row.getLong(3))))
        .list();
    return files;
  }
}
