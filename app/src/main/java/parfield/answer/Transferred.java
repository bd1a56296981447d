package parfield.answer;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.ModelUpdate;
import parfield.fit.Transfer;
import parfield.fit.TransferError;
import parfield.fit.Truth;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.plan.Planner;
import parfield.plan.Progress;
import parfield.plan.Recommendation;
import parfield.rig.Rig;
import parfield.survey.Meter;
import parfield.survey.Survey;
import parfield.tank.Tank;

/**
 * A light model that was fitted elsewhere, applied to a bench's tank and updated by the readings
 * that the bench states, if there are any.
 *
 * @param bench whose tank, fixtures and readings
 * @param transfer the model over the bench's tank, before any reading
 * @param update by the bench's readings
 */
public record Transferred(Bench bench, Transfer transfer, Optional<ModelUpdate> update) {
  /** How many readings are asked for to confirm a transfer. */
  public static final int CONFIRMING = 3;

  /** With fewer draws than this, intervals from 5 to 95 % would be narrower than they are. */
  private static final int FEWEST_DRAWS = 40;

  /** More draws than this tell nothing more, and take minutes; a fit leaves 96. */
  private static final int MOST_DRAWS = 400;

  /** No lamp over a tank sends more than this into a direction [µmol s⁻¹ sr⁻¹]. */
  private static final double BRIGHTEST = 1e7;

  /** Directions from straight down to sideways that a lamp is looked at from. */
  private static final int ASIDE = 12;

  private static final int COLUMNS = 9;
  private static final int ROWS = 5;
  private static final int LAYERS = 4;

  public Transferred {
    Objects.requireNonNull(bench, "bench");
    Objects.requireNonNull(transfer, "transfer");
    Objects.requireNonNull(update, "update");
  }

  /**
   * Applies a model to a bench.
   *
   * @throws Refusal if the model does not know the bench's fixtures, or the bench has so many
   *     readings that they should be fitted by themselves
   */
  public static Transferred of(Bench bench, LightModel published, FieldSolver solver) {
    List<Survey> surveys = List.copyOf(bench.setup().surveys().values());
    int readings = surveys.stream().mapToInt(survey -> survey.readings().size()).sum();
    if (readings > ModelUpdate.MOST_READINGS) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "%s holds %d readings, a transferred model is updated by at most %d",
              bench.setup().source(),
              readings,
              ModelUpdate.MOST_READINGS),
          "they are enough for a model of this tank itself: parfield fit",
          "or name a setup with a few of them");
    }
    Transfer transfer = transfer(bench, published, surveys);
    return new Transferred(
        bench,
        transfer,
        surveys.isEmpty()
            ? Optional.empty()
            : Optional.of(ModelUpdate.of(transfer.model(), solver, surveys)));
  }

  /**
   * Whether a model can be applied to a bench at all: it knows the bench's fixtures, has draws
   * enough to tell how sure it is, and its lamps are lamps.
   *
   * @throws Refusal if it cannot, with why
   */
  public static void check(Bench bench, LightModel published) {
    transfer(bench, published, List.copyOf(bench.setup().surveys().values()));
  }

  /**
   * A model that a fit could have left: with draws enough to tell how sure it is, and lamps that
   * are lamps.
   *
   * @throws Refusal if it is none, with why
   */
  public static void requireSound(LightModel published) {
    int draws = published.draws().size();
    if (draws < FEWEST_DRAWS || draws > MOST_DRAWS) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "this model holds %s of what its readings allow; allowed %d to %d",
              Numbers.count(draws, "draw"),
              FEWEST_DRAWS,
              MOST_DRAWS),
          "ask its publisher for the file as fit leaves it");
    }
    if (!(brightest(published) <= BRIGHTEST)) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "this model has a lamp that sends more than %.0f µmol s⁻¹ sr⁻¹ into a direction",
              BRIGHTEST),
          "no lamp does: ask its publisher for the file as fit leaves it");
    }
  }

  private static Transfer transfer(Bench bench, LightModel published, List<Survey> surveys) {
    requireSound(published);
    try {
      return new Transfer(published, bench.setup().tank(), hung(bench), meter(bench, surveys));
    } catch (IllegalArgumentException e) {
      throw Refusal.of(
          "this model cannot be applied to " + bench.setup().source(),
          String.valueOf(e.getMessage()));
    }
  }

  /** The greatest intensity of any lamp in any draw, straight down and aside; NaN if one is. */
  private static double brightest(LightModel model) {
    double brightest = 0;
    for (Truth truth : Stream.concat(Stream.of(model.best()), model.draws().stream()).toList()) {
      for (List<IntensityDistribution> channels : truth.distributions().values()) {
        for (IntensityDistribution channel : channels) {
          for (int step = 0; step <= ASIDE; step++) {
            // Math.max keeps a NaN.
            brightest = Math.max(brightest, channel.intensity(step * Math.PI / 2 / ASIDE, step));
          }
        }
      }
    }
    return brightest;
  }

  private static List<Fixture> hung(Bench bench) {
    return bench.setup().rigs().values().stream()
        .flatMap(rig -> rig.hangings().stream())
        .map(hanging -> hanging.fixture())
        .distinct()
        .toList();
  }

  /** The meter of the readings, else the first that the bench states. */
  private static Optional<Meter> meter(Bench bench, List<Survey> surveys) {
    return surveys.stream()
        .map(Survey::meter)
        .findFirst()
        .or(() -> bench.setup().meters().values().stream().findFirst());
  }

  /**
   * Recommends for the bench's tank, by the search that the bench suggests.
   *
   * @param hears of progress
   * @param stop whether to end with the best so far
   * @throws Refusal if the bench states no demands
   */
  public Recommendation recommend(
      FieldSolver solver, Consumer<Progress> hears, BooleanSupplier stop) {
    return new Planner(solver)
        .recommend(model(), bench.demands(), Advice.search(bench, bench.usualDepth()), hears, stop);
  }

  /** The model of the bench's tank, after its readings. */
  public LightModel model() {
    return update.map(ModelUpdate::model).orElseGet(transfer::model);
  }

  /**
   * The answer to a recommendation by {@link #model}: its readings to take are the three that tell
   * most.
   *
   * @param published name of the model that was applied
   * @param solver which solver
   * @param recommendation by the model
   * @param left name of the file that the model was left in
   */
  public TransferAnswer answer(
      String published, FieldSolver solver, Recommendation recommendation, Optional<String> left) {
    Tank tank = bench.setup().tank();
    Rig rig = recommendation.best().over(tank);
    Places places = Places.volume(tank, COLUMNS, ROWS, LAYERS);
    TransferError before = TransferError.of(transfer, solver, rig, places);
    return new TransferAnswer(
        published,
        Advice.answer(bench, model(), confirmedByThree(recommendation)),
        before,
        update,
        update.map(done -> TransferError.of(done.model(), solver, rig, places)),
        left);
  }

  private static Recommendation confirmedByThree(Recommendation of) {
    return new Recommendation(
        of.demands(),
        of.search(),
        of.options(),
        of.tradeOff(),
        of.heightSweep(),
        of.spacingSweep(),
        of.bandSettings(),
        of.shortfalls(),
        of.remedies(),
        of.nextReadings().subList(0, Math.min(CONFIRMING, of.nextReadings().size())),
        of.evaluated(),
        of.complete());
  }
}
