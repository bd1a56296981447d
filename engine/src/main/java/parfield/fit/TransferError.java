package parfield.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.rig.Rig;
import parfield.units.Estimate;

/**
 * How wrong a light model may be about true PPFD, as a share of what it predicts, the scales of
 * meters included.
 *
 * @param mean of the mean over the places: 0, with the interval of the true one over the predicted
 *     one less 1
 * @param place of a single place: the same, by the medians of the places' own limits
 * @param parts how much of it comes from what, the greatest part of the mean first; none where it
 *     was not taken apart
 */
public record TransferError(Estimate mean, Estimate place, List<Part> parts) {
  /** Half width of a normal distribution's 90 % interval, in standard deviations. */
  private static final double NINETY_PERCENT = 1.645;

  public TransferError {
    parts = List.copyOf(parts);
  }

  /**
   * What one cause alone would do.
   *
   * @param cause which
   * @param ofMean half of the 90 % interval of the mean, as a share of it
   * @param ofPlace half of the 90 % interval of a single place, as a share of it: root mean square
   *     of all places
   * @param shareOfMean of the variance of the mean, 0 to 1; the shares of all causes make 1
   */
  public record Part(Cause cause, double ofMean, double ofPlace, double shareOfMean) {}

  /**
   * The error of a model, not taken apart.
   *
   * @param model over its tank
   * @param solver which solver
   * @param rig over that tank, as stated
   * @param places all of them count alike; dark ones are left out
   */
  public static TransferError of(LightModel model, FieldSolver solver, Rig rig, Places places) {
    return of(model.predict(solver, rig, places), rig.name());
  }

  /**
   * The error of a predicted field, not taken apart.
   *
   * @param field all of its places count alike; dark ones are left out
   * @param rig its name, for messages
   */
  public static TransferError of(PredictedField field, String rig) {
    Sample sample = Sample.of(field, rig);
    return new TransferError(sample.ofMean(), sample.ofPlace(), List.of());
  }

  /**
   * The error of a transferred model with its parts, each found by drawing one cause alone.
   *
   * @param transfer model and tank
   * @param solver which solver
   * @param rig over that tank, as stated
   * @param places all of them count alike; dark ones are left out
   */
  public static TransferError of(Transfer transfer, FieldSolver solver, Rig rig, Places places) {
    Sample sample = Sample.of(transfer.model(), solver, rig, places);
    Cause[] causes = Cause.values();
    Sample[] alone =
        Arrays.stream(causes)
            .map(cause -> Sample.of(transfer.because(cause), solver, rig, places))
            .toArray(Sample[]::new);
    double all = Arrays.stream(alone).mapToDouble(Sample::varianceOfMean).sum();
    List<Part> parts = new ArrayList<>();
    for (int c = 0; c < causes.length; c++) {
      double variance = alone[c].varianceOfMean();
      if (alone[c].varianceOfPlace() > 0) {
        parts.add(
            new Part(
                causes[c],
                NINETY_PERCENT * Math.sqrt(variance),
                NINETY_PERCENT * Math.sqrt(alone[c].varianceOfPlace()),
                all > 0 ? variance / all : 0));
      }
    }
    parts.sort((a, b) -> Double.compare(b.shareOfMean(), a.shareOfMean()));
    return new TransferError(sample.ofMean(), sample.ofPlace(), parts);
  }

  /** True over predicted PPFD, less 1: of the mean by draw, of the places by place and draw. */
  private record Sample(double[] mean, double[][] places) {
    static Sample of(LightModel model, FieldSolver solver, Rig rig, Places places) {
      return of(model.predict(solver, rig, places), rig.name());
    }

    static Sample of(PredictedField field, String rig) {
      double[] best = field.best();
      int[] lit = IntStream.range(0, best.length).filter(i -> best[i] > 0).toArray();
      if (lit.length == 0) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "rig %s gives no light at any place; turn its dials up", rig));
      }
      double middle = Arrays.stream(best).sum();
      double[] mean = new double[field.draws()];
      double[][] deviation = new double[lit.length][field.draws()];
      for (int d = 0; d < field.draws(); d++) {
        double[] draw = field.draw(d);
        mean[d] = field.meterScale(d) * Arrays.stream(draw).sum() / middle - 1;
        for (int i = 0; i < lit.length; i++) {
          deviation[i][d] = field.meterScale(d) * draw[lit[i]] / best[lit[i]] - 1;
        }
      }
      return new Sample(mean, deviation);
    }

    Estimate ofMean() {
      return predictive(mean);
    }

    Estimate ofPlace() {
      double[] low = new double[places.length];
      double[] high = new double[places.length];
      for (int i = 0; i < places.length; i++) {
        Estimate one = predictive(places[i]);
        low[i] = one.low();
        high[i] = one.high();
      }
      Arrays.sort(low);
      Arrays.sort(high);
      return new Estimate(0, Estimate.quantile(low, 0.5), Estimate.quantile(high, 0.5));
    }

    /**
     * The interval that holds one more draw with 90 % probability: order statistics at p (n + 1),
     * as they are exchangeable with it (Hyndman and Fan 1996, Am. Stat. 50:361, definition 6).
     */
    private static Estimate predictive(double[] sample) {
      double[] sorted = sample.clone();
      Arrays.sort(sorted);
      double end =
          Math.min(0.5, Math.max(0, (0.05 * (sorted.length + 1) - 1) / (sorted.length - 1)));
      return new Estimate(
          0,
          Math.min(0, Estimate.quantile(sorted, end)),
          Math.max(0, Estimate.quantile(sorted, 1 - end)));
    }

    double varianceOfMean() {
      return variance(mean);
    }

    double varianceOfPlace() {
      return Arrays.stream(places).mapToDouble(Sample::variance).average().orElseThrow();
    }

    private static double variance(double[] sample) {
      double mean = Arrays.stream(sample).average().orElseThrow();
      return Arrays.stream(sample).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
    }
  }
}
