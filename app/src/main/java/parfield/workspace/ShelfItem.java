package parfield.workspace;

import java.time.Instant;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * A fixture, a spectrum or a light model on the shelf, which all benches share.
 *
 * @param kind what it is
 * @param name of it, unique among its kind
 * @param revision counts from 1
 * @param text the fixture's entry of a setup file, or a note on a spectrum or model
 * @param files that belong to it by name, folders separated by a slash; of a spectrum or model, one
 * @param who put it there
 * @param when it was put there
 */
public record ShelfItem(
    Kind kind,
    String name,
    long revision,
    String text,
    Map<String, StoredFile> files,
    String who,
    Instant when) {
  public ShelfItem {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(text, "text");
    files = Collections.unmodifiableMap(new TreeMap<>(files));
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(when, "when");
  }

  /** What lies on the shelf. */
  public enum Kind {
    /** A fixture: its entry of a setup file, with the files it names. */
    FIXTURE,
    /** A spectrum: its file, with a note. */
    SPECTRUM,
    /** A light model that was fitted elsewhere: its file, with the names of its fixtures. */
    MODEL
  }
}
