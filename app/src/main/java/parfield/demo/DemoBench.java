package parfield.demo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import parfield.field.FastSolver;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.optics.Agitation;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.survey.GridPlan;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;
import parfield.units.LengthUnit;

/**
 * The invented bench of the demo: a long tank under two bars, read at two mounting heights.
 *
 * <p>The truth differs a little from what the setup states, as it does in life: a film on the
 * panes, a dirtier bottom, yellower water, fixtures that hang a little low, a meter that shows too
 * much. The sensor stands a little off its place, repeats itself not quite, shows whole numbers,
 * and once the pen slipped.
 */
public final class DemoBench {
  /** Name of the setup file. */
  public static final String SETUP = "setup.yaml";

  private static final double LENGTH = 1.20;
  private static final double WIDTH = 0.55;
  private static final double WATER = 0.50;
  private static final double LOW = 0.18;
  private static final double HIGH = 0.32;

  /** Centres of the two bars in the measured rigs [m]. */
  private static final List<Double> CENTRES = List.of(0.32, 0.88);

  /** Depths of the planes that were read [m]. */
  private static final List<Double> DEPTHS = List.of(0.15);

  /** Standard errors of the invented person and meter. */
  private static final double REPEAT_ERROR = 0.02;

  private static final double POSITION_ERROR = 0.005;

  /** What the meter shows over what is true. */
  static final double METER_SHOWS = 1.03;

  /** How much lower the fixtures hang than was written down [m]. */
  private static final double HANGS_LOWER = 0.004;

  /** The reading at which the pen slipped, and what it did. */
  private static final int SLIP_AT = 22;

  private static final int NO_SLIP = -1;

  private static final double SLIP = 10;

  private DemoBench() {}

  /**
   * The files of the bench.
   *
   * @param seed of the noise; the same seed gives the same files
   * @return text by the file's name, folders separated by a slash; {@link #SETUP} among them
   */
  public static Map<String, String> files(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Map<String, String> files = new LinkedHashMap<>();
    files.put(SETUP, DemoSetup.TEXT);
    DemoSpectra.BY_CHANNEL.forEach(
        (channel, peaks) -> files.put("spectra/" + channel + ".csv", DemoSpectra.file(peaks)));
    files.put("spectra/reference.csv", DemoSpectra.reference());
    files.put("spectra/places.csv", DemoSpectra.places());
    files.put("low.csv", readings("low", LOW, SLIP_AT, random));
    files.put("high.csv", readings("high", HIGH, NO_SLIP, random));
    return files;
  }

  /**
   * The true light of a rig of this bench, at places.
   *
   * @param positions of the fixtures' centres along the tank [m]
   * @param height as it is stated, not as it really is [m]
   * @param setting the dials
   * @param places where
   */
  static LightField truth(List<Double> positions, double height, Setting setting, Places places) {
    Fixture bar = bar();
    List<Hanging> hangings =
        positions.stream()
            .map(x -> Hanging.level(bar, x, WIDTH / 2, height - HANGS_LOWER).withSetting(setting))
            .toList();
    return new FastSolver().solve(new Rig("truth", tank(), hangings), places);
  }

  private static Tank tank() {
    return new Tank(
        LENGTH,
        WIDTH,
        WATER,
        new Walls(
            Wall.film().withClear(0.80),
            Wall.film().withClear(0.90),
            Wall.clean().withClear(0.95),
            Wall.painted()),
        0.25,
        new Opening(0.02, List.of(), new Lid.None()),
        Water.seaWater(0.08),
        Agitation.GENTLE);
  }

  static Fixture bar() {
    List<Emitter> emitters =
        DoubleStream.of(-0.165, -0.055, 0.055, 0.165)
            .mapToObj(x -> new Emitter(x, 0, 0.03))
            .toList();
    return new Fixture(
        "bar",
        0.44,
        0.09,
        emitters,
        List.of(
            channel("blue", new BarLobe(12.0, 0.35), OutputCurve.proportional()),
            channel(
                "white",
                new BarLobe(9.0, 0.25),
                new OutputCurve(new double[] {0, 50, 100}, new double[] {0, 0.42, 1})),
            channel("violet", new BarLobe(2.5, 0.30), OutputCurve.proportional())),
        List.of(new Master("overall", new TreeSet<>(List.of("blue", "white")))));
  }

  private static Channel channel(String name, BarLobe lobe, OutputCurve curve) {
    PhotonSpectrum spectrum = DemoSpectra.spectrum(DemoSpectra.BY_CHANNEL.get(name));
    return new Channel(
        name, Optional.of(spectrum), OptionalDouble.empty(), curve, Optional.of(lobe));
  }

  /** Readings as the invented person writes them down. */
  private static String readings(String name, double height, int slipAt, SplittableRandom random) {
    List<Place> planned = GridPlan.of(tank(), DEPTHS, LengthUnit.CM).places();
    List<Place> real = new ArrayList<>();
    for (Place place : planned) {
      real.add(
          new Place(
              within(place.x() + POSITION_ERROR * random.nextGaussian(), LENGTH),
              within(place.y() + POSITION_ERROR * random.nextGaussian(), WIDTH),
              place.depth()));
    }
    LightField field = truth(CENTRES, height, Setting.full(), Places.of(real));
    StringBuilder text = new StringBuilder();
    text.append("# Invented readings of survey ").append(name);
    text.append(": made by a generator with noise, not measured.\n");
    text.append("x_cm,y_cm,depth_cm,ppfd\n");
    for (int i = 0; i < planned.size(); i++) {
      double shown = field.ppfd(i) * METER_SHOWS * Math.exp(REPEAT_ERROR * random.nextGaussian());
      long written = Math.round(shown);
      if (i == slipAt) {
        written = Math.round(SLIP * shown);
      }
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%s,%s,%d\n",
              cm(planned.get(i).x()),
              cm(planned.get(i).y()),
              cm(planned.get(i).depth()),
              written));
    }
    return text.toString();
  }

  private static double within(double at, double end) {
    return Math.max(0, Math.min(end, at));
  }

  private static String cm(double metres) {
    return String.format(Locale.ROOT, "%.1f", 100 * metres);
  }
}
