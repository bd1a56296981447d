package parfield.report;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import parfield.answer.RecommendationAnswer;
import parfield.answer.Table;
import parfield.answer.TankWords;
import parfield.plan.Option;
import parfield.units.LengthUnit;

/**
 * Advice that a stranger can repeat: every figure with its unit and interval, in words and pictures
 * that are ready to be set.
 *
 * @param title of the whole
 * @param made what made it, and when if that shall be told
 * @param unit of lengths
 * @param advice the answer, as every other page says it
 * @param field figures of the planes that maps show
 * @param light maps of PPFD on one scale, maps of the demanded bands, the section, shares in band
 *     over depth
 * @param choice what height and spacing change
 * @param spectra of the channels; none where the setup states none
 * @param mix figures of the light at the recommended dials
 * @param tank the bench's tank
 * @param surveys what was measured, a line each
 * @param corrections of each meter, a sentence each
 * @param model of the light: how well it does on this bench
 * @param limits what the advice does not hold for, a sentence each
 * @param elsewhere where to begin over other tanks
 * @param cautions a sentence each
 */
public record Report(
    String title,
    String made,
    LengthUnit unit,
    RecommendationAnswer advice,
    Table field,
    List<Picture> light,
    List<Picture> choice,
    List<Picture> spectra,
    Optional<Table> mix,
    List<TankWords.Row> tank,
    List<String> surveys,
    List<String> corrections,
    ModelPart model,
    List<String> limits,
    Optional<Elsewhere> elsewhere,
    List<String> cautions) {
  private static final int MOST_OPTIONS = 6;

  public Report {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(made, "made");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(advice, "advice");
    Objects.requireNonNull(field, "field");
    light = List.copyOf(light);
    choice = List.copyOf(choice);
    spectra = List.copyOf(spectra);
    tank = List.copyOf(tank);
    surveys = List.copyOf(surveys);
    corrections = List.copyOf(corrections);
    Objects.requireNonNull(model, "model");
    limits = List.copyOf(limits);
    cautions = List.copyOf(cautions);
  }

  /**
   * What the light model is worth on this bench.
   *
   * @param error how far it misses the readings, a sentence
   * @param heldOut errors of predicting what was held out; empty where nothing could be
   * @param conditions of the bench, stated and found
   * @param statements what the readings can and cannot tell
   * @param scatter measured over predicted
   */
  public record ModelPart(
      String error,
      Optional<Table> heldOut,
      Optional<Table> conditions,
      List<String> statements,
      Picture scatter) {
    public ModelPart {
      statements = List.copyOf(statements);
    }
  }

  /**
   * Where to begin over other tanks.
   *
   * @param table a row for each tank
   * @param about what the rows rest on, a sentence each
   */
  public record Elsewhere(Table table, List<String> about) {
    public Elsewhere {
      Objects.requireNonNull(table, "table");
      about = List.copyOf(about);
    }
  }

  /**
   * Options among which a person chooses; where they are many, the first: those that cover most.
   */
  public List<Option> tradeOff() {
    List<Option> all = advice.recommendation().tradeOff();
    return all.subList(0, Math.min(MOST_OPTIONS, all.size()));
  }

  /** What was asked for, a line for each demand. */
  public List<String> question() {
    return advice.recommendation().demands().all().stream()
        .map(demand -> demand.inWords(unit))
        .toList();
  }
}
