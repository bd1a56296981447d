package parfield.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Ellipsoid;
import parfield.aquascape.Rock;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.optics.Agitation;
import parfield.optics.Reflectance;
import parfield.optics.Scattering;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * A rig over an invented tank that stresses one thing, for solver against solver.
 *
 * @param name of the tank
 * @param stresses what is unusual about it
 * @param rig the scene
 */
public record ComparedTank(String name, String stresses, Rig rig) {
  /** The tanks: size, height, panes, yellowing, bottom, opening, surface, haze and rock. */
  public static List<ComparedTank> all() {
    List<ComparedTank> tanks = new ArrayList<>();
    Tank common = Tank.of(.9, .6, .5).withBottomReflectance(.35);
    tanks.add(of("common", "nothing", common, pair(), .25, .5));
    tanks.add(of("cube", "height", Tank.of(.6, .6, .55).withBottomReflectance(.3), pair(), .4, .5));
    tanks.add(
        of("nano", "small size", Tank.of(.3, .3, .3).withBottomReflectance(.3), point(), .12, .5));
    tanks.add(
        of(
            "six-foot",
            "length, three fixtures",
            Tank.of(1.8, .6, .6).withBottomReflectance(.35),
            pair(),
            .3,
            1 / 6.0,
            .5,
            5 / 6.0));
    tanks.add(
        of(
            "shallow",
            "little depth",
            Tank.of(1.2, .75, .25).withBottomReflectance(.4),
            pair(),
            .3,
            .25,
            .75));
    tanks.add(
        of("deep", "much depth", Tank.of(.9, .6, .8).withBottomReflectance(.2), pair(), .2, .5));
    tanks.add(
        of(
            "grown over",
            "film, coralline, paint",
            common.withWalls(new Walls(Wall.film(), Wall.coralline(), Wall.film(), Wall.painted())),
            pair(),
            .25,
            .5));
    tanks.add(of("yellow", "yellowing", common.withWater(Water.seaWater(.35)), pair(), .25, .5));
    tanks.add(of("sand", "pale bottom", common.withBottomReflectance(.65), pair(), .25, .5));
    tanks.add(
        of(
            "braced",
            "rim, brace, mesh",
            common.withOpening(
                new Opening(.03, List.of(new Rectangle(.42, .48, 0, .6)), new Lid.Mesh(.75))),
            pair(),
            .25,
            .5));
    tanks.add(
        of(
            "lidded",
            "clear lid",
            common.withOpening(new Opening(.01, List.of(), new Lid.Clear(1.49))),
            pair(),
            .25,
            .5));
    tanks.add(tilted(common));
    tanks.add(
        of("rippled", "gentle surface", common.withSurface(Agitation.GENTLE), pair(), .25, .5));
    tanks.add(of("wavy", "strong surface", common.withSurface(Agitation.STRONG), pair(), .25, .5));
    tanks.add(
        of(
            "high rim",
            "freeboard 6 cm",
            common.withOpening(new Opening(.02, List.of(), new Lid.None(), .06)),
            pair(),
            .25,
            .5));
    tanks.add(
        of(
            "hazy",
            "scattering 0.1 1/m",
            common.withWater(Water.seaWater(.05).withScattering(Scattering.particles(.1))),
            pair(),
            .25,
            .5));
    tanks.add(
        of(
            "turbid",
            "scattering 0.5 1/m",
            common.withWater(Water.seaWater(.05).withScattering(Scattering.particles(.5))),
            pair(),
            .25,
            .5));
    tanks.add(of("rocky", "rock", common.withAquascape(rocks()), pair(), .25, .5));
    return List.copyOf(tanks);
  }

  private static Aquascape rocks() {
    Reflectance stone = Reflectance.gray(.2);
    return Aquascape.of(
        List.of(
            new Rock("slab", new Box(.3, .32, .38, .3, .2, .06, .3), stone),
            new Rock("pillar", new Box(.28, .33, .455, .12, .1, .09, 0), stone),
            new Rock("boulder", new Ellipsoid(.65, .3, .4, .12, .1, .12, .5), stone)));
  }

  private static ComparedTank of(
      String name, String stresses, Tank tank, Fixture fixture, double height, double... along) {
    List<Hanging> hangings = new ArrayList<>();
    for (double share : along) {
      hangings.add(Hanging.level(fixture, share * tank.length(), tank.width() / 2, height));
    }
    return new ComparedTank(name, stresses, new Rig(name, tank, hangings));
  }

  private static ComparedTank tilted(Tank tank) {
    return new ComparedTank(
        "turned",
        "tilt and yaw, narrow beams",
        new Rig(
            "turned",
            tank,
            List.of(
                new Hanging(narrow(), .25, .45, .3, -.35, .5, Setting.full()),
                new Hanging(narrow(), .68, .2, .2, .25, -.3, Setting.full()))));
  }

  /** Two emitters of an area, two channels: blue and narrow, white and wide. */
  private static Fixture pair() {
    return new Fixture(
        "pair",
        .3,
        .1,
        List.of(new Emitter(-.12, 0, .03), new Emitter(.12, 0, .03)),
        List.of(
            channel("blue", peak(450, 12), new CosinePower(40, 3)),
            channel("white", PhotonSpectrum.flat(), new CosinePower(25, 1.5))),
        List.of());
  }

  private static Fixture point() {
    return new Fixture(
        "point",
        .05,
        .05,
        List.of(new Emitter(0, 0, .015)),
        List.of(channel("white", PhotonSpectrum.flat(), new CosinePower(20, 2))),
        List.of());
  }

  private static Fixture narrow() {
    return new Fixture(
        "narrow",
        .2,
        .1,
        List.of(new Emitter(-.08, .01, .04), new Emitter(.08, -.01, .04)),
        List.of(channel("blue", peak(460, 15), new CosinePower(60, 6))),
        List.of());
  }

  private static Channel channel(
      String name, PhotonSpectrum spectrum, IntensityDistribution distribution) {
    return new Channel(
        name,
        Optional.of(spectrum),
        java.util.OptionalDouble.empty(),
        OutputCurve.proportional(),
        Optional.of(distribution));
  }

  /** A bell of some width about a wavelength [nm]. */
  private static PhotonSpectrum peak(double centreNm, double deviationNm) {
    double[] wavelengths = new double[151];
    double[] flux = new double[151];
    for (int i = 0; i < wavelengths.length; i++) {
      wavelengths[i] = 400 + 2 * i;
      double t = (wavelengths[i] - centreNm) / deviationNm;
      flux[i] = Math.exp(-t * t / 2);
    }
    return new PhotonSpectrum(wavelengths, flux);
  }
}
