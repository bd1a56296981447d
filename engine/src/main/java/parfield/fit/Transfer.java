package parfield.fit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import parfield.field.Departure;
import parfield.lamp.Fixture;
import parfield.survey.Meter;
import parfield.tank.Lid;
import parfield.tank.Side;
import parfield.tank.Tank;

/**
 * A light model applied to a tank in which it was not measured: its lamps over other panes, other
 * water, another bottom.
 *
 * <p>What the readings told of the first tank says nothing of the other. Each draw of the
 * transferred model therefore keeps its lamps alone, and with them the scale error of the meter
 * that they were measured with; the other tank's conditions are drawn from the same priors about
 * what is stated of it as a fit would use, the fixtures are hung anew, another specimen of each
 * fixture is taken, and a lid lets through a little more or less than stated. Deterministic.
 *
 * <p>The predicted PPFD is as the other bench's own meter would show it, where one is stated: the
 * draws hold the scale errors of both meters then, and {@link Truth#meterScale} is that of the new
 * one. True PPFD holds the error of the first alone. Immutable.
 *
 * <p>Not in it: a rim or brace other than stated, another depth of the water than stated, and a
 * fixture that has aged.
 *
 * @param published the light model, as it was fitted elsewhere
 * @param tank the other tank, as stated
 * @param fixtures what hangs over it, at least one of them known to the model by its name
 * @param meter what is read with over the other tank; if none is given, the meter of the model
 */
public record Transfer(
    LightModel published, Tank tank, List<Fixture> fixtures, Optional<Meter> meter) {
  /**
   * Standard deviation of ln output from one specimen of a fixture to another, all channels alike;
   * common practice, no source.
   */
  public static final double SPECIMEN_DEVIATION = 0.04;

  /** The same of each channel by itself; common practice, no source. */
  public static final double SPECIMEN_CHANNEL_DEVIATION = 0.03;

  /**
   * Standard deviation of ln light that a mesh or a clear lid lets through: salt, dust, a mesh
   * fraction told by eye; common practice, no source.
   */
  public static final double LID_DEVIATION = 0.04;

  /**
   * The widths of priors that are common practice are themselves known only roughly. A deviation of
   * unknown width follows Student's t; with eight degrees of freedom its standard deviation is this
   * many times that of the normal law of the same scale, √(8 / 6). The eight are our judgement.
   */
  static final double WIDTH_IN_DOUBT = Math.sqrt(8.0 / 6);

  /**
   * Standard deviation of ln mean PPFD by which the fast solver misses the reference solver where
   * its assumptions hold; see the validation page.
   */
  private static final double SOLVER_DEVIATION = 0.005;

  /** A normal deviation's median size, in standard deviations. */
  private static final double MEDIAN_SIZE = 0.6745;

  private static final double LEAST_SCALE = 0.1;

  /** A third of all normal deviations lies within this. */
  private static final double THIRD = 0.4307;

  public Transfer {
    Objects.requireNonNull(published, "published");
    Objects.requireNonNull(tank, "tank");
    fixtures = List.copyOf(fixtures);
    Objects.requireNonNull(meter, "meter");
    requireKnown(published, fixtures);
  }

  /** A transfer that predicts what the meter of the model would show. */
  public static Transfer to(Tank tank, LightModel published, Collection<Fixture> fixtures) {
    return new Transfer(published, tank, List.copyOf(fixtures), Optional.empty());
  }

  /** The same over another tank. */
  public Transfer withTank(Tank newTank) {
    return new Transfer(published, newTank, fixtures, meter);
  }

  /** The same with a meter of the other bench's own. */
  public Transfer withMeter(Meter newMeter) {
    return new Transfer(published, tank, fixtures, Optional.of(newMeter));
  }

  private static void requireKnown(LightModel model, List<Fixture> fixtures) {
    Map<String, ?> known = model.best().distributions();
    List<String> names = new ArrayList<>();
    for (Fixture fixture : fixtures) {
      names.add(fixture.name());
      if (!known.containsKey(fixture.name())) {
        continue;
      }
      int channels = model.best().distributions().get(fixture.name()).size();
      if (channels != fixture.channels().size()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "fixture %s has %d channels here, the light model knows it with %d; state the"
                    + " fixture just as the model's setup does",
                fixture.name(),
                fixture.channels().size(),
                channels));
      }
    }
    if (names.stream().noneMatch(known::containsKey)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the light model knows %s, over this tank hangs %s; state the model's fixture under"
                  + " its own name, just as the model's setup does",
              String.join(", ", known.keySet()),
              names.isEmpty() ? "none" : String.join(", ", new TreeSet<>(names))));
    }
  }

  /** The light model of the other tank. */
  public LightModel model() {
    return model(EnumSet.allOf(Cause.class), false);
  }

  /**
   * The same for a look at many tanks: all panes are wrong together, in one of three states, so
   * that the geometry of diffuse light is worked out three times and not once a draw. The error of
   * the mean comes out a little wider than that of {@link #model()}, where panes err by themselves.
   */
  public LightModel coarseModel() {
    return model(EnumSet.allOf(Cause.class), true);
  }

  /**
   * The light model of the other tank, wrong by some causes alone: to tell how much of its error
   * comes from what. Everything else stands at the middle of its prior, and the meter is that of
   * the model.
   */
  public LightModel because(Cause cause) {
    return model(EnumSet.of(cause), false);
  }

  private LightModel model(Set<Cause> causes, boolean coarse) {
    Conditions conditions = Conditions.of(tank);
    int count = published.draws().size();
    Chances chances =
        new Chances(
            published.draws().stream().mapToDouble(Truth::meterScale).toArray(), heaviest());
    double[] middle = new double[conditions.size()];
    List<Truth> draws = new ArrayList<>();
    for (int d = 0; d < count; d++) {
      draws.add(draw(d, causes, coarse, conditions, chances));
    }
    Truth best =
        truth(published.best(), (fixture, channel) -> 1, conditions, middle, new double[3], 1);
    double discrepancy = causes.contains(Cause.DISCREPANCY) ? published.discrepancy() : 0;
    return new LightModel(best, draws, discrepancy, report(conditions, best, draws));
  }

  private Truth draw(
      int d, Set<Cause> causes, boolean coarse, Conditions conditions, Chances chances) {
    Truth lamp = causes.contains(Cause.LAMPS) ? published.draws().get(d) : published.best();
    double first = causes.contains(Cause.METER) ? published.draws().get(d).meterScale() : 1;
    // One cause alone is told as true PPFD would vary: without the own meter's error.
    double own =
        causes.size() > 1 && meter.isPresent()
            ? Math.max(LEAST_SCALE, 1 + meter.get().scaleError() * chances.of("own meter", d))
            : first;
    double lid =
        causes.contains(Cause.LID) && !(tank.opening().lid() instanceof Lid.None)
            ? Math.exp(WIDTH_IN_DOUBT * LID_DEVIATION * chances.of("lid", d))
            : 1;
    double solver =
        causes.contains(Cause.SOLVER) ? Math.exp(leftOut() * chances.of("solver", d)) : 1;
    boolean other = causes.contains(Cause.SPECIMEN);
    Lamps.Factor factor =
        (fixture, channel) ->
            first / own * lid * solver * (other ? specimen(chances, fixture, channel, d) : 1);
    double[] z = new double[conditions.size()];
    for (int k = 0; k < z.length; k++) {
      if (causes.contains(cause(k))) {
        z[k] =
            coarse && cause(k) == Cause.PANES
                ? WIDTH_IN_DOUBT * third(chances.of("panes", d))
                : WIDTH_IN_DOUBT * chances.of("condition " + k, d);
      }
    }
    double[] rehung = new double[3];
    for (int k = 0; k < rehung.length && causes.contains(Cause.HANGING); k++) {
      rehung[k] = WIDTH_IN_DOUBT * LightModelFit.REHANG_DEVIATION * chances.of("hung anew " + k, d);
    }
    return truth(lamp, factor, conditions, z, rehung, own);
  }

  /** The normal deviation by the third it lies in: three states of variance 1. */
  private static double third(double deviation) {
    return Math.abs(deviation) < THIRD ? 0 : Math.signum(deviation) * Math.sqrt(1.5);
  }

  /** Standard deviation of ln light by what the fast solver leaves out in the tank. */
  private double leftOut() {
    double sum = SOLVER_DEVIATION;
    for (Departure departure : Departure.of(tank)) {
      sum = Math.hypot(sum, departure.typical() / MEDIAN_SIZE);
    }
    return sum;
  }

  private static double specimen(Chances chances, String fixture, int channel, int d) {
    return Math.exp(
        WIDTH_IN_DOUBT
            * (SPECIMEN_DEVIATION * chances.of("specimen of " + fixture, d)
                + SPECIMEN_CHANNEL_DEVIATION
                    * chances.of("channel " + channel + " of " + fixture, d)));
  }

  /** Columns of chance by their weight in the mean; the panes err too little to count here. */
  private List<String> heaviest() {
    List<String> names = new ArrayList<>();
    for (String fixture : published.best().distributions().keySet()) {
      names.add("specimen of " + fixture);
    }
    names.add("lid");
    names.add("own meter");
    names.add("condition " + Conditions.BOTTOM);
    names.add("condition " + Conditions.YELLOWING);
    published
        .best()
        .distributions()
        .forEach(
            (fixture, channels) -> {
              for (int c = 0; c < channels.size(); c++) {
                names.add("channel " + c + " of " + fixture);
              }
            });
    return names;
  }

  /** Which cause one of the conditions of a tank belongs to. */
  private static Cause cause(int condition) {
    if (condition < Side.values().length) {
      return Cause.PANES;
    }
    return condition == Conditions.YELLOWING
        ? Cause.YELLOWING
        : condition == Conditions.BOTTOM ? Cause.BOTTOM : Cause.HANGING;
  }

  private static Truth truth(
      Truth lamp,
      Lamps.Factor factor,
      Conditions conditions,
      double[] z,
      double[] rehung,
      double meterScale) {
    double height = conditions.heightOffset(z, 0) + rehung[2];
    return new Truth(
        Lamps.scaled(lamp.distributions(), factor),
        conditions.clear(z, 0),
        conditions.bottom(z, 0),
        conditions.yellowing(z, 0),
        conditions.offsetX(z, 0) + rehung[0],
        conditions.offsetY(z, 0) + rehung[1],
        Math.round(height / LightModelFit.HEIGHT_STEP) * LightModelFit.HEIGHT_STEP,
        lamp.aperture(),
        meterScale);
  }

  private FitReport report(Conditions conditions, Truth best, List<Truth> draws) {
    List<FitReport.Finding> findings = TankFindings.of(conditions, best, draws);
    return new FitReport(
        findings, List.of(), List.of(), statements(), published.report().relativeResidual());
  }

  private List<String> statements() {
    List<String> statements = new ArrayList<>();
    statements.add(
        "The lamps were measured over another tank; this tank's panes, bottom, water and lid are"
            + " taken as stated, each with the error that a careful person makes.");
    statements.add(
        String.format(
            Locale.ROOT,
            "Another specimen of a fixture is taken to differ by %.0f %% in output, one standard"
                + " deviation, and each channel by %.0f %% more (common practice, no source); one"
                + " that has aged gives less.",
            100 * SPECIMEN_DEVIATION,
            100 * SPECIMEN_CHANNEL_DEVIATION));
    if (!(tank.opening().lid() instanceof Lid.None)) {
      statements.add(
          String.format(
              Locale.ROOT,
              "The lid is taken to let %.0f %% more or less through than stated, one standard"
                  + " deviation (common practice, no source): clean it before you trust this.",
              100 * LID_DEVIATION));
    }
    statements.add(
        meter.isPresent()
            ? "Readings to be expected are those of meter "
                + meter.get().name()
                + ": its scale error and that of the meter which measured the lamps are both in"
                + " them."
            : "Readings to be expected are those of the meter which measured the lamps; another"
                + " meter may show more or less by its own scale error.");
    statements.add(
        "Width of rim and braces, size of the tank, depth of the water and how much its surface"
            + " moves are taken to be just as stated.");
    return statements;
  }
}
