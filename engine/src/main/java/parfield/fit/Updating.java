package parfield.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import parfield.field.FieldSolver;
import parfield.survey.Survey;

/**
 * One update of a light model by a few readings.
 *
 * <p>The draws are taken as a normal sample in the space of {@link TruthVector}, the readings as
 * observations of ln E. {@link SquareRootFilter} is applied in two passes, each with twice the
 * variance of the errors and E computed anew (multiple data assimilation, Emerick and Reynolds
 * 2013, Comput. Geosci. 55:3; from memory): the same as one pass where all is linear, closer to the
 * truth where it is not. For one update.
 */
final class Updating {
  private static final int PASSES = 2;

  /**
   * A reading that lies farther from what the model and all other readings say is set aside, in
   * standard errors; of sound ones chance does this to one in 16,000.
   */
  private static final double WILD = 4;

  /** At most one reading in so many is set aside: where more look wrong, the model does. */
  private static final int FEW = 3;

  private final LightModel before;
  private final Sightings all;

  Updating(LightModel before, FieldSolver solver, List<Survey> surveys) {
    this.before = before;
    this.all = new Sightings(solver, surveys);
  }

  ModelUpdate run() {
    List<ModelUpdate.SetAside> setAside = new ArrayList<>();
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (all.ppfd(i) > 0) {
        kept.add(i);
      } else {
        setAside.add(aside(i, 0, 0));
      }
    }
    if (kept.isEmpty()) {
      throw new UnfittableException(
          "every reading is 0 after the ambient is subtracted; check the meter and its ambient");
    }
    double[] best = all.log(before.best());
    double[] errors = all.errors(before.best());
    double[][] members = all.log(before.draws());
    for (int most = kept.size() / FEW; most > 0; most--) {
      Distances distances = distances(members, kept, errors);
      int farthest =
          IntStream.range(0, kept.size())
              .boxed()
              .max(Comparator.comparingDouble(i -> Math.abs(distances.fromOthers[i])))
              .orElseThrow();
      double sigmas = Math.abs(distances.fromOthers[farthest]);
      if (sigmas < WILD) {
        break;
      }
      int wild = kept.remove(farthest);
      setAside.add(aside(wild, all.ppfd(wild) * Math.exp(-distances.offOthers[farthest]), sigmas));
    }
    return update(kept, setAside, best, errors, distances(members, kept, errors));
  }

  private ModelUpdate update(
      List<Integer> kept,
      List<ModelUpdate.SetAside> setAside,
      double[] best,
      double[] errors,
      Distances distances) {
    Moved after = passes(kept, errors);
    double[] now = all.log(after.best());
    List<ModelUpdate.Expected> expected = new ArrayList<>();
    for (int k = 0; k < kept.size(); k++) {
      int i = kept.get(k);
      expected.add(
          new ModelUpdate.Expected(
              all.survey(i).name(),
              all.index(i),
              all.place(i),
              all.ppfd(i),
              Math.exp(best[i]),
              distances.fromModel[k],
              Math.exp(now[i])));
    }
    return new ModelUpdate(
        model(after),
        after.best().meterScale(),
        setAside,
        expected,
        distances.square / kept.size());
  }

  /** Truths after the passes, the best one's meter at whatever scale. */
  private record Moved(Truth best, List<Truth> draws) {}

  private Moved passes(List<Integer> kept, double[] errors) {
    Truth best = before.best();
    List<Truth> draws = before.draws();
    double[] observed = kept.stream().mapToDouble(i -> Math.log(all.ppfd(i))).toArray();
    double[][] covariance = all.covariance(kept, errors, before.discrepancy());
    for (double[] row : covariance) {
      for (int j = 0; j < row.length; j++) {
        row[j] *= PASSES;
      }
    }
    TruthVector vectors = new TruthVector(draws);
    for (int pass = 0; pass < PASSES; pass++) {
      SquareRootFilter filter = SquareRootFilter.of(of(all.log(draws), kept), observed, covariance);
      double[][] members = draws.stream().map(vectors::of).toArray(double[][]::new);
      double[] ofBest = of(new double[][] {all.log(best)}, kept)[0];
      for (int i = 0; i < ofBest.length; i++) {
        ofBest[i] = observed[i] - ofBest[i];
      }
      double[][] updated = filter.update(members);
      List<Truth> moved = new ArrayList<>();
      for (int d = 0; d < updated.length; d++) {
        moved.add(vectors.truth(draws.get(d), updated[d]));
      }
      best = vectors.truth(best, filter.moved(vectors.of(best), ofBest, members));
      draws = moved;
    }
    return new Moved(best, draws);
  }

  /** With the best meter's scale at 1: its correction goes into what is called shown. */
  private LightModel model(Moved moved) {
    double correction = moved.best().meterScale();
    List<Truth> draws = moved.draws().stream().map(draw -> corrected(draw, correction)).toList();
    Truth best = corrected(moved.best(), correction);
    return new LightModel(best, draws, before.discrepancy(), before.report());
  }

  private static Truth corrected(Truth truth, double correction) {
    return new Truth(
        Lamps.scaled(truth.distributions(), (fixture, channel) -> correction),
        truth.clear(),
        truth.bottomReflectance(),
        truth.yellowing(),
        truth.offsetX(),
        truth.offsetY(),
        Math.round(truth.heightOffset() / LightModelFit.HEIGHT_STEP) * LightModelFit.HEIGHT_STEP,
        truth.aperture(),
        truth.meterScale() / correction);
  }

  private static double[][] of(double[][] rows, List<Integer> kept) {
    double[][] some = new double[rows.length][kept.size()];
    for (int r = 0; r < rows.length; r++) {
      for (int k = 0; k < kept.size(); k++) {
        some[r][k] = rows[r][kept.get(k)];
      }
    }
    return some;
  }

  /**
   * How far readings lie from what is expected of them.
   *
   * @param fromModel reading less the model's mean, in standard errors of both
   * @param offOthers ln reading less what model and all other readings say
   * @param fromOthers the same in standard errors
   * @param square weighted square distance of all together
   */
  private record Distances(
      double[] fromModel, double[] offOthers, double[] fromOthers, double square) {}

  private Distances distances(double[][] members, List<Integer> kept, double[] errors) {
    double[][] predicted = of(members, kept);
    double[] mean = SquareRootFilter.mean(predicted);
    DMatrixRMaj spread = new DMatrixRMaj(all.covariance(kept, errors, before.discrepancy()));
    for (double[] member : predicted) {
      for (int i = 0; i < mean.length; i++) {
        for (int j = 0; j < mean.length; j++) {
          spread.add(i, j, (member[i] - mean[i]) * (member[j] - mean[j]) / (predicted.length - 1));
        }
      }
    }
    DMatrixRMaj precision = spread.copy();
    if (!CommonOps_DDRM.invert(precision)) {
      throw new ArithmeticException("the spread of the expected readings is singular");
    }
    int n = mean.length;
    double[] off = new double[n];
    double[] fromModel = new double[n];
    for (int i = 0; i < n; i++) {
      off[i] = Math.log(all.ppfd(kept.get(i))) - mean[i];
      fromModel[i] = off[i] / Math.sqrt(spread.get(i, i));
    }
    // Leaving one out: (Q ν)_i / Q_ii with variance 1 / Q_ii, Q the inverse of the covariance.
    double[] offOthers = new double[n];
    double[] fromOthers = new double[n];
    double square = 0;
    for (int i = 0; i < n; i++) {
      double weighted = 0;
      for (int j = 0; j < n; j++) {
        weighted += precision.get(i, j) * off[j];
      }
      offOthers[i] = weighted / precision.get(i, i);
      fromOthers[i] = weighted / Math.sqrt(precision.get(i, i));
      square += off[i] * weighted;
    }
    return new Distances(fromModel, offOthers, fromOthers, square);
  }

  private ModelUpdate.SetAside aside(int i, double expected, double sigmas) {
    return new ModelUpdate.SetAside(
        all.survey(i).name(), all.index(i), all.place(i), all.ppfd(i), expected, sigmas);
  }
}
