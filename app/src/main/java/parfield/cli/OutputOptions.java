package parfield.cli;

import java.io.PrintWriter;
import parfield.answer.Answer;
import parfield.answer.Bench;
import parfield.answer.Json;
import parfield.units.LengthUnit;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How a command shows its answer; the same for all of them. */
final class OutputOptions {
  /** The option that turns answers and errors into JSON. */
  static final String JSON = "--json";

  @Option(
      names = JSON,
      description = "Answer in JSON, errors too; lengths are in cm there, whatever --length says.")
  private boolean json;

  @Option(
      names = "--length",
      paramLabel = "cm|in",
      converter = UnitConverter.class,
      description =
          "Unit of lengths on the command line and in what is shown; default: the setup's own.")
  private LengthUnit length;

  boolean json() {
    return json;
  }

  /** The unit that was asked for, else that of the setup. */
  LengthUnit length(Bench bench) {
    return length == null ? bench.setup().length() : length;
  }

  /** Writes an answer to standard output. */
  void print(PrintWriter out, Answer answer, LengthUnit unit) {
    out.print(json ? Json.text(answer.json()) : answer.text(unit));
  }

  /** Reads {@code cm} and {@code in}. */
  static final class UnitConverter implements ITypeConverter<LengthUnit> {
    @Override
    public LengthUnit convert(String text) {
      for (LengthUnit unit : LengthUnit.values()) {
        if (unit.symbol().equals(text)) {
          return unit;
        }
      }
      throw new TypeConversionException("a unit of length is cm or in; got " + text);
    }
  }
}
