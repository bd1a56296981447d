package parfield.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.field.FastSolver;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.optics.PureWater;
import parfield.optics.Water;
import parfield.photon.Effort;
import parfield.photon.PhotonTracer;
import parfield.photon.TracedField;
import parfield.photon.Wanted;
import parfield.photon.Watch;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Tank;

/** Published cases with lamps over tanks. Lengths in metres. */
final class TankCases {
  /** A sensor this large covers any of these tanks: what reaches beyond the panes is cut off. */
  private static final double WHOLE = 10;

  private static final double INDEX = 1.34;

  private TankCases() {}

  static List<PublishedCase> all() {
    List<PublishedCase> cases = new ArrayList<>();
    cases.addAll(formFactors());
    cases.addAll(boxes());
    cases.addAll(sources());
    return cases;
  }

  // --- form factors: what of a square's light falls on a rectangle ---

  private static List<PublishedCase> formFactors() {
    return List.of(
        formFactor("parallel squares of 1 x 1", 1, 1, facing(patch(1, 0), .5, .5)),
        formFactor("parallel squares of 2 x 2", 2, 2, facing(patch(2, 0), 1, 1)),
        formFactor("parallel rectangles of 1 x 2", 2, 1, facing(patch(1, .5, -.5), 1, .5)),
        formFactor("parallel squares of .5 x .5", .5, .5, facing(patch(.5, 0), .25, .25)),
        formFactor("perpendicular squares", 1, 1, upright(patch(1, 0), .5, .5)),
        formFactor("perpendicular to a longer rectangle", 1, 2, upright(patch(1, 0), .5, .5)),
        formFactor("perpendicular from a longer rectangle", 1, 1, upright(stacked(), .5, 1)),
        formFactor("element under the corner of a square", 1, 1, facing(patch(0, 0), 0, 0)),
        formFactor(
            "element under the centre of a square of 2 x 2", 2, 2, facing(patch(0, 0), 1, 1)),
        formFactor(
            "element under the centre of a square of 1 x 1", 1, 1, facing(patch(0, 0), .5, .5)),
        formFactor(
            "element upright over the corner of a square", 1, 1, upright(patch(0, 0), 0, 1)));
  }

  /** The tank's opening is the rectangle; its water, of hardly any index, is only there to meet. */
  private static PublishedCase formFactor(String name, double length, double width, Hanging patch) {
    Tank tank = Tank.of(length, width, .1).withWater(new Water(1 + 1e-9, 0, 0));
    double area = length * width / patch.fixture().emitters().size();
    return new PublishedCase(
        "form factor: " + name,
        300_000,
        (effort, watch) ->
            Map.of("F", flux(new Rig(name, tank, List.of(patch)), effort, watch, 0).times(area)));
  }

  private static Hanging facing(Fixture patch, double x, double y) {
    return Hanging.level(patch, x, y, 1);
  }

  private static Hanging upright(Fixture patch, double x, double height) {
    return new Hanging(patch, x, 0, height, Math.PI / 2, 0, Setting.full());
  }

  /** Squares side by side, each of which sends a flux of 1 by Lambert's law. */
  private static Fixture patch(double side, double... x) {
    return fixture(Arrays.stream(x).mapToObj(at -> new Emitter(at, 0, side)).toList());
  }

  private static Fixture stacked() {
    return fixture(List.of(new Emitter(0, -.5, 1), new Emitter(0, .5, 1)));
  }

  private static Fixture fixture(List<Emitter> emitters) {
    return new Fixture(
        "patch",
        0,
        0,
        emitters,
        List.of(Channel.of("one", new CosinePower(1 / Math.PI, 1))),
        List.of());
  }

  /** Mean E_d over a whole plane without losses. */
  private static Figure flux(Rig rig, Effort effort, Watch watch, double depth) {
    Tank tank = rig.tank();
    Places centre = Places.of(List.of(new Place(tank.length() / 2, tank.width() / 2, depth)));
    TracedField field =
        PhotonTracer.lossless(effort).trace(rig, Wanted.at(centre).withSensor(WHOLE), watch);
    return new Figure(field.downwelling(0), field.downwellingError(0));
  }

  // --- a box that loses nothing ---

  private static List<PublishedCase> boxes() {
    Rig rig = twoLobes(0);
    double area = rig.tank().length() * rig.tank().width();
    return List.of(
        new PublishedCase(
            "flux in a perfect box", 500_000, (effort, watch) -> box(rig, area, effort, watch)),
        new PublishedCase(
            "bottom and surface trading light",
            500_000,
            (effort, watch) ->
                Map.of(
                    "flux through depth .5",
                    flux(twoLobes(.5), effort, watch, rig.tank().depth()).times(area))),
        PublishedCase.computed(
            "flux in a perfect box by the fast solver",
            (effort, watch) -> {
              Places plane = Places.plane(rig.tank(), .2, 90, 60);
              double[] ppfd = FastSolver.lossless().solve(rig, plane).ppfd();
              return Map.of(
                  "flux through depth .2",
                  Figure.computed(area * Arrays.stream(ppfd).average().orElseThrow()));
            }));
  }

  private static Rig twoLobes(double bottomReflectance) {
    Fixture lamp = lamp(Channel.of("white", new CosinePower(100, 2)));
    return new Rig(
        "two lobes",
        Tank.of(.9, .6, .5).withBottomReflectance(bottomReflectance),
        List.of(Hanging.level(lamp, .3, .3, .2), Hanging.level(lamp, .6, .3, .2)));
  }

  private static Map<String, Figure> box(Rig rig, double area, Effort effort, Watch watch) {
    List<String> depths = List.of(".05", ".2", ".45");
    List<Place> centres =
        depths.stream().map(depth -> new Place(.45, .3, Double.parseDouble(depth))).toList();
    TracedField field =
        PhotonTracer.lossless(effort)
            .trace(rig, Wanted.at(Places.of(centres)).withSensor(WHOLE), watch);
    Map<String, Figure> figures = new LinkedHashMap<>();
    for (int i = 0; i < depths.size(); i++) {
      figures.put(
          "flux through depth " + depths.get(i),
          new Figure(field.downwelling(i), field.downwellingError(i)).times(area));
    }
    figures.put("emitted", new Figure(field.launched(), field.launchedError()));
    return figures;
  }

  // --- a point source over water, panes far away ---

  private static List<PublishedCase> sources() {
    return List.of(
        isotropic(.2, .25, 0, "isotropic source at height .20 depth .25 aside 0"),
        isotropic(.2, .25, .1, "isotropic source at height .20 depth .25 aside .10"),
        isotropic(.2, .25, .3, "isotropic source at height .20 depth .25 aside .30"),
        isotropic(.25, .5, .4, "isotropic source at height .25 depth .50 aside .40"),
        isotropic(.15, .15, .6, "isotropic source at height .15 depth .15 aside .60"),
        lobe("lobe at height .20 depth .25 aside .30 in absorbing water"));
  }

  private static PublishedCase isotropic(double height, double depth, double aside, String name) {
    Channel channel = Channel.of("white", new CosinePower(100, 0));
    return new PublishedCase(
        name,
        400_000,
        (effort, watch) -> {
          Source source = new Source(height, depth, aside, channel, new Water(INDEX, 0, 0));
          return source.irradiance(PhotonTracer.lossless(effort), FastSolver.lossless(), watch);
        });
  }

  /** Intensity 100 cos² γ in water that absorbs .2 1/m: seen at 440 nm, yellow enough. */
  private static PublishedCase lobe(String name) {
    Channel blue =
        new Channel(
            "blue",
            Optional.of(new PhotonSpectrum(new double[] {439.9, 440.1}, new double[] {1, 1})),
            OptionalDouble.empty(),
            OutputCurve.proportional(),
            Optional.of(new CosinePower(100, 2)));
    Water water = new Water(INDEX, .2 - PureWater.absorption(440), 0);
    return new PublishedCase(
        name,
        400_000,
        (effort, watch) ->
            new Source(.2, .25, .3, blue, water)
                .irradiance(new PhotonTracer(effort), new FastSolver(), watch));
  }

  private static Fixture lamp(Channel channel) {
    return new Fixture("lamp", 0, 0, List.of(new Emitter(0, 0, 0)), List.of(channel), List.of());
  }

  /**
   * A point source and a receiver in a tank so wide that panes do not matter. Its opening is a
   * small window where their path crosses the surface: packets through any other part would be in
   * vain.
   */
  private record Source(double height, double depth, double aside, Channel channel, Water water) {
    private static final double WIDE = 6;
    private static final double WINDOW = .03;

    Map<String, Figure> irradiance(PhotonTracer reference, FieldSolver fast, Watch watch) {
      double crossing = crossing();
      double lampX = WIDE / 2 - crossing;
      Tank tank =
          Tank.of(WIDE, WIDE, depth + .1)
              .withWater(water)
              .withOpening(new Opening((WIDE - WINDOW) / 2, List.of(), new Lid.None()));
      Rig rig =
          new Rig("source", tank, List.of(Hanging.level(lamp(channel), lampX, WIDE / 2, height)));
      Places place = Places.of(List.of(new Place(lampX + aside, WIDE / 2, depth)));
      TracedField counted = reference.trace(rig, Wanted.at(place), watch);
      return Map.of(
          "E_d by packets",
          new Figure(counted.downwelling(0), counted.downwellingError(0)),
          "E_d by the fast solver",
          Figure.computed(fast.solve(rig, place).ppfd(0)));
    }

    /** How far aside the path crosses the surface, by Snell's law. */
    private double crossing() {
      double low = 0;
      double high = aside;
      for (int i = 0; i < 60; i++) {
        double middle = (low + high) / 2;
        double sineAbove = middle / Math.hypot(middle, height);
        double sineBelow = (aside - middle) / Math.hypot(aside - middle, depth);
        if (sineAbove > INDEX * sineBelow) {
          high = middle;
        } else {
          low = middle;
        }
      }
      return low;
    }
  }
}
