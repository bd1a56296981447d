package parfield.architecture.violations.tank;

/** Gives its array away. */
public record Leaky(double[] depths) {
  static final double[] SHARED = {};
}
