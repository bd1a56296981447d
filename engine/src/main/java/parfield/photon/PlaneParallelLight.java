package parfield.photon;

/** What was counted in a plane-parallel medium, in the unit of the sky's irradiance. Immutable. */
public final class PlaneParallelLight {
  private static final double CAP_WEIGHT = Math.PI * (1 - PlaneMeters.CAP * PlaneMeters.CAP);

  private final Batches batches;
  private final int planes;

  PlaneParallelLight(Batches batches, int planes) {
    this.batches = batches;
    this.planes = planes;
  }

  /**
   * A counted figure.
   *
   * @param value in the unit of the sky's irradiance
   * @param error its standard error, by chance alone
   */
  public record Count(double value, double error) {
    /** The sum of two figures; errors added as if they were one and the same, which is too much. */
    public Count plus(Count other) {
      return new Count(value + other.value, error + other.error);
    }
  }

  /** Number of packets that were sent. */
  public long packets() {
    return batches.packets();
  }

  /** Reflected by the first face, or never in the medium. */
  public Count returned() {
    return ended(Fate.RETURNED);
  }

  /** Left upward after it had been in the medium. */
  public Count escaped() {
    return ended(Fate.ESCAPED);
  }

  /** Left downward, with what was never scattered. */
  public Count transmitted() {
    return ended(Fate.BELOW);
  }

  /** What ended in some way. */
  public Count ended(Fate fate) {
    return ledger(1 + fate.ordinal());
  }

  /** What was launched. */
  public Count launched() {
    return ledger(0);
  }

  /** Absorbed within layer {@code i}. */
  public Count absorbed(int i) {
    return ledger(1 + Fate.values().length + i);
  }

  /** Downwelling plane irradiance E_d at depth {@code i}. */
  public Count downwelling(int i) {
    return plane(0, i);
  }

  /** Upwelling plane irradiance E_u at depth {@code i}. */
  public Count upwelling(int i) {
    return plane(1, i);
  }

  /** Downwelling scalar irradiance E_od at depth {@code i}. */
  public Count downwellingScalar(int i) {
    return plane(2, i);
  }

  /** Upwelling scalar irradiance E_ou at depth {@code i}. */
  public Count upwellingScalar(int i) {
    return plane(3, i);
  }

  /** Radiance that comes from straight above at depth {@code i}: mean of 8° about it [sr⁻¹]. */
  public Count radianceFromAbove(int i) {
    Count flux = plane(4, i);
    return new Count(flux.value / CAP_WEIGHT, flux.error / CAP_WEIGHT);
  }

  /**
   * Radiance that goes straight up at depth {@code i}: mean of 8° about it [sr⁻¹]. The layers must
   * share one refractive index.
   */
  public Count radianceUpward(int i) {
    return plane(PlaneMeters.KINDS, i);
  }

  private Count plane(int kind, int i) {
    int slot = kind * planes + i;
    return new Count(batches.mean(slot), batches.error(slot));
  }

  private Count ledger(int i) {
    return new Count(batches.ledger(i), batches.ledgerError(i));
  }
}
