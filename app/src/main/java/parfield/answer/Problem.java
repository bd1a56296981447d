package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import parfield.formats.Fault;
import parfield.formats.InvalidFile;

/**
 * Why something was not done, in the one shape that every error has.
 *
 * @param title what is wrong, in one line
 * @param status the exit code
 * @param details more of it, may be empty
 * @param hints the places to mend and what to do, may be empty
 */
public record Problem(String title, int status, String details, List<Hint> hints) {
  /** The status of what a person can mend: the exit code of a command that was not done. */
  public static final int NOT_DONE = 2;

  public Problem {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(details, "details");
    hints = List.copyOf(hints);
  }

  /**
   * One thing to mend.
   *
   * @param message what to do, or a fault with its cure
   * @param fault the fault with its place in a file, if it is one
   */
  public record Hint(String message, Optional<Fault> fault) {
    public Hint {
      Objects.requireNonNull(message, "message");
      Objects.requireNonNull(fault, "fault");
    }

    public static Hint of(String message) {
      return new Hint(message, Optional.empty());
    }

    public static Hint of(Fault fault) {
      return new Hint(fault.message(), Optional.of(fault));
    }
  }

  /** A problem that a person can mend, as told by {@code title} and {@code hints}. */
  public static Problem of(String title, String... hints) {
    return new Problem(title, NOT_DONE, "", List.of(hints).stream().map(Hint::of).toList());
  }

  /** The faults of files, all of them. */
  public static Problem of(InvalidFile invalid) {
    List<Fault> faults = invalid.faults();
    List<String> files = faults.stream().map(Fault::file).distinct().toList();
    String title =
        faults.size() == 1
            ? "1 fault in " + files.get(0)
            : faults.size() + " faults in " + String.join(", ", files);
    return new Problem(title, NOT_DONE, "", faults.stream().map(Hint::of).toList());
  }

  /** A file that could not be written. */
  public static Problem unwritable(Path file, String reason) {
    return of(
        file + " cannot be written: " + reason,
        "name a file in a folder that is there and that you may write to; nothing was written");
  }

  /** The problem as lines for standard error. */
  public String text() {
    StringBuilder text = new StringBuilder("parfield: ").append(title).append('\n');
    if (!details.isEmpty()) {
      details.lines().forEach(line -> text.append("  ").append(line).append('\n'));
    }
    for (Hint hint : hints) {
      text.append("  ").append(hint.message()).append('\n');
    }
    return text.toString();
  }

  /** The problem as JSON: {@code {title, status, details, hints: [{message, …}]}}. */
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("title", title);
    json.put("status", status);
    json.put("details", details);
    ArrayNode array = json.putArray("hints");
    for (Hint hint : hints) {
      ObjectNode entry = array.addObject();
      entry.put("message", hint.message());
      hint.fault()
          .ifPresent(
              fault -> {
                entry.put("file", fault.file());
                entry.put("line", fault.line());
                entry.put("column", fault.column());
                entry.put("what", fault.what());
                entry.put("value", fault.value());
                entry.put("limit", fault.limit());
                entry.put("cure", fault.cure());
              });
    }
    return json;
  }
}
