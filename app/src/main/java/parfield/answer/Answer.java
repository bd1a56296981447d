package parfield.answer;

import com.fasterxml.jackson.databind.node.ObjectNode;
import parfield.units.LengthUnit;

/** What a command answers: the same findings for a person and for a program. */
public interface Answer {
  /**
   * The answer as lines of text.
   *
   * @param unit in which the person reads lengths
   */
  String text(LengthUnit unit);

  /** The answer as JSON, in the shape that docs/COMMANDS.md states. */
  ObjectNode json();
}
