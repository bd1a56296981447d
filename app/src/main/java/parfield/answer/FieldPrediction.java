package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import parfield.field.FieldSolver;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.PredictedField;
import parfield.photon.TracedField;
import parfield.plot.Raster;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.PlaneStatistics;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.Estimate;

/**
 * The predicted light of a rig, part by part, so that many places do not fill the memory with
 * draws. For one thread.
 */
public final class FieldPrediction {
  /** Side of a cell where none is asked for [m]. */
  public static final double CELL = 0.025;

  /** Places that are predicted together. */
  private static final int PART = 10_000;

  /** More places than this are not asked for on purpose. */
  private static final int MOST = 1_000_000;

  private final LightModel model;
  private final FieldSolver solver;
  private final Rig rig;
  private final List<Place> places = new ArrayList<>();
  private final List<Estimate> asShown = new ArrayList<>();
  private final List<Estimate> withMeterScale = new ArrayList<>();
  private final List<FieldAnswer.Plane> planes = new ArrayList<>();
  private Optional<TracedField> reference = Optional.empty();
  private final List<Double> fast = new ArrayList<>();

  /** A prediction that has no places yet. */
  public FieldPrediction(LightModel model, FieldSolver solver, Rig rig) {
    this.model = model;
    this.solver = solver;
    this.rig = rig;
  }

  /** The rig as the bench states it. */
  public Rig rig() {
    return rig;
  }

  private static int count(double side, double cell) {
    double cells = Math.ceil(side / cell - 1e-9);
    if (cells > 1000) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "cells of %s m are too small for a side of %s m: at most 1000 fit along it",
              cell,
              side),
          "ask for larger cells, or leave --cell out");
    }
    return (int) Math.max(1, cells);
  }

  /** Centres of the equal cells of a plane. */
  public Places cells(double depth, double cell) {
    return Places.plane(
        rig.tank(), depth, count(rig.tank().length(), cell), count(rig.tank().width(), cell));
  }

  /** Centres of the equal cells of the upright plane through the middle of the tank. */
  Places uprightCells(double cell) {
    return Places.upright(
        rig.tank(), count(rig.tank().length(), cell), count(rig.tank().depth(), cell));
  }

  /** Side of the largest square that fits into a cell [m]. */
  public double sensor(double cell) {
    return Math.min(
        rig.tank().length() / count(rig.tank().length(), cell),
        rig.tank().width() / count(rig.tank().width(), cell));
  }

  /**
   * Takes the reference solver's word for the light at the best estimate.
   *
   * @param counted at all places that will be added, in the order in which they will be
   */
  public void correctBy(TracedField counted) {
    reference = Optional.of(counted);
  }

  /** Predicts one plane on equal cells and takes its figures. */
  public void addPlane(double depth, double cell, List<Band> bands) {
    Places cells = cells(depth, cell);
    PredictedField field = add(cells);
    List<PlaneStatistics> all = new ArrayList<>();
    all.add(statistics(cells, field.best(), 1, bands));
    IntStream.range(0, field.draws())
        .forEach(d -> all.add(statistics(cells, field.draw(d), field.meterScale(d), bands)));
    planes.add(
        new FieldAnswer.Plane(
            depth,
            cells.cells().orElseThrow(),
            estimate(all, of -> of.statistics().mean()),
            estimate(all, of -> of.statistics().min().ppfd()),
            estimate(all, of -> of.statistics().max().ppfd()),
            estimate(all, of -> of.statistics().evenness()),
            bands,
            IntStream.range(0, bands.size())
                .mapToObj(b -> estimate(all, of -> of.coverageOfPlane().get(b).inside()))
                .toList()));
  }

  /** Predicts some places. */
  public void addPlaces(Places some) {
    if (some.size() > MOST) {
      throw Refusal.of(
          String.format(
              Locale.ROOT, "%d places are asked for; at most %d can be", some.size(), MOST),
          "ask for them in parts");
    }
    for (int from = 0; from < some.size(); from += PART) {
      int to = Math.min(some.size(), from + PART);
      add(Places.of(IntStream.range(from, to).mapToObj(some::get).toList()));
    }
  }

  private PredictedField add(Places some) {
    PredictedField predicted = model.predict(solver, rig, some);
    PredictedField field = reference.isPresent() ? corrected(predicted) : predicted;
    IntStream.range(0, some.size()).mapToObj(some::get).forEach(places::add);
    asShown.addAll(List.of(field.asShown()));
    withMeterScale.addAll(List.of(field.withMeterScale()));
    return field;
  }

  private PredictedField corrected(PredictedField predicted) {
    double[] best = predicted.best();
    double[] factors = new double[best.length];
    for (int i = 0; i < best.length; i++) {
      // Where the fast solver sees no light at all, none can be made of it.
      factors[i] = best[i] > 0 ? reference.get().downwelling(fast.size()) / best[i] : 1;
      fast.add(best[i]);
    }
    return predicted.times(factors);
  }

  /** The best estimate on the upright plane through the middle of the tank. */
  public Raster section(double cell) {
    Tank tank = rig.tank();
    Places upright = uprightCells(cell);
    double[] ppfd = solver.solve(model.best().applyTo(rig), upright).ppfd();
    return new Raster(
        count(tank.length(), cell),
        count(tank.depth(), cell),
        upright.cells().orElseThrow().whole(ppfd));
  }

  /** Everything that was predicted. */
  public FieldAnswer answer(String source, List<String> files) {
    return new FieldAnswer(
        source,
        rig.name(),
        Places.of(places),
        asShown,
        withMeterScale,
        planes,
        reference.map(this::reference),
        files);
  }

  private FieldAnswer.Reference reference(TracedField counted) {
    return new FieldAnswer.Reference(
        IntStream.range(0, places.size()).mapToObj(counted::downwellingError).toList(),
        fast,
        counted.packets(),
        counted.worstError());
  }

  private PlaneStatistics statistics(Places cells, double[] ppfd, double scale, List<Band> bands) {
    double[] scaled = new double[ppfd.length];
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] = scale * ppfd[i];
    }
    return PlaneStatistics.of(rig.tank(), new LightField(cells, scaled), bands, List.of());
  }

  /** Of the first its figure, of the rest the interval. */
  private static Estimate estimate(
      List<PlaneStatistics> all, ToDoubleFunction<PlaneStatistics> figure) {
    return Estimate.ofSample(
        figure.applyAsDouble(all.get(0)), all.stream().skip(1).mapToDouble(figure).toArray());
  }
}
