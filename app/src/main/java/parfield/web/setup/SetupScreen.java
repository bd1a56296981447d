package parfield.web.setup;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parfield.answer.Numbers;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.formats.Fault;
import parfield.formats.InvalidFile;
import parfield.formats.Setup;
import parfield.plot.Caption;
import parfield.plot.Scene;
import parfield.plot.TankPlan;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Frame;
import parfield.web.page.Problems;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.workspace.SetupRevision;
import parfield.workspace.StaleSetup;
import parfield.workspace.WorkspaceProblem;

/** The step Set up. */
public final class SetupScreen implements Screen {
  /** Files of one upload. */
  private static final int MOST_FILES = 50;

  private final Desk desk;

  /** The screen over a desk. */
  public SetupScreen(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    new FormScreen(desk).register(routes);
    new ShelfScreen(desk).register(routes);
    routes.get("/bench/{id}/setup/text", this::show);
    routes.get("/bench/{id}/setup/tank.svg", this::picture);
    routes.post("/bench/{id}/setup", this::save);
    routes.post("/bench/{id}/setup/undo", context -> walk(context, true));
    routes.post("/bench/{id}/setup/redo", context -> walk(context, false));
    routes.post("/bench/{id}/setup/files", context -> or(context, () -> upload(context)));
    routes.post("/bench/{id}/setup/files/delete", context -> or(context, () -> delete(context)));
    routes.get("/bench/{id}/setup/file", this::file);
  }

  private void show(Context context) {
    OpenBench bench = desk.benches().of(context);
    show(context, bench, bench.text(), bench.faults(), Optional.empty(), List.of());
  }

  /** The page as it is stored, with why something was not done. */
  private void tell(Context context, HttpStatus status, Problem problem) {
    OpenBench now = desk.benches().of(context);
    List<String> told = new ArrayList<>(List.of(problem.title()));
    problem.hints().forEach(hint -> told.add(hint.message()));
    context.status(status);
    show(context, now, now.text(), now.faults(), Optional.empty(), told);
  }

  private void show(
      Context context,
      OpenBench bench,
      String text,
      List<Fault> faults,
      Optional<SetupRevision> other,
      List<String> told) {
    Frame frame =
        desk.benches()
            .frame(context, bench, Step.SETUP)
            .withScript("setup.js")
            .withStyle("setup.css");
    Map<String, Object> values = new HashMap<>();
    values.put("frame", frame);
    values.put("bench", bench);
    values.put("text", text);
    values.put("faults", faults);
    values.put("other", other);
    values.put("told", told);
    values.put("folder", folder(context));
    values.put("canUndo", desk.workspace().benches().canUndo(bench.id()));
    values.put("canRedo", desk.workspace().benches().canRedo(bench.id()));
    values.put("orphans", desk.benches().orphans(bench));
    values.put("history", desk.workspace().benches().history(bench.id()));
    desk.pages().show(context, "setup/setup.jte", values);
  }

  private void picture(Context context) {
    OpenBench bench = desk.benches().of(context);
    Setup setup = bench.setupOrRefuse();
    LengthUnit unit = desk.benches().frame(context, bench, Step.SETUP).length();
    String asked = String.valueOf(context.queryParam("rig"));
    Optional<Rig> rig =
        Optional.ofNullable(setup.rigs().get(asked))
            .or(() -> setup.rigs().values().stream().findFirst());
    Scene scene = Scene.of(setup.tank(), unit).atDepth(setup.tank().depth() / 2);
    Caption caption =
        new Caption(
            "The tank from above",
            String.format(
                Locale.ROOT,
                "%s by %s%s.",
                Numbers.withUnit(setup.tank().length(), unit),
                Numbers.withUnit(setup.tank().width(), unit),
                rig.map(hung -> ", under rig " + hung.name()).orElse("")));
    context
        .contentType("image/svg+xml")
        .header("Cache-Control", "no-cache")
        .result(
            TankPlan.svg(
                caption, rig.map(hung -> scene.withFixtures(hung.hangings())).orElse(scene)));
  }

  /** What was typed is stored if it can be read; else it stays on the page with its faults. */
  private void save(Context context) {
    OpenBench bench = desk.benches().of(context);
    String text = String.valueOf(context.formParam("text")).replace("\r\n", "\n");
    try {
      desk.benches().preview(bench, text, bench.files());
      desk.workspace()
          .benches()
          .saveSetup(bench.id(), revision(context), text, Benches.who(context));
    } catch (InvalidFile e) {
      context.status(422);
      show(context, bench, text, e.faults(), Optional.empty(), List.of());
      return;
    } catch (StaleSetup e) {
      context.status(409);
      show(context, bench, text, List.of(), Optional.of(e.current()), List.of());
      return;
    } catch (WorkspaceProblem e) {
      context.status(Problems.status(e.kind()));
      List<String> told = new ArrayList<>(List.of(e.title()));
      told.addAll(e.hints());
      show(context, bench, text, List.of(), Optional.empty(), told);
      return;
    }
    context.redirect("/bench/" + bench.id() + "/setup/text");
  }

  private static long revision(Context context) {
    try {
      return Long.parseLong(String.valueOf(context.formParam("revision")));
    } catch (NumberFormatException e) {
      throw Refusal.of("the page did not say which revision was changed", "load it again");
    }
  }

  private void walk(Context context, boolean back) {
    OpenBench bench = desk.benches().of(context);
    String who = Benches.who(context);
    long revision = revision(context);
    or(
        context,
        () -> {
          if (back) {
            desk.workspace().benches().undo(bench.id(), revision, who);
          } else {
            desk.workspace().benches().redo(bench.id(), revision, who);
          }
          context.redirect("/bench/" + bench.id() + "/setup");
        });
  }

  /** Does something, or shows the page again with why it was not done. */
  private void or(Context context, Runnable change) {
    try {
      change.run();
    } catch (WorkspaceProblem e) {
      tell(context, Problems.status(e.kind()), Problems.problem(e));
    } catch (Refusal e) {
      tell(context, HttpStatus.UNPROCESSABLE_CONTENT, e.problem());
    }
  }

  private void upload(Context context) {
    OpenBench bench = desk.benches().of(context);
    List<UploadedFile> uploads =
        context.uploadedFiles("files").stream().filter(upload -> upload.size() > 0).toList();
    if (uploads.isEmpty() || uploads.size() > MOST_FILES) {
      throw Refusal.of(
          uploads.size() + " files were chosen; 1 to " + MOST_FILES + " can be taken at once",
          "choose the files that the setup names");
    }
    String folder = folder(context);
    Map<String, byte[]> put = new LinkedHashMap<>();
    for (UploadedFile upload : uploads) {
      String name = upload.filename().replace('\\', '/');
      String plain = name.substring(name.lastIndexOf('/') + 1);
      put.put(folder.isEmpty() ? plain : folder + "/" + plain, bytes(upload));
    }
    desk.workspace()
        .benches()
        .save(bench.id(), revision(context), bench.text(), put, Set.of(), Benches.who(context));
    context.redirect("/bench/" + bench.id() + "/setup#files");
  }

  private static String folder(Context context) {
    return Optional.ofNullable(context.formParam("folder")).orElse("").strip();
  }

  private static byte[] bytes(UploadedFile upload) {
    return upload.contentAndClose(
        in -> {
          try {
            return in.readAllBytes();
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  private void delete(Context context) {
    OpenBench bench = desk.benches().of(context);
    String name = String.valueOf(context.formParam("name"));
    known(bench, name);
    desk.workspace()
        .benches()
        .save(
            bench.id(),
            revision(context),
            bench.text(),
            Map.of(),
            Set.of(name),
            Benches.who(context));
    context.redirect("/bench/" + bench.id() + "/setup#files");
  }

  private void file(Context context) {
    OpenBench bench = desk.benches().of(context);
    String name = String.valueOf(context.queryParam("name"));
    context
        .contentType("application/octet-stream")
        .header("Content-Disposition", "attachment")
        .result(known(bench, name));
  }

  private static byte[] known(OpenBench bench, String name) {
    byte[] bytes = bench.files().get(name);
    if (bytes == null) {
      throw new NotFoundResponse("this bench has no such file");
    }
    return bytes;
  }
}
