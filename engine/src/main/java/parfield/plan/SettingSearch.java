package parfield.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parfield.lamp.Fixture;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.parallel.SideBySide;

/**
 * What to dial on one rig: the exact sweep finds the scale for the best estimate, then whole
 * percents about it are judged in every truth that the readings allow.
 *
 * <p>Of settings that do equally well the middle one is taken, so that an error either way does
 * least harm.
 */
final class SettingSearch {
  /** Merits closer than this count as equally good. */
  private static final double EQUALLY_GOOD = 0.005;

  /** How far, as a factor, the robust choice may lie from the best estimate's. */
  private static final double REACH = 3;

  private static final int STEPS = 12;

  /** A free mix of two channels is tried in twelfths, of three in eighths, of four in sixths. */
  private static final int LATTICE = 24;

  /** Ratios of the lattice from which a free mix is sought. */
  private static final int STARTS = 3;

  /** Rounds over all channels after which a free mix is taken as settled. */
  private static final int ROUNDS = 8;

  private SettingSearch() {}

  /**
   * The setting of greatest mean merit.
   *
   * @param base dials as the bench has them: the ratio of the channels
   * @param mix whether that ratio is kept
   */
  static Setting choose(Assessment assessment, Setting base, Mix mix) {
    Fixture fixture = assessment.fixture();
    double[] kept = Dials.ratio(fixture, base);
    Setting best = alongRatio(assessment, kept);
    if (mix == Mix.KEPT || kept.length == 1) {
      return best;
    }
    double[] free = freeMix(assessment, kept);
    Setting other = alongRatio(assessment, Dials.times(free, 1 / free[Dials.leading(free)]));
    double gain =
        assessment.merit(fixture.outputs(other)) - assessment.merit(fixture.outputs(best));
    return gain > EQUALLY_GOOD ? other : best;
  }

  /**
   * The best scale of a ratio in the best estimate.
   *
   * @param upTo greatest scale, 1 for what the fixture has, infinite for what it would need
   */
  static double scale(Assessment assessment, double[] ratio, double upTo) {
    double[] none = new double[ratio.length];
    List<IntervalSweep.Group> groups = assessment.groups(none, ratio);
    if (groups.isEmpty()) {
      return 1;
    }
    IntervalSweep.Plateau plateau = IntervalSweep.best(groups, assessment::meritOfShares, upTo);
    if (plateau.from() == 0 && upTo <= 1) {
      // Nothing that the fixture can do is better than darkness: come as near as it can.
      double wanted = scale(assessment, ratio, Double.POSITIVE_INFINITY);
      return Math.min(upTo, wanted);
    }
    return plateau.middle();
  }

  private static Setting alongRatio(Assessment assessment, double[] ratio) {
    Fixture fixture = assessment.fixture();
    OutputCurve curve = fixture.channels().get(Dials.leading(ratio)).curve();
    double scale = scale(assessment, ratio, 1);
    double lowest = Math.max(1, Math.floor(curve.dialFor(scale / REACH)));
    double highest = Math.max(lowest, Math.ceil(curve.dialFor(Math.min(1, scale * REACH))));
    int atScale = (int) Math.max(1, Math.rint(curve.dialFor(scale)));
    TreeSet<Integer> tried = new TreeSet<>();
    tried.add(atScale);
    for (int i = 0; i <= STEPS; i++) {
      tried.add((int) Math.rint(lowest * Math.pow(highest / lowest, (double) i / STEPS)));
    }
    List<Integer> coarse = List.copyOf(tried);
    double[] merits = merits(assessment, ratio, coarse);
    Run run = Run.about(merits);
    if (run.from == 0 && run.to == merits.length - 1) {
      // The draws do not care; the exact sweep has said what to dial.
      return Dials.at(fixture, ratio, atScale);
    }
    List<Integer> fine =
        IntStream.rangeClosed(
                coarse.get(Math.max(0, run.from - 1)),
                coarse.get(Math.min(coarse.size() - 1, run.to + 1)))
            .boxed()
            .toList();
    Run plateau = Run.about(merits(assessment, ratio, fine));
    double middle = Math.sqrt((double) fine.get(plateau.from) * fine.get(plateau.to));
    return Dials.at(fixture, ratio, (int) Math.rint(middle));
  }

  /** Neighbours that do as well as the best among them. */
  private record Run(int from, int to) {
    static Run about(double[] merits) {
      int best = 0;
      for (int i = 1; i < merits.length; i++) {
        if (merits[i] > merits[best]) {
          best = i;
        }
      }
      int from = best;
      int to = best;
      while (from > 0 && merits[from - 1] >= merits[best] - EQUALLY_GOOD) {
        from--;
      }
      while (to < merits.length - 1 && merits[to + 1] >= merits[best] - EQUALLY_GOOD) {
        to++;
      }
      return new Run(from, to);
    }
  }

  private static double[] merits(Assessment assessment, double[] ratio, List<Integer> percents) {
    Fixture fixture = assessment.fixture();
    return SideBySide.all(
            percents.size(),
            i -> assessment.merit(fixture.outputs(Dials.at(fixture, ratio, percents.get(i)))))
        .stream()
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  /**
   * Outputs that serve the best estimate best: the exact sweep along a lattice of ratios, then from
   * the best of these and from the ratio that is kept one exact sweep after the other, over each
   * channel alone and over all together, until none finds anything better.
   */
  private static double[] freeMix(Assessment assessment, double[] kept) {
    List<double[]> ratios = new ArrayList<>();
    int parts = Math.max(2, LATTICE / kept.length);
    addRatios(ratios, new int[kept.length], 0, parts);
    List<double[]> starts =
        Stream.concat(
                Stream.of(kept),
                ratios.stream()
                    .map(ratio -> Dials.times(ratio, scale(assessment, ratio, 1)))
                    .sorted(Comparator.comparingDouble(o -> -assessment.meritOfBest(o)))
                    .limit(STARTS))
            .toList();
    double[] best = kept;
    double greatest = Double.NEGATIVE_INFINITY;
    for (double[] start : starts) {
      double[] outputs = climb(assessment, start);
      double merit = assessment.meritOfBest(outputs);
      if (merit > greatest + EQUALLY_GOOD) {
        best = outputs;
        greatest = merit;
      }
    }
    return best;
  }

  /** All ways to share some parts among the channels, each as outputs with a greatest of 1. */
  private static void addRatios(List<double[]> ratios, int[] shares, int channel, int left) {
    if (channel == shares.length - 1) {
      shares[channel] = left;
      double[] outputs = Arrays.stream(shares).asDoubleStream().toArray();
      ratios.add(Dials.times(outputs, 1 / outputs[Dials.leading(outputs)]));
      return;
    }
    for (int share = 0; share <= left; share++) {
      shares[channel] = share;
      addRatios(ratios, shares, channel + 1, left - share);
    }
  }

  private static double[] climb(Assessment assessment, double[] start) {
    double[] none = new double[start.length];
    double[] leading = Dials.times(start, 1 / start[Dials.leading(start)]);
    double[] outputs = Dials.times(leading, scale(assessment, leading, 1));
    double merit = assessment.meritOfBest(outputs);
    for (int round = 0; round < ROUNDS; round++) {
      double before = merit;
      for (int c = 0; c <= start.length; c++) {
        double[] background = none;
        double[] direction = Dials.times(outputs, 1 / outputs[Dials.leading(outputs)]);
        if (c < start.length) {
          background = outputs.clone();
          background[c] = 0;
          direction = none.clone();
          direction[c] = 1;
        }
        double[] tried = sweep(assessment, background, direction);
        double found = assessment.meritOfBest(tried);
        if (found > merit && tried[Dials.leading(tried)] > 0) {
          outputs = tried;
          merit = found;
        }
      }
      if (merit <= before) {
        break;
      }
    }
    return outputs;
  }

  private static double[] sweep(Assessment assessment, double[] background, double[] direction) {
    List<IntervalSweep.Group> groups = assessment.groups(background, direction);
    double scale =
        groups.isEmpty() ? 1 : IntervalSweep.best(groups, assessment::meritOfShares, 1).middle();
    double[] outputs = background.clone();
    for (int c = 0; c < outputs.length; c++) {
      outputs[c] += scale * direction[c];
    }
    return outputs;
  }
}
