package parfield.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import parfield.survey.Band;
import parfield.tank.Tank;

/**
 * Everything that a plan must meet, the bands that it reports on, and what was assumed.
 *
 * @param bands every band of the bench, completed by those demanded; coverage is reported for each
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
    all = List.copyOf(all);
    bands = completed(bands, all);
    assumptions = List.copyOf(assumptions);
    if (all.isEmpty()) {
      throw new IllegalArgumentException(
          "a plan needs at least one demand; state one, or state a band and let custom decide");
    }
    Set<String> names = new HashSet<>();
    for (Band band : bands) {
      if (!names.add(band.name())) {
        throw new IllegalArgumentException(
            String.format("two different bands are named %s; give each its own name", band.name()));
      }
    }
  }

  private static List<Band> completed(List<Band> bands, List<Demand> demands) {
    Set<Band> complete = new LinkedHashSet<>(bands);
    for (Demand demand : demands) {
      if (demand instanceof Demand.Coverage coverage) {
        complete.add(coverage.band());
      }
    }
    return List.copyOf(complete);
  }

  /** Demands as a person stated them; nothing is assumed. */
  public static Demands stated(List<Band> bands, List<Demand> demands) {
    return new Demands(bands, demands, List.of());
  }

  /**
   * What custom asks for where a person wants one band and states no demand: {@link
   * #CUSTOMARY_COVERAGE} of the water volume in it and {@link #CUSTOMARY_RETENTION} of the light.
   *
   * @param bands to report on
   * @param aim the band that is wanted
   */
  public static Demands byCustom(List<Band> bands, Band aim) {
    return byCustom(
        bands,
        List.of(aim),
        String.format(
            Locale.ROOT,
            "No demand was stated; assumed %s of the water volume in %s (common practice, no"
                + " source).",
            Wording.percent(CUSTOMARY_COVERAGE),
            Wording.band(aim)));
  }

  /**
   * What custom asks for of a mixed tank where no demand is stated: {@link #CUSTOMARY_COVERAGE} of
   * the water volume in band, in equal shares for each band, and {@link #CUSTOMARY_RETENTION} of
   * the light.
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
    if (bands.size() == 1) {
      return byCustom(bands, bands.get(0));
    }
    return byCustom(
        bands,
        bands,
        String.format(
            Locale.ROOT,
            "No demand was stated; assumed a mixed tank with %s of the water volume in band, shared"
                + " equally among %d bands (common practice, no source).",
            Wording.percent(CUSTOMARY_COVERAGE),
            bands.size()));
  }

  private static Demands byCustom(List<Band> bands, List<Band> wanted, String assumed) {
    List<Demand> all = new ArrayList<>();
    for (Band band : wanted) {
      all.add(new Demand.Coverage(band, CUSTOMARY_COVERAGE / wanted.size(), Extent.volume()));
    }
    all.add(new Demand.Retention(CUSTOMARY_RETENTION, Extent.volume()));
    return new Demands(
        bands,
        all,
        List.of(
            assumed,
            String.format(
                Locale.ROOT,
                "No demand was stated; assumed that at least %s of the lowest height's mean PPFD is"
                    + " kept (common practice, no source).",
                Wording.percent(CUSTOMARY_RETENTION))));
  }

  /** Where a band is wanted: where a demand says so, else the whole volume. */
  Extent extentOf(Band band) {
    return all.stream()
        .filter(d -> d instanceof Demand.Coverage coverage && coverage.band().equals(band))
        .map(Demand::extent)
        .findFirst()
        .orElseGet(Extent::volume);
  }

  /**
   * Every extent to look at: the volume, the plane at a depth [m], the living surface where there
   * is rock, and what the demands name.
   */
  List<Extent> extents(Tank tank, double planeDepth) {
    Set<Extent> extents = new LinkedHashSet<>();
    extents.add(Extent.volume());
    extents.add(Extent.plane(planeDepth));
    if (!tank.aquascape().isEmpty()) {
      extents.add(Extent.livingSurface());
    }
    all.forEach(demand -> extents.add(demand.extent()));
    return List.copyOf(extents);
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
