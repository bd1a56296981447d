package parfield.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.units.Estimate;

/** Judges settings of one rig at one height against the demands, in every truth. Immutable. */
final class Assessment {
  private final Arrangement arrangement;
  private final double height;
  private final RigField field;
  private final double[][][] reference;
  private final Sampling sampling;
  private final Demands demands;
  private final int[] extentOf;
  private final int[] bandOf;

  /**
   * Prepares to judge.
   *
   * @param field solved at the sampling's places
   * @param reference means at the reference height: [truth][extent][channel] at full output
   * @param sampling of every extent that the demands name
   */
  Assessment(
      Arrangement arrangement,
      double height,
      RigField field,
      double[][][] reference,
      Sampling sampling,
      Demands demands) {
    this.arrangement = arrangement;
    this.height = height;
    this.field = field;
    this.reference = reference;
    this.sampling = sampling;
    this.demands = demands;
    this.extentOf = new int[demands.all().size()];
    this.bandOf = new int[extentOf.length];
    for (int k = 0; k < extentOf.length; k++) {
      Demand demand = demands.all().get(k);
      extentOf[k] = sampling.extents().indexOf(demand.extent());
      bandOf[k] =
          demand instanceof Demand.Coverage coverage
              ? demands.bands().indexOf(coverage.band())
              : -1;
    }
  }

  Hanging pattern() {
    return arrangement.pattern();
  }

  Fixture fixture() {
    return arrangement.pattern().fixture();
  }

  /** Mean merit over all draws. */
  double merit(double[] outputs) {
    double sum = 0;
    for (int truth = 1; truth < field.truths(); truth++) {
      sum += merit(truth, outputs);
    }
    return sum / (field.truths() - 1) - Merit.FIXTURE * (arrangement.count() - 1);
  }

  /** Merit in the best estimate alone. */
  double meritOfBest(double[] outputs) {
    return merit(0, outputs);
  }

  private double merit(int truth, double[] outputs) {
    Tally[] tallies = new Tally[sampling.extents().size()];
    boolean allMet = true;
    double part = 0;
    double coverage = 0;
    int coverages = 0;
    for (int k = 0; k < extentOf.length; k++) {
      int e = extentOf[k];
      if (tallies[e] == null) {
        tallies[e] = tally(truth, e, outputs);
      }
      Demand demand = demands.all().get(k);
      double value = value(k, tallies);
      allMet &= demand.metBy(value);
      part += Merit.part(value, demand.least(), demand.most());
      if (bandOf[k] >= 0) {
        coverage += value;
        coverages++;
      }
    }
    return Merit.of(allMet, part / extentOf.length, coverages == 0 ? 0 : coverage / coverages);
  }

  private Tally tally(int truth, int extent, double[] outputs) {
    double referenceMean = 0;
    for (int c = 0; c < outputs.length; c++) {
      referenceMean += outputs[c] * reference[truth][extent][c];
    }
    return new Tally(
        field.ppfd(truth, outputs, sampling.first(extent), sampling.first(extent + 1)),
        sampling.parts(extent),
        demands.bands(),
        referenceMean);
  }

  /** The demanded figure. */
  private double value(int demand, Tally[] byExtent) {
    Tally tally = byExtent[extentOf[demand]];
    Demand of = demands.all().get(demand);
    if (of instanceof Demand.Coverage) {
      return tally.coverage(bandOf[demand]);
    } else if (of instanceof Demand.Retention) {
      return tally.retention;
    } else if (of instanceof Demand.Evenness) {
      return tally.evenness();
    } else if (of instanceof Demand.EndsToCentre) {
      return tally.endsToCentre;
    } else if (of instanceof Demand.HotSpot) {
      return tally.greatest;
    }
    return tally.mean;
  }

  /**
   * The demands that depend on how bright the light is, as intervals of scale, in the best
   * estimate.
   *
   * @param background outputs that stay
   * @param direction outputs that scale
   */
  List<IntervalSweep.Group> groups(double[] background, double[] direction) {
    List<IntervalSweep.Group> groups = new ArrayList<>();
    for (int k = 0; k < extentOf.length; k++) {
      int e = extentOf[k];
      Demand demand = demands.all().get(k);
      int from = sampling.first(e);
      // A limit holds for every place, shares and means only for those that stand for some area.
      int to =
          demand instanceof Demand.HotSpot ? sampling.first(e + 1) : from + sampling.counted(e);
      double[] stays = field.ppfd(0, background, from, to);
      double[] scales = field.ppfd(0, direction, from, to);
      if (demand instanceof Demand.Coverage coverage) {
        groups.add(
            IntervalSweep.Group.of(stays, scales, coverage.band().from(), coverage.band().to()));
      } else if (demand instanceof Demand.HotSpot spot) {
        groups.add(IntervalSweep.Group.limit(stays, scales, spot.atMost()));
      } else if (demand instanceof Demand.MeanPpfd mean) {
        groups.add(
            IntervalSweep.Group.of(
                new double[] {average(stays)},
                new double[] {average(scales)},
                mean.from(),
                mean.to()));
      }
    }
    return groups;
  }

  /** Merit of the shares of {@link #groups}. */
  double meritOfShares(double[] shares) {
    double part = 0;
    double coverage = 0;
    int coverages = 0;
    int g = 0;
    for (Demand demand : demands.all()) {
      if (demand instanceof Demand.Coverage of) {
        part += Merit.part(shares[g], of.share(), 1);
        coverage += shares[g++];
        coverages++;
      } else if (demand instanceof Demand.HotSpot || demand instanceof Demand.MeanPpfd) {
        part += shares[g++];
      }
    }
    return Merit.of(false, part / demands.all().size(), coverages == 0 ? 0 : coverage / coverages);
  }

  private static double average(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  /** Everything there is to say of one setting. */
  Option option(Setting setting) {
    double[] outputs = fixture().outputs(setting);
    Tally[][] tallies =
        IntStream.range(0, field.truths())
            .parallel()
            .mapToObj(
                truth ->
                    IntStream.range(0, sampling.extents().size())
                        .mapToObj(extent -> tally(truth, extent, outputs))
                        .toArray(Tally[]::new))
            .toArray(Tally[][]::new);
    List<Figures> figures = new ArrayList<>();
    for (int e = 0; e < sampling.extents().size(); e++) {
      figures.add(figures(tallies, e));
    }
    List<Verdict> verdicts = new ArrayList<>();
    boolean[] allMet = new boolean[field.truths()];
    Arrays.fill(allMet, true);
    for (int k = 0; k < extentOf.length; k++) {
      Demand demand = demands.all().get(k);
      int met = 0;
      for (int truth = 1; truth < tallies.length; truth++) {
        boolean meets = demand.metBy(value(k, tallies[truth]));
        allMet[truth] &= meets;
        met += meets ? 1 : 0;
      }
      int index = k;
      verdicts.add(
          new Verdict(
              demand,
              estimate(tallies, byExtent -> value(index, byExtent)),
              new Probability(met, field.truths() - 1)));
    }
    int together = 0;
    for (int truth = 1; truth < allMet.length; truth++) {
      together += allMet[truth] ? 1 : 0;
    }
    return new Option(
        arrangement,
        height,
        setting,
        figures,
        verdicts,
        new Probability(together, field.truths() - 1),
        watts(outputs),
        merit(outputs));
  }

  private Figures figures(Tally[][] tallies, int extent) {
    List<BandCoverage> coverage = new ArrayList<>();
    for (int b = 0; b < demands.bands().size(); b++) {
      int band = b;
      coverage.add(
          new BandCoverage(
              demands.bands().get(b), estimate(tallies, t -> t[extent].coverage(band))));
    }
    return new Figures(
        sampling.extents().get(extent),
        estimate(tallies, t -> t[extent].mean),
        estimate(tallies, t -> t[extent].greatest),
        estimate(tallies, t -> t[extent].evenness()),
        estimate(tallies, t -> t[extent].endsToCentre),
        estimate(tallies, t -> t[extent].retention),
        coverage);
  }

  private static Estimate estimate(Tally[][] tallies, ToDoubleFunction<Tally[]> figure) {
    double[] sample = new double[tallies.length - 1];
    for (int d = 0; d < sample.length; d++) {
      sample[d] = figure.applyAsDouble(tallies[d + 1]);
    }
    return Estimate.ofSample(figure.applyAsDouble(tallies[0]), sample);
  }

  private OptionalDouble watts(double[] outputs) {
    double sum = 0;
    for (int c = 0; c < outputs.length; c++) {
      Channel channel = fixture().channels().get(c);
      if (channel.watts().isEmpty()) {
        return OptionalDouble.empty();
      }
      sum += outputs[c] * channel.watts().getAsDouble();
    }
    return OptionalDouble.of(arrangement.count() * sum);
  }
}
