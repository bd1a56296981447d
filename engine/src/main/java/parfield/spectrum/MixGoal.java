package parfield.spectrum;

import java.util.List;
import java.util.Map;
import org.ejml.data.DMatrixRMaj;

/** What a mix of channels should come near to, whatever its brightness. Immutable. */
public abstract sealed class MixGoal permits ShapeGoal, ShareGoal {
  /**
   * Least squares whose nearest direction is the best mix.
   *
   * @param a light by output, rows × channels
   * @param b the wanted direction
   */
  record Problem(DMatrixRMaj a, double[] b) {}

  /**
   * The shape of a reference spectrum. The mismatch is the spectral angle to it [rad]: the angle
   * between the two photon spectra as vectors, ⟨f, g⟩ = ∫ f g dλ over the range.
   *
   * @param reference the wanted light, any scale
   * @param over where the shapes are compared; the reference must hold photons there
   */
  public static MixGoal shape(PhotonSpectrum reference, WaveBand over) {
    return new ShapeGoal(reference, over);
  }

  /**
   * Shares of photons in wavebands. The mismatch is the root mean square of (share − wanted share)
   * over the bands that are wanted.
   *
   * @param division the bands of which shares are taken: of all photons from the first band's
   *     beginning to the last one's end
   * @param wanted share by band, 0 to 1; bands not named may hold what they will
   */
  public static MixGoal shares(WaveBands division, Map<WaveBand, Double> wanted) {
    return new ShareGoal(division, wanted);
  }

  /**
   * How far light is from the goal: 0 if it meets it.
   *
   * @param light any scale
   */
  public abstract Finding<Double> mismatch(PhotonSpectrum light);

  abstract Problem problem(List<ChannelLight> channels);
}
