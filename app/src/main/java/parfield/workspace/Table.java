package parfield.workspace;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jdbi.v3.core.statement.SqlStatement;

/**
 * A table as an archive has it: a JSON object a row, a key a column.
 *
 * @param name of the table
 * @param key columns that tell its rows apart
 * @param owner table whose rows these belong to, of those that stand before it
 * @param ownerColumns that name the row of the owner
 * @param columns all of them
 */
record Table(
    String name,
    List<String> key,
    Optional<String> owner,
    List<String> ownerColumns,
    List<Column> columns) {

  private enum Kind {
    TEXT,
    WHOLE,
    REAL,
    FLAG
  }

  /**
   * A column.
   *
   * @param name of it
   * @param kind of value
   * @param optional whether it may hold nothing
   */
  record Column(String name, Kind kind, boolean optional) {}

  /** Columns that hold ids: UUIDs in their usual form. */
  private static final Set<String> IDS =
      Set.of("id", "bench", "survey", "reading", "result", "write_id", "request");

  private static final String ID = "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";

  /** All tables but that of contents; each stands after those that it refers to. */
  static final List<Table> ALL =
      List.of(
          table(
              "benches",
              "id",
              "",
              "",
              "id name folded sample? put_away? revision# created# changed#"),
          table(
              "setups",
              "bench revision",
              "benches",
              "bench",
              "bench revision# text cause state who written#"),
          table(
              "setup_files",
              "bench revision name",
              "benches",
              "bench",
              "bench revision# name digest"),
          table(
              "surveys",
              "id",
              "benches",
              "bench",
              "id bench name folded sequence# readings# created# changed#"),
          table(
              "steps",
              "survey sequence",
              "surveys",
              "survey",
              "survey sequence# cause state request~ who stored#"),
          table("readings", "id", "surveys", "survey", "id survey revision# sequence#"),
          table(
              "reading_revisions",
              "reading revision",
              "surveys",
              "survey",
              "reading revision# survey sequence# write_id~ x. y. depth. place_order# typed value.~"
                  + " origin kind kept? cause who entered#"),
          table(
              "results",
              "id",
              "benches",
              "bench",
              "id bench kind inputs_digest setup_revision# version document who stored#"),
          table("result_surveys", "result survey", "results", "result", "result survey sequence#"),
          table("shelf", "kind name", "", "", "kind name folded revision# removed?"),
          table(
              "shelf_revisions",
              "kind name revision",
              "shelf",
              "kind name",
              "kind name revision# text who written#"),
          table(
              "shelf_files",
              "kind name revision file",
              "shelf",
              "kind name",
              "kind name revision# file digest"));

  /**
   * A table from words: a column's name with # for whole numbers, . for others, ? for flags, ~
   * where it may hold nothing.
   */
  private static Table table(
      String name, String key, String owner, String ownerColumns, String columns) {
    return new Table(
        name,
        words(key),
        owner.isEmpty() ? Optional.empty() : Optional.of(owner),
        words(ownerColumns),
        words(columns).stream().map(Table::column).toList());
  }

  private static List<String> words(String text) {
    return text.isEmpty() ? List.of() : List.of(text.split(" "));
  }

  private static Column column(String word) {
    Kind kind =
        word.contains("#")
            ? Kind.WHOLE
            : word.contains(".") ? Kind.REAL : word.contains("?") ? Kind.FLAG : Kind.TEXT;
    return new Column(word.replaceAll("[#.?~]", ""), kind, word.endsWith("~"));
  }

  static long count(Handle handle, String table) {
    return handle.createQuery("SELECT count(*) FROM " + table).mapTo(Long.class).one();
  }

  private String names(String separator, String before) {
    return columns.stream()
        .map(column -> before + column.name())
        .collect(Collectors.joining(separator));
  }

  String insert() {
    return String.format(
        Locale.ROOT, "INSERT INTO %s (%s) VALUES (%s)", name, names(", ", ""), names(", ", ":"));
  }

  /** Takes one row. */
  @FunctionalInterface
  interface Visitor {
    void row(JsonNode row) throws IOException;
  }

  /** Passes every row on, in the order of its key, without holding all of them. */
  void each(Handle handle, Visitor visitor) {
    handle
        .createQuery(
            "SELECT " + names(", ", "") + " FROM " + name + " ORDER BY " + String.join(", ", key))
        .setFetchSize(1000)
        .map(
            (row, context) -> {
              ObjectNode json = JsonNodeFactory.instance.objectNode();
              for (Column column : columns) {
                switch (column.kind()) {
                  case TEXT -> json.put(column.name(), row.getString(column.name()));
                  case WHOLE -> json.put(column.name(), row.getLong(column.name()));
                  case FLAG -> json.put(column.name(), row.getBoolean(column.name()));
                  case REAL -> {
                    double value = row.getDouble(column.name());
                    json.put(column.name(), row.wasNull() ? null : value);
                  }
                }
              }
              return json;
            })
        .forEach(
            row -> {
              try {
                visitor.row(row);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
  }

  /**
   * Binds a row to an insertion.
   *
   * @param number of the row, for messages
   * @throws IllegalArgumentException if it is not a row of this table
   */
  void bind(PreparedBatch batch, JsonNode row, long number) {
    if (row.size() != columns.size()) {
      throw wrong(number, "its keys are not " + names(", ", ""));
    }
    for (Column column : columns) {
      JsonNode value = row.path(column.name());
      if (value.isNull() && column.optional()) {
        batch.bind(column.name(), (String) null);
        continue;
      }
      boolean fits =
          switch (column.kind()) {
            case TEXT -> value.isTextual();
            case WHOLE -> value.isIntegralNumber() && value.canConvertToLong();
            case REAL -> value.isNumber() && Double.isFinite(value.asDouble());
            case FLAG -> value.isBoolean();
          };
      if (!fits) {
        throw wrong(number, column.name() + " is " + value);
      }
      check(column, value, number);
      bind(batch, column, value);
    }
  }

  /** Refuses ids that are none, and names of files that could lead out of their folder. */
  private void check(Column column, JsonNode value, long number) {
    if (IDS.contains(column.name()) && !value.asText().matches(ID)) {
      throw wrong(number, column.name() + " is " + value);
    }
    if (name.endsWith("_files") && column.name().equals(key.get(key.size() - 1))) {
      FileNames.check(value.asText());
    }
  }

  private static void bind(SqlStatement<?> statement, Column column, JsonNode value) {
    switch (column.kind()) {
      case TEXT ->
          statement.bind(
              column.name(), Texts.check(column.name(), value.asText(), Integer.MAX_VALUE));
      case WHOLE -> statement.bind(column.name(), value.asLong());
      case REAL -> statement.bind(column.name(), value.asDouble());
      case FLAG -> statement.bind(column.name(), value.asBoolean());
    }
  }

  private IllegalArgumentException wrong(long number, String reason) {
    return new IllegalArgumentException(
        String.format(Locale.ROOT, "row %d of %s does not fit: %s", number, name, reason));
  }

  /** Whether a row with the same key is stored. */
  boolean isStored(Handle handle, JsonNode row) {
    var query =
        handle.createQuery(
            key.stream()
                .map(column -> column + " = :" + column)
                .collect(
                    Collectors.joining(" AND ", "SELECT count(*) FROM " + name + " WHERE ", "")));
    for (String column : key) {
      query.bind(column, row.path(column).asText());
    }
    return query.mapTo(Long.class).one() > 0;
  }

  /** What tells a row apart from others of this table. */
  String key(JsonNode row) {
    return joined(key, row);
  }

  /** The {@link #key} of the row that a row belongs to. */
  String ownerKey(JsonNode row) {
    return joined(ownerColumns, row);
  }

  private static String joined(List<String> columns, JsonNode row) {
    return columns.stream()
        .map(column -> row.path(column).asText())
        .collect(Collectors.joining("\n"));
  }
}
