package parfield.formats;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A unit that mesh files are written in; they do not say which. */
enum MeshUnit {
  MM("mm", 0.001),
  CM("cm", 0.01),
  IN("in", 0.0254),
  M("m", 1);

  private final String symbol;
  private final double metres;

  MeshUnit(String symbol, double metres) {
    this.symbol = symbol;
    this.metres = metres;
  }

  static List<String> symbols() {
    return Arrays.stream(values()).map(unit -> unit.symbol).toList();
  }

  static Optional<MeshUnit> of(String symbol) {
    return Arrays.stream(values()).filter(unit -> unit.symbol.equals(symbol)).findFirst();
  }

  String symbol() {
    return symbol;
  }

  /** One of this unit [m]. */
  double metres() {
    return metres;
  }

  /**
   * What to do about a size that is stated in no unit, or in a wrong one.
   *
   * @param size of the mesh in its own unit
   * @param least that a rock has [m]
   * @param most that fits into the tank [m]
   */
  static String cure(double size, double least, double most) {
    List<String> likely =
        Arrays.stream(values())
            .filter(unit -> size * unit.metres >= least && size * unit.metres <= most)
            .map(
                unit ->
                    String.format(
                        Locale.ROOT,
                        "unit: %s makes it %s",
                        unit.symbol,
                        length(size * unit.metres)))
            .toList();
    return likely.isEmpty()
        ? "no unit fits: scale the mesh in the program that made it"
        : String.join(", ", likely);
  }

  /** A length at a scale at which it reads well. */
  static String length(double metres) {
    if (metres >= 1) {
      return shown(metres) + " m";
    }
    return metres >= 0.01 ? shown(100 * metres) + " cm" : shown(1000 * metres) + " mm";
  }

  private static String shown(double value) {
    return NumberText.shown(Double.parseDouble(String.format(Locale.ROOT, "%.3g", value)));
  }
}
