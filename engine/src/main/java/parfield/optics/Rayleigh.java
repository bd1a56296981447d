package parfield.optics;

/**
 * The phase function of Rayleigh (1871): p = 3 (1 + μ²) / (16 π), which molecules of water follow
 * closely.
 */
public record Rayleigh() implements PhaseFunction {
  @Override
  public double value(double cosine) {
    return 3 * (1 + cosine * cosine) / (16 * Math.PI);
  }

  /** Solves μ³ + 3 μ = 8 share − 4 by Cardano's formula: one real root, always. */
  @Override
  public double cosineAt(double share) {
    double half = 4 * share - 2;
    double root = Math.sqrt(half * half + 1);
    double cosine = Math.cbrt(half + root) + Math.cbrt(half - root);
    return Math.max(-1, Math.min(1, cosine));
  }
}
