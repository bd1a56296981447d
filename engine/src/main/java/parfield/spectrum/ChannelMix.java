package parfield.spectrum;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Outputs of a fixture's channels, the light they make together, and how near it comes to a goal.
 *
 * @param outputs fraction of full output, 0 to 1, one a channel in the order given
 * @param spectrum their light together, in the channels' scale
 * @param parPhotons photons of PAR that are left at this mix: PPFD [µmol m⁻² s⁻¹] where the
 *     channels are spectra of irradiance, PPF [µmol s⁻¹] where they are of flux
 * @param share {@code parPhotons} over what all channels give at the highest outputs allowed; 0
 *     where they give no PAR
 * @param mismatch what the goal measures, see {@link MixGoal}
 */
public record ChannelMix(
    List<Double> outputs,
    PhotonSpectrum spectrum,
    double parPhotons,
    double share,
    double mismatch) {
  public ChannelMix {
    outputs = List.copyOf(outputs);
  }

  /**
   * The mix nearest to a goal, at the greatest brightness that the limits allow.
   *
   * <p>No outputs within the limits have a smaller mismatch: the problem is brought into the form
   * of a convex one, whose optimum is found and known by its conditions (see {@link Cone} and
   * {@link BoundedLeastSquares}). Where channels are so alike that several mixes are equally near,
   * one of them is given.
   *
   * @param goal what to come near to
   * @param channels their light at full output, at least one, all of one scale that is known
   * @param limits one a channel
   * @throws IllegalArgumentException if scales differ or are unknown, the numbers differ, or no
   *     channel gives any light of the goal's kind
   */
  public static ChannelMix nearest(
      MixGoal goal, List<ChannelLight> channels, List<OutputRange> limits) {
    requireMixable(channels, limits.size(), "limits");
    MixGoal.Problem problem = goal.problem(channels);
    double[] low = limits.stream().mapToDouble(OutputRange::low).toArray();
    double[] high = limits.stream().mapToDouble(OutputRange::high).toArray();
    double[] outputs = Cone.nearest(problem.a(), problem.b(), low, high);
    List<Double> found = new ArrayList<>();
    boolean lit = false;
    for (double output : outputs) {
      lit |= output > 0;
      found.add(output);
    }
    if (!lit) {
      throw new IllegalArgumentException(
          String.format(
              "no channel of %s may give light where the goal wants some; raise the limits or"
                  + " choose another goal",
              channels.stream().map(ChannelLight::name).toList()));
    }
    return at(goal, channels, limits, found);
  }

  /**
   * Any outputs, judged by a goal.
   *
   * @param goal what to come near to
   * @param channels their light at full output
   * @param limits one a channel, for what {@link #share} is of
   * @param outputs fraction of full output, one a channel, at least one above 0
   * @throws IllegalArgumentException if the goal is not defined for that light
   */
  public static ChannelMix at(
      MixGoal goal, List<ChannelLight> channels, List<OutputRange> limits, List<Double> outputs) {
    requireMixable(channels, outputs.size(), "outputs");
    List<PhotonSpectrum> spectra = channels.stream().map(ChannelLight::spectrum).toList();
    PhotonSpectrum light = Superposition.of(spectra, outputs);
    double par = 0;
    double most = 0;
    for (int c = 0; c < outputs.size(); c++) {
      par += outputs.get(c) * spectra.get(c).parPhotons();
      most += limits.get(c).high() * spectra.get(c).parPhotons();
    }
    Finding<Double> mismatch = goal.mismatch(light);
    if (mismatch instanceof Finding.NotDefined<Double> none) {
      throw new IllegalArgumentException("the mix cannot be judged: " + none.reason());
    }
    return new ChannelMix(
        outputs, light, par, most > 0 ? par / most : 0, mismatch.toOptional().orElseThrow());
  }

  private static void requireMixable(List<ChannelLight> channels, int count, String what) {
    if (channels.isEmpty() || channels.size() != count) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a mix needs one channel or more and as many %s; got %d and %d",
              what,
              channels.size(),
              count));
    }
    Scale scale = channels.get(0).spectrum().scale();
    for (ChannelLight channel : channels) {
      if (channel.spectrum().scale() == Scale.RELATIVE || channel.spectrum().scale() != scale) {
        throw new IllegalArgumentException(
            String.format(
                "channel %s: to be mixed, all spectra must be in one known unit; measure each"
                    + " channel's PPFD at full output at one place and scale its spectrum to that",
                channel.name()));
      }
    }
  }
}
