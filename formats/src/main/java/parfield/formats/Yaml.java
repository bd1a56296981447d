package parfield.formats;

import java.util.Locale;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.composer.Composer;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.parser.Parser;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/**
 * One YAML document as nodes with their places; nothing in it is ever constructed or expanded.
 *
 * <p>Depth and number of nodes are limited while parsing, so that no document is deep enough for
 * the stack or big enough for the memory; {@link Entry} limits how often aliases repeat them.
 */
final class Yaml {
  /** Most nodes of a document, and most visits to nodes, aliases counted each time. */
  static final int MOST_NODES = 50_000;

  private static final int MOST_ALIASES = 50;
  private static final int DEEPEST = 20;

  private Yaml() {}

  /**
   * Parses a document.
   *
   * @param file name of the file
   * @param text the document
   * @param notes where faults go
   * @return its root
   * @throws InvalidFile if it is no YAML, empty, too deep or too big
   */
  static Entry parse(String file, String text, Notes notes) {
    LoadSettings settings =
        LoadSettings.builder()
            .setLabel(file)
            .setAllowDuplicateKeys(true)
            .setMaxAliasesForCollections(MOST_ALIASES + 1)
            .setCodePointLimit(Integer.MAX_VALUE)
            .build();
    try {
      Parser parser =
          new Limited(new ParserImpl(settings, new StreamReader(settings, text)), file, notes);
      Optional<Node> root = new Composer(settings, parser).getSingleNode();
      if (root.isEmpty()) {
        throw notes.fatal(
            new Fault(
                file, 0, 0, "the file is empty", "", "", "see docs/FORMATS.md for an example"));
      }
      return new Entry(root.get(), "", new Entry.Document(file, notes));
    } catch (MarkedYamlEngineException e) {
      Mark mark = e.getProblemMark().or(e::getContextMark).orElse(null);
      throw notes.fatal(
          new Fault(
              file,
              mark == null ? 0 : mark.getLine() + 1,
              mark == null ? 0 : mark.getColumn() + 1,
              atTab(mark)
                  ? "this is not YAML"
                  : "this is not YAML (" + Notes.shown(String.valueOf(e.getProblem())) + ")",
              atTab(mark) ? "a tab" : "",
              atTab(mark) ? "spaces" : "",
              cure(e, mark)));
    } catch (ReaderException e) {
      String before = text.substring(0, Math.min(e.getPosition(), text.length()));
      throw notes.fatal(
          new Fault(
              file,
              (int) before.chars().filter(c -> c == '\n').count() + 1,
              before.length() - before.lastIndexOf('\n'),
              "this is not YAML",
              String.format(Locale.ROOT, "\\u%04x", e.getCodePoint()),
              "printable characters",
              "delete it"));
    } catch (YamlEngineException e) {
      throw notes.fatal(
          new Fault(
              file,
              0,
              0,
              "this is not YAML",
              Notes.shown(String.valueOf(e.getMessage())),
              "",
              "check that it is a setup file"));
    }
  }

  private static boolean atTab(Mark mark) {
    return mark != null
        && mark.getPointer() < mark.getBuffer().length
        && mark.getBuffer()[mark.getPointer()] == '\t';
  }

  private static String cure(MarkedYamlEngineException e, Mark mark) {
    if (atTab(mark)) {
      return "indent with spaces";
    }
    String problem = String.valueOf(e.getProblem());
    if (problem.contains("mapping values are not allowed")) {
      return "check the indentation, or put text that holds a colon in quotes";
    }
    return "check brackets, quotes and indentation here and on the line before";
  }

  /** Passes events on until the document is too deep or too big. */
  private static final class Limited implements Parser {
    private final Parser parser;
    private final String file;
    private final Notes notes;
    private int depth;
    private int nodes;
    private int aliases;

    Limited(Parser parser, String file, Notes notes) {
      this.parser = parser;
      this.file = file;
      this.notes = notes;
    }

    @Override
    public boolean hasNext() {
      return parser.hasNext();
    }

    @Override
    public boolean checkEvent(Event.ID id) {
      return parser.checkEvent(id);
    }

    @Override
    public Event peekEvent() {
      return parser.peekEvent();
    }

    @Override
    public Event next() {
      Event event = parser.next();
      switch (event.getEventId()) {
        case MappingStart, SequenceStart -> {
          depth++;
          nodes++;
        }
        case MappingEnd, SequenceEnd -> depth--;
        case Scalar -> nodes++;
        case Alias -> {
          nodes++;
          aliases++;
        }
        default -> {}
      }
      if (depth > DEEPEST) {
        throw refusal(event, "nesting", "more", String.format(Locale.ROOT, "%d levels", DEEPEST));
      }
      if (aliases > MOST_ALIASES) {
        throw refusal(
            event, "number of aliases", "more", String.format(Locale.ROOT, "%d", MOST_ALIASES));
      }
      if (nodes > MOST_NODES) {
        throw refusal(
            event, "number of entries", "more", String.format(Locale.ROOT, "%d", MOST_NODES));
      }
      return event;
    }

    private InvalidFile refusal(Event event, String what, String value, String limit) {
      Optional<Mark> mark = event.getStartMark();
      return notes.fatal(
          new Fault(
              file,
              mark.map(start -> start.getLine() + 1).orElse(0),
              mark.map(start -> start.getColumn() + 1).orElse(0),
              what,
              value,
              limit,
              "check that it is a setup file"));
    }
  }
}
