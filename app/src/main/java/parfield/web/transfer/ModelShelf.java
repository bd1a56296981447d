package parfield.web.transfer;

import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.answer.Transferred;
import parfield.fit.LightModel;
import parfield.formats.InvalidFile;
import parfield.formats.ModelFile;
import parfield.workspace.ShelfItem;
import parfield.workspace.StoredFile;
import parfield.workspace.Workspace;
import parfield.workspace.WorkspaceProblem;

/** Light models that were fitted elsewhere, on the workspace's shelf. Thread-safe. */
final class ModelShelf {
  /** Most bytes of a model that is brought in; a model of six channels takes less than one MiB. */
  static final int MOST_BYTES = 16 << 20;

  /** Models that a page lists. */
  private static final int MOST_LISTED = 200;

  private static final int LONGEST_NAME = 80;

  /** Names of fixtures that a note holds. */
  private static final int MOST_FIXTURES = 20;

  private final Workspace workspace;

  ModelShelf(Workspace workspace) {
    this.workspace = workspace;
  }

  /**
   * What became of an upload.
   *
   * @param item what lies on the shelf now; empty if it was not taken
   * @param field that the problem belongs to: {@code file} or {@code name}
   * @param problem why it was not taken
   * @param tooLarge whether it is larger than a model may be
   */
  record Taken(
      Optional<ShelfItem> item, String field, Optional<Problem> problem, boolean tooLarge) {
    private static Taken refused(String field, Problem problem) {
      return new Taken(Optional.empty(), field, Optional.of(problem), false);
    }
  }

  /** What lies there, by name. */
  List<ShelfItem> list() {
    return workspace.shelf().list(ShelfItem.Kind.MODEL, "", MOST_LISTED, 0).items();
  }

  /**
   * A model by its name.
   *
   * @throws WorkspaceProblem if none of that name lies there
   */
  ShelfItem get(String name) {
    return workspace.shelf().get(ShelfItem.Kind.MODEL, name);
  }

  /** Puts one away; it is kept, and what was found by it stays. */
  void putAway(String name) {
    workspace.shelf().remove(ShelfItem.Kind.MODEL, name);
  }

  /** The file of a model. */
  static StoredFile file(ShelfItem item) {
    return item.files().values().iterator().next();
  }

  /**
   * Reads a model.
   *
   * @throws InvalidFile if it cannot be read
   */
  LightModel read(String name, StoredFile file) {
    return ModelFile.read(name, workspace.bytes(file));
  }

  /**
   * Takes a file in, if it is a light model.
   *
   * @param upload the file; may be missing or empty, which is told
   * @param typed what it shall be called; blank to call it after its file
   */
  Taken take(UploadedFile upload, String typed, String who) {
    if (upload == null || upload.size() == 0) {
      return Taken.refused(
          "file",
          Problem.of("no file was chosen, or it is empty", "choose the model.json of a bench"));
    }
    String file = plain(upload.filename());
    if (upload.size() > MOST_BYTES) {
      return new Taken(
          Optional.empty(),
          "file",
          Optional.of(
              Problem.of(
                  String.format(
                      Locale.ROOT,
                      "%s is %d bytes large; a light model holds at most %d MiB",
                      file,
                      upload.size(),
                      MOST_BYTES >> 20),
                  "check that it is the file you mean")),
          true);
    }
    if (typed.length() > LONGEST_NAME || typed.chars().anyMatch(Character::isISOControl)) {
      return Taken.refused(
          "name",
          Problem.of(
              String.format(
                  Locale.ROOT,
                  "a name is one line of at most %d characters; this has %d",
                  LONGEST_NAME,
                  typed.length()),
              "shorten it"));
    }
    byte[] bytes = bytes(upload);
    String note;
    try {
      LightModel model = ModelFile.read(file, bytes);
      Transferred.requireSound(model);
      note = note(model);
    } catch (InvalidFile e) {
      return Taken.refused("file", Problem.of(e));
    } catch (Refusal e) {
      return Taken.refused("file", e.problem());
    }
    Optional<ShelfItem> same = list().stream().filter(item -> holds(item, bytes)).findFirst();
    if (same.isPresent() && (typed.isEmpty() || same.get().name().equals(typed))) {
      return new Taken(same, "", Optional.empty(), false);
    }
    if (!typed.isEmpty() && isThere(typed)) {
      return Taken.refused(
          "name",
          Problem.of("another model is called " + typed + " already", "choose another name"));
    }
    String name = typed.isEmpty() ? free(stem(file)) : typed;
    return new Taken(
        Optional.of(
            workspace
                .shelf()
                .put(ShelfItem.Kind.MODEL, name, note, Map.of("model.json", bytes), who)),
        "",
        Optional.empty(),
        false);
  }

  private boolean holds(ShelfItem item, byte[] bytes) {
    StoredFile file = file(item);
    return file.size() == bytes.length && java.util.Arrays.equals(workspace.bytes(file), bytes);
  }

  /** The fixtures that a model knows, for people. */
  private static String note(LightModel model) {
    return model.best().distributions().keySet().stream()
        .limit(MOST_FIXTURES)
        .map(name -> name.replaceAll("\\p{Cntrl}", " "))
        .collect(Collectors.joining(", "));
  }

  private boolean isThere(String name) {
    try {
      get(name);
      return true;
    } catch (WorkspaceProblem e) {
      return false;
    }
  }

  private String free(String stem) {
    String name = stem;
    for (int number = 2; isThere(name); number++) {
      name = stem + " " + number;
    }
    return name;
  }

  /** The name of a file without folders and without letters that steer. */
  private static String plain(String filename) {
    String path = filename.replace('\\', '/');
    String last = path.substring(path.lastIndexOf('/') + 1).replaceAll("\\p{Cntrl}", "-").strip();
    return last.isEmpty()
        ? "model.json"
        : last.length() > LONGEST_NAME ? last.substring(last.length() - LONGEST_NAME) : last;
  }

  private static String stem(String file) {
    String stem = file.replaceAll("(?i)\\.json$", "").strip();
    return stem.isEmpty() ? "model" : stem;
  }

  private static byte[] bytes(UploadedFile upload) {
    return upload.contentAndClose(
        in -> {
          try {
            return in.readNBytes(MOST_BYTES + 1);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }
}
