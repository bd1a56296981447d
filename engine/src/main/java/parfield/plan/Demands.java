package parfield.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import parfield.survey.Band;
import parfield.tank.Tank;

/**
 * Everything that a plan must meet, the bands that it reports on, and what was assumed.
 *
 * @param bands every band of the bench; coverage is reported for each, demanded or not
 * @param all the demands, at least one
 * @param assumptions sentences: which demands were not stated but assumed, and why
 */
public record Demands(List<Band> bands, List<Demand> all, List<String> assumptions) {
  /** Wanted coverage where none is stated: common practice, no source. */
  public static final double CUSTOMARY_COVERAGE = 0.70;

  /** Wanted retention where none is stated: common practice, no source. */
  public static final double CUSTOMARY_RETENTION = 0.85;

  /** Wanted ends-to-centre ratio of several fixtures: common practice, no source. */
  public static final double CUSTOMARY_ENDS_TO_CENTRE = 0.75;

  public Demands {
    bands = List.copyOf(bands);
    all = List.copyOf(all);
    assumptions = List.copyOf(assumptions);
    if (all.isEmpty()) {
      throw new IllegalArgumentException(
          "a plan needs at least one demand; state one, or state a band and let custom decide");
    }
    Set<String> names = new HashSet<>();
    for (Band band : bands) {
      if (!names.add(band.name())) {
        throw new IllegalArgumentException(
            String.format("two bands are named %s; give each its own name", band.name()));
      }
    }
  }

  /** Demands as a person stated them; nothing is assumed. */
  public static Demands stated(List<Band> bands, List<Demand> demands) {
    return new Demands(bands, demands, List.of());
  }

  /**
   * What custom asks for where a person stated bands but no demand: {@link #CUSTOMARY_COVERAGE} of
   * the water volume in the band, shared equally among several bands, and {@link
   * #CUSTOMARY_RETENTION} of the light.
   *
   * @param bands at least one
   * @throws IllegalArgumentException if there is no band; the message says what to add
   */
  public static Demands byCustom(List<Band> bands) {
    if (bands.isEmpty()) {
      throw new IllegalArgumentException(
          "a recommendation needs a demand or a band to aim at; state a band, such as 75 to 150 "
              + Wording.PPFD);
    }
    double share = CUSTOMARY_COVERAGE / bands.size();
    List<Demand> all = new ArrayList<>();
    for (Band band : bands) {
      all.add(new Demand.Coverage(band, share, Extent.volume()));
    }
    all.add(new Demand.Retention(CUSTOMARY_RETENTION, Extent.volume()));
    List<String> assumptions = new ArrayList<>();
    String shared =
        bands.size() == 1
            ? ""
            : String.format(
                Locale.ROOT, ", shared equally among %d bands as for a mixed tank", bands.size());
    assumptions.add(
        String.format(
            Locale.ROOT,
            "No demand was stated; assumed %s of the water volume in band%s (common practice, no "
                + "source).",
            Wording.percent(CUSTOMARY_COVERAGE),
            shared));
    assumptions.add(
        String.format(
            Locale.ROOT,
            "No demand was stated; assumed that at least %s of the lowest height's mean PPFD must "
                + "be kept (common practice, no source).",
            Wording.percent(CUSTOMARY_RETENTION)));
    return new Demands(bands, all, assumptions);
  }

  /**
   * Checks every demand against a tank.
   *
   * @throws IllegalArgumentException if an extent lies outside the water; the message names it
   */
  void checkInside(Tank tank) {
    Objects.requireNonNull(tank, "tank");
    all.forEach(demand -> demand.extent().checkInside(tank));
  }
}
