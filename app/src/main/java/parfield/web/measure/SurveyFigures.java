package parfield.web.measure;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.answer.Json;
import parfield.survey.Coverage;
import parfield.survey.Statistics;
import parfield.survey.SurveyPlan;
import parfield.survey.SurveyStatistics;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;

/** What is known of a survey while it is taken: figures, drift, and what is left to do. */
final class SurveyFigures {
  /** Readings that the present pace is taken from. */
  private static final int PACE_READINGS = 10;

  /** A longer pause is no part of the pace. */
  private static final Duration PAUSE = Duration.ofMinutes(3);

  private SurveyFigures() {}

  /** All of it as JSON: PPFD in µmol m⁻² s⁻¹ after the meter's corrections, depths in metres. */
  static ObjectNode json(OpenSurvey open, List<ReadingRevision> readings) {
    ObjectNode json = Json.object();
    List<GridPoint> points = open.points(readings);
    Optional<OpenSurvey.Counted> counted = open.counted(readings);
    counted.ifPresent(
        taken -> {
          SurveyStatistics statistics =
              SurveyStatistics.of(taken.survey(), open.bands(), List.of());
          figures(json.putObject("all"), statistics.all(), statistics.coverageOfReadings());
          ArrayNode depths = json.putArray("depths");
          for (SurveyStatistics.AtDepth at : statistics.depths()) {
            ObjectNode depth = depths.addObject();
            depth.put("depth", at.depth());
            figures(depth, at.statistics(), at.coverageOfReadings());
          }
        });
    long done =
        points.stream()
            .filter(
                point ->
                    readings.stream()
                        .anyMatch(
                            reading ->
                                reading.reading().equals(point.reading()) && !reading.withdrawn()))
            .count();
    long left = points.size() - done;
    json.put("points", points.size());
    json.put("left", left);
    pace(readings).ifPresent(pace -> json.put("minutes", left * pace.toMillis() / 60_000.0));
    drift(open, points, readings)
        .ifPresent(
            drift -> {
              ObjectNode told = json.putObject("drift");
              told.put("per_hour", drift.perHour());
              told.put("clear", drift.clear());
              told.put("words", drift.words());
            });
    return json;
  }

  private static void figures(ObjectNode json, Statistics statistics, List<Coverage> coverage) {
    json.put("count", statistics.count());
    json.put("mean", statistics.mean());
    json.put("min", statistics.min().ppfd());
    json.put("max", statistics.max().ppfd());
    json.put("evenness", statistics.evenness());
    ArrayNode bands = json.putArray("bands");
    for (Coverage share : coverage) {
      ObjectNode band = bands.addObject();
      band.put("name", share.band().name());
      band.put("from", share.band().from());
      band.put("to", share.band().to());
      band.put("below", share.below());
      band.put("inside", share.inside());
      band.put("above", share.above());
    }
  }

  /** Median time between one reading and the next, of the last ones. */
  static Optional<Duration> pace(List<ReadingRevision> readings) {
    List<Instant> times =
        readings.stream()
            .filter(reading -> !reading.withdrawn())
            .map(ReadingRevision::when)
            .sorted(Comparator.reverseOrder())
            .limit(PACE_READINGS)
            .toList();
    List<Duration> between = new ArrayList<>();
    for (int i = 1; i < times.size(); i++) {
      Duration gap = Duration.between(times.get(i), times.get(i - 1));
      if (gap.compareTo(PAUSE) < 0 && gap.toMillis() > 0) {
        between.add(gap);
      }
    }
    between.sort(Comparator.naturalOrder());
    return between.isEmpty() ? Optional.empty() : Optional.of(between.get(between.size() / 2));
  }

  private static Optional<Drift> drift(
      OpenSurvey open, List<GridPoint> points, List<ReadingRevision> readings) {
    List<Drift.At> series = new ArrayList<>();
    for (ReadingRevision reading : readings) {
      boolean first = !points.isEmpty() && reading.reading().equals(points.get(0).reading());
      if (!reading.withdrawn() && (first || reading.entry().kind() == Entry.Kind.DRIFT)) {
        series.add(new Drift.At(reading.when(), reading.entry().value().getAsDouble()));
      }
    }
    double repeat =
        open.plan().map(SurveyPlan::meter).map(meter -> meter.repeatError()).orElse(0.0);
    return Drift.of(series, repeat);
  }

  /** A number of minutes as a person says it. */
  static String minutes(double minutes) {
    return minutes < 1
        ? "less than a minute"
        : String.format(Locale.ROOT, "about %d min", Math.round(minutes));
  }
}
