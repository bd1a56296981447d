package parfield.field;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.optics.Agitation;
import parfield.tank.Tank;

/**
 * A tank that leaves the ground of the fast solver: what it leaves out here, and what that costs.
 *
 * <p>The sizes are those that the comparison with the reference solver found in tanks of common
 * size; see the validation page.
 *
 * @param cause what the solver leaves out, as the beginning of a sentence
 * @param typical median size of the relative error of E_d
 * @param high its 95th percentile
 */
public record Departure(String cause, double typical, double high) {
  /** Rays that are scattered more often than this on their way down make a difference. */
  private static final double HAZE = 0.1;

  /** Median and 95th percentile of the error per scattering on the way straight down. */
  private static final double HAZE_TYPICAL = 0.033;

  private static final double HAZE_HIGH = 0.08;

  /** Dry glass of at least this height throws noticeable light into the tank [m]. */
  private static final double DRY_GLASS = 0.02;

  /**
   * What the fast solver leaves out in a tank and should not; empty where it stands on its ground.
   */
  public static List<Departure> of(Tank tank) {
    List<Departure> departures = new ArrayList<>();
    if (tank.surface() == Agitation.STRONG) {
      departures.add(
          new Departure(
              "The surface moves strongly, and what waves do to light between the shadows is left"
                  + " out",
              0.01,
              0.025));
    }
    double scatterings = tank.water().scattering().coefficient() * tank.depth();
    if (scatterings > HAZE) {
      departures.add(
          new Departure(
              "The water is turbid, and scattering is left out",
              HAZE_TYPICAL * scatterings,
              HAZE_HIGH * scatterings));
    }
    if (tank.opening().freeboard() >= DRY_GLASS) {
      departures.add(
          new Departure(
              "The panes stand above the water, and what their dry glass throws back is left out",
              0.005,
              0.026));
    }
    return List.copyOf(departures);
  }

  /** A sentence: what is left out, and what that costs. */
  public String inWords() {
    return String.format(
        Locale.ROOT,
        "%s: predicted PPFD is off by about %s %%, by %s %% in places.",
        cause,
        percent(typical),
        percent(high));
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, share < 0.0995 ? "%.1f" : "%.0f", 100 * share);
  }
}
