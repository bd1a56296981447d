package parfield.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Supplier;
import parfield.answer.Bench;
import parfield.answer.ChoicePictures;
import parfield.answer.FieldAnswer;
import parfield.answer.FieldPictures;
import parfield.answer.FieldPrediction;
import parfield.answer.FitAnswer;
import parfield.answer.Measured;
import parfield.answer.ModelCharts;
import parfield.answer.Numbers;
import parfield.answer.RecommendationAnswer;
import parfield.answer.StartingTable;
import parfield.answer.TankWords;
import parfield.care.Caution;
import parfield.field.Departure;
import parfield.field.FieldSolver;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.parallel.SideBySide;
import parfield.plan.Demand;
import parfield.plan.NamedTank;
import parfield.plan.Option;
import parfield.plan.StartingPoint;
import parfield.plan.StartingPoints;
import parfield.plot.Axis;
import parfield.plot.Caption;
import parfield.plot.Curves;
import parfield.plot.CurvesSpec;
import parfield.plot.Scale;
import parfield.plot.Series;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Survey;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * Composes reports. Everything in one comes from the classes that answer the command line and the
 * pages, so that their numbers are the same.
 */
public final class Reports {
  /** Depths that maps are drawn of, at most: a page holds so many. */
  static final int MOST_MAPS = 4;

  /** Depths that maps are drawn of, at least. */
  static final int FEWEST_MAPS = 3;

  /** Depths at which shares in band are told between surface and bottom. */
  private static final int LAYERS = 7;

  /** Side of a cell of those layers [m]. */
  private static final double LAYER_CELL = 0.06;

  private final FieldSolver solver;

  /** Reports whose light some solver predicts. */
  public Reports(FieldSolver solver) {
    this.solver = Objects.requireNonNull(solver, "solver");
  }

  /** What a report is called that is not given another title. */
  public static String title(Bench bench, LengthUnit unit) {
    Tank tank = bench.setup().tank();
    return String.format(
        Locale.ROOT,
        "Light for a reef tank of %s × %s %s, water %s deep",
        Numbers.length(tank.length(), unit),
        Numbers.length(tank.width(), unit),
        unit.symbol(),
        Numbers.withUnit(tank.depth(), unit));
  }

  /**
   * A report of a bench.
   *
   * @param title of the whole, not blank
   * @param made what made it, and when if that shall be told
   * @param bench whose
   * @param model of its light
   * @param advice the recommendation for it
   * @param tanks to tell starting points for; may be none
   * @param unit of lengths
   */
  public Report of(
      String title,
      String made,
      Bench bench,
      LightModel model,
      RecommendationAnswer advice,
      List<NamedTank> tanks,
      LengthUnit unit) {
    Option best = advice.recommendation().best();
    Rig hung = best.over(bench.setup().tank());
    Rig rig = new Rig("the recommended rig", hung.tank(), hung.hangings());
    // Other tanks have nothing to do with this one: both processors can be busy.
    Supplier<List<StartingPoint>> points =
        StartingPoints.ahead(
            model,
            solver,
            List.of(best.arrangement().pattern().at(0, 0, best.height())),
            advice.recommendation().demands(),
            tanks);
    FieldAnswer field = field(bench, model, rig, depths(bench));
    MixedLight mixed = MixedLight.of(best, rig, model, solver);
    return new Report(
        title,
        made,
        unit,
        advice,
        field.planes(unit),
        light(bench, model, rig, field, unit),
        choice(advice, unit),
        mixed.pictures(),
        mixed.table(),
        TankWords.rows(bench.setup().tank(), bench.setup().room(), unit),
        Measured.sentences(advice.surveys(), unit),
        Measured.corrections(advice.surveys()),
        model(model.report(), unit),
        limits(bench, model, best, unit),
        elsewhere(points.get(), unit),
        Arrays.stream(Caution.values()).map(Caution::inWords).toList());
  }

  private static Optional<Report.Elsewhere> elsewhere(List<StartingPoint> points, LengthUnit unit) {
    return points.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Report.Elsewhere(StartingTable.of(points, unit), StartingTable.about(points)));
  }

  private FieldAnswer field(Bench bench, LightModel model, Rig rig, List<Double> depths) {
    FieldPrediction prediction = new FieldPrediction(model, solver, rig);
    depths.forEach(depth -> prediction.addPlane(depth, FieldPrediction.CELL, bench.bands()));
    return prediction.answer(bench.setup().source(), List.of());
  }

  private List<Picture> light(
      Bench bench, LightModel model, Rig rig, FieldAnswer field, LengthUnit unit) {
    FieldPictures pictures = new FieldPictures(bench.setup(), rig, unit);
    List<Supplier<List<Picture>>> parts =
        List.of(
            () -> maps(field, pictures, unit),
            () -> bands(bench, field, pictures, unit),
            () -> List.of(section(bench, model, rig, pictures)),
            () -> byDepth(bench, model, rig, unit).stream().toList());
    return SideBySide.all(parts.size(), part -> parts.get(part).get()).stream()
        .flatMap(List::stream)
        .toList();
  }

  private Picture section(Bench bench, LightModel model, Rig rig, FieldPictures pictures) {
    String words = "PPFD on the upright plane through the middle of the tank, seen from the front.";
    return new Picture(
        pictures.section(
            new FieldPrediction(model, solver, rig).section(FieldPrediction.CELL), bench.bands()),
        words,
        words);
  }

  /**
   * Depths that were measured, thinned evenly where they are many; where they are few, others of
   * the water with them.
   */
  static List<Double> depths(Bench bench) {
    TreeSet<Double> depths = new TreeSet<>();
    bench.setup().surveys().values().stream()
        .flatMap(survey -> survey.readings().stream())
        .forEach(reading -> depths.add(Math.round(reading.place().depth() * 1000) / 1000.0));
    double water = bench.setup().tank().depth();
    for (int part = 1; part <= FEWEST_MAPS && depths.size() < FEWEST_MAPS; part++) {
      double depth = Math.round(100 * water * (2 * part - 1) / (2 * FEWEST_MAPS)) / 100.0;
      if (depths.stream().noneMatch(other -> Math.abs(other - depth) < water / 8)) {
        depths.add(depth);
      }
    }
    List<Double> all = List.copyOf(depths);
    if (all.size() <= MOST_MAPS) {
      return all;
    }
    List<Double> some = new ArrayList<>();
    for (int k = 0; k < MOST_MAPS; k++) {
      some.add(all.get(Math.round((all.size() - 1) * k / (float) (MOST_MAPS - 1))));
    }
    return some;
  }

  private static List<Picture> maps(FieldAnswer field, FieldPictures pictures, LengthUnit unit) {
    Scale scale = FieldPictures.scale(field);
    List<Picture> maps = new ArrayList<>();
    for (int plane = 0; plane < field.planes().size(); plane++) {
      FieldAnswer.Plane figures = field.planes().get(plane);
      String words =
          String.format(
              Locale.ROOT,
              "PPFD seen from above, %s deep: mean %s, from %s to %s %s.",
              Numbers.withUnit(figures.depth(), unit),
              Numbers.ppfd(figures.mean()),
              Numbers.ppfd(figures.min().value()),
              Numbers.ppfd(figures.max().value()),
              Numbers.PPFD);
      maps.add(new Picture(pictures.map(field, plane, scale), words, words));
    }
    return maps;
  }

  private static List<Picture> bands(
      Bench bench, FieldAnswer field, FieldPictures pictures, LengthUnit unit) {
    List<Picture> maps = new ArrayList<>();
    int plane = field.planes().size() / 2;
    for (Band band : demanded(bench)) {
      FieldAnswer.Plane figures = field.planes().get(plane);
      String words =
          String.format(
              Locale.ROOT,
              "Band %s (%s to %s %s), %s deep: %s %% of the area inside; where the intervals do not"
                  + " tell, it is too close to call.",
              band.name(),
              Numbers.plain(band.from(), 0),
              Numbers.plain(band.to(), 0),
              Numbers.PPFD,
              Numbers.withUnit(figures.depth(), unit),
              Numbers.percent(figures.coverage().get(figures.bands().indexOf(band))));
      maps.add(new Picture(pictures.bandMap(field, plane, band), words, words));
    }
    return maps;
  }

  /** Bands that are demanded, once each; all of the bench if none is. */
  private static List<Band> demanded(Bench bench) {
    List<Band> demanded =
        bench.demands().all().stream()
            .filter(Demand.Coverage.class::isInstance)
            .map(demand -> ((Demand.Coverage) demand).band())
            .distinct()
            .toList();
    return demanded.isEmpty() ? bench.bands() : demanded;
  }

  private Optional<Picture> byDepth(Bench bench, LightModel model, Rig rig, LengthUnit unit) {
    if (bench.bands().isEmpty()) {
      return Optional.empty();
    }
    Tank tank = rig.tank();
    FieldPrediction prediction = new FieldPrediction(model, solver, rig);
    for (int k = 0; k < LAYERS; k++) {
      prediction.addPlane(tank.depth() * (k + 0.5) / LAYERS, LAYER_CELL, bench.bands());
    }
    FieldAnswer field = prediction.answer(bench.setup().source(), List.of());
    List<Series> series = new ArrayList<>();
    for (int b = 0; b < Math.min(bench.bands().size(), CurvesSpec.MOST_SERIES); b++) {
      int band = b;
      series.add(
          new Series(
              bench.bands().get(b).name(),
              field.planes().stream()
                  .map(plane -> new Series.Point(plane.depth(), plane.coverage().get(band)))
                  .toList()));
    }
    String words = "Share of each plane in band, from the surface down, with its 5–95 % interval.";
    return Optional.of(
        new Picture(
            Curves.svg(
                new CurvesSpec(
                    new Caption("Coverage by depth", words),
                    Axis.length("depth", unit),
                    Axis.percent("of the plane's area in band"),
                    series,
                    List.of())),
            words,
            words));
  }

  private static List<Picture> choice(RecommendationAnswer advice, LengthUnit unit) {
    List<Picture> pictures = new ArrayList<>();
    ChoicePictures.heights(advice.recommendation(), unit)
        .ifPresent(
            svg ->
                pictures.add(
                    new Picture(
                        svg,
                        "Retention, evenness and shares in band over mounting height",
                        "What the mounting height changes, each at its own best dials.")));
    ChoicePictures.spacings(advice.recommendation(), unit)
        .ifPresent(
            svg ->
                pictures.add(
                    new Picture(
                        svg,
                        "Retention, evenness and shares in band over spacing",
                        "What the spacing changes, each at its own best dials.")));
    return pictures;
  }

  private static Report.ModelPart model(FitReport report, LengthUnit unit) {
    Caption scatter = ModelCharts.scatterCaption(report);
    return new Report.ModelPart(
        String.format(
            Locale.ROOT,
            "The model misses a reading by %s %% of its light (robust standard deviation of %s).",
            Numbers.finePercent(report.relativeResidual()),
            Numbers.count(report.residuals().size(), "reading")),
        report.crossValidation().isEmpty()
            ? Optional.empty()
            : Optional.of(FitAnswer.crossValidation(report, unit)),
        report.findings().isEmpty()
            ? Optional.empty()
            : Optional.of(FitAnswer.findings(report, unit)),
        report.statements(),
        new Picture(
            ModelCharts.scatter(report),
            "Measured over predicted PPFD: " + scatter.summary(),
            "Measured over predicted. " + scatter.summary()));
  }

  /** What the advice does not hold for. */
  private static List<String> limits(Bench bench, LightModel model, Option best, LengthUnit unit) {
    List<String> limits = new ArrayList<>();
    List<Survey> surveys = List.copyOf(bench.setup().surveys().values());
    double lowest = surveys.stream().mapToDouble(s -> s.rig().meanHeight()).min().orElse(0);
    double highest = surveys.stream().mapToDouble(s -> s.rig().meanHeight()).max().orElse(0);
    if (surveys.isEmpty()) {
      limits.add("No reading of this bench stands in the setup: the model was made elsewhere.");
    } else if (best.height() < lowest - 0.005 || best.height() > highest + 0.005) {
      limits.add(
          String.format(
              Locale.ROOT,
              "The recommended height of %s lies outside the heights that were measured, %s to %s:"
                  + " read again once it hangs.",
              Numbers.withUnit(best.height(), unit),
              Numbers.length(lowest, unit),
              Numbers.withUnit(highest, unit)));
    }
    limits.add(
        "It holds for the fixtures that were measured; others of the same kind may give more or"
            + " less light.");
    limits.add(
        "It holds for this tank as it was when the readings were taken: a film on the panes, a lid,"
            + " yellower water, a cleaner or darker bottom change it.");
    limits.add(
        "PPFD is that of a level sensor that faces up; a coral's own side may get more or less.");
    limits.add(
        "Warm-up of the fixture before reading, ageing since, and drift of the meter are not"
            + " recorded in the setup and not corrected for.");
    Departure.of(bench.setup().tank()).forEach(departure -> limits.add(departure.inWords()));
    if (model.discrepancy() > 0) {
      limits.add(
          String.format(
              Locale.ROOT,
              "The model itself misses single places by about %s %% beyond the meter's error; the"
                  + " intervals hold that.",
              Numbers.finePercent(model.discrepancy())));
    }
    return limits;
  }
}
