package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.optics.Agitation;
import parfield.optics.Attenuation;
import parfield.optics.Interface;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/** Holds the fast solver against figures computed outside the project and against closed forms. */
class FastSolverValidationTest {
  private static final double N = 1.34;

  private static Fixture lamp(double peak, double exponent) {
    return new Fixture(
        "lamp",
        0,
        0,
        List.of(new Emitter(0, 0, 0)),
        List.of(Channel.of("white", new CosinePower(peak, exponent))),
        List.of());
  }

  private static Tank black(double length, double width, double depth) {
    return new Tank(
        length,
        width,
        depth,
        Walls.all(new Wall(0, Wall.Cover.IN_WATER, 0)),
        0,
        Opening.free(),
        new Water(N, 0, 0),
        Agitation.STILL);
  }

  /** PHYSICS §1: isotropic I = 100, n = 1.34, no absorption; by an independent program. */
  @ParameterizedTest
  @CsvSource({
    "0.20, 0.25, 0.00, 655.063",
    "0.20, 0.25, 0.10, 610.634",
    "0.20, 0.25, 0.30, 377.886",
    "0.25, 0.50, 0.40, 176.297",
    "0.15, 0.15, 0.60, 83.518"
  })
  void irradianceBelowAnIsotropicSource(double h, double d, double r, double expected) {
    SurfacePath path = SurfacePath.solve(h, d, r, N);
    double exact = 100 * path.spread() * (1 - Interface.reflectance(path.cosineAir(), 1, N));
    assertThat(exact).isCloseTo(expected, within(1e-5 * expected));
  }

  /** PHYSICS §1: I = 100 cos² γ, a = 0.2 1/m; by an independent program. */
  @Test
  void irradianceBelowALobeInAbsorbingWater() {
    SurfacePath path = SurfacePath.solve(0.20, 0.25, 0.30, N);
    double exact =
        100
            * path.cosineAir()
            * path.cosineAir()
            * path.spread()
            * (1 - Interface.reflectance(path.cosineAir(), 1, N))
            * Math.exp(-0.2 * path.lengthInWater());
    assertThat(exact).isCloseTo(212.373, within(1e-5 * 212.373));
  }

  /** The solver's tables against the exact path, in a tank whose panes are black and far away. */
  @Test
  void tablesReproduceTheExactPath() {
    Tank tank = black(6, 6, 1);
    FastSolver solver = new FastSolver();
    double zenith = 0;
    for (double h : new double[] {0.05, 0.2, 0.6}) {
      for (double d : new double[] {0.02, 0.3, 0.9}) {
        for (double r : new double[] {0, 0.01, 0.1, 0.3, 0.7, 1.5}) {
          Rig rig = new Rig("one", tank, List.of(Hanging.level(lamp(100, 2), 3, 3, h)));
          double got = solver.solve(rig, Places.of(List.of(new Place(3 + r, 3, d)))).ppfd(0);
          SurfacePath path = SurfacePath.solve(h, d, r, N);
          double attenuation =
              Attenuation.of(PhotonSpectrum.flat(), tank.water())
                  .transmittance(path.lengthInWater());
          double exact =
              100
                  * path.cosineAir()
                  * path.cosineAir()
                  * path.spread()
                  * (1 - Interface.reflectance(path.cosineAir(), 1, N))
                  * attenuation;
          zenith = r == 0 ? exact : zenith;
          assertThat(got).as("h %s d %s r %s", h, d, r).isCloseTo(exact, within(2e-5 * zenith));
        }
      }
    }
  }

  /**
   * PHYSICS §3: perfect walls, no absorption, so that every plane gets the flux that entered:
   * 361.218 of 418.879 µmol/s emitted; by an independent program.
   */
  @ParameterizedTest
  @CsvSource({"0.05", "0.2", "0.45"})
  void perfectWallsConserveFlux(double depth) {
    Tank tank = black(0.9, 0.6, 0.5);
    Fixture lamp = lamp(100, 2);
    Rig rig =
        new Rig(
            "two",
            tank,
            List.of(Hanging.level(lamp, 0.30, 0.30, 0.20), Hanging.level(lamp, 0.60, 0.30, 0.20)));
    LightField field = FastSolver.lossless().solve(rig, Places.plane(tank, depth, 180, 120));
    double flux = Arrays.stream(field.ppfd()).average().orElseThrow() * 0.9 * 0.6;
    assertThat(flux).isCloseTo(361.218, within(1e-3 * 361.218));
  }

  /** PHYSICS §3: the same scene's budget: 418.879 µmol/s emitted, 361.218 entered. */
  @Test
  void budgetOfTwoLobes() {
    Fixture lamp = lamp(100, 2);
    Rig rig =
        new Rig(
            "two",
            black(0.9, 0.6, 0.5),
            List.of(Hanging.level(lamp, 0.30, 0.30, 0.20), Hanging.level(lamp, 0.60, 0.30, 0.20)));
    LightBudget budget = LightBudget.of(rig);
    assertThat(budget.emitted()).isCloseTo(418.879, within(1e-4 * 418.879));
    assertThat(budget.entered()).isCloseTo(361.218, within(1e-4 * 361.218));
    assertThat(budget.spill()).isBetween(0.05, 0.14);
  }

  /**
   * PHYSICS §4: perfect side walls, no absorption, bottom ρ: mean E_d(bottom) = E_direct / (1 − ρ
   * R_i), R_i = 0.4807 the diffuse internal reflectance for n = 1.34 (Morel and Gentili 1996:
   * 0.48).
   */
  @ParameterizedTest
  @CsvSource({"0.3", "0.7"})
  void bottomAndSurfaceTradeLight(double reflectance) {
    Tank dark = black(0.9, 0.6, 0.5);
    Tank pale = dark.withBottomReflectance(reflectance);
    Fixture lamp = lamp(100, 2);
    double direct = bottomMean(dark, lamp);
    double total = bottomMean(pale, lamp);
    double expected = direct / (1 - reflectance * Interface.diffuseReflectance(N, 1));
    assertThat(total).isCloseTo(expected, within(3e-3 * expected));
  }

  private static double bottomMean(Tank tank, Fixture lamp) {
    Rig rig = new Rig("one", tank, List.of(Hanging.level(lamp, 0.45, 0.30, 0.20)));
    Places places = Places.plane(tank, tank.depth(), 90, 60);
    return Arrays.stream(FastSolver.lossless().solve(rig, places).ppfd()).average().orElseThrow();
  }

  /** The paths that the fit uses and the field that everything else uses are one and the same. */
  @Test
  void pathsReproduceTheField() {
    Tank tank =
        new Tank(
            0.9,
            0.6,
            0.5,
            new Walls(Wall.film(), Wall.clean(), Wall.coralline(), Wall.painted()),
            0.35,
            new Opening(0.03, List.of(new Rectangle(0.43, 0.47, 0, 0.6)), new Lid.Clear(1.49)),
            Water.seaWater(0.1),
            Agitation.STRONG);
    CosinePower lobe = new CosinePower(100, 3);
    Fixture lamp =
        new Fixture(
            "lamp",
            0.3,
            0.2,
            List.of(new Emitter(-0.1, 0, 0.04), new Emitter(0.1, 0.02, 0)),
            List.of(Channel.of("white", lobe)),
            List.of());
    Rig rig =
        new Rig(
            "tilted",
            tank,
            List.of(
                new Hanging(lamp, 0.3, 0.25, 0.2, 0.2, 0.4, Setting.full()),
                Hanging.level(lamp, 0.6, 0.3, 0.25)));
    Places places = Places.volume(tank, 9, 7, 4);
    FastSolver solver = new FastSolver();
    PathBundle paths = solver.paths(rig, places, PhotonSpectrum.flat());
    double[] intensity = new double[paths.size()];
    for (int i = 0; i < intensity.length; i++) {
      intensity[i] = lobe.intensity(paths.gamma(i), paths.azimuth(i));
    }
    double[] gathered = paths.gather(intensity);
    LightField field = solver.solve(rig, places);
    for (int i = 0; i < gathered.length; i++) {
      assertThat(gathered[i]).isCloseTo(field.ppfd(i), within(1e-4 * field.ppfd(i)));
    }
  }
}
