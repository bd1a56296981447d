package parfield.plan;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * The exact best scale of light: one sweep over the ends of all intervals.
 *
 * <p>A place with light p at scale 1 is in a band [lo, hi] for every scale s in [lo/p, hi/p]. Which
 * places are in their band changes only where an interval begins or ends; so with n places it is
 * enough to sort 2n ends and to look once at each. Intervals are closed. Nothing is approximated:
 * the result is the same as that of trying every scale.
 */
final class IntervalSweep {
  /** Merits closer than this are the same: rounding of sums of weights. */
  private static final double TIE = 1e-12;

  private IntervalSweep() {}

  /**
   * Weighted intervals of scale that are counted together: the places of one demand.
   *
   * <p>Immutable by agreement inside this package: arrays are kept, not copied.
   */
  static final class Group {
    private final double[] from;
    private final double[] to;
    private final double[] weight;

    private Group(double[] from, double[] to, double[] weight) {
      this.from = from;
      this.to = to;
      this.weight = weight;
    }

    /** Places that all weigh the same. */
    static Group of(double[] light, double from, double to) {
      return of(new double[light.length], light, from, to);
    }

    /** Places that all weigh the same, under light that scales and light that stays. */
    static Group of(double[] background, double[] light, double from, double to) {
      return of(background, light, ones(light.length), from, to);
    }

    /**
     * Places under light that scales and light that stays.
     *
     * @param background light that stays at each place, 0 or more
     * @param light light at scale 1 at each place, 0 or more
     * @param weight of each place, 0 or more, not all 0
     * @param from lower end of the band, 0 or more
     * @param to upper end of the band
     */
    static Group of(double[] background, double[] light, double[] weight, double from, double to) {
      double[] begin = new double[light.length];
      double[] end = new double[light.length];
      for (int i = 0; i < light.length; i++) {
        begin[i] = scaleFor(from, background[i], light[i]);
        end[i] = lastScaleFor(to, background[i], light[i]);
      }
      return new Group(begin, end, weight);
    }

    /** One interval that asks every place to stay at or below a limit. */
    static Group limit(double[] background, double[] light, double limit) {
      double end = Double.POSITIVE_INFINITY;
      for (int i = 0; i < light.length; i++) {
        end = Math.min(end, lastScaleFor(limit, background[i], light[i]));
      }
      return new Group(new double[] {0}, new double[] {end}, ones(1));
    }

    /** Least scale of 0 or more that brings a place up to {@code wanted}. */
    private static double scaleFor(double wanted, double background, double light) {
      if (background >= wanted) {
        return 0;
      }
      return light > 0 ? (wanted - background) / light : Double.POSITIVE_INFINITY;
    }

    /** Greatest scale that keeps a place at or below {@code limit}; negative if there is none. */
    private static double lastScaleFor(double limit, double background, double light) {
      if (background > limit) {
        return -1;
      }
      return light > 0 ? (limit - background) / light : Double.POSITIVE_INFINITY;
    }

    private static double[] ones(int n) {
      double[] ones = new double[n];
      Arrays.fill(ones, 1);
      return ones;
    }
  }

  /**
   * Scales that are all equally good.
   *
   * @param from the least of them, 0 or more
   * @param to the greatest of them
   * @param merit how good they are
   */
  record Plateau(double from, double to, double merit) {
    /** The scale farthest from both ends by ratio; from 0 on, half of the upper end. */
    double middle() {
      return from > 0 ? Math.sqrt(from * to) : to / 2;
    }

    private double width() {
      return to > 0 ? (to - from) / (to + from) : 0;
    }
  }

  /** Scale that puts the greatest weight of one group in band, and the share it gets. */
  static Plateau deepest(Group group, double upTo) {
    return best(List.of(group), shares -> shares[0], upTo);
  }

  /**
   * The widest plateau of greatest merit.
   *
   * @param groups what is counted together
   * @param merit judges the share of each group's weight that is in band, each 0 to 1; the array is
   *     reused between calls
   * @param upTo greatest scale to look at, above 0; may be infinite
   * @return of all plateaus of the greatest merit the widest by ratio, the lowest of equal ones
   */
  static Plateau best(List<Group> groups, ToDoubleFunction<double[]> merit, double upTo) {
    if (!(upTo > 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "scales must be searched up to more than 0; got %s", upTo));
    }
    Ends ends = new Ends(groups);
    double[] inBand = new double[groups.size()];
    double[] shares = new double[groups.size()];
    Runs runs = new Runs();
    int begun = 0;
    int ended = 0;
    double at = 0;
    while (begun < ends.size || ended < ends.size) {
      double next =
          Math.min(
              begun < ends.size ? ends.begin[ends.byBegin[begun]] : Double.POSITIVE_INFINITY,
              ended < ends.size ? ends.end[ends.byEnd[ended]] : Double.POSITIVE_INFINITY);
      if (next > upTo || next == Double.POSITIVE_INFINITY) {
        break;
      }
      if (begun + ended == 0 && next > 0) {
        runs.from(0, merit(ends, inBand, shares, merit));
      }
      at = next;
      while (begun < ends.size && ends.begin[ends.byBegin[begun]] == at) {
        int interval = ends.byBegin[begun++];
        inBand[ends.group[interval]] += ends.weight[interval];
      }
      runs.from(at, merit(ends, inBand, shares, merit));
      if (at < upTo) {
        while (ended < ends.size && ends.end[ends.byEnd[ended]] == at) {
          int interval = ends.byEnd[ended++];
          inBand[ends.group[interval]] -= ends.weight[interval];
        }
        runs.from(at, merit(ends, inBand, shares, merit));
      } else {
        break;
      }
    }
    if (begun + ended == 0) {
      runs.from(0, merit(ends, inBand, shares, merit));
    }
    return runs.widest(Double.isInfinite(upTo) ? Math.max(at, Double.MIN_NORMAL) : upTo);
  }

  private static double merit(
      Ends ends, double[] inBand, double[] shares, ToDoubleFunction<double[]> merit) {
    for (int g = 0; g < shares.length; g++) {
      shares[g] = inBand[g] / ends.total[g];
    }
    return merit.applyAsDouble(shares);
  }

  /** All intervals of all groups, in the order of their beginnings and of their ends. */
  private static final class Ends {
    final double[] begin;
    final double[] end;
    final double[] weight;
    final int[] group;
    final double[] total;
    final int size;
    final int[] byBegin;
    final int[] byEnd;

    Ends(List<Group> groups) {
      int most = groups.stream().mapToInt(g -> g.from.length).sum();
      begin = new double[most];
      end = new double[most];
      weight = new double[most];
      group = new int[most];
      total = new double[groups.size()];
      int n = 0;
      for (int g = 0; g < groups.size(); g++) {
        Group of = groups.get(g);
        for (int i = 0; i < of.from.length; i++) {
          total[g] += of.weight[i];
          if (of.from[i] <= of.to[i] && of.from[i] < Double.POSITIVE_INFINITY) {
            begin[n] = of.from[i];
            end[n] = of.to[i];
            weight[n] = of.weight[i];
            group[n++] = g;
          }
        }
      }
      size = n;
      byBegin = order(begin, n);
      byEnd = order(end, n);
    }

    /**
     * Indices in ascending order of keys of 0 or more: sorted by single precision, where the bit
     * pattern of a key and its index fit one long, then put right by insertion.
     */
    private static int[] order(double[] keys, int n) {
      long[] packed = new long[n];
      for (int i = 0; i < n; i++) {
        packed[i] = ((long) Float.floatToRawIntBits((float) keys[i]) << 32) | i;
      }
      Arrays.sort(packed);
      int[] order = new int[n];
      for (int i = 0; i < n; i++) {
        int index = (int) packed[i];
        int at = i;
        while (at > 0 && keys[order[at - 1]] > keys[index]) {
          order[at] = order[at - 1];
          at--;
        }
        order[at] = index;
      }
      return order;
    }
  }

  /** Follows the merit from scale to scale and remembers where it is greatest. */
  private static final class Runs {
    private double best = Double.NEGATIVE_INFINITY;
    private Plateau widest;
    private double start;
    private boolean open;

    /** The merit from scale {@code at} on, until the next call. */
    void from(double at, double merit) {
      if (merit > best + TIE) {
        best = merit;
        widest = null;
        start = at;
        open = true;
      } else if (merit < best - TIE) {
        close(at);
      } else if (!open) {
        start = at;
        open = true;
      }
    }

    Plateau widest(double last) {
      close(last);
      return widest;
    }

    private void close(double at) {
      if (open) {
        Plateau run = new Plateau(start, at, best);
        if (widest == null || run.width() > widest.width()) {
          widest = run;
        }
        open = false;
      }
    }
  }
}
