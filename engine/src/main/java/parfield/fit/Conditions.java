package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import parfield.rig.Rig;
import parfield.survey.Survey;
import parfield.tank.Side;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * The few conditions of a bench that are stated but not exactly known, each as one coefficient with
 * a standard normal prior about what was stated.
 *
 * <p>Shares and reflectances move on the logit scale, yellowing on the logarithmic, the height
 * offset in metres. The widths of the priors are common practice, no source: what a careful person
 * may be wrong by.
 */
final class Conditions {
  /** Standard deviation of ln yellowing. */
  private static final double YELLOWING_DEVIATION = 0.5;

  /** Yellowing that is taken where none is stated, since no tank has none [1/m at 440 nm]. */
  private static final double LEAST_YELLOWING = 0.01;

  private static final double BOTTOM_DEVIATION = 0.4;
  private static final double LEAST_BOTTOM = 0.02;

  /** Standard deviation of how wrong a mounting height is measured [m]. */
  private static final double HEIGHT_DEVIATION = 0.004;

  /** Standard deviation of how wrong a fixture's place over the tank is measured [m]. */
  private static final double PLACE_DEVIATION = 0.004;

  private static final double LEAST_HEIGHT = 0.005;

  /** Median of the aperture where none is stated [m], and the deviation of its logarithm. */
  private static final double APERTURE = 0.04;

  private static final double APERTURE_DEVIATION = 0.5;

  static final int YELLOWING = 4;
  static final int BOTTOM = 5;
  static final int HEIGHT = 6;
  static final int PLACE_X = 7;
  static final int PLACE_Y = 8;
  private static final int APERTURE_AT = 9;

  private final Tank stated;
  private final boolean apertureUnknown;
  private final List<String> meters;
  private final List<Double> meterDeviations;

  private Conditions(
      Tank stated, boolean apertureUnknown, List<String> meters, List<Double> meterDeviations) {
    this.stated = stated;
    this.apertureUnknown = apertureUnknown;
    this.meters = meters;
    this.meterDeviations = meterDeviations;
  }

  /** The conditions of the bench that some surveys share. */
  static Conditions of(List<Survey> surveys) {
    TreeSet<String> names = new TreeSet<>();
    surveys.forEach(survey -> names.add(survey.meter().name()));
    List<String> meters = new ArrayList<>();
    List<Double> deviations = new ArrayList<>();
    if (names.size() > 1) {
      for (String name : names) {
        meters.add(name);
        deviations.add(
            surveys.stream()
                .filter(survey -> survey.meter().name().equals(name))
                .mapToDouble(survey -> survey.meter().scaleError())
                .max()
                .orElseThrow());
      }
    }
    boolean apertureUnknown =
        surveys.stream()
            .flatMap(survey -> survey.rig().hangings().stream())
            .flatMap(hanging -> hanging.fixture().emitters().stream())
            .anyMatch(emitter -> emitter.aperture() == 0);
    return new Conditions(surveys.get(0).rig().tank(), apertureUnknown, meters, deviations);
  }

  /** The conditions of a tank in which nothing was read: priors alone, no meter, no aperture. */
  static Conditions of(Tank tank) {
    return new Conditions(tank, false, List.of(), List.of());
  }

  /** Index of the first meter's scale: the aperture before it is there only where it is unknown. */
  private int firstMeter() {
    return apertureUnknown ? APERTURE_AT + 1 : APERTURE_AT;
  }

  /** Number of coefficients. */
  int size() {
    return firstMeter() + meters.size();
  }

  /** Clear share of each pane, in the order of {@link Side}. */
  List<Double> clear(double[] z, int from) {
    List<Double> clear = new ArrayList<>();
    for (Side side : Side.values()) {
      Wall wall = stated.walls().on(side);
      double middle = logit(Math.min(MOST_CLEAR, Math.max(1 - MOST_CLEAR, wall.clear())));
      clear.add(sigmoid(middle + deviation(wall) * z[from + side.ordinal()]));
    }
    return clear;
  }

  /** A pane called clean is taken to be this clear, since a real one seldom is more. */
  private static final double MOST_CLEAR = 0.97;

  private static double deviation(Wall wall) {
    return wall.clear() >= MOST_CLEAR || wall.clear() <= 1 - MOST_CLEAR ? 0.9 : 0.7;
  }

  double bottom(double[] z, int from) {
    return sigmoid(
        logit(Math.max(LEAST_BOTTOM, stated.bottomReflectance()))
            + BOTTOM_DEVIATION * z[from + BOTTOM]);
  }

  double yellowing(double[] z, int from) {
    return Math.max(LEAST_YELLOWING, stated.water().yellowing())
        * Math.exp(YELLOWING_DEVIATION * z[from + YELLOWING]);
  }

  double heightOffset(double[] z, int from) {
    return HEIGHT_DEVIATION * z[from + HEIGHT];
  }

  double offsetX(double[] z, int from) {
    return PLACE_DEVIATION * z[from + PLACE_X];
  }

  double offsetY(double[] z, int from) {
    return PLACE_DEVIATION * z[from + PLACE_Y];
  }

  double aperture(double[] z, int from) {
    return apertureUnknown
        ? APERTURE * Math.exp(APERTURE_DEVIATION * z[from + APERTURE_AT])
        : APERTURE;
  }

  /** True PPFD over shown PPFD of a survey's meter; 1 where all surveys share one meter. */
  double meterScale(double[] z, int from, Survey survey) {
    int index = meters.indexOf(survey.meter().name());
    return index < 0 ? 1 : Math.exp(meterDeviations.get(index) * z[from + firstMeter() + index]);
  }

  /** Returns whether several meters were used, so that their scales are part of the fit. */
  boolean severalMeters() {
    return !meters.isEmpty();
  }

  /** A rig as it would really be under these conditions; lamps unchanged. */
  Rig applyTo(Rig rig, double[] z, int from) {
    Walls walls = rig.tank().walls();
    List<Double> clear = clear(z, from);
    for (Side side : Side.values()) {
      walls = walls.with(side, walls.on(side).withClear(clear.get(side.ordinal())));
    }
    Tank tank =
        rig.tank()
            .withWalls(walls)
            .withBottomReflectance(bottom(z, from))
            .withWater(rig.tank().water().withYellowing(yellowing(z, from)));
    double offset = heightOffset(z, from);
    return rig.withTank(tank)
        .withHangings(
            hanging ->
                hanging
                    .withFixture(hanging.fixture().withUnstatedAperture(aperture(z, from)))
                    .at(
                        hanging.x() + offsetX(z, from),
                        hanging.y() + offsetY(z, from),
                        Math.max(LEAST_HEIGHT, hanging.height() + offset)));
  }

  /** What one condition is called, with its unit. */
  String name(int index) {
    if (index < Side.values().length) {
      return "clear share of the "
          + Side.values()[index].name().toLowerCase(java.util.Locale.ROOT)
          + " pane";
    }
    if (index >= firstMeter()) {
      return "scale of meter " + meters.get(index - firstMeter());
    }
    return switch (index) {
      case YELLOWING -> "yellowing at 440 nm (1/m)";
      case BOTTOM -> "bottom reflectance";
      case HEIGHT -> "mounting height offset (cm)";
      case PLACE_X -> "offset of the fixtures along x (cm)";
      case PLACE_Y -> "offset of the fixtures along y (cm)";
      default -> "aperture of the emitters (cm)";
    };
  }

  /** What the setup states for one condition, in the unit of its name. */
  double stated(int index) {
    if (index < Side.values().length) {
      return stated.walls().on(Side.values()[index]).clear();
    }
    if (index >= firstMeter()) {
      return 1;
    }
    return switch (index) {
      case YELLOWING -> stated.water().yellowing();
      case BOTTOM -> stated.bottomReflectance();
      case HEIGHT, PLACE_X, PLACE_Y -> 0;
      default -> 100 * APERTURE;
    };
  }

  /** The value of one condition, in the unit of its name. */
  double value(int index, double[] z, int from) {
    if (index < Side.values().length) {
      return clear(z, from).get(index);
    }
    if (index >= firstMeter()) {
      return Math.exp(meterDeviations.get(index - firstMeter()) * z[from + index]);
    }
    return switch (index) {
      case YELLOWING -> yellowing(z, from);
      case BOTTOM -> bottom(z, from);
      case HEIGHT -> 100 * heightOffset(z, from);
      case PLACE_X -> 100 * offsetX(z, from);
      case PLACE_Y -> 100 * offsetY(z, from);
      default -> 100 * aperture(z, from);
    };
  }

  private static double logit(double share) {
    return Math.log(share / (1 - share));
  }

  private static double sigmoid(double logit) {
    return 1 / (1 + Math.exp(-logit));
  }
}
