package parfield.web.setup;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parfield.answer.Numbers;
import parfield.formats.Fault;
import parfield.formats.SetupPath;
import parfield.units.LengthUnit;

/**
 * A form as a page shows it: its fields, what was typed into them, and what is to be said beside
 * each.
 *
 * @param sections of the form
 * @param typed what was typed and not stored, by the names of fields
 * @param problems what is wrong, by names of fields and by addresses of groups
 * @param remarks what is odd but possible, by addresses of values
 * @param summary everything that is wrong, each with the field or group that it leads to
 * @param unit of lengths on the page
 */
public record FormView(
    List<FormGroup> sections,
    Map<String, String> typed,
    Map<String, List<String>> problems,
    Map<String, String> remarks,
    List<Line> summary,
    LengthUnit unit) {
  /**
   * A line of the summary.
   *
   * @param id of what it leads to; empty where that is nowhere on the page
   * @param words what is wrong
   */
  public record Line(String id, String words) {}

  public FormView {
    sections = List.copyOf(sections);
    typed = Map.copyOf(typed);
    problems = Map.copyOf(problems);
    remarks = Map.copyOf(remarks);
    summary = List.copyOf(summary);
  }

  /** A form that shows what is stored. */
  static FormView of(List<FormGroup> sections, Map<String, String> remarks, LengthUnit unit) {
    return new FormView(sections, Map.of(), Map.of(), remarks, List.of(), unit);
  }

  /**
   * This form with what was typed, and what is wrong with it.
   *
   * @param newlyTyped by the names of fields
   * @param unreadable by the names of fields, what could not be read
   * @param faults of the setup as it would have become
   */
  FormView with(
      Map<String, String> newlyTyped, Map<String, List<String>> unreadable, List<Fault> faults) {
    Map<String, List<String>> beside = new LinkedHashMap<>();
    List<Line> lines = new ArrayList<>();
    List<FormField> fields = sections.stream().flatMap(s -> s.all().stream()).toList();
    unreadable.forEach(
        (name, problem) -> {
          beside.put(name, problem);
          fields.stream()
              .filter(field -> field.name().equals(name))
              .findFirst()
              .ifPresent(
                  field -> problem.forEach(p -> lines.add(new Line(field.id(), words(field, p)))));
        });
    for (Fault fault : faults) {
      Target target = target(fault, fields, newlyTyped);
      if (!target.name.isEmpty()) {
        beside.computeIfAbsent(target.name, name -> new ArrayList<>()).add(target.words);
      }
      lines.add(new Line(target.id, message(fault)));
    }
    return new FormView(sections, newlyTyped, beside, remarks, lines, unit);
  }

  private static String words(FormField field, String problem) {
    return field.path().text() + ": " + problem;
  }

  /** Where a fault belongs, and what is said there. */
  private record Target(String name, String id, String words) {}

  private Target target(Fault fault, List<FormField> fields, Map<String, String> newlyTyped) {
    for (FormField field : fields) {
      String value = newlyTyped.getOrDefault(field.name(), field.shown());
      if (!value.isEmpty() && value.equals(fault.file())) {
        return new Target(field.name(), field.id(), message(fault));
      }
    }
    String what = fault.what().replaceFirst("^unknown key in ", "");
    Target best = new Target("", "", "");
    int longest = 0;
    for (FormField field : fields) {
      String path = field.path().text();
      if (field.kind() != FormField.Kind.NAME
          && field.kind() != FormField.Kind.SHAPE
          && path.length() > longest
          && begins(what, path)) {
        longest = path.length();
        best = new Target(field.name(), field.id(), brief(fault, path));
      }
    }
    for (FormGroup group : sections.stream().flatMap(FormGroup::flat).toList()) {
      String path = group.path().text();
      if (path.length() > longest && begins(what, path)) {
        longest = path.length();
        best = new Target(group.path().pointer(), group.id(), brief(fault, path));
      }
    }
    return best;
  }

  private static boolean begins(String what, String path) {
    return what.startsWith(path)
        && (what.length() == path.length() || " .[:".indexOf(what.charAt(path.length())) >= 0);
  }

  /** A fault without file and line, which a form does not have. */
  private static String message(Fault fault) {
    Fault plain = new Fault("", 0, 0, fault.what(), fault.value(), fault.limit(), fault.cure());
    String words = plain.message().replaceFirst("^: ", "");
    return fault.file().isEmpty() || !fault.file().contains(".")
        ? words
        : fault.file() + ": " + words;
  }

  /** A fault beside its field, which needs not be named again. */
  private static String brief(Fault fault, String path) {
    String words = message(fault);
    int at = words.indexOf(path);
    return at == 0 ? words.substring(path.length()).replaceFirst("^(: | )", "") : words;
  }

  /** What a field holds. */
  public String value(FormField field) {
    return typed.getOrDefault(field.name(), field.shown());
  }

  /** What is wrong with a field. */
  public List<String> problems(FormField field) {
    return problems.getOrDefault(field.name(), List.of());
  }

  /** What is wrong with a group as a whole. */
  public List<String> problems(FormGroup group) {
    return problems.getOrDefault(group.path().pointer(), List.of());
  }

  /** What is odd but possible about a field; empty for nothing. */
  public String remark(FormField field) {
    return field.kind() == FormField.Kind.NAME || field.kind() == FormField.Kind.SHAPE
        ? ""
        : remarks.getOrDefault(field.path().pointer(), "");
  }

  /** Label of a field with its unit. */
  public String label(FormField field) {
    String behind =
        switch (field.kind()) {
          case LENGTH, LENGTHS -> unit.symbol();
          default -> field.unit().replace("µmol/m²/s", "µmol m⁻² s⁻¹");
        };
    return behind.isEmpty() ? field.label() : field.label() + ", " + behind;
  }

  /** Ids of what describes a field; null for nothing. */
  public String describedBy(FormField field) {
    List<String> ids = new ArrayList<>();
    if (!problems(field).isEmpty()) {
      ids.add(field.id() + "-fault");
    }
    if (!remark(field).isEmpty()) {
      ids.add(field.id() + "-remark");
    }
    if (field.fixed()) {
      ids.add(field.id() + "-hint");
    }
    return ids.isEmpty() ? null : ids.stream().collect(joining(" "));
  }

  /** Options of a list, what stands there among them. */
  public List<String> options(FormField field) {
    List<String> options = new ArrayList<>(field.options());
    if (!options.contains(value(field)) && !value(field).isEmpty()) {
      options.add(value(field));
    }
    return options;
  }

  /** Whether the parts of a choice are to be seen. */
  public boolean open(FormField field) {
    return value(field).equals(FormField.BY_PARTS)
        || field.parts().stream()
            .anyMatch(part -> !value(part).isEmpty() || !problems(part).isEmpty());
  }

  /** Whether an entry is unfolded: the first of its section, and any that something is said of. */
  public boolean open(FormGroup entry) {
    boolean first =
        sections.stream()
            .anyMatch(
                section ->
                    !section.groups().isEmpty()
                        && section.groups().get(0).equals(entry)
                        && !section.path().equals(SetupForm.SURVEYS)
                        && !section.path().equals(SetupForm.METERS));
    return first
        || entry.flat().anyMatch(group -> !problems(group).isEmpty())
        || entry.all().stream()
            .anyMatch(
                field ->
                    !problems(field).isEmpty()
                        || !remark(field).isEmpty()
                        || FormEdits.changed(field, typed));
  }

  /** An entry in a line: what it is at a glance while it is folded. */
  public String line(FormGroup entry) {
    SetupPath holder = entry.path().parent();
    if (holder.equals(SetupForm.RIGS)) {
      return entry.groups().get(0).groups().stream()
          .limit(4)
          .map(
              hung ->
                  value(hung.fields().get(0))
                      + ", "
                      + value(hung.fields().get(3))
                      + " "
                      + unit.symbol()
                      + " high")
          .collect(joining("; "));
    } else if (holder.equals(SetupForm.FIXTURES)) {
      return Numbers.count(entry.groups().get(0).groups().size(), "emitter")
          + ", "
          + Numbers.count(entry.groups().get(1).groups().size(), "channel");
    } else if (holder.equals(SetupForm.ROCKS)) {
      String shape = value(entry.fields().get(1));
      return shape.equals("mesh")
          ? "mesh " + value(entry.fields().get(2))
          : shape
              + ", "
              + entry.fields().subList(2, 5).stream().map(this::value).collect(joining(" × "))
              + " "
              + unit.symbol();
    } else if (holder.equals(SetupForm.SURVEYS)) {
      return "rig " + value(entry.fields().get(1)) + ", meter " + value(entry.fields().get(2));
    }
    return "";
  }
}
