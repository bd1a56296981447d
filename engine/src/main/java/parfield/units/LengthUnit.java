package parfield.units;

/** A unit in which a person types and reads lengths; inside the engine all lengths are metres. */
public enum LengthUnit {
  /** Centimetre. */
  CM("cm", 0.01),
  /** International inch, exactly 25.4 mm. */
  INCH("in", 0.0254);

  private final String symbol;
  private final double metres;

  LengthUnit(String symbol, double metres) {
    this.symbol = symbol;
    this.metres = metres;
  }

  /** Returns the symbol as written in files and on screens: {@code cm} or {@code in}. */
  public String symbol() {
    return symbol;
  }

  /** Converts a length in this unit to metres. */
  public double toMetres(double length) {
    return length * metres;
  }

  /** Converts a length in metres to this unit. */
  public double fromMetres(double lengthMetres) {
    return lengthMetres / metres;
  }
}
