package parfield.web.measure;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.BiConsumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import parfield.answer.Json;
import parfield.field.Places;
import parfield.rig.Rig;
import parfield.survey.Meter;
import parfield.survey.Survey;
import parfield.survey.Suspicion;
import parfield.survey.SuspiciousReadings;
import parfield.tank.Place;
import parfield.units.Estimate;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;
import parfield.workspace.ReadingRevision;

/**
 * Readings that look wrong, with the reason: by their neighbours, and by the bench's light model if
 * there is one. Looked for in the background after each change; none is ever dropped. Thread-safe.
 */
final class Marks implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Marks.class);

  /** Standard errors between the ends of a 5–95 % interval. */
  private static final double INTERVAL = 3.29;

  private final Desk desk;
  private final OpenSurveys surveys;
  private final BiConsumer<UUID, ObjectNode> found;
  private final Map<UUID, ObjectNode> latest = new ConcurrentHashMap<>();
  private final Map<UUID, Boolean> asked = new ConcurrentHashMap<>();

  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "parfield-marks");
            thread.setDaemon(true);
            return thread;
          });

  /** What the model of one fit says at the places of one rig; for the worker alone. */
  private record Said(UUID model, Rig rig, Map<Place, Estimate> at) {}

  private Optional<Said> said = Optional.empty();

  /**
   * A search for marks.
   *
   * @param found is told what was found, by survey
   */
  Marks(Desk desk, OpenSurveys surveys, BiConsumer<UUID, ObjectNode> found) {
    this.desk = desk;
    this.surveys = surveys;
    this.found = found;
  }

  /** What was found last; empty if nothing was looked for yet. */
  Optional<ObjectNode> latest(UUID survey) {
    return Optional.ofNullable(latest.get(survey));
  }

  /** Looks at a survey's readings soon; asked again meanwhile, it looks once more. */
  void ask(UUID survey) {
    if (asked.put(survey, true) == null) {
      worker.execute(
          () -> {
            asked.remove(survey);
            try {
              ObjectNode marks = look(survey);
              latest.put(survey, marks);
              found.accept(survey, marks);
            } catch (RuntimeException e) {
              LOG.warn("the readings of survey {} were not looked at", survey, e);
            }
          });
    }
  }

  private ObjectNode look(UUID id) {
    OpenSurvey open = surveys.open(id);
    List<ReadingRevision> readings = desk.workspace().readings().of(id);
    ObjectNode json = Json.object();
    json.put("sequence", readings.stream().mapToLong(ReadingRevision::sequence).max().orElse(0));
    ArrayNode marks = json.putArray("marks");
    Optional<OpenSurvey.Counted> counted = open.counted(readings);
    if (counted.isEmpty()) {
      return json;
    }
    Survey survey = counted.get().survey();
    Map<Integer, String> reasons = new HashMap<>();
    add(reasons, SuspiciousReadings.find(survey), "");
    model(open).ifPresent(model -> add(reasons, against(survey, model), "By the light model: "));
    reasons.forEach(
        (index, reason) -> {
          ObjectNode mark = marks.addObject();
          mark.put("reading", counted.get().revisions().get(index).reading().toString());
          mark.put("reason", reason);
        });
    return json;
  }

  private static void add(Map<Integer, String> reasons, List<Suspicion> suspicions, String by) {
    for (Suspicion suspicion : suspicions) {
      for (int index : suspicion.readings()) {
        reasons.putIfAbsent(index, by + suspicion.reason());
      }
    }
  }

  private Optional<StoredModel> model(OpenSurvey open) {
    OpenBench bench = desk.benches().open(open.summary().bench());
    return bench.setup().flatMap(setup -> desk.benches().model(bench));
  }

  private List<Suspicion> against(Survey survey, StoredModel model) {
    Map<Place, Estimate> at = said(survey, model);
    Meter meter = survey.meter();
    int n = survey.readings().size();
    double[] predicted = new double[n];
    double[] sigma = new double[n];
    for (int i = 0; i < n; i++) {
      Estimate estimate = at.get(survey.readings().get(i).place());
      predicted[i] = estimate.value();
      double step = Math.max(meter.resolution(), 0.5) / Math.sqrt(12);
      sigma[i] =
          Math.max(
              1e-3,
              Math.hypot(
                  step,
                  Math.hypot(
                      meter.repeatError() * estimate.value(),
                      (estimate.high() - estimate.low()) / INTERVAL)));
    }
    return SuspiciousReadings.against(survey, predicted, sigma);
  }

  private Map<Place, Estimate> said(Survey survey, StoredModel model) {
    List<Place> places = survey.readings().stream().map(reading -> reading.place()).toList();
    UUID id = model.result().id();
    if (said.isPresent()
        && said.get().model().equals(id)
        && said.get().rig().equals(survey.rig())
        && said.get().at().keySet().containsAll(places)) {
      return said.get().at();
    }
    Estimate[] estimates =
        model.model().predict(desk.benches().solver(), survey.rig(), Places.of(places)).asShown();
    Map<Place, Estimate> at = new HashMap<>();
    for (int i = 0; i < estimates.length; i++) {
      at.put(places.get(i), estimates[i]);
    }
    said = Optional.of(new Said(id, survey.rig(), at));
    return at;
  }

  /** Looks at nothing more. */
  @Override
  public void close() {
    worker.shutdownNow();
  }
}
