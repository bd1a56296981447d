package parfield.care;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import parfield.field.Places;
import parfield.plan.Zone;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.units.Estimate;

/**
 * How much of a zone a group of corals can live in.
 *
 * @param group who
 * @param zone where
 * @param places in the zone that were asked
 * @param fits share of them where peak and dose are in the group's ranges
 * @param byPeak share of them where the peak is in its range, whatever the dose
 * @param byDose share of them where the dose is in its range, whatever the peak
 * @param standings share of them in each standing, by the best estimate; they add up to 1
 */
public record Home(
    CoralGroup group,
    Zone zone,
    int places,
    Estimate fits,
    Estimate byPeak,
    Estimate byDose,
    Map<Standing, Double> standings) {
  /** Share of a zone from which on a group is at home in it. */
  public static final double MOST = 0.5;

  /** What a share says in a word. */
  public enum Answer {
    /** Half of the places or more fit in 95 of 100 truths. */
    YES("yes"),
    /** The interval lies on both sides of half. */
    CLOSE("too close to call"),
    /** Some places fit. */
    SOME("in places"),
    /** In 95 of 100 truths less than one place in a hundred fits. */
    NO("no");

    private final String word;

    Answer(String word) {
      this.word = word;
    }

    /** In a few words. */
    public String word() {
      return word;
    }
  }

  public Home {
    Objects.requireNonNull(group, "group");
    Objects.requireNonNull(zone, "zone");
    Objects.requireNonNull(fits, "fits");
    Objects.requireNonNull(byPeak, "byPeak");
    Objects.requireNonNull(byDose, "byDose");
    standings = Collections.unmodifiableMap(new EnumMap<>(standings));
  }

  /** Whether the group can live in the zone. */
  public Answer answer() {
    if (fits.low() >= MOST) {
      return Answer.YES;
    }
    if (fits.high() >= MOST) {
      return Answer.CLOSE;
    }
    return fits.high() < 0.01 ? Answer.NO : Answer.SOME;
  }

  /** What most of the places are for the group, by the best estimate. */
  public Standing mostly() {
    return standings.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
  }

  /**
   * Every group in every zone.
   *
   * @param light of a day at the places
   * @param places where, in the order of {@code light}
   * @param zones those without a place are left out
   * @param groups who is asked about
   * @return zone by zone, in each the groups in their order
   */
  public static List<Home> of(
      DayLight light, Places places, List<Zone> zones, List<CoralGroup> groups) {
    List<Home> homes = new ArrayList<>();
    for (Zone zone : zones) {
      int[] inside =
          IntStream.range(0, places.size()).filter(i -> zone.contains(places.get(i))).toArray();
      if (inside.length > 0) {
        groups.forEach(group -> homes.add(of(light, inside, zone, group)));
      }
    }
    return List.copyOf(homes);
  }

  private static Home of(DayLight light, int[] inside, Zone zone, CoralGroup group) {
    Map<Standing, Double> standings = new EnumMap<>(Standing.class);
    for (Standing standing : Standing.values()) {
      standings.put(standing, share(light, 0, inside, group, standing));
    }
    Estimate fits = light.ofTruths(truth -> share(light, truth, inside, group, Standing.FITS));
    Estimate byPeak =
        light.ofTruths(truth -> share(inside, place -> group.bright(light.peak(truth, place))));
    Estimate byDose =
        light.ofTruths(truth -> share(inside, place -> group.dosed(light.dli(truth, place))));
    return new Home(group, zone, inside.length, fits, byPeak, byDose, standings);
  }

  private static double share(
      DayLight light, int truth, int[] inside, CoralGroup group, Standing standing) {
    return share(
        inside,
        place -> group.under(light.peak(truth, place), light.dli(truth, place)) == standing);
  }

  private static double share(int[] inside, IntPredicate so) {
    return (double) Arrays.stream(inside).filter(so).count() / inside.length;
  }

  /**
   * The water cut into layers of one height and parts of one length, top left first.
   *
   * @param tank the tank
   * @param layers how many, 1 to 3
   * @param parts along the length, 1 or 3
   */
  public static List<Zone> zones(Tank tank, int layers, int parts) {
    List<Zone> zones = new ArrayList<>();
    for (int layer = 0; layer < layers; layer++) {
      for (int part = 0; part < parts; part++) {
        zones.add(
            new Zone(
                name(layer, layers, part, parts),
                new Rectangle(
                    tank.length() * part / parts,
                    tank.length() * (part + 1) / parts,
                    0,
                    tank.width()),
                tank.depth() * layer / layers,
                tank.depth() * (layer + 1) / layers));
      }
    }
    return zones;
  }

  private static String name(int layer, int layers, int part, int parts) {
    List<String> heights =
        switch (layers) {
          case 1 -> List.of("all heights");
          case 2 -> List.of("upper half", "lower half");
          case 3 -> List.of("upper third", "middle third", "lower third");
          default ->
              throw new IllegalArgumentException("water is cut into 1 to 3 layers; got " + layers);
        };
    List<String> sides =
        switch (parts) {
          case 1 -> List.of("");
          case 3 -> List.of(", left", ", centre", ", right");
          default ->
              throw new IllegalArgumentException("a length is cut into 1 or 3 parts; got " + parts);
        };
    return heights.get(layer) + sides.get(part);
  }
}
