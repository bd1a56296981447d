package parfield.web.setup;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import parfield.formats.SetupPath;

/**
 * Fields that belong together, and groups below them.
 *
 * @param path of what holds them
 * @param title of the group
 * @param look how it is drawn
 * @param fields of its own
 * @param groups below it
 * @param adds what can be added to it, in words; empty for nothing
 * @param removable whether it can be taken away
 */
public record FormGroup(
    SetupPath path,
    String title,
    Look look,
    List<FormField> fields,
    List<FormGroup> groups,
    String adds,
    boolean removable) {
  /** How a group is drawn. */
  public enum Look {
    /** A part of the page. */
    SECTION,
    /** One of the named things of a section. */
    ENTRY,
    /** A list of rows. */
    LIST,
    /** One row of a list. */
    ROW
  }

  public FormGroup {
    Objects.requireNonNull(path, "path");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(look, "look");
    fields = List.copyOf(fields);
    groups = List.copyOf(groups);
    Objects.requireNonNull(adds, "adds");
  }

  /** Every field of this group and of those below, choices before their parts. */
  public List<FormField> all() {
    List<FormField> all = new ArrayList<>();
    for (FormField field : fields) {
      all.add(field);
      all.addAll(field.parts());
    }
    groups.forEach(group -> all.addAll(group.all()));
    return all;
  }

  /** This group and all below it. */
  public Stream<FormGroup> flat() {
    return Stream.concat(Stream.of(this), groups.stream().flatMap(FormGroup::flat));
  }

  /** Where a link leads to. */
  public String id() {
    return id(path.pointer());
  }

  /** Any text as an id of a page: letters and digits as they are, all else by its code. */
  static String id(String text) {
    StringBuilder id = new StringBuilder("at");
    text.codePoints()
        .forEach(
            point -> {
              if (point < 128 && Character.isLetterOrDigit(point)) {
                id.appendCodePoint(point);
              } else if (point == '/') {
                id.append('-');
              } else {
                id.append('_').append(Integer.toHexString(point)).append('_');
              }
            });
    return id.toString();
  }
}
