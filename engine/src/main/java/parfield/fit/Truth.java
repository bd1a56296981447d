package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.rig.Rig;
import parfield.tank.Side;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * One possible truth about the bench: the lamps' distributions and the tank's real condition.
 *
 * <p>A light model holds the most plausible one and a sample of others that the readings allow.
 *
 * @param distributions by fixture name, one distribution per channel in the fixture's order, each
 *     at full output
 * @param clear clear share of each pane, in the order of {@link Side}
 * @param bottomReflectance diffuse reflectance of the bottom
 * @param yellowing absorption of yellow substance at 440 nm [m⁻¹]
 * @param offsetX true minus stated x of the fixtures [m]
 * @param offsetY true minus stated y of the fixtures [m]
 * @param heightOffset true minus stated mounting height [m]
 * @param aperture side of the emitters that state none [m]
 * @param meterScale true PPFD over what the meter shows, after its known corrections: one factor
 *     for all readings, 1 for a perfect meter
 */
public record Truth(
    Map<String, List<IntensityDistribution>> distributions,
    List<Double> clear,
    double bottomReflectance,
    double yellowing,
    double offsetX,
    double offsetY,
    double heightOffset,
    double aperture,
    double meterScale) {
  public Truth {
    Map<String, List<IntensityDistribution>> copy = new TreeMap<>();
    distributions.forEach((name, list) -> copy.put(name, List.copyOf(list)));
    distributions = java.util.Collections.unmodifiableMap(copy);
    clear = List.copyOf(clear);
    if (clear.size() != Side.values().length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a tank has four panes; got clear shares for %d", clear.size()));
    }
    if (!(meterScale > 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a meter's scale must be above 0; got %s", meterScale));
    }
  }

  /** This truth with other lamps. */
  public Truth withDistributions(Map<String, List<IntensityDistribution>> newDistributions) {
    return new Truth(
        newDistributions,
        clear,
        bottomReflectance,
        yellowing,
        offsetX,
        offsetY,
        heightOffset,
        aperture,
        meterScale);
  }

  /**
   * The scene as it would really be: lamps, panes, bottom, water and heights of this truth in place
   * of the stated ones.
   *
   * @param stated a rig over the bench's tank, with fixtures of the bench
   * @throws IllegalArgumentException if a fixture is not in the model and has no distribution of
   *     its own
   */
  public Rig applyTo(Rig stated) {
    return stated
        .withTank(tank(stated.tank()))
        .withHangings(
            hanging ->
                hanging
                    .withFixture(fixture(hanging.fixture()).withUnstatedAperture(aperture))
                    .at(
                        hanging.x() + offsetX,
                        hanging.y() + offsetY,
                        Math.max(MIN_HEIGHT, hanging.height() + heightOffset)));
  }

  /** Lowest height that an offset may bring a fixture to [m]. */
  private static final double MIN_HEIGHT = 0.005;

  private Tank tank(Tank stated) {
    Walls walls = stated.walls();
    for (Side side : Side.values()) {
      Wall wall = walls.on(side);
      walls = walls.with(side, wall.withClear(clear.get(side.ordinal())));
    }
    return stated
        .withWalls(walls)
        .withBottomReflectance(bottomReflectance)
        .withWater(stated.water().withYellowing(yellowing));
  }

  private Fixture fixture(Fixture stated) {
    List<IntensityDistribution> fitted = distributions.get(stated.name());
    if (fitted == null) {
      if (stated.channels().stream().anyMatch(channel -> channel.distribution().isEmpty())) {
        throw new IllegalArgumentException(
            String.format(
                "fixture %s is not in the light model, which knows %s; fit a survey taken with it",
                stated.name(), distributions.keySet()));
      }
      return stated;
    }
    if (fitted.size() != stated.channels().size()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "fixture %s has %d channels but the light model knows %d; fit again",
              stated.name(),
              stated.channels().size(),
              fitted.size()));
    }
    List<Channel> channels = new ArrayList<>();
    for (int c = 0; c < fitted.size(); c++) {
      channels.add(stated.channels().get(c).withDistribution(fitted.get(c)));
    }
    return stated.withChannels(channels);
  }
}
