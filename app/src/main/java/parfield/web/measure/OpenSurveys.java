package parfield.web.measure;

import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import parfield.formats.Setup;
import parfield.units.LengthUnit;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.workspace.SurveySummary;

/** Surveys that are being measured, read anew when their bench's setup changes. Thread-safe. */
final class OpenSurveys {
  private static final int KEPT = 200;

  private final Desk desk;
  private final Map<UUID, OpenSurvey> kept = new ConcurrentHashMap<>();

  OpenSurveys(Desk desk) {
    this.desk = desk;
  }

  /**
   * A survey of a bench.
   *
   * @throws NotFoundResponse if it belongs to another bench
   */
  OpenSurvey open(UUID bench, UUID survey) {
    OpenSurvey open = open(survey);
    if (!open.summary().bench().equals(bench)) {
      throw new NotFoundResponse("this bench has no survey " + survey);
    }
    return open;
  }

  /** A survey by its id. */
  OpenSurvey open(UUID survey) {
    SurveySummary summary = desk.workspace().surveys().get(survey);
    long revision = desk.workspace().benches().get(summary.bench()).revision();
    OpenSurvey known = kept.get(survey);
    if (known != null
        && known.revision() == revision
        && known.summary().name().equals(summary.name())) {
      return known;
    }
    OpenBench bench = desk.benches().open(summary.bench());
    Optional<Setup> setup = bench.setup();
    OpenSurvey open =
        new OpenSurvey(
            summary,
            bench.revision(),
            setup.flatMap(stated -> Optional.ofNullable(stated.plans().get(summary.name()))),
            setup.map(Setup::tank),
            setup.map(stated -> List.copyOf(stated.bands().values())).orElse(List.of()),
            setup.map(Setup::length).orElse(LengthUnit.CM));
    if (kept.size() > KEPT) {
      kept.clear();
    }
    kept.put(survey, open);
    return open;
  }
}
