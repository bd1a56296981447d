package parfield.web.setup;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import parfield.answer.Refusal;
import parfield.aquascape.Bounds;
import parfield.aquascape.Mesh;
import parfield.formats.Fault;
import parfield.formats.InvalidFile;
import parfield.formats.Setup;
import parfield.formats.SetupText;
import parfield.units.LengthUnit;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Frame;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.workspace.SetupRevision;
import parfield.workspace.StaleSetup;
import parfield.workspace.SurveySummary;

/** The setup as forms and a drawing. */
final class FormScreen implements Screen {
  private static final String ADD = "add:";
  private static final String REMOVE = "remove:";
  private static final String SHELVE = "shelve:";

  private final Desk desk;

  FormScreen(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/setup", this::show);
    routes.post("/bench/{id}/setup/form", this::save);
  }

  private void show(Context context) {
    OpenBench bench = desk.benches().of(context);
    LengthUnit unit = desk.benches().frame(context, bench, Step.SETUP).length();
    FormView view;
    try {
      view = view(bench, unit);
    } catch (InvalidFile e) {
      // What is no YAML has no fields; the text tells its faults.
      context.redirect("/bench/" + bench.id() + "/setup/text");
      return;
    }
    show(
        context,
        bench,
        bench.faults().isEmpty() ? view : view.with(Map.of(), Map.of(), bench.faults()),
        Optional.empty(),
        List.of());
  }

  private FormView view(OpenBench bench, LengthUnit unit) {
    return FormView.of(
        sections(bench, text(bench), unit),
        bench.setup().map(setup -> Oddities.of(setup, unit)).orElse(Map.of()),
        unit);
  }

  /** Sizes of the boxes about meshes as they lie, by the address of their rock: for the drawing. */
  private static Map<String, double[]> meshes(Optional<Setup> setup, LengthUnit unit) {
    Map<String, double[]> sizes = new LinkedHashMap<>();
    setup.stream()
        .flatMap(known -> known.tank().aquascape().rocks().stream())
        .filter(rock -> rock.shape() instanceof Mesh)
        .forEach(
            rock -> {
              Bounds box = rock.shape().bounds();
              sizes.put(
                  SetupForm.ROCKS.name(rock.name()).pointer(),
                  new double[] {
                    unit.fromMetres(box.toX() - box.fromX()),
                    unit.fromMetres(box.toY() - box.fromY()),
                    unit.fromMetres(box.toDepth() - box.fromDepth())
                  });
            });
    return sizes;
  }

  private static SetupText text(OpenBench bench) {
    return SetupText.of(bench.name(), bench.text());
  }

  private static List<FormGroup> sections(OpenBench bench, SetupText text, LengthUnit unit) {
    return SetupForm.of(
        text,
        unit,
        bench.files().keySet(),
        bench.surveys().values().stream()
            .filter(survey -> survey.sequence() > 0)
            .map(SurveySummary::name)
            .toList());
  }

  private void show(
      Context context,
      OpenBench bench,
      FormView view,
      Optional<SetupRevision> other,
      List<String> lost) {
    Frame frame =
        desk.benches()
            .frame(context, bench, Step.SETUP)
            .withScript("setup-form.js")
            .withStyle("setup.css");
    Map<String, Object> values = new HashMap<>();
    values.put("frame", frame);
    values.put("bench", bench);
    values.put("view", view);
    values.put("rigs", text(bench).names(SetupForm.RIGS));
    values.put("rig", String.valueOf(context.queryParam("rig")));
    values.put("other", other);
    values.put("lost", lost);
    values.put("stored", stored(bench.document()));
    values.put("canUndo", desk.workspace().benches().canUndo(bench.id()));
    values.put("canRedo", desk.workspace().benches().canRedo(bench.id()));
    values.put("meshes", meshes(bench.setup(), frame.length()));
    values.put("orphans", desk.benches().orphans(bench));
    values.put("shelf", new FixtureShelf(desk).kept());
    values.put("demands", demands(bench.setup(), frame.length()));
    desk.pages().show(context, "setup/forms.jte", values);
  }

  private static String stored(SetupRevision document) {
    return "revision "
        + document.revision()
        + ", stored "
        + document
            .when()
            .atZone(ZoneId.systemDefault())
            .toString()
            .substring(0, 16)
            .replace('T', ' ')
        + " by "
        + document.who();
  }

  private static List<String> demands(Optional<Setup> setup, LengthUnit unit) {
    return setup.stream()
        .flatMap(s -> s.demands().stream())
        .map(demand -> demand.inWords(unit))
        .toList();
  }

  /** What was typed is put into the text and stored, if the text can be read then. */
  private void save(Context context) {
    OpenBench bench = desk.benches().of(context);
    long revision = revision(context);
    LengthUnit unit = "in".equals(context.formParam("unit")) ? LengthUnit.INCH : LengthUnit.CM;
    Map<String, String> typed =
        context.formParamMap().entrySet().stream()
            .filter(field -> !field.getValue().isEmpty())
            .collect(Collectors.toMap(Map.Entry::getKey, field -> field.getValue().get(0)));
    if (revision != bench.revision()) {
      stale(context, bench, revision, typed, unit);
      return;
    }
    SetupText text = text(bench);
    List<FormGroup> sections = sections(bench, text, unit);
    String button = Optional.ofNullable(context.formParam("do")).orElse("");
    try {
      FormEdits.Edited edited =
          FormEdits.apply(text, sections, typed, unit, action(sections, button));
      if (!edited.problems().isEmpty()) {
        List<Fault> faults = faults(bench, edited.text().text());
        refuse(context, bench, typed, edited.problems(), faults, unit);
        return;
      }
      if (!edited.text().text().equals(text.text())) {
        desk.benches().preview(bench, edited.text().text(), bench.files());
        desk.workspace()
            .benches()
            .saveSetup(bench.id(), revision, edited.text().text(), Benches.who(context));
      }
    } catch (InvalidFile e) {
      refuse(context, bench, typed, Map.of(), e.faults(), unit);
      return;
    } catch (StaleSetup e) {
      stale(context, desk.benches().open(bench.id()), revision, typed, unit);
      return;
    }
    if (button.startsWith(SHELVE)) {
      shelve(context, bench.id(), FormEdits.group(sections, button.substring(SHELVE.length())));
    }
    context.redirect("/bench/" + bench.id() + "/setup" + place(sections, button));
  }

  /** Puts a fixture on the shelf as it is stored now, under the name that it has now. */
  private void shelve(Context context, UUID id, FormGroup fixture) {
    if (!fixture.path().parent().equals(SetupForm.FIXTURES)) {
      throw Refusal.of("only a fixture goes on the shelf", "load the page again");
    }
    String typed = context.formParam("name:" + fixture.path().pointer());
    String name = typed == null || typed.isBlank() ? fixture.title() : typed.strip();
    new FixtureShelf(desk).put(desk.benches().open(id), name, Benches.who(context));
  }

  /** What would be wrong with a text: all is told at once. */
  private List<Fault> faults(OpenBench bench, String text) {
    try {
      desk.benches().preview(bench, text, bench.files());
      return List.of();
    } catch (InvalidFile e) {
      return e.faults();
    }
  }

  private static UnaryOperator<SetupText> action(List<FormGroup> sections, String button) {
    if (button.startsWith(ADD)) {
      FormGroup group = FormEdits.group(sections, button.substring(ADD.length()));
      return text -> Additions.to(text, group);
    }
    if (button.startsWith(REMOVE)) {
      FormGroup group = FormEdits.group(sections, button.substring(REMOVE.length()));
      return text -> Removal.of(text, group.path());
    }
    return UnaryOperator.identity();
  }

  /** The part of the page that a button is about. */
  private static String place(List<FormGroup> sections, String button) {
    if (button.startsWith(ADD)) {
      return "#" + FormEdits.group(sections, button.substring(ADD.length())).id();
    }
    if (button.startsWith(REMOVE)) {
      return "#"
          + FormGroup.id(
              FormEdits.group(sections, button.substring(REMOVE.length()))
                  .path()
                  .parent()
                  .pointer());
    }
    return button.startsWith(SHELVE) ? "#shelf" : "";
  }

  private void refuse(
      Context context,
      OpenBench bench,
      Map<String, String> typed,
      Map<String, List<String>> problems,
      List<Fault> faults,
      LengthUnit unit) {
    context.status(422);
    show(
        context,
        bench,
        view(bench, unit).with(typed, problems, faults),
        Optional.empty(),
        List.of());
  }

  /** Another saved meanwhile: what was typed here stands in the form as it is now. */
  private void stale(
      Context context, OpenBench bench, long revision, Map<String, String> typed, LengthUnit unit) {
    SetupText base =
        SetupText.of(bench.name(), desk.workspace().benches().setup(bench.id(), revision).text());
    FormView now = view(bench, unit);
    Map<String, FormField> fields = new LinkedHashMap<>();
    now.sections().forEach(s -> s.all().forEach(field -> fields.put(field.name(), field)));
    Map<String, String> changed = new LinkedHashMap<>();
    Map<String, String> remarks = new LinkedHashMap<>(now.remarks());
    List<String> lost = new ArrayList<>();
    for (FormGroup section : sections(bench, base, unit)) {
      for (FormField field : section.all()) {
        if (!FormEdits.changed(field, typed)) {
          continue;
        }
        String mine = typed.get(field.name());
        FormField theirs = fields.get(field.name());
        if (theirs == null) {
          lost.add(field.path().text() + ": " + mine);
        } else {
          changed.put(field.name(), mine);
          if (!theirs.shown().equals(field.shown())) {
            remarks.put(
                field.path().pointer(),
                "stored meanwhile: " + (theirs.shown().isEmpty() ? "nothing" : theirs.shown()));
          }
        }
      }
    }
    context.status(409);
    show(
        context,
        bench,
        new FormView(now.sections(), changed, Map.of(), remarks, List.of(), unit),
        Optional.of(bench.document()),
        lost);
  }

  private static long revision(Context context) {
    try {
      return Long.parseLong(String.valueOf(context.formParam("revision")));
    } catch (NumberFormatException e) {
      throw Refusal.of("the page did not say which revision was changed", "load it again");
    }
  }
}
