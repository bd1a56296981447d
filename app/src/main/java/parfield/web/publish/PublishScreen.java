package parfield.web.publish;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Frame;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.workspace.Result;

/** The step Publish: files of the bench, its model and its recommendation. */
public final class PublishScreen implements Screen {
  private final Desk desk;
  private final ReportScreen report;

  /** The screen over a desk. */
  public PublishScreen(Desk desk) {
    this.desk = desk;
    this.report = new ReportScreen(desk);
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/publish", this::show);
    routes.get("/bench/{id}/publish/readings", this::readings);
    new RigLight(desk).register(routes);
    new LampFiles(desk).register(routes);
    report.register(routes);
  }

  private void show(Context context) {
    OpenBench bench = desk.benches().of(context);
    Frame frame = desk.benches().frame(context, bench, Step.PUBLISH).withScript("work.js");
    Map<String, Object> values = new HashMap<>();
    values.put("frame", frame);
    values.put("bench", bench);
    values.put("model", desk.benches().model(bench));
    Optional<Result> advice =
        desk.workspace().results().list(bench.id(), Result.Kind.RECOMMENDATION, 1).stream()
            .findFirst();
    values.put("advice", advice);
    values.put("advised", advice.filter(kept -> desk.benches().current(bench, kept)).isPresent());
    values.put("report", report.shown(bench));
    values.put("depths", RigLight.depths(bench));
    values.put("files", desk.workspace().benchFiles().files(bench.id()).keySet());
    values.put("lamps", LampFiles.offers(bench));
    desk.pages().show(context, "publish/publish.jte", values);
  }

  /** One file of the bench as it would be exported, readings as they are now. */
  private void readings(Context context) {
    OpenBench bench = desk.benches().of(context);
    byte[] bytes =
        desk.workspace()
            .benchFiles()
            .files(bench.id())
            .get(String.valueOf(context.queryParam("name")));
    if (bytes == null) {
      throw new NotFoundResponse("this bench has no such file");
    }
    context
        .contentType("application/octet-stream")
        .header("Content-Disposition", "attachment")
        .result(bytes);
  }
}
