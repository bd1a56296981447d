package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import parfield.survey.Coverage;
import parfield.survey.EndsToCentre;
import parfield.survey.Spot;
import parfield.survey.Statistics;
import parfield.survey.Survey;
import parfield.survey.SurveyStatistics;
import parfield.units.LengthUnit;

/**
 * The statistics of each survey's readings, how much light each keeps beside the lowest one, and
 * which readings look wrong.
 *
 * @param surveys at least one, in the setup's order
 * @param suspicions by survey, surveys without any left out
 */
public record StatsAnswer(List<Figures> surveys, List<SuspectReadings> suspicions)
    implements Answer {
  public StatsAnswer {
    surveys = List.copyOf(surveys);
    suspicions = List.copyOf(suspicions);
  }

  /**
   * The figures of one survey.
   *
   * @param survey its readings
   * @param statistics of them
   * @param kept light kept beside the lowest survey; none for the lowest itself
   */
  public record Figures(Survey survey, SurveyStatistics statistics, Optional<Kept> kept) {
    public Figures {
      Objects.requireNonNull(survey, "survey");
      Objects.requireNonNull(statistics, "statistics");
      Objects.requireNonNull(kept, "kept");
    }
  }

  /**
   * Retention beside the lowest survey, or why it cannot be taken.
   *
   * @param reference name of the lowest survey
   * @param retention mean over its mean; empty if they cannot be compared
   * @param reason why not, else empty
   */
  public record Kept(String reference, Optional<Double> retention, String reason) {
    public Kept {
      Objects.requireNonNull(reference, "reference");
      Objects.requireNonNull(retention, "retention");
      Objects.requireNonNull(reason, "reason");
    }
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    for (Figures figures : surveys) {
      text.append(head(figures, unit));
      text.append(light(figures.statistics(), unit));
      if (!figures.statistics().coverageOfReadings().isEmpty()) {
        text.append('\n').append(coverage(figures.statistics(), unit));
      }
      figures.kept().ifPresent(kept -> text.append('\n').append(kept(kept)));
      text.append('\n');
    }
    text.append(legend(unit)).append('\n');
    text.append(SuspectReadings.text(suspicions, unit));
    return text.toString();
  }

  private static String head(Figures figures, LengthUnit unit) {
    Survey survey = figures.survey();
    return String.format(
        Locale.ROOT,
        "Survey %s: rig %s, %s high, meter %s, %s\n",
        survey.name(),
        survey.rig().name(),
        Numbers.withUnit(survey.rig().meanHeight(), unit),
        survey.meter().name(),
        Numbers.count(survey.readings().size(), "reading"));
  }

  private static String light(SurveyStatistics statistics, LengthUnit unit) {
    String at = "at x, y (" + unit.symbol() + ")";
    Table table =
        new Table(
            "rrrrrrrrrr",
            "depth (" + unit.symbol() + ")",
            "readings",
            "mean",
            "min",
            at,
            "max",
            at,
            "U₀",
            "variation (%)",
            "ends/centre");
    for (SurveyStatistics.AtDepth plane : statistics.depths()) {
      light(table, Numbers.length(plane.depth(), unit), plane.statistics(), unit);
    }
    if (statistics.depths().size() > 1) {
      light(table, "all", statistics.all(), unit);
    }
    return table.text();
  }

  private static void light(Table table, String depth, Statistics figures, LengthUnit unit) {
    table.row(
        depth,
        String.valueOf(figures.count()),
        Numbers.ppfd(figures.mean()),
        Numbers.ppfd(figures.min().ppfd()),
        Numbers.spot(figures.min().place(), unit),
        Numbers.ppfd(figures.max().ppfd()),
        Numbers.spot(figures.max().place(), unit),
        Numbers.ratio(figures.evenness()),
        Numbers.percent(figures.variation()),
        figures.endsToCentre().map(ratio -> Numbers.ratio(ratio.ratio())).orElse(Numbers.NONE));
  }

  private static String coverage(SurveyStatistics statistics, LengthUnit unit) {
    Table table =
        new Table(
            "rlrrr",
            "depth (" + unit.symbol() + ")",
            "band (" + Numbers.PPFD + ")",
            "below",
            "inside",
            "above (% of readings)");
    for (SurveyStatistics.AtDepth plane : statistics.depths()) {
      coverage(table, Numbers.length(plane.depth(), unit), plane.coverageOfReadings());
    }
    if (statistics.depths().size() > 1) {
      coverage(table, "all", statistics.coverageOfReadings());
    }
    return table.text();
  }

  private static void coverage(Table table, String depth, List<Coverage> bands) {
    for (Coverage coverage : bands) {
      table.row(
          depth,
          String.format(
              Locale.ROOT,
              "%s %s–%s",
              coverage.band().name(),
              Numbers.plain(coverage.band().from(), 1),
              Numbers.plain(coverage.band().to(), 1)),
          Numbers.percent(coverage.below()),
          Numbers.percent(coverage.inside()),
          Numbers.percent(coverage.above()));
    }
  }

  private static String kept(Kept kept) {
    return kept.retention().isPresent()
        ? String.format(
            Locale.ROOT,
            "Retention: %s, its mean over that of %s, the lowest\n",
            Numbers.ratio(kept.retention().get()),
            kept.reference())
        : String.format(
            Locale.ROOT,
            "Retention beside %s: cannot be taken: %s\n",
            kept.reference(),
            kept.reason());
  }

  private String legend(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append("PPFD in ").append(Numbers.PPFD).append(", after the meter's corrections. ");
    text.append("U₀ = min / mean; variation = standard deviation / mean.\n");
    zones(unit).forEach(zones -> text.append("Ends/centre: mean ").append(zones).append(".\n"));
    text.append("Shares are of readings, each counted once; readings at the centres of cells");
    text.append(" miss the corners.\nFor shares of an area or of the water: field, recommend.\n");
    return text.toString();
  }

  /** The zones of ends and centre, each way of splitting once. */
  private Set<String> zones(LengthUnit unit) {
    Set<String> zones = new LinkedHashSet<>();
    for (Figures figures : surveys) {
      figures
          .statistics()
          .all()
          .endsToCentre()
          .ifPresent(
              split ->
                  zones.add(
                      String.format(
                          Locale.ROOT,
                          "of x up to %s and from %s %s over mean of x from %s to %s %s",
                          Numbers.length(split.leftEnd(), unit),
                          Numbers.length(split.rightEnd(), unit),
                          unit.symbol(),
                          Numbers.length(split.centreFrom(), unit),
                          Numbers.length(split.centreTo(), unit),
                          unit.symbol())));
    }
    return zones;
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    ArrayNode all = json.putArray("surveys");
    for (Figures figures : surveys) {
      ObjectNode entry = all.addObject();
      Survey survey = figures.survey();
      entry.put("name", survey.name());
      entry.put("rig", survey.rig().name());
      entry.put("meter", survey.meter().name());
      Json.length(entry, "height", survey.rig().meanHeight());
      SurveyStatistics statistics = figures.statistics();
      entry.set("all", json(statistics.all(), statistics.coverageOfReadings()));
      ArrayNode depths = entry.putArray("depths");
      for (SurveyStatistics.AtDepth plane : statistics.depths()) {
        ObjectNode at = json(plane.statistics(), plane.coverageOfReadings());
        ObjectNode withDepth = depths.addObject();
        Json.length(withDepth, "depth", plane.depth());
        withDepth.setAll(at);
      }
      figures
          .kept()
          .ifPresent(
              kept -> {
                ObjectNode retention = entry.putObject("retention");
                retention.put("of", kept.reference());
                kept.retention()
                    .ifPresentOrElse(
                        value -> Json.number(retention, "value", value),
                        () -> retention.putNull("value").put("reason", kept.reason()));
              });
    }
    json.set("suspicious_readings", SuspectReadings.json(suspicions));
    return json;
  }

  private static ObjectNode json(Statistics figures, List<Coverage> coverage) {
    ObjectNode json = Json.object();
    json.put("readings", figures.count());
    Json.ppfd(json, "mean", figures.mean());
    spot(json, "min", figures.min());
    spot(json, "max", figures.max());
    Json.number(json, "evenness_u0", figures.evenness());
    Json.number(json, "coefficient_of_variation", figures.variation());
    if (figures.endsToCentre().isPresent()) {
      EndsToCentre split = figures.endsToCentre().get();
      ObjectNode ratio = json.putObject("ends_to_centre");
      Json.number(ratio, "ratio", split.ratio());
      Json.length(ratio, "left_end_to", split.leftEnd());
      Json.length(ratio, "centre_from", split.centreFrom());
      Json.length(ratio, "centre_to", split.centreTo());
      Json.length(ratio, "right_end_from", split.rightEnd());
    } else {
      json.putNull("ends_to_centre");
    }
    ArrayNode bands = json.putArray("coverage_of_readings");
    for (Coverage of : coverage) {
      ObjectNode band = bands.addObject();
      band.put("band", of.band().name());
      Json.number(band, "below", of.below());
      Json.number(band, "inside", of.inside());
      Json.number(band, "above", of.above());
    }
    return json;
  }

  private static void spot(ObjectNode json, String key, Spot spot) {
    ObjectNode at = json.putObject(key);
    Json.ppfd(at, "ppfd", spot.ppfd());
    Json.place(at, spot.place());
  }
}
