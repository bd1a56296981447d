package parfield.web.home;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parfield.answer.Refusal;
import parfield.demo.DemoBench;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Display;
import parfield.web.page.Frame;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.workspace.BenchFiles;
import parfield.workspace.BenchSummary;
import parfield.workspace.Page;
import parfield.workspace.SetupRevision;
import parfield.workspace.SurveySummary;

/** The benches of a workspace. */
public final class HomeScreen implements Screen {
  /** Benches on one page of the list. */
  private static final int ON_PAGE = 50;

  /** Surveys that a search shows, those changed last. */
  private static final int MOST_SURVEYS = 20;

  private static final int LONGEST_NAME = 100;

  private final Desk desk;

  /** The screen over a desk. */
  public HomeScreen(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/", this::show);
    routes.get("/benches", this::list);
    routes.post("/benches/sample", this::sample);
    routes.post("/benches/blank", this::blank);
    routes.get(
        "/bench/{id}",
        context -> context.redirect("/bench/" + desk.benches().of(context).id() + "/setup"));
    routes.post("/bench/{id}/rename", this::rename);
    routes.post("/bench/{id}/copy", this::copy);
    routes.post("/bench/{id}/put-away", this::putAway);
    routes.post("/bench/{id}/bring-back", this::bringBack);
    new Carrying(desk).register(routes);
  }

  private void show(Context context) {
    Map<String, Object> values = found(context);
    values.put("frame", Frame.plain("Benches", Display.of(context)).withScript("home.js"));
    values.put("place", desk.workspace().location().toString());
    desk.pages().show(context, "home/home.jte", values);
  }

  /** The list alone, as one types. */
  private void list(Context context) {
    desk.pages().show(context, "home/list.jte", found(context));
  }

  private Map<String, Object> found(Context context) {
    String search = Optional.ofNullable(context.queryParam("search")).orElse("").strip();
    boolean away = context.queryParam("away") != null;
    int page = page(context);
    Page<BenchSummary> found =
        away
            ? desk.workspace().benches().listPutAway(search, ON_PAGE, page * ON_PAGE)
            : desk.workspace().benches().list(search, ON_PAGE, page * ON_PAGE);
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("found", found);
    values.put(
        "surveys",
        search.isEmpty() || away
            ? new Page<SurveySummary>(List.of(), 0)
            : desk.workspace().surveys().list(search, MOST_SURVEYS, 0));
    values.put("search", search);
    values.put(
        "query",
        "search=" + URLEncoder.encode(search, StandardCharsets.UTF_8) + (away ? "&away=1" : ""));
    values.put("away", away);
    values.put("page", page);
    values.put("pages", (int) Math.max(1, (found.total() + ON_PAGE - 1) / ON_PAGE));
    values.put("zone", ZoneId.systemDefault());
    return values;
  }

  private static int page(Context context) {
    try {
      return Math.min(1_000_000, Math.max(0, Integer.parseInt(context.queryParam("page"))));
    } catch (NumberFormatException e) {
      return 0;
    }
  }

  private void sample(Context context) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    DemoBench.files(1)
        .forEach((name, text) -> files.put(name, text.getBytes(StandardCharsets.UTF_8)));
    SetupRevision made =
        desk.workspace()
            .benchFiles()
            .take("Sample bench", true, DemoBench.SETUP, files, Benches.who(context));
    open(context, made, Step.MEASURE);
  }

  private void blank(Context context) {
    String name = name(context);
    SetupRevision made =
        desk.workspace()
            .benches()
            .create(
                name.isEmpty() ? "New bench" : name,
                false,
                BlankBench.SETUP,
                Map.of(),
                Benches.who(context));
    open(context, made, Step.SETUP);
  }

  private void rename(Context context) {
    String name = name(context);
    if (name.isEmpty()) {
      throw Refusal.of("a bench needs a name: got nothing", "go back, and type one");
    }
    desk.workspace().benches().rename(desk.benches().of(context).id(), name);
    context.redirect("/");
  }

  private static String name(Context context) {
    String name = Optional.ofNullable(context.formParam("name")).orElse("").strip();
    if (name.length() > LONGEST_NAME) {
      throw Refusal.of(
          "the name of a bench: got " + name.length() + " letters, allowed " + LONGEST_NAME,
          "go back, and shorten it");
    }
    return name;
  }

  private void copy(Context context) {
    OpenBench bench = desk.benches().of(context);
    SetupRevision made =
        desk.workspace()
            .benchFiles()
            .take(
                bench.name() + " (copy)",
                bench.sample(),
                BenchFiles.SETUP,
                desk.workspace().benchFiles().files(bench.id()),
                Benches.who(context));
    open(context, made, Step.SETUP);
  }

  private void putAway(Context context) {
    desk.workspace().benches().putAway(desk.benches().of(context).id());
    context.redirect("/");
  }

  private void bringBack(Context context) {
    desk.workspace().benches().bringBack(desk.benches().of(context).id());
    context.redirect("/");
  }

  /** Goes to a bench that has come in. */
  static void open(Context context, SetupRevision made, Step step) {
    context.redirect("/bench/" + made.bench() + "/" + step.path());
  }
}
