package parfield.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import parfield.answer.Json;
import picocli.CommandLine.Option;

/** How a command on a workspace shows what it did. */
final class WorkspaceAnswer {
  @Option(names = OutputOptions.JSON, description = "Answer in JSON, errors too.")
  private boolean json;

  /** Writes an answer to standard output: lines for a person, or an object for a program. */
  void print(PrintWriter out, ObjectNode object, String... lines) {
    if (json) {
      out.print(Json.text(object));
    } else {
      for (String line : lines) {
        out.print(line + "\n");
      }
    }
  }
}
