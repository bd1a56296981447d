package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * An invented bench whose truth is known: what a person states, what really is, readings with
 * noise.
 *
 * <p>The truth differs from the statement as a careful person may be wrong: panes a little less
 * clear, water and bottom off, the fixture hung some millimetres aside.
 */
final class SimulatedBench {
  static final Meter METER = new Meter("probe", 1, true, 0, .05, .02, .005, 1);
  static final Meter EXACT = new Meter("exact", 1, true, 0, .05, .01, 0, 0);

  /** A lobe with a shoulder, wider along the fixture: none that the fit assumes. */
  static final IntensityDistribution OVAL =
      (gamma, azimuth) -> {
        double cosine = Math.max(0, Math.cos(gamma));
        double sine = Math.sin(gamma);
        double round = Math.pow(cosine, 3) + .3 * cosine * sine;
        return 110 * round * (1 + .2 * sine * sine * Math.cos(2 * azimuth));
      };

  private final SplittableRandom random;
  private final FastSolver solver = new FastSolver();
  final Tank stated = Tank.of(.9, .6, .5).withBottomReflectance(.3).withWater(Water.seaWater(.05));
  final Tank real;
  private final double aside;
  private final double back;
  private final double higher;

  private SimulatedBench(long seed, boolean exact) {
    random = new SplittableRandom(seed);
    real = exact ? stated : worn();
    aside = exact ? 0 : slip();
    back = exact ? 0 : slip();
    higher = exact ? 0 : slip();
  }

  /** A bench that is a little other than stated, drawn by a seed. */
  static SimulatedBench worn(long seed) {
    return new SimulatedBench(seed, false);
  }

  /** A bench that is just as stated. */
  static SimulatedBench asStated(long seed) {
    return new SimulatedBench(seed, true);
  }

  private Tank worn() {
    return stated
        .withWalls(new Walls(pane(), pane(), pane(), pane()))
        .withBottomReflectance(.3 * Math.exp(.3 * random.nextGaussian()))
        .withWater(Water.seaWater(.05 * Math.exp(.5 * random.nextGaussian())));
  }

  private Wall pane() {
    return Wall.clean().withClear(1 - .12 * random.nextDouble());
  }

  /** How wrong a place or height is measured [m]. */
  private double slip() {
    return .004 * random.nextGaussian();
  }

  static Channel channel(String name, double peakNm, Optional<IntensityDistribution> light) {
    double[] wavelengths = new double[151];
    double[] photons = new double[151];
    for (int i = 0; i < photons.length; i++) {
      wavelengths[i] = 400 + 2 * i;
      photons[i] = Math.exp(-Math.pow((wavelengths[i] - peakNm) / 12, 2) / 2);
    }
    return new Channel(
        name,
        Optional.of(new PhotonSpectrum(wavelengths, photons)),
        OptionalDouble.of(50),
        OutputCurve.proportional(),
        light);
  }

  static Fixture fixture(List<Channel> channels) {
    return new Fixture(
        "pendant",
        .4,
        .1,
        List.of(new Emitter(-.12, 0, .03), new Emitter(.12, 0, .03)),
        channels,
        List.of());
  }

  /** The fixture as the setup states it: nothing is known of its light. */
  static Fixture unknown(Fixture known) {
    return known.withChannels(
        known.channels().stream()
            .map(
                channel ->
                    new Channel(
                        channel.name(),
                        channel.spectrum(),
                        channel.watts(),
                        channel.curve(),
                        Optional.empty()))
            .toList());
  }

  static Fixture oval() {
    return fixture(List.of(channel("blue", 450, Optional.of(OVAL))));
  }

  Rig statedRig(Fixture known, double height, Setting setting) {
    return new Rig(
        "middle", stated, List.of(new Hanging(unknown(known), .45, .3, height, 0, 0, setting)));
  }

  /** PPFD as it really is, the fixture hung once more: at its own wrong place if {@code again}. */
  double[] truth(Fixture known, double height, Setting setting, List<Place> places, boolean again) {
    Hanging hanging =
        new Hanging(
            known,
            .45 + aside + (again ? slip() : 0),
            .3 + back + (again ? slip() : 0),
            height + higher + (again ? slip() : 0),
            0,
            0,
            setting);
    return solver.solve(new Rig("real", real, List.of(hanging)), Places.of(places)).ppfd();
  }

  /** Readings at the centres of columns × rows cells of each depth. */
  Survey survey(
      String name,
      Fixture known,
      Meter meter,
      double height,
      Setting setting,
      int columns,
      int rows,
      double... depths) {
    List<Place> nominal = new ArrayList<>();
    for (double depth : depths) {
      nominal.addAll(centres(columns, rows, depth));
    }
    List<Place> real = new ArrayList<>();
    for (Place place : nominal) {
      real.add(
          new Place(
              place.x() + meter.positionError() * random.nextGaussian(),
              place.y() + meter.positionError() * random.nextGaussian(),
              place.depth()));
    }
    double[] light = truth(known, height, setting, real, false);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < light.length; i++) {
      double shown = light[i] * (1 + meter.repeatError() * random.nextGaussian());
      double step = meter.resolution();
      readings.add(
          new Reading(
              0, nominal.get(i), Math.max(0, step > 0 ? step * Math.round(shown / step) : shown)));
    }
    return new Survey(name, statedRig(known, height, setting), meter, readings);
  }

  List<Place> centres(int columns, int rows, double depth) {
    List<Place> places = new ArrayList<>();
    Places plane = Places.plane(stated, depth, columns, rows);
    for (int i = 0; i < plane.size(); i++) {
      places.add(plane.get(i));
    }
    return places;
  }

  static Setting dials(double... percents) {
    String[] names = {"blue", "violet"};
    Map<String, Double> dials = new java.util.TreeMap<>();
    for (int i = 0; i < percents.length; i++) {
      dials.put(names[i], percents[i]);
    }
    return new Setting(dials);
  }
}
