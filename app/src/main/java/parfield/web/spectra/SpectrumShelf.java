package parfield.web.spectra;

import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parfield.answer.Light;
import parfield.answer.Problem;
import parfield.formats.InvalidFile;
import parfield.formats.SpectralUnit;
import parfield.formats.SpectrumFile;
import parfield.workspace.ShelfItem;
import parfield.workspace.StoredFile;
import parfield.workspace.Workspace;

/**
 * Files of spectra on the workspace's shelf: taken in only if they can be read, read once, put
 * away. Thread-safe.
 */
final class SpectrumShelf {
  /** Files of one upload. */
  static final int MOST_FILES = 20;

  /** Items that a page lists. */
  static final int MOST_LISTED = 300;

  private static final int KEPT = 200;
  private static final String UNIT = "unit: ";
  private static final String INVENTED = "invented";

  private final Workspace workspace;
  private final Map<String, Content> read =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Content> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * What a file holds.
   *
   * @param lights its spectra, in the order of the file; none if it cannot be read
   * @param assumptions what was taken without being stated
   * @param problem why it cannot be read
   */
  record Content(List<Light> lights, List<String> assumptions, Optional<Problem> problem) {}

  /**
   * What became of an upload.
   *
   * @param stored names of what lies on the shelf now
   * @param problems of files that were not taken
   * @param tooLarge whether one of them was larger than a file of spectra may be
   */
  record Taken(List<String> stored, List<Problem> problems, boolean tooLarge) {}

  SpectrumShelf(Workspace workspace) {
    this.workspace = workspace;
  }

  /** Whether a thing on the shelf was made up. */
  static boolean invented(ShelfItem item) {
    return item.text().lines().anyMatch(INVENTED::equals);
  }

  /** The spectra on the shelf, by name. */
  List<ShelfItem> list() {
    return workspace.shelf().list(ShelfItem.Kind.SPECTRUM, "", MOST_LISTED, 0).items();
  }

  /**
   * One of them.
   *
   * @throws parfield.workspace.WorkspaceProblem if it does not lie there
   */
  ShelfItem get(String name) {
    return workspace.shelf().get(ShelfItem.Kind.SPECTRUM, name);
  }

  /** Puts one away; its revisions are kept. */
  void putAway(String name) {
    workspace.shelf().remove(ShelfItem.Kind.SPECTRUM, name);
  }

  /** What something on the shelf holds. */
  Content content(ShelfItem item) {
    StoredFile file = item.files().values().iterator().next();
    Optional<SpectralUnit> unit =
        item.text()
            .lines()
            .filter(line -> line.startsWith(UNIT))
            .findFirst()
            .flatMap(line -> SpectralUnit.of(line.substring(UNIT.length())));
    String key = file.digest() + "/" + item.name() + "/" + unit;
    synchronized (read) {
      Content known = read.get(key);
      if (known != null) {
        return known;
      }
    }
    Content content = content(item.name(), workspace.bytes(file), unit);
    synchronized (read) {
      read.put(key, content);
    }
    return content;
  }

  /** What bytes hold, by the name of their file. */
  static Content content(String name, byte[] bytes, Optional<SpectralUnit> unit) {
    try {
      SpectrumFile.Read file = SpectrumFile.read(name, bytes, unit);
      return new Content(
          file.spectra().stream().map(Light::of).toList(), file.assumptions(), Optional.empty());
    } catch (InvalidFile e) {
      return new Content(List.of(), List.of(), Optional.of(onPage(Problem.of(e))));
    } catch (IllegalArgumentException e) {
      // A spectrum of nothing but zeros is readable, but is no light.
      return new Content(
          List.of(), List.of(), Optional.of(Problem.of(name + ": " + e.getMessage())));
    }
  }

  /** A problem in the words of a page, which has a list where a command has an option. */
  private static Problem onPage(Problem problem) {
    return Problem.of(
        problem.title(),
        problem.hints().stream()
            .map(
                hint ->
                    hint.message()
                        .replaceAll(
                            "give --unit: .*",
                            "choose it under: What the numbers count, where a file does not say"))
            .toArray(String[]::new));
  }

  /**
   * Takes files in: each that can be read lies on the shelf afterwards, the others are told of.
   *
   * @param unit what their numbers count where they do not say; blank for nothing
   */
  Taken take(List<UploadedFile> uploads, String unit, String who) {
    List<String> stored = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    boolean tooLarge = false;
    for (UploadedFile upload : uploads) {
      String name = name(upload.filename());
      if (upload.size() > SpectrumFile.MOST_BYTES) {
        tooLarge = true;
        problems.add(
            Problem.of(
                String.format(
                    Locale.ROOT,
                    "%s is %d bytes large; a file of spectra holds at most %d MiB",
                    name,
                    upload.size(),
                    SpectrumFile.MOST_BYTES >> 20),
                "check that it is the file you mean, or split it"));
        continue;
      }
      put(name, bytes(upload), unit.isBlank() ? "" : UNIT + unit, who)
          .ifPresentOrElse(problems::add, () -> stored.add(name));
    }
    return new Taken(stored, problems, tooLarge);
  }

  /** Puts invented spectra there, marked so. */
  void putInvented(Map<String, byte[]> files, String who) {
    files.forEach((name, bytes) -> put(name, bytes, INVENTED, who));
  }

  /** Puts a file there if it can be read; else tells why not. */
  private Optional<Problem> put(String name, byte[] bytes, String note, String who) {
    Optional<SpectralUnit> unit =
        note.startsWith(UNIT) ? SpectralUnit.of(note.substring(UNIT.length())) : Optional.empty();
    Optional<Problem> problem = content(name, bytes, unit).problem();
    if (problem.isEmpty()) {
      try {
        workspace.shelf().put(ShelfItem.Kind.SPECTRUM, name, note, Map.of(name, bytes), who);
      } catch (IllegalArgumentException e) {
        return Optional.of(Problem.of(e.getMessage()));
      }
    }
    return problem;
  }

  /** The name of a file as it may lie on the shelf: no folders, nothing that names a place. */
  private static String name(String filename) {
    String plain = filename.replace('\\', '/');
    String last = plain.substring(plain.lastIndexOf('/') + 1).replaceAll("[:\\p{Cntrl}]", "-");
    String stripped = last.strip();
    return stripped.isEmpty() || stripped.equals(".") || stripped.equals("..")
        ? "spectrum"
        : stripped.length() > 150 ? stripped.substring(stripped.length() - 150) : stripped;
  }

  private static byte[] bytes(UploadedFile upload) {
    return upload.contentAndClose(
        in -> {
          try {
            return in.readNBytes(SpectrumFile.MOST_BYTES + 1);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }
}
