package parfield.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.IntStream;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Tank;

/**
 * Which rigs a plan looks at.
 *
 * @param tank over which they hang
 * @param patterns one hanging for each kind of fixture: tilt, yaw, dials, and as x and y the middle
 *     of the arrangement; its height is not used
 * @param heights mounting heights [m], ascending, at least one; the lowest is the reference of
 *     retention
 * @param counts numbers of fixtures, ascending, at least one
 * @param spacings centre to centre [m], ascending; none to derive them from the tank and the count
 * @param planeDepth of the plane that figures are reported on beside the volume [m]
 * @param mix what may be done with the channels' ratio
 * @param ceiling greatest mounting height that the room allows [m], may be infinite
 */
public record Search(
    Tank tank,
    List<Hanging> patterns,
    List<Double> heights,
    List<Integer> counts,
    List<Double> spacings,
    double planeDepth,
    Mix mix,
    double ceiling) {
  /** Step of the heights that are looked at by default [m]. */
  public static final double HEIGHT_STEP = 0.05;

  /** By default heights run up to at least this multiple of the lowest. */
  public static final double HEIGHT_SPAN = 2;

  /** Spacings looked at by default, as multiples of the tank's length over the count. */
  public static final List<Double> SPACING_FACTORS = List.of(0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2);

  /** Lengths on a person's tape: whole centimetres [m]. */
  static final double TAPE = 0.01;

  public Search {
    Objects.requireNonNull(tank, "tank");
    Objects.requireNonNull(mix, "mix");
    patterns = List.copyOf(patterns);
    heights = ascending("mounting heights", heights);
    counts = List.copyOf(new TreeSet<>(counts));
    spacings = ascending("spacings", spacings);
    if (patterns.isEmpty() || heights.isEmpty() || counts.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a search needs at least one fixture, one mounting height and one count; got %d, %d,"
                  + " %d",
              patterns.size(),
              heights.size(),
              counts.size()));
    }
    if (!(ceiling > 0) || heights.get(heights.size() - 1) > ceiling) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a mounting height of %s m does not fit under a ceiling %s m over the water",
              heights.get(heights.size() - 1),
              ceiling));
    }
    if (!(planeDepth >= 0 && planeDepth <= tank.depth())) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the plane to report on must lie in the water, 0 to %s m deep; got %s m",
              tank.depth(),
              planeDepth));
    }
  }

  private static List<Double> ascending(String what, List<Double> lengths) {
    for (double length : lengths) {
      if (!(length > 0) || Double.isInfinite(length)) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "%s must be above 0 m; got %s m", what, length));
      }
    }
    return List.copyOf(new TreeSet<>(lengths));
  }

  /**
   * The search that a bench suggests.
   *
   * <p>Every kind of fixture that hangs in one of the rigs, dialled and turned as where it hangs
   * first, about the middle of that rig; heights in steps of {@link #HEIGHT_STEP} from the lowest
   * stated to the highest stated, at least to {@link #HEIGHT_SPAN} times the lowest, and all that
   * are stated; 1 to as many fixtures as hang in the fullest rig; spacings derived; the channels'
   * ratio kept; no ceiling.
   *
   * @param rigs of the bench, over one tank, at least one
   * @param planeDepth of the plane to report on, such as that of the survey [m]
   */
  public static Search around(List<Rig> rigs, double planeDepth) {
    if (rigs.isEmpty()) {
      throw new IllegalArgumentException(
          "a search needs a rig to start from: which fixture, hung about where; got none");
    }
    Map<String, Hanging> patterns = new LinkedHashMap<>();
    TreeSet<Double> heights = new TreeSet<>();
    int most = 1;
    for (Rig rig : rigs) {
      double x = rig.hangings().stream().mapToDouble(Hanging::x).average().orElseThrow();
      double y = rig.hangings().stream().mapToDouble(Hanging::y).average().orElseThrow();
      for (Hanging hanging : rig.hangings()) {
        patterns.putIfAbsent(hanging.fixture().name(), hanging.at(x, y, hanging.height()));
        heights.add(hanging.height());
      }
      most = Math.max(most, rig.hangings().size());
    }
    double lowest = heights.first();
    double highest = Math.max(heights.last(), HEIGHT_SPAN * lowest);
    for (double height = lowest; height < highest + TAPE / 2; height += HEIGHT_STEP) {
      double candidate = onTape(height);
      if (heights.stream().noneMatch(stated -> Math.abs(stated - candidate) < 1.5 * TAPE)) {
        heights.add(candidate);
      }
    }
    return new Search(
        rigs.get(0).tank(),
        List.copyOf(patterns.values()),
        List.copyOf(heights),
        IntStream.rangeClosed(1, Math.min(most, Arrangement.MOST_FIXTURES)).boxed().toList(),
        List.of(),
        planeDepth,
        Mix.KEPT,
        Double.POSITIVE_INFINITY);
  }

  /** A length rounded to what a person sets with a tape [m]. */
  static double onTape(double length) {
    // Division by 100 gives the double nearest to the decimal; multiplication by 0.01 does not.
    return Math.round(length / TAPE) / 100.0;
  }

  /** Every arrangement of this search that can hang, fewest fixtures first. */
  List<Arrangement> arrangements() {
    List<Arrangement> all = new ArrayList<>();
    for (int count : counts) {
      for (Hanging pattern : patterns) {
        all.addAll(arrangements(pattern, count));
      }
    }
    if (all.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "no stated spacing lets %s fixtures hang over a tank %s m long without overlap; state"
                  + " other spacings or counts",
              counts,
              tank.length()));
    }
    return all;
  }

  /** Every arrangement of some fixtures of one kind that can hang. */
  List<Arrangement> arrangements(Hanging pattern, int count) {
    if (count == 1) {
      return List.of(Arrangement.single(pattern));
    }
    List<Arrangement> all = new ArrayList<>();
    for (double spacing : spacingsOf(count)) {
      all.add(Arrangement.row(pattern, count, spacing));
    }
    if (count == 4) {
      for (double spacing : spacingsOf(2)) {
        all.add(Arrangement.twoByTwo(pattern, spacing));
      }
    }
    all.removeIf(arrangement -> !arrangement.fits(tank));
    return all;
  }

  private List<Double> spacingsOf(int along) {
    if (!spacings.isEmpty()) {
      return spacings;
    }
    return SPACING_FACTORS.stream()
        .map(factor -> onTape(factor * tank.length() / along))
        .filter(spacing -> spacing > 0)
        .distinct()
        .toList();
  }

  /** This search over other heights [m]. */
  public Search withHeights(List<Double> newHeights) {
    return new Search(tank, patterns, newHeights, counts, spacings, planeDepth, mix, ceiling);
  }

  /** This search over other numbers of fixtures. */
  public Search withCounts(List<Integer> newCounts) {
    return new Search(tank, patterns, heights, newCounts, spacings, planeDepth, mix, ceiling);
  }

  /** This search over other spacings [m]. */
  public Search withSpacings(List<Double> newSpacings) {
    return new Search(tank, patterns, heights, counts, newSpacings, planeDepth, mix, ceiling);
  }

  /** This search with another freedom of the channels. */
  public Search withMix(Mix newMix) {
    return new Search(tank, patterns, heights, counts, spacings, planeDepth, newMix, ceiling);
  }

  /** This search under a ceiling [m]; heights that do not fit are left out. */
  public Search withCeiling(double newCeiling) {
    List<Double> fitting = heights.stream().filter(h -> h <= newCeiling).toList();
    return new Search(
        tank,
        patterns,
        fitting.isEmpty() ? heights : fitting,
        counts,
        spacings,
        planeDepth,
        mix,
        newCeiling);
  }

  /** This search with other fixtures in the same places. */
  Search withPatterns(List<Hanging> newPatterns) {
    return new Search(tank, newPatterns, heights, counts, spacings, planeDepth, mix, ceiling);
  }
}
