package parfield.web.setup;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import parfield.answer.Refusal;
import parfield.formats.InvalidFile;
import parfield.formats.SetupPath;
import parfield.formats.SetupText;
import parfield.formats.SetupValue;
import parfield.units.LengthUnit;

/**
 * What a person typed into the form of a setup, put into its text: only fields that differ from
 * what they showed change anything.
 */
final class FormEdits {
  /** Maps that say nothing once they are empty. */
  private static final Set<String> IDLE =
      Set.of("bottom", "room", "dials", "grid", "distribution", "lid", "walls");

  private final LengthUnit shown;
  private final LengthUnit stored;
  private final Map<String, String> typed;
  private final Map<String, List<String>> problems = new LinkedHashMap<>();
  private SetupText text;

  private FormEdits(SetupText text, LengthUnit shown, Map<String, String> typed) {
    this.text = text;
    this.shown = shown;
    this.stored = SetupForm.stored(text);
    this.typed = typed;
  }

  /**
   * The text as it was typed.
   *
   * @param text with the changes that could be read
   * @param problems by the name of the field, of those that could not
   */
  record Edited(SetupText text, Map<String, List<String>> problems) {}

  /**
   * Puts what was typed into a text.
   *
   * @param text that the form showed
   * @param sections of that form
   * @param typed by the names of fields; a field that is not among them was not changed
   * @param shown unit of lengths on the page
   * @param action what is added or taken away besides, once all values are in and before anything
   *     gets another name
   * @throws InvalidFile if the text is laid out so that a field cannot be changed
   */
  static Edited apply(
      SetupText text,
      List<FormGroup> sections,
      Map<String, String> typed,
      LengthUnit shown,
      UnaryOperator<SetupText> action) {
    FormEdits edits = new FormEdits(text, shown, typed);
    List<FormField> fields =
        sections.stream().flatMap(FormGroup::flat).flatMap(g -> g.fields().stream()).toList();
    fields.forEach(edits::put);
    edits.text = action.apply(edits.text);
    fields.stream()
        .filter(field -> field.kind() == FormField.Kind.SHAPE && edits.changed(field))
        .forEach(edits::reshape);
    fields.stream()
        .filter(field -> field.kind() == FormField.Kind.NAME && edits.changed(field))
        .sorted(Comparator.comparing((FormField field) -> -field.path().steps().size()))
        .forEach(edits::rename);
    return new Edited(edits.text, edits.problems);
  }

  /** Whether a field holds something else than it showed. */
  private boolean changed(FormField field) {
    return changed(field, typed);
  }

  /** Whether what was typed into a field is something else than it showed. */
  static boolean changed(FormField field, Map<String, String> typed) {
    return !field.fixed()
        && !typed.getOrDefault(field.name(), field.shown()).strip().equals(field.shown().strip());
  }

  private String typed(FormField field) {
    return typed.getOrDefault(field.name(), field.shown());
  }

  private void problem(FormField field, String problem) {
    problems.computeIfAbsent(field.name(), name -> new ArrayList<>()).add(problem);
  }

  private void put(FormField field) {
    if (field.kind() == FormField.Kind.NAME || field.kind() == FormField.Kind.SHAPE) {
      return;
    }
    if (field.kind() == FormField.Kind.CHOICE) {
      choose(field);
    } else if (changed(field)) {
      Optional<SetupValue> value = read(field);
      if (value.isPresent()) {
        text = text.with(field.path(), value.get());
      } else if (!problems.containsKey(field.name())) {
        remove(field.path());
      }
    }
  }

  /** What was typed; empty if nothing was, or with a problem. */
  private Optional<SetupValue> read(FormField field) {
    TypedValue value = TypedValue.read(field, typed(field), shown, stored);
    value.problem().ifPresent(problem -> problem(field, problem));
    return value.value();
  }

  private void choose(FormField field) {
    boolean parts = field.parts().stream().anyMatch(this::changed);
    if (!parts && !changed(field)) {
      return;
    }
    everyPane(field.path());
    String chosen = typed(field);
    // Parts that were typed are meant, unless a word was chosen at the same time.
    if (chosen.equals(FormField.BY_PARTS) || (parts && !changed(field))) {
      byParts(field);
    } else if (chosen.isBlank()) {
      remove(field.path());
    } else {
      text = text.with(field.path(), new SetupValue.Text(chosen));
    }
  }

  private void byParts(FormField field) {
    if (text.value(field.path()).filter(SetupValue.Fields.class::isInstance).isPresent()
        && field.shown().equals(FormField.BY_PARTS)) {
      field.parts().forEach(this::put);
      return;
    }
    Map<String, SetupValue> entries = new LinkedHashMap<>();
    for (FormField part : field.parts()) {
      read(part)
          .ifPresent(
              value -> {
                List<SetupPath.Step> steps = part.path().steps();
                entries.put(((SetupPath.Key) steps.get(steps.size() - 1)).key(), value);
              });
    }
    if (entries.isEmpty()) {
      problem(field, "state it by the fields beside it, or choose a word");
    } else {
      text = text.with(field.path(), new SetupValue.Fields(entries));
    }
  }

  /** One word for all four panes is written out before one of them is changed. */
  private void everyPane(SetupPath path) {
    SetupPath walls = SetupForm.TANK.key("walls");
    Optional<SetupValue> all = text.value(walls);
    if (path.parent().equals(walls) && all.isPresent() && !all.get().plain().isEmpty()) {
      Map<String, SetupValue> each = new LinkedHashMap<>();
      SetupForm.SIDES.forEach(side -> each.put(side, all.get()));
      text = text.with(walls, new SetupValue.Fields(each));
    }
  }

  private void remove(SetupPath path) {
    text = without(text, path);
  }

  /** A text without something, and without the map that says nothing once that is gone. */
  static SetupText without(SetupText text, SetupPath path) {
    SetupText left = text.without(path);
    SetupPath holder = path.parent();
    boolean idle =
        !holder.steps().isEmpty()
            && holder.steps().get(holder.steps().size() - 1) instanceof SetupPath.Key key
            && IDLE.contains(key.key());
    boolean empty = left.value(holder).map(Removal::empty).orElse(false);
    return idle && empty ? left.without(holder) : left;
  }

  /** A rock of another shape: its sizes under another key. */
  private void reshape(FormField field) {
    String shape = typed(field).strip();
    if (text.value(field.path()).isEmpty()) {
      // It was taken away by the same press of a button.
      return;
    }
    if (!SetupForm.SHAPES.contains(shape)) {
      problem(
          field,
          (shape.isEmpty() ? "nothing" : shape.substring(0, Math.min(40, shape.length())))
              + " is no shape of a rock here: choose "
              + String.join(" or ", SetupForm.SHAPES)
              + ", or take the rock away");
    } else if (field.shown().isEmpty()) {
      String sizes = SetupForm.shape(text, field.path());
      text =
          sizes.isEmpty()
              ? text.with(field.path().key(shape), new SetupValue.Fields(Map.of()))
              : text.renamed(field.path().key(sizes), shape);
    } else {
      text = text.renamed(field.path().key(field.shown()), shape);
    }
  }

  private void rename(FormField field) {
    String name = typed(field).strip();
    if (text.value(field.path()).isEmpty()) {
      // It was taken away by the same press of a button.
      return;
    }
    if (name.isEmpty()) {
      problem(field, "a name cannot be empty: type one, or take the whole entry away");
      return;
    }
    try {
      text = Renaming.of(text, field.path(), name);
    } catch (InvalidFile e) {
      problem(field, e.faults().get(0).value() + " is taken already: choose another name");
    }
  }

  /** A group of the form by its address, as a button names it. */
  static FormGroup group(List<FormGroup> sections, String pointer) {
    return sections.stream()
        .flatMap(FormGroup::flat)
        .filter(group -> group.path().pointer().equals(pointer))
        .findFirst()
        .orElseThrow(
            () -> Refusal.of("the page does not hold what this button is about", "load it again"));
  }
}
