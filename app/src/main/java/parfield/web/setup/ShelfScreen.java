package parfield.web.setup;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parfield.answer.Refusal;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Screen;
import parfield.workspace.ShelfItem;

/** The shelf of fixtures beside a setup. */
final class ShelfScreen implements Screen {
  private final Desk desk;
  private final FixtureShelf shelf;

  ShelfScreen(Desk desk) {
    this.desk = desk;
    this.shelf = new FixtureShelf(desk);
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.post("/bench/{id}/setup/shelf/take", this::take);
    routes.post("/bench/{id}/setup/shelf/remove", this::remove);
  }

  private void take(Context context) {
    OpenBench bench = desk.benches().of(context);
    String name = Optional.ofNullable(context.formParam("name")).orElse("");
    FixtureShelf.Taken taken = shelf.take(bench, name, context.formParam("fitted") != null);
    Map<String, byte[]> files = new HashMap<>(bench.files());
    files.putAll(taken.files());
    desk.benches().preview(bench, taken.text(), files);
    desk.workspace()
        .benches()
        .save(
            bench.id(),
            revision(context),
            taken.text(),
            taken.files(),
            Set.of(),
            Benches.who(context));
    context.redirect(
        "/bench/"
            + bench.id()
            + "/setup#"
            + FormGroup.id(SetupForm.FIXTURES.name(taken.name()).pointer()));
  }

  private static long revision(Context context) {
    try {
      return Long.parseLong(String.valueOf(context.formParam("revision")));
    } catch (NumberFormatException e) {
      throw Refusal.of("the page did not say which revision was changed", "load it again");
    }
  }

  private void remove(Context context) {
    OpenBench bench = desk.benches().of(context);
    desk.workspace()
        .shelf()
        .remove(ShelfItem.Kind.FIXTURE, Optional.ofNullable(context.formParam("name")).orElse(""));
    context.redirect("/bench/" + bench.id() + "/setup#shelf");
  }
}
