package parfield.photon;

import parfield.field.UnitFields;

/**
 * What the reference solver counted, with standard errors. Immutable.
 *
 * <p>Unless said otherwise at the setting that the rig's hangings carry. Errors are standard errors
 * of chance alone, in the unit of the value.
 */
public final class TracedField {
  private final Batches batches;
  private final UnitFields unitFields;
  private final double[] scales;
  private final int places;
  private final int voxels;
  private final int[] firstChannels;

  TracedField(
      Batches batches,
      UnitFields unitFields,
      double[] scales,
      int places,
      int voxels,
      int[] firstChannels) {
    this.firstChannels = firstChannels;
    this.batches = batches;
    this.unitFields = unitFields;
    this.scales = scales;
    this.places = places;
    this.voxels = voxels;
  }

  /** E_d of each channel at full output, at the places. */
  public UnitFields unitFields() {
    return unitFields;
  }

  /** Number of packets that were sent. */
  public long packets() {
    return batches.packets();
  }

  /** The largest relative standard error of a wanted value, as {@link Effort#target} counts it. */
  public double worstError() {
    return batches.worstError();
  }

  /** E_d at place {@code i} [µmol m⁻² s⁻¹]. */
  public double downwelling(int i) {
    return value(i);
  }

  /** Standard error of {@link #downwelling} [µmol m⁻² s⁻¹]. */
  public double downwellingError(int i) {
    return error(i);
  }

  /** E_u at place {@code i} [µmol m⁻² s⁻¹]. */
  public double upwelling(int i) {
    return value(places + i);
  }

  /** Standard error of {@link #upwelling} [µmol m⁻² s⁻¹]. */
  public double upwellingError(int i) {
    return error(places + i);
  }

  /** E_o in voxel {@code i} [µmol m⁻² s⁻¹]. */
  public double scalar(int i) {
    return value(2 * places + i);
  }

  /**
   * E_o of one channel of one hanging at full output, in voxel {@code i} [µmol m⁻² s⁻¹].
   *
   * @param hanging index of the hanging in the rig
   * @param channel index of the channel in its fixture
   */
  public double scalarOf(int hanging, int channel, int i) {
    int slot = 2 * places + i;
    return batches.unit(slot, firstChannels[hanging] + channel) * scales[slot];
  }

  /** Standard error of {@link #scalar} [µmol m⁻² s⁻¹]. */
  public double scalarError(int i) {
    return error(2 * places + i);
  }

  /** What arrives on the outer face of placement {@code i} [µmol m⁻² s⁻¹]. */
  public double onPlacement(int i) {
    return value(2 * places + voxels + i);
  }

  /** Standard error of {@link #onPlacement} [µmol m⁻² s⁻¹]. */
  public double onPlacementError(int i) {
    return error(2 * places + voxels + i);
  }

  /** Photon flux that the lamps sent, every channel at full output [µmol s⁻¹]. */
  public double launched() {
    return batches.ledger(0);
  }

  /** Standard error of {@link #launched} [µmol s⁻¹]. */
  public double launchedError() {
    return batches.ledgerError(0);
  }

  /** What of {@link #launched} ended so [µmol s⁻¹]; the sum over all fates is what was launched. */
  public double ended(Fate fate) {
    return batches.ledger(1 + fate.ordinal());
  }

  private double value(int slot) {
    return batches.mean(slot) * scales[slot];
  }

  private double error(int slot) {
    return batches.error(slot) * scales[slot];
  }
}
