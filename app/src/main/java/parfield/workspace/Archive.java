package parfield.workspace;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import parfield.formats.WholeFile;

/**
 * A whole workspace as one zip archive, with every revision: {@code workspace.json}, then the bytes
 * of files as {@code contents/DIGEST}, then {@code tables/NAME.jsonl} with an object a row. See
 * docs/FORMATS.md.
 */
final class Archive {
  static final String HEAD = "workspace.json";

  private static final int VERSION = 1;
  private static final String CONTENTS = "contents/";
  private static final String TABLES = "tables/";
  private static final String ROWS = ".jsonl";
  private static final int LONGEST_HEAD = 1 << 20;
  private static final int LONGEST_ROW = 8 << 20;
  private static final int BIGGEST_CONTENT = 512 << 20;
  private static final int BATCH = 500;
  private static final Zip.Bounds BOUNDS = new Zip.Bounds(1_000_000, 16L << 30);

  private static final JsonMapper JSON =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private Archive() {}

  /** Writes a workspace as it is at one moment; what was there is replaced. */
  static void write(Database database, Path target) {
    database.read(
        handle -> {
          WholeFile.write(target, out -> write(handle, out));
          return null;
        });
  }

  private static void write(Handle handle, OutputStream out) throws IOException {
    ZipOutputStream zip = new ZipOutputStream(out);
    ObjectNode head = JSON.createObjectNode();
    head.put("format", "parfield workspace");
    head.put("version", VERSION);
    head.put("contents", Table.count(handle, "contents"));
    ObjectNode rows = head.putObject("rows");
    for (Table table : Table.ALL) {
      rows.put(table.name(), Table.count(handle, table.name()));
    }
    Zip.begin(zip, HEAD).write(JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(head));
    zip.closeEntry();
    List<String> digests =
        handle
            .createQuery("SELECT digest FROM contents ORDER BY digest")
            .mapTo(String.class)
            .list();
    for (String digest : digests) {
      Zip.begin(zip, CONTENTS + digest).write(Contents.bytes(handle, digest).orElseThrow());
      zip.closeEntry();
    }
    for (Table table : Table.ALL) {
      OutputStream file = Zip.begin(zip, TABLES + table.name() + ROWS);
      table.each(
          handle,
          row -> {
            file.write(JSON.writeValueAsBytes(row));
            file.write('\n');
          });
      zip.closeEntry();
    }
    zip.finish();
  }

  /**
   * Takes what an archive holds and the workspace does not, all or nothing. A bench that is there
   * already, by its id, stays as it is, and so does what lies on the shelf under the same name.
   */
  static Taken read(Database database, String name, InputStream in) {
    return database.write(handle -> new Reader(handle, name).read(in));
  }

  static Taken read(Database database, Path archive) {
    String name = String.valueOf(archive.getFileName());
    try (InputStream in = Files.newInputStream(archive)) {
      return read(database, name, in);
    } catch (IOException e) {
      throw Zip.refused(name, "it cannot be read");
    }
  }

  static boolean isArchive(Path file) {
    try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(file))) {
      ZipEntry first = zip.getNextEntry();
      return first != null && first.getName().equals(HEAD);
    } catch (IOException | IllegalArgumentException e) {
      // Whoever reads it says what is wrong with it.
      return false;
    }
  }

  /** Takes one archive. */
  private static final class Reader {
    private final Handle handle;
    private final String name;
    private final Map<String, Set<String>> skipped = new LinkedHashMap<>();
    private final Map<String, Long> expected = new LinkedHashMap<>();
    private final Map<String, Long> added = new LinkedHashMap<>();
    private long contents;
    private int tables;

    Reader(Handle handle, String name) {
      this.handle = handle;
      this.name = name;
    }

    Taken read(InputStream in) {
      Zip.read(name, in, BOUNDS, this::file);
      if (tables != Table.ALL.size() || contents != expected.get("")) {
        throw Zip.refused(name, "some of its files are missing");
      }
      List<String> faults = Soundness.faults(handle);
      if (!faults.isEmpty()) {
        throw Zip.refused(name, faults.get(0));
      }
      return new Taken(
          added.getOrDefault("benches", 0L),
          skipped.getOrDefault("benches", Set.of()).size(),
          added.getOrDefault("surveys", 0L),
          added.getOrDefault("readings", 0L),
          added.getOrDefault("results", 0L),
          added.getOrDefault("shelf", 0L));
    }

    private void file(String file, InputStream content) throws IOException {
      if (file.equals(HEAD)) {
        head(content);
      } else if (expected.isEmpty()) {
        throw Zip.refused(name, "it does not begin with " + HEAD);
      } else if (file.startsWith(CONTENTS)) {
        content(file.substring(CONTENTS.length()), content);
      } else {
        Table table = tables < Table.ALL.size() ? Table.ALL.get(tables) : Table.ALL.get(tables - 1);
        if (!file.equals(TABLES + table.name() + ROWS)) {
          throw Zip.refused(name, file + " stands where it does not belong");
        }
        tables++;
        table(table, content);
      }
    }

    private void head(InputStream content) throws IOException {
      JsonNode head = json(HEAD, content.readNBytes(LONGEST_HEAD));
      if (!head.path("format").asText().equals("parfield workspace")) {
        throw Zip.refused(name, "its " + HEAD + " is not that of a workspace");
      }
      if (head.path("version").asInt() != VERSION) {
        throw Zip.refused(
            name,
            String.format(
                Locale.ROOT,
                "it is of version %s, this program reads version %d",
                head.path("version").asText(),
                VERSION));
      }
      expected.put("", head.path("contents").asLong(-1));
      for (Table table : Table.ALL) {
        expected.put(table.name(), head.path("rows").path(table.name()).asLong(-1));
      }
    }

    private void content(String digest, InputStream content) throws IOException {
      byte[] bytes = content.readNBytes(BIGGEST_CONTENT);
      if (!Contents.put(handle, bytes).digest().equals(digest)) {
        throw Zip.refused(name, "the file " + digest + " does not hold what its name says");
      }
      contents++;
    }

    private void table(Table table, InputStream content) throws IOException {
      PreparedBatch batch = handle.prepareBatch(table.insert());
      Lines lines = new Lines(content);
      long rows = 0;
      for (byte[] line = lines.next(); line != null; line = lines.next()) {
        rows++;
        JsonNode row = json(table.name() + " row " + rows, line);
        if (isSkipped(table, row)) {
          continue;
        }
        table.bind(batch, row, rows);
        batch.add();
        added.merge(table.name(), 1L, Long::sum);
        if (batch.size() >= BATCH) {
          batch.execute();
        }
      }
      if (batch.size() > 0) {
        batch.execute();
      }
      if (rows != expected.get(table.name())) {
        throw Zip.refused(
            name,
            String.format(
                Locale.ROOT,
                "%s has %d rows, not the %d that it began with",
                table.name(),
                rows,
                expected.get(table.name())));
      }
    }

    /** Whether a row is of a bench, or of a thing on the shelf, that is here already. */
    private boolean isSkipped(Table table, JsonNode row) {
      boolean skip =
          table.owner().isEmpty()
              ? table.isStored(handle, row)
              : skipped.getOrDefault(table.owner().get(), Set.of()).contains(table.ownerKey(row));
      if (skip) {
        skipped.computeIfAbsent(table.name(), any -> new HashSet<>()).add(table.key(row));
      }
      return skip;
    }

    private JsonNode json(String what, byte[] bytes) {
      try {
        JsonNode node = JSON.readTree(bytes);
        if (node != null && node.isObject()) {
          return node;
        }
      } catch (JsonProcessingException e) {
        throw Zip.refused(name, what + " is no JSON: " + e.getOriginalMessage());
      } catch (IOException e) {
        throw Zip.refused(name, what + " cannot be read");
      }
      throw Zip.refused(name, what + " is no JSON object");
    }
  }

  /** Lines of a stream, none longer than a row may be. */
  private static final class Lines {
    private final InputStream in;
    private final byte[] read = new byte[1 << 16];
    private int at;
    private int end;
    private byte[] line = new byte[1 << 12];

    Lines(InputStream in) {
      this.in = in;
    }

    /** The next line without its end, or null after the last. */
    byte[] next() throws IOException {
      int length = 0;
      while (true) {
        if (at == end) {
          end = Math.max(0, in.read(read));
          at = 0;
          if (end == 0) {
            return length == 0 ? null : Arrays.copyOf(line, length);
          }
        }
        byte next = read[at++];
        if (next == '\n') {
          return Arrays.copyOf(line, length);
        }
        if (length == LONGEST_ROW) {
          throw new IOException("a row is longer than " + LONGEST_ROW + " bytes");
        }
        if (length == line.length) {
          line = Arrays.copyOf(line, 2 * length);
        }
        line[length++] = next;
      }
    }
  }
}
