package parfield.cli;

import parfield.answer.Bench;
import parfield.units.LengthUnit;
import picocli.CommandLine.Option;

/** The unit of lengths of a command on spectra. */
final class LengthOption {
  @Option(
      names = "--length",
      paramLabel = "cm|in",
      converter = OutputOptions.UnitConverter.class,
      description =
          "Unit of lengths on the command line and in what is shown; default: the setup's own, else"
              + " cm.")
  private LengthUnit length;

  /** The unit that was asked for, else cm. */
  LengthUnit unit() {
    return length == null ? LengthUnit.CM : length;
  }

  /** The unit that was asked for, else that of a setup. */
  LengthUnit unit(Bench bench) {
    return length == null ? bench.setup().length() : length;
  }
}
