package parfield.web.publish;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import parfield.answer.FieldPrediction;
import parfield.fit.LightModel;
import parfield.formats.Setup;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;
import parfield.web.page.Screen;
import parfield.web.page.Step;

/** The predicted light of each rig of a bench as a table of values, for other programs. */
final class RigLight implements Screen {
  /** Planes of one file: each takes seconds. */
  private static final int MOST_PLANES = 3;

  private final Desk desk;

  RigLight(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/publish/light.csv", this::csv);
  }

  /**
   * The depths that a file tells [m], the lowest number first: those that most readings were taken
   * at.
   */
  static List<Double> depths(OpenBench bench) {
    Optional<Setup> setup = bench.setup();
    if (setup.isEmpty()) {
      return List.of();
    }
    List<Double> most =
        setup.get().surveys().values().stream()
            .flatMap(survey -> survey.readings().stream())
            .collect(Collectors.groupingBy(of -> of.place().depth(), Collectors.counting()))
            .entrySet()
            .stream()
            .sorted(
                Map.Entry.<Double, Long>comparingByValue()
                    .reversed()
                    .thenComparing(Map.Entry.comparingByKey()))
            .limit(MOST_PLANES)
            .map(Map.Entry::getKey)
            .toList();
    return most.isEmpty() ? List.of(bench.bench().usualDepth()) : List.copyOf(new TreeSet<>(most));
  }

  private void csv(Context context) {
    OpenBench bench = desk.benches().of(context);
    String name = String.valueOf(context.queryParam("rig"));
    Rig rig = bench.setupOrRefuse().rigs().get(name);
    if (rig == null) {
      throw new NotFoundResponse("this bench has no such rig");
    }
    LightModel model =
        desk.benches()
            .model(bench)
            .map(StoredModel::model)
            .orElseThrow(() -> new NotFoundResponse("this bench has no light model yet: fit one"));
    FieldPrediction prediction = new FieldPrediction(model, desk.benches().solver(), rig);
    depths(bench)
        .forEach(depth -> prediction.addPlane(depth, FieldPrediction.CELL, bench.bench().bands()));
    LengthUnit unit = desk.benches().frame(context, bench, Step.PUBLISH).length();
    String file = name.replaceAll("[^A-Za-z0-9._-]+", "-").replaceAll("^[.-]+", "");
    context
        .contentType("text/csv; charset=utf-8")
        .header(
            "Content-Disposition",
            "attachment; filename=\"light-" + (file.isEmpty() ? "of-a-rig" : file) + ".csv\"")
        .header("Cache-Control", "no-store")
        .result(prediction.answer(bench.name(), List.of()).csv(unit));
  }
}
