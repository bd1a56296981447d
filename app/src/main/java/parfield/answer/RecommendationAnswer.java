package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parfield.care.Caution;
import parfield.plan.BandCoverage;
import parfield.plan.BandSetting;
import parfield.plan.Demand;
import parfield.plan.Figures;
import parfield.plan.Option;
import parfield.plan.Recommendation;
import parfield.plan.Remedy;
import parfield.plan.Verdict;
import parfield.survey.Survey;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * What to hang and to dial, how sure that is, what else there is, and what to mind.
 *
 * @param source name of the setup
 * @param surveys that the model rests on; none where only a model file was given
 * @param statements of the fit: what the readings can and cannot tell
 * @param recommendation the plan's
 */
public record RecommendationAnswer(
    String source, List<Survey> surveys, List<String> statements, Recommendation recommendation)
    implements Answer {
  public RecommendationAnswer {
    Objects.requireNonNull(source, "source");
    surveys = List.copyOf(surveys);
    statements = List.copyOf(statements);
    Objects.requireNonNull(recommendation, "recommendation");
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append("Recommendation for ").append(source).append("\n\n");
    text.append(answer(unit));
    if (!recommendation.complete()) {
      text.append("Interrupted: this is the best found so far, by coarse figures.\n");
    }
    text.append('\n').append(verdicts(unit).text());
    text.append('\n').append(figures(unit).text());
    text.append(
        Lines.section(
            "Why not all demands are met for sure",
            recommendation.shortfalls().stream().map(s -> s.inWords(unit)).toList()));
    text.append(
        Lines.section(
            "What would help",
            recommendation.remedies().stream()
                .filter(Remedy::helps)
                .map(r -> r.inWords(unit))
                .toList()));
    text.append(
        Lines.section(
            "What would not help",
            recommendation.remedies().stream()
                .filter(remedy -> !remedy.helps())
                .map(r -> r.inWords(unit))
                .toList()));
    text.append("\nOptions, the recommended one first\n");
    text.append(options(recommendation.options(), unit).text());
    text.append(
        sweep(
            "The choice between them: no option here beats another in all of coverage, retention,"
                + " evenness and number of fixtures; by coarser cells",
            recommendation.tradeOff(),
            unit));
    text.append(
        sweep(
            "The same fixtures at other heights, each at its own best dials, by coarser cells",
            recommendation.heightSweep(),
            unit));
    text.append(
        sweep(
            "The same height at other spacings, each at its own best dials, by coarser cells",
            recommendation.spacingSweep(),
            unit));
    bandSettings(unit)
        .ifPresent(
            table -> text.append("\nThe same rig for one band alone\n").append(table.text()));
    text.append(
        Lines.section(
            "Readings that would verify it, with this rig at these dials",
            recommendation.nextReadings().stream().map(r -> r.inWords(unit)).toList()));
    if (!surveys.isEmpty()) {
      text.append('\n').append(Measured.text(surveys, unit));
    }
    text.append(Lines.section("What the readings tell", statements));
    text.append(Lines.section("Assumed", recommendation.assumptions(unit)));
    text.append(
        "\nIntervals run from 5 to 95 % and hold the meter's own scale error. Met: probability "
            + Numbers.ratio(Verdict.MET_FROM)
            + " or more;\nfailed: "
            + Numbers.ratio(Verdict.FAILED_TO)
            + " or less; between them it is too close to call.\n");
    text.append(
        Lines.section("Cautions", Arrays.stream(Caution.values()).map(Caution::inWords).toList()));
    return text.toString();
  }

  /** What to hang and to dial, and how sure that is, in a few lines. */
  String answer(LengthUnit unit) {
    Option best = recommendation.best();
    return String.format(
        Locale.ROOT,
        "  Hang  %s, %s above the water\n"
            + "        centres at x, y = %s %s\n"
            + "  Dial  %s\n"
            + "%s"
            + "  All demands together: %s (probability %s)\n",
        best.arrangement().inWords(unit),
        Numbers.withUnit(best.height(), unit),
        centres(unit),
        unit.symbol(),
        best.dials(),
        best.watts().isPresent()
            ? String.format(
                Locale.ROOT, "  Power %s W\n", Numbers.plain(best.watts().getAsDouble(), 0))
            : "",
        best.standing().words(),
        best.probability().inFull());
  }

  /** x and y of the recommended fixtures' centres, without their unit. */
  public String centres(LengthUnit unit) {
    return recommendation.best().over(recommendation.search().tank()).hangings().stream()
        .map(
            hanging -> Numbers.length(hanging.x(), unit) + ", " + Numbers.length(hanging.y(), unit))
        .collect(Collectors.joining("; "));
  }

  /** What is demanded and reached by the recommended option. */
  public Table verdicts(LengthUnit unit) {
    Option best = recommendation.best();
    Table table = new Table("lrrl", "demand", "reached (5–95 %)", "probability", "standing");
    for (Verdict verdict : best.verdicts()) {
      table.row(
          verdict.demand().inWords(unit),
          reached(verdict.demand(), verdict.value()),
          verdict.probability().inWords(),
          verdict.standing().words());
    }
    return table;
  }

  private static String reached(Demand demand, Estimate value) {
    if (demand instanceof Demand.Coverage || demand instanceof Demand.Retention) {
      return Numbers.percent(value) + " %";
    }
    return demand instanceof Demand.HotSpot || demand instanceof Demand.MeanPpfd
        ? Numbers.ppfd(value)
        : Numbers.ratio(value);
  }

  /** Figures of the recommended option, a column for each extent. */
  public Table figures(LengthUnit unit) {
    Option best = recommendation.best();
    List<String> header = new ArrayList<>(List.of("figure (5–95 %)"));
    best.figures().forEach(figures -> header.add(figures.extent().inWords(unit)));
    Table table = new Table("l" + "r".repeat(best.figures().size()), header);
    row(table, best, "mean (" + Numbers.PPFD + ")", f -> Numbers.ppfd(f.mean()));
    row(table, best, "hot spot (" + Numbers.PPFD + ")", f -> Numbers.ppfd(f.hotSpot()));
    row(table, best, "evenness U₀", f -> Numbers.ratio(f.evenness()));
    row(table, best, "ends/centre", f -> Numbers.ratio(f.endsToCentre()));
    row(table, best, "retention", f -> Numbers.ratio(f.retention()));
    List<BandCoverage> bands = best.figures().get(0).coverage();
    for (int b = 0; b < bands.size(); b++) {
      int band = b;
      row(
          table,
          best,
          bands.get(b).band().name() + " (% of it)",
          f -> Numbers.percent(f.coverage().get(band).share()));
    }
    return table;
  }

  private static void row(Table table, Option option, String name, Function<Figures, String> cell) {
    List<String> row = new ArrayList<>(List.of(name));
    option.figures().forEach(figures -> row.add(cell.apply(figures)));
    table.row(row);
  }

  private static String sweep(String heading, List<Option> options, LengthUnit unit) {
    return options.isEmpty() ? "" : "\n" + heading + "\n" + options(options, unit).text();
  }

  /**
   * Options side by side.
   *
   * @param options of this recommendation, at least one
   */
  public static Table options(List<Option> options, LengthUnit unit) {
    List<BandCoverage> bands = options.get(0).figures().get(0).coverage();
    List<String> header = new ArrayList<>();
    header.add("fixtures");
    header.add("height (" + unit.symbol() + ")");
    header.add("dials");
    header.add("all met");
    header.add("retention");
    header.add("U₀");
    bands.forEach(band -> header.add(band.band().name() + " (% of the water)"));
    header.add("power (W)");
    Table table = new Table("lrlrrr" + "r".repeat(bands.size() + 1), header);
    for (Option option : options) {
      Figures volume = option.figures().get(0);
      List<String> row = new ArrayList<>();
      row.add(option.arrangement().inWords(unit));
      row.add(Numbers.length(option.height(), unit));
      row.add(option.dials());
      row.add(option.probability().inWords());
      row.add(Numbers.ratio(volume.retention().value()));
      row.add(Numbers.ratio(volume.evenness().value()));
      volume.coverage().forEach(band -> row.add(Numbers.percent(band.share())));
      row.add(
          option.watts().isPresent()
              ? Numbers.plain(option.watts().getAsDouble(), 0)
              : Numbers.NONE);
      table.row(row);
    }
    return table;
  }

  /** What to dial on the recommended rig for each band alone; empty for fewer than two bands. */
  public Optional<Table> bandSettings(LengthUnit unit) {
    if (recommendation.bandSettings().size() < 2) {
      return Optional.empty();
    }
    Table table = new Table("llrl", "band", "dials", "inside (%)", "of");
    for (BandSetting setting : recommendation.bandSettings()) {
      table.row(
          setting.band().name(),
          recommendation.best().arrangement().pattern().fixture().dials().stream()
              .map(dial -> dial + " " + Numbers.plain(setting.setting().percent(dial), 0) + " %")
              .collect(Collectors.joining(", ")),
          Numbers.percent(setting.coverage()),
          setting.extent().inWords(unit));
    }
    return Optional.of(table);
  }

  /**
   * The sentences of the answer that name lengths, in a unit of length: {@code demands} in their
   * order, {@code shortfalls}, {@code remedies}, {@code assumptions}, {@code next_readings} and
   * {@code measured}.
   */
  public ObjectNode words(LengthUnit unit) {
    ObjectNode words = Json.object();
    put(words, "demands", recommendation.demands().all().stream().map(d -> d.inWords(unit)));
    put(words, "shortfalls", recommendation.shortfalls().stream().map(s -> s.inWords(unit)));
    put(words, "remedies", recommendation.remedies().stream().map(r -> r.inWords(unit)));
    put(words, "assumptions", recommendation.assumptions(unit).stream());
    put(words, "next_readings", recommendation.nextReadings().stream().map(r -> r.inWords(unit)));
    put(words, "measured", surveys.stream().map(survey -> Measured.line(survey, unit)));
    return words;
  }

  private static void put(ObjectNode words, String key, Stream<String> sentences) {
    ArrayNode array = words.putArray(key);
    sentences.forEach(array::add);
  }

  @Override
  public ObjectNode json() {
    return RecommendationJson.of(this);
  }
}
