package parfield.web.bench;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import parfield.answer.RecommendationAnswer;
import parfield.field.FastSolver;
import parfield.fit.LightModel;
import parfield.formats.Fault;
import parfield.formats.InvalidFile;
import parfield.formats.ModelFile;
import parfield.formats.Setup;
import parfield.formats.SetupFile;
import parfield.survey.Reading;
import parfield.tank.Tank;
import parfield.units.LengthUnit;
import parfield.web.page.BenchHead;
import parfield.web.page.Display;
import parfield.web.page.Frame;
import parfield.web.page.Step;
import parfield.web.page.StepState;
import parfield.workspace.BenchSummary;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;
import parfield.workspace.Result;
import parfield.workspace.SetupRevision;
import parfield.workspace.StoredFile;
import parfield.workspace.SurveySummary;
import parfield.workspace.Workspace;

/**
 * The stored benches, read. A bench is read anew when its setup or a survey was changed, a model
 * once. Thread-safe.
 */
public final class Benches {
  /** Cookie with the name of the person who writes. */
  public static final String WHO = "parfield-who";

  private static final String NOBODY = "me";

  /** Benches that are kept read. */
  private static final int KEPT = 32;

  /** Models that are kept read: each takes a few megabytes. */
  private static final int KEPT_MODELS = 8;

  private final Workspace workspace;
  private final String version;
  private final FastSolver solver = new FastSolver();
  private final Map<UUID, Kept> kept = leastRecent(KEPT);
  private final Map<UUID, LightModel> models = leastRecent(KEPT_MODELS);

  /** A bench as it was read, and what would have to change for it to be read again. */
  private record Kept(long revision, Map<String, Long> sequences, String name, OpenBench bench) {}

  Benches(Workspace workspace, String version) {
    this.workspace = workspace;
    this.version = version;
  }

  private static <K, V> Map<K, V> leastRecent(int most) {
    return new LinkedHashMap<>(16, 0.75f, true) {
      private static final long serialVersionUID = 1L;

      @Override
      protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
        return size() > most;
      }
    };
  }

  /** The solver that all screens share, with the tables it keeps. */
  public FastSolver solver() {
    return solver;
  }

  /** Who writes: what the browser's cookie says. */
  public static String who(Context context) {
    String who = context.cookie(WHO);
    return who == null || who.isBlank() || who.length() > 60 ? NOBODY : who.strip();
  }

  /** The bench that an address names by its parameter {@code id}; 404 if there is none. */
  public OpenBench of(Context context) {
    try {
      return open(UUID.fromString(context.pathParam("id")));
    } catch (IllegalArgumentException e) {
      throw new NotFoundResponse("there is no such bench");
    }
  }

  /**
   * A bench as it is now.
   *
   * @throws parfield.workspace.WorkspaceProblem if there is none
   */
  public OpenBench open(UUID id) {
    BenchSummary summary = workspace.benches().get(id);
    Map<String, SurveySummary> surveys = new LinkedHashMap<>();
    workspace.surveys().of(id).forEach(survey -> surveys.put(survey.name(), survey));
    Map<String, Long> sequences = new LinkedHashMap<>();
    surveys.forEach((name, survey) -> sequences.put(name, survey.sequence()));
    synchronized (kept) {
      Kept known = kept.get(id);
      if (known != null
          && known.revision == summary.revision()
          && known.sequences.equals(sequences)
          && known.name.equals(summary.name())) {
        return known.bench;
      }
    }
    OpenBench bench = read(summary, surveys);
    synchronized (kept) {
      kept.put(id, new Kept(bench.revision(), sequences, summary.name(), bench));
    }
    return bench;
  }

  private OpenBench read(BenchSummary summary, Map<String, SurveySummary> surveys) {
    SetupRevision document = workspace.benches().setup(summary.id());
    Map<String, byte[]> files = new LinkedHashMap<>();
    document.files().forEach((name, file) -> files.put(name, workspace.bytes(file)));
    Map<?, ?> tree = FitInputs.tree(document.text());
    Map<String, List<Reading>> readings = new LinkedHashMap<>();
    for (String name : FitInputs.surveys(tree)) {
      readings.put(name, surveys.containsKey(name) ? counted(surveys.get(name).id()) : List.of());
    }
    Optional<Setup> setup = Optional.empty();
    List<Fault> faults = List.of();
    try {
      setup = Optional.of(SetupFile.read(summary.name(), document.text(), files, readings));
    } catch (InvalidFile e) {
      faults = e.faults();
    }
    String inputs = FitInputs.digest(tree, document.files(), readings);
    return new OpenBench(
        summary,
        document,
        files,
        surveys,
        setup,
        faults,
        inputs,
        setup.map(read -> AdviceInputs.digest(inputs, read)));
  }

  /**
   * The setup that a text would give with a bench's readings, as it would be read if it were
   * stored.
   *
   * @throws InvalidFile with its faults
   */
  public Setup preview(OpenBench bench, String text, Map<String, byte[]> files) {
    Map<String, List<Reading>> readings = new LinkedHashMap<>();
    for (String name : FitInputs.surveys(FitInputs.tree(text))) {
      SurveySummary survey = bench.surveys().get(name);
      readings.put(name, survey == null ? List.of() : counted(survey.id()));
    }
    return SetupFile.read(bench.name(), text, files, readings);
  }

  /** The grid readings of a survey that count, in the order of the survey. */
  private List<Reading> counted(UUID survey) {
    return workspace.readings().of(survey).stream()
        .filter(reading -> !reading.withdrawn() && reading.entry().kind() == Entry.Kind.GRID)
        .sorted(Comparator.comparingInt((ReadingRevision reading) -> reading.entry().order()))
        .map(
            reading ->
                new Reading(0, reading.entry().place(), reading.entry().value().getAsDouble()))
        .collect(Collectors.toCollection(ArrayList::new));
  }

  /** The light model of a bench: of its present inputs if there is one, else the newest. */
  public Optional<StoredModel> model(OpenBench bench) {
    Optional<Result> current =
        workspace.results().latest(bench.id(), Result.Kind.MODEL, bench.inputs());
    Optional<Result> newest =
        current.isPresent()
            ? current
            : workspace.results().list(bench.id(), Result.Kind.MODEL, 1).stream().findFirst();
    return newest.map(result -> new StoredModel(model(result), result, current.isPresent()));
  }

  /** What a stored model file holds; read once. */
  public LightModel model(Result result) {
    synchronized (models) {
      LightModel known = models.get(result.id());
      if (known != null) {
        return known;
      }
    }
    LightModel model = ModelFile.read("the stored model", workspace.bytes(result.document()));
    synchronized (models) {
      models.put(result.id(), model);
    }
    return model;
  }

  /** Version of the program. */
  public String version() {
    return version;
  }

  /** Keeps a light model that was fitted to a bench as it is in {@code bench}. */
  public Result keepModel(OpenBench bench, LightModel model, String who) {
    Result result =
        workspace
            .results()
            .save(
                bench.id(),
                Result.Kind.MODEL,
                inputs(bench, bench.inputs()),
                ModelFile.bytes(model),
                who);
    synchronized (models) {
      models.put(result.id(), model);
    }
    return result;
  }

  /** Keeps a recommendation for a bench as it is in {@code bench}, found with one of its models. */
  public Result keepAdvice(
      OpenBench bench, StoredModel model, RecommendationAnswer answer, String who) {
    String digest = AdviceInputs.digest(model.result().inputs().digest(), bench.setupOrRefuse());
    return workspace
        .results()
        .save(
            bench.id(),
            Result.Kind.RECOMMENDATION,
            inputs(bench, digest),
            AdviceDocument.of(answer),
            who);
  }

  /**
   * Keeps a recommendation that was found by a light model of another tank, for a bench whose model
   * that has become.
   *
   * @param document as {@link AdviceDocument} makes it
   */
  public Result keepAdvice(OpenBench bench, byte[] document, String who) {
    return workspace
        .results()
        .save(
            bench.id(),
            Result.Kind.RECOMMENDATION,
            inputs(bench, bench.advised().orElseThrow()),
            document,
            who);
  }

  /**
   * Keeps what a light model of another tank came to on a bench as it is in {@code bench}.
   *
   * @param published the file of that model
   * @param model of this tank, after its readings
   * @param document given the stored model of this tank
   */
  public Result keepTransfer(
      OpenBench bench,
      StoredFile published,
      LightModel model,
      Function<Result, byte[]> document,
      String who) {
    Result.Inputs inputs = inputs(bench, transferInputs(bench, published));
    Result here =
        workspace
            .results()
            .save(bench.id(), Result.Kind.TRANSFERRED, inputs, ModelFile.bytes(model), who);
    synchronized (models) {
      models.put(here.id(), model);
    }
    return workspace
        .results()
        .save(bench.id(), Result.Kind.TRANSFER, inputs, document.apply(here), who);
  }

  /** Digest of what a transfer depends on: the model's file, and all that its advice does. */
  public static String transferInputs(OpenBench bench, StoredFile published) {
    return "transfer-"
        + FitInputs.digest(bench.advised().orElse(bench.inputs()) + ' ' + published.digest());
  }

  /** Whether a light model of a bench is one that was fitted elsewhere. */
  public boolean transferred(StoredModel model) {
    return workspace
        .results()
        .holds(model.result().bench(), Result.Kind.TRANSFERRED, model.result().document());
  }

  /** Keeps a report of a recommendation: it depends on what that depends on. */
  public Result keepReport(Result advice, byte[] page, String who) {
    return workspace.results().save(advice.bench(), Result.Kind.REPORT, advice.inputs(), page, who);
  }

  /**
   * Whether a recommendation would be found again: nothing was changed that it depends on. Those
   * stored before this was noted are compared by the revision that they were found for.
   */
  public boolean current(OpenBench bench, Result advice) {
    if (AdviceInputs.isOne(advice.inputs().digest())) {
      return bench.advised().equals(Optional.of(advice.inputs().digest()));
    }
    return advice.inputs().digest().equals(bench.inputs())
        && sameAims(bench, advice.inputs().setupRevision());
  }

  /** Whether a revision of a bench's setup states the bands and demands that it states now. */
  public boolean sameAims(OpenBench bench, long revision) {
    return revision == bench.revision()
        || FitInputs.aims(FitInputs.tree(workspace.benches().setup(bench.id(), revision).text()))
            .equals(FitInputs.aims(FitInputs.tree(bench.text())));
  }

  private Result.Inputs inputs(OpenBench bench, String digest) {
    return new Result.Inputs(
        digest,
        bench.revision(),
        bench.surveys().values().stream()
            .collect(Collectors.toMap(SurveySummary::id, SurveySummary::sequence)),
        version);
  }

  /** The frame of a page about a bench. */
  public Frame frame(Context context, OpenBench bench, Step current) {
    Display display = Display.of(context);
    LengthUnit unit = display.unit(bench.setup().map(Setup::length).orElse(LengthUnit.CM));
    return new Frame(
        current.title() + " · " + bench.name(),
        Optional.of(
            new BenchHead(bench.id(), bench.name(), bench.sample(), steps(bench, unit), current)),
        display,
        unit,
        List.of(),
        List.of(),
        List.of());
  }

  private List<StepState> steps(OpenBench bench, LengthUnit unit) {
    Optional<StoredModel> model = model(bench);
    boolean fitted = model.map(StoredModel::current).orElse(false);
    boolean stated = bench.setup().map(Benches::distributionsStated).orElse(false);
    List<Result> advice = workspace.results().list(bench.id(), Result.Kind.RECOMMENDATION, 1);
    boolean advised = !advice.isEmpty() && current(bench, advice.get(0));
    return List.of(
        new StepState(
            Step.SETUP,
            bench.setup().isPresent(),
            bench
                .setup()
                .map(setup -> size(setup.tank(), unit))
                .orElse(bench.faults().size() + " to mend")),
        new StepState(
            Step.MEASURE,
            bench.readings() > 0,
            bench.readings() > 0 ? bench.readings() + " readings" : "no reading yet"),
        new StepState(
            Step.MODEL,
            fitted,
            !fitted
                ? model.isPresent() ? "out of date" : "not yet"
                : transferred(model.get()) ? "of another tank" : "fitted"),
        new StepState(
            Step.EXPLORE,
            model.isPresent() || stated,
            model.isPresent() || stated ? "ready" : "wants a model"),
        new StepState(
            Step.RECOMMEND,
            advised,
            advised ? "kept" : advice.isEmpty() ? "not yet" : "out of date"),
        new StepState(Step.PUBLISH, false, "files, print"));
  }

  private static boolean distributionsStated(Setup setup) {
    return setup.fixtures().values().stream()
        .flatMap(fixture -> fixture.channels().stream())
        .allMatch(channel -> channel.distribution().isPresent());
  }

  private static String size(Tank tank, LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "%.0f × %.0f × %.0f %s",
        unit.fromMetres(tank.length()),
        unit.fromMetres(tank.width()),
        unit.fromMetres(tank.depth()),
        unit.symbol());
  }

  /** Names of the surveys that are stored but that the setup no longer states. */
  public Set<String> orphans(OpenBench bench) {
    Set<String> names = new java.util.LinkedHashSet<>(bench.surveys().keySet());
    names.removeAll(FitInputs.surveys(FitInputs.tree(bench.text())));
    return names;
  }
}
