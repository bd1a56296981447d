package parfield.web.setup;

import java.util.List;
import java.util.Objects;
import parfield.formats.SetupPath;

/**
 * One field of the setup's form.
 *
 * @param path of its value in the setup
 * @param label beside it
 * @param kind what is typed into it
 * @param unit behind its label; empty for none, and for lengths, whose unit the page says
 * @param options to choose from, or offered while one types
 * @param hint what is taken where it is left empty; may be empty
 * @param shown what it shows before anything is typed
 * @param fixed whether it cannot be changed here; the hint says why
 * @param parts of a choice whose last option says that it is stated by these
 */
public record FormField(
    SetupPath path,
    String label,
    Kind kind,
    String unit,
    List<String> options,
    String hint,
    String shown,
    boolean fixed,
    List<FormField> parts) {
  /** What is typed. */
  public enum Kind {
    /** A length, in the unit of the page. */
    LENGTH,
    /** Lengths, with semicolons between. */
    LENGTHS,
    /** A number in the field's own unit. */
    NUMBER,
    /** One of a few words. */
    WORD,
    /** True or false. */
    TRUTH,
    /** One of a few words, or the field's parts. */
    CHOICE,
    /** A text. */
    TEXT,
    /** The name of a file beside the setup. */
    FILE,
    /** Pairs of dial and output. */
    CURVE,
    /** Names with commas between. */
    NAMES,
    /** What a rock is: a box or an ellipsoid, which the setup says by the key of its sizes. */
    SHAPE,
    /** The name of what holds the field. */
    NAME
  }

  /** Option of a choice that says: by its parts. */
  public static final String BY_PARTS = "as follows";

  public FormField {
    Objects.requireNonNull(path, "path");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(unit, "unit");
    options = List.copyOf(options);
    Objects.requireNonNull(hint, "hint");
    Objects.requireNonNull(shown, "shown");
    parts = List.copyOf(parts);
  }

  /** Name of the field in the form. */
  public String name() {
    return switch (kind) {
      case NAME -> "name:" + path.pointer();
      case SHAPE -> "shape:" + path.pointer();
      default -> path.pointer();
    };
  }

  /** Name in the page's text, as an id: no blanks in it. */
  public String id() {
    return FormGroup.id(name());
  }
}
