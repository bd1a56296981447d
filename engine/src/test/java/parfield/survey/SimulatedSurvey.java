package parfield.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.optics.Interface;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * Surveys of invented benches for tests: point emitters with elliptical lobes, the flat interface,
 * mirrored walls, sometimes a brace; read with noise, a sensor a little off its place, rounding.
 */
final class SimulatedSurvey {
  private final SplittableRandom random;

  SimulatedSurvey(long seed) {
    this.random = new SplittableRandom(seed);
  }

  /** A survey as a careful person would take it. */
  Survey clean() {
    double length = pick(0.45, 0.6, 0.75, 0.9, 1.2, 1.5, 1.8, 2.4);
    double width = pick(0.45, 0.5, 0.6, 0.75);
    double depth = pick(0.4, 0.5, 0.6, 0.7);
    Tank tank = Tank.of(length, Math.min(width, length), depth);
    Scene scene = scene(tank);
    GridPlan plan = plan(tank);
    List<Reading> readings = new ArrayList<>();
    double scale = 1 + 0.05 * random.nextGaussian();
    double peak = pick(300, 600, 1000, 1800) * (0.8 + 0.4 * random.nextDouble());
    double norm = scene.irradiance(scene.brightest(plan.places().get(0).depth()));
    for (Place place : plan.places()) {
      Place off =
          new Place(
              clamp(place.x() + 0.007 * random.nextGaussian(), tank.length()),
              clamp(place.y() + 0.007 * random.nextGaussian(), tank.width()),
              place.depth());
      double ppfd = peak / norm * scene.irradiance(off);
      double shown = ppfd * scale * (1 + 0.02 * random.nextGaussian());
      readings.add(new Reading(readings.size() + 2, place, Math.max(0, Math.rint(shown))));
    }
    Fixture fixture =
        new Fixture(
            "pendant",
            0,
            0,
            List.of(new Emitter(0, 0, 0)),
            List.of(Channel.of("blue", new CosinePower(1, 1))),
            List.of());
    Rig rig = new Rig("low", tank, List.of(Hanging.level(fixture, length / 2, width / 2, 0.2)));
    Meter meter = new Meter("probe", 1, true, 0, 0.05, 0.02, 0.007, 1);
    return new Survey("low", rig, meter, readings);
  }

  private GridPlan plan(Tank tank) {
    List<Double> depths = random.nextBoolean() ? List.of(0.15, 0.3) : List.of(0.1, 0.2, 0.35);
    return GridPlan.of(tank, depths, LengthUnit.CM);
  }

  private Scene scene(Tank tank) {
    int fixtures = Math.max(1, (int) Math.round(tank.length() / (0.5 + 0.4 * random.nextDouble())));
    double height = 0.12 + 0.28 * random.nextDouble();
    double exponentX = 1 + 9 * random.nextDouble();
    double exponentY = random.nextBoolean() ? exponentX : 1 + 9 * random.nextDouble();
    boolean pair = random.nextBoolean();
    double shiftX = random.nextInt(3) == 0 ? 0.15 * (random.nextDouble() - 0.5) : 0;
    double shiftY = random.nextInt(3) == 0 ? 0.15 * (random.nextDouble() - 0.5) : 0;
    List<double[]> emitters = new ArrayList<>();
    for (int f = 0; f < fixtures; f++) {
      double x = tank.length() * (f + 0.5) / fixtures + shiftX;
      double y = tank.width() / 2 + shiftY;
      if (pair) {
        emitters.add(new double[] {x - 0.1, y});
        emitters.add(new double[] {x + 0.1, y});
      } else {
        emitters.add(new double[] {x, y});
      }
    }
    double[] walls = new double[4];
    for (int w = 0; w < 4; w++) {
      walls[w] = pick(1, 1, 0.85, 0.5, 0.05);
    }
    double rim = random.nextInt(3) == 0 ? 0.03 : 0;
    boolean free =
        emitters.stream().allMatch(emitter -> Math.abs(emitter[0] - tank.length() / 2) > 0.1);
    double brace = free && random.nextInt(2) == 0 ? 0.02 : 0;
    double aperture = pick(0.04, 0.08, 0.12);
    return new Scene(tank, emitters, height, exponentX, exponentY, walls, rim, brace, aperture);
  }

  /** A tank under emitters that are squares of light, seen as a grid of points each. */
  private static final class Scene {
    private static final int POINTS = 4;
    private static final int STEPS = 500;

    private final Tank tank;
    private final List<double[]> emitters;
    private final double height;
    private final double exponentX;
    private final double exponentY;
    private final double[] walls;
    private final double rim;
    private final double brace;
    private final double aperture;
    private final Map<Double, double[]> airAngles = new HashMap<>();

    Scene(
        Tank tank,
        List<double[]> emitters,
        double height,
        double exponentX,
        double exponentY,
        double[] walls,
        double rim,
        double brace,
        double aperture) {
      this.tank = tank;
      this.emitters = emitters;
      this.height = height;
      this.exponentX = exponentX;
      this.exponentY = exponentY;
      this.walls = walls;
      this.rim = rim;
      this.brace = brace;
      this.aperture = aperture;
    }

    /** E_d from all images of all emitters, with a little diffuse light from below. */
    double irradiance(Place place) {
      double sum = 0;
      double under = 0;
      for (double[] emitter : emitters) {
        for (int mx = -2; mx <= 2; mx++) {
          for (int my = -2; my <= 2; my++) {
            double share = share(mx, walls[0], walls[1]) * share(my, walls[2], walls[3]);
            double imageX = mirrored(place.x(), mx, tank.length());
            double imageY = mirrored(place.y(), my, tank.width());
            for (int a = 0; a < POINTS; a++) {
              for (int b = 0; b < POINTS; b++) {
                double x = emitter[0] + aperture * ((a + 0.5) / POINTS - 0.5);
                double y = emitter[1] + aperture * ((b + 0.5) / POINTS - 0.5);
                sum += share * direct(x, y, imageX, imageY, place.depth());
              }
            }
          }
        }
        under += POINTS * POINTS * direct(emitter[0], emitter[1], emitter[0], emitter[1], 0.2);
      }
      return sum + 0.02 * under;
    }

    /** A place right under an emitter. */
    Place brightest(double depth) {
      return new Place(emitters.get(0)[0], emitters.get(0)[1], depth);
    }

    private static double mirrored(double at, int order, double side) {
      return order * side + (order % 2 == 0 ? at : side - at);
    }

    private static double share(int order, double low, double high) {
      int crossings = Math.abs(order);
      int first = (crossings + 1) / 2;
      int second = crossings / 2;
      return order < 0
          ? Math.pow(low, first) * Math.pow(high, second)
          : Math.pow(high, first) * Math.pow(low, second);
    }

    private double reach() {
      return 4 * (tank.length() + tank.width());
    }

    /** Angle in air by horizontal offset, in equal steps of the square root of the offset. */
    private double[] airAngles(double depth) {
      double[] angles = new double[STEPS + 1];
      for (int k = 0; k <= STEPS; k++) {
        double r = reach() * Math.pow((double) k / STEPS, 2);
        double low = 0;
        double high = Math.PI / 2;
        for (int i = 0; i < 40; i++) {
          double middle = (low + high) / 2;
          double water = Math.asin(Math.sin(middle) / 1.34);
          if (height * Math.tan(middle) + depth * Math.tan(water) < r) {
            low = middle;
          } else {
            high = middle;
          }
        }
        angles[k] = low;
      }
      return angles;
    }

    private double direct(double fromX, double fromY, double x, double y, double depth) {
      double dx = x - fromX;
      double dy = y - fromY;
      double r = Math.sqrt(dx * dx + dy * dy);
      double at = STEPS * Math.sqrt(r / reach());
      int below = (int) at;
      double[] angles = airAngles.computeIfAbsent(depth, this::airAngles);
      double air = angles[below] + (at - below) * (angles[below + 1] - angles[below]);
      double crossing = height * Math.tan(air);
      double crossingX = fromX + (r > 0 ? crossing * dx / r : 0);
      double crossingY = fromY + (r > 0 ? crossing * dy / r : 0);
      if (crossingX < rim
          || crossingX > tank.length() - rim
          || crossingY < rim
          || crossingY > tank.width() - rim
          || Math.abs(crossingX - tank.length() / 2) < brace) {
        return 0;
      }
      double cosine = Math.cos(air);
      double across = r > 0 ? dx * dx / (r * r) : 1;
      double exponent = exponentX * across + exponentY * (1 - across);
      double entered = Math.pow(cosine, exponent) * (1 - Interface.reflectance(cosine, 1, 1.34));
      if (r < 1e-3) {
        return entered / Math.pow(height + depth / 1.34, 2);
      }
      double cosineWater = Math.sqrt(1 - Math.pow(Math.sin(air) / 1.34, 2));
      double derivative =
          height / (cosine * cosine)
              + depth * cosine / (1.34 * cosineWater * cosineWater * cosineWater);
      return entered * Math.sin(air) / (r * derivative);
    }
  }

  double pick(double... from) {
    return from[random.nextInt(from.length)];
  }

  SplittableRandom random() {
    return random;
  }

  private static double clamp(double at, double side) {
    return Math.max(0, Math.min(side, at));
  }
}
