package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.TabulatedIntensity;
import parfield.optics.Agitation;
import parfield.optics.Scattering;
import parfield.optics.Water;
import parfield.plan.Demand;
import parfield.plan.Extent;
import parfield.plan.Zone;
import parfield.rig.Hanging;
import parfield.survey.Band;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.tank.Lid;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.units.LengthUnit;

class SetupFileTest {
  @TempDir private Path folder;

  @Test
  void readsTheTankInMetres() {
    Setup setup = TestBench.in(folder).read();
    Tank tank = setup.tank();

    assertThat(setup.source()).isEqualTo("setup.yaml");
    assertThat(setup.length()).isEqualTo(LengthUnit.CM);
    assertThat(List.of(tank.length(), tank.width(), tank.depth())).containsExactly(0.9, 0.6, 0.5);
    assertThat(tank.walls().left()).isEqualTo(Wall.clean());
    assertThat(tank.walls().right()).isEqualTo(Wall.film());
    assertThat(tank.walls().front()).isEqualTo(new Wall(0.8, Wall.Cover.IN_WATER, 0.1));
    assertThat(tank.walls().back()).isEqualTo(Wall.painted());
    assertThat(tank.bottomReflectance()).isEqualTo(0.35);
    assertThat(tank.opening().rim()).isEqualTo(0.02);
    assertThat(tank.opening().opaque())
        .containsExactly(
            new Rectangle(43 * 0.01, 47 * 0.01, 0, 0.6),
            new Rectangle(0, 0.9, 0.2, 0.24),
            new Rectangle(0, 0.1, 0, 0.05));
    assertThat(tank.opening().lid()).isEqualTo(new Lid.Mesh(0.7));
    assertThat(tank.surface()).isEqualTo(Agitation.GENTLE);
    assertThat(tank.water()).isEqualTo(new Water(1.339, 0.08, 0.016, Scattering.particles(0.1)));
    assertThat(tank.opening().freeboard()).isEqualTo(0.03);
    assertThat(setup.room().height()).isEqualTo(OptionalDouble.of(0.6));
    assertThat(setup.room().length()).isEqualTo(OptionalDouble.of(1));
    assertThat(setup.room().width().orElseThrow()).isCloseTo(0.7, within(1e-15));
  }

  @Test
  void readsAFixtureWithItsChannelsAndDials() {
    Fixture fixture = TestBench.in(folder).read().fixtures().get("pendant");

    assertThat(fixture.length()).isEqualTo(0.4);
    assertThat(fixture.width()).isEqualTo(0.2);
    assertThat(fixture.emitters())
        .containsExactly(new Emitter(-0.12, 0, 0.03), new Emitter(0.12, 0, 0.03));
    assertThat(fixture.dials()).containsExactly("blue", "violet", "overall");
    Channel blue = fixture.channels().get(0);
    assertThat(blue.watts()).hasValue(90);
    assertThat(blue.spectrum().orElseThrow().size()).isEqualTo(7);
    assertThat(blue.curve().outputAt(50)).isEqualTo(0.4);
    CosinePower lobe = (CosinePower) blue.distribution().orElseThrow();
    assertThat(lobe.photonFlux()).isCloseTo(120, within(1e-9));
    assertThat(lobe.intensity(Math.PI / 4, 0)).isCloseTo(lobe.peak() / 2, within(1e-9));
    assertThat(fixture.channels().get(1).distribution()).contains(new CosinePower(40, 2));
  }

  @Test
  void readsARigWithItsOwnDialsOverTheCommonOnes() {
    Hanging hanging = TestBench.in(folder).read().rigs().get("low").hangings().get(0);

    assertThat(hanging.fixture().name()).isEqualTo("pendant");
    assertThat(List.of(hanging.x(), hanging.y(), hanging.height())).containsExactly(0.45, 0.3, 0.2);
    assertThat(hanging.tilt()).isEqualTo(Math.toRadians(10));
    assertThat(hanging.yaw()).isEqualTo(Math.toRadians(90));
    assertThat(hanging.setting().dials())
        .isEqualTo(Map.of("blue", 80.0, "violet", 50.0, "overall", 90.0));
  }

  @Test
  void readsMeterSurveyAndBand() {
    Setup setup = TestBench.in(folder).read();

    assertThat(setup.meters().get("probe"))
        .isEqualTo(new Meter("probe", 1.25, false, 2, 0.04, 0.03, 0.7 * 0.01, 0.1));
    assertThat(setup.surveys().get("low").meter()).isEqualTo(setup.meters().get("probe"));
    assertThat(setup.surveys().get("low").rig()).isEqualTo(setup.rigs().get("low"));
    assertThat(setup.surveys().get("low").readings())
        .containsExactly(
            new Reading(2, new Place(0.1, 0.1, 0.15), 120),
            new Reading(3, new Place(0.45, 0.3, 0.15), 420),
            new Reading(4, new Place(0.8, 0.5, 0.15), 118));
    assertThat(setup.bands()).containsExactly(Map.entry("soft", new Band("soft", 75, 150)));
  }

  @Test
  void readsEveryKindOfDemand() {
    Setup setup = TestBench.in(folder).read();
    Zone reef = new Zone("reef", new Rectangle(0.2, 0.4, 0.1, 0.3), 0.1, 0.25);

    assertThat(setup.demands())
        .containsExactly(
            new Demand.Coverage(new Band("soft", 75, 150), 0.7, Extent.plane(0.2)),
            new Demand.Retention(0.85, Extent.volume()),
            new Demand.Evenness(0.5, new Extent.Volume(Optional.of(reef))),
            new Demand.EndsToCentre(0.75, Extent.volume()),
            new Demand.HotSpot(400, Extent.volume()),
            new Demand.MeanPpfd(100, 200, Extent.volume()),
            new Demand.Evenness(0.1, Extent.livingSurface()));
  }

  @Test
  void assumesNothingWhereEverythingIsStated() {
    assertThat(TestBench.in(folder).read().assumptions())
        .containsExactly(
            "spectra/blue.csv runs from 380 to 500 nm: no light is taken beyond, within 400 to 700"
                + " nm");
  }

  @Test
  void tellsEveryAssumption() {
    Setup setup =
        TestBench.in(folder)
            .with(
                "setup.yaml",
                """
                parfield: 1
                length: in
                tank: {length: 36, width: 24, water: 20}
                fixtures:
                  pendant: {emitters: [{x: 0, y: 0}], channels: {blue: , white: {}}}
                rigs:
                  low: {hang: [{fixture: pendant, x: 18, y: 12, height: 8}]}
                meters:
                  probe:
                surveys:
                  low: {rig: low, meter: probe, readings: low.csv}
                bands: {soft: {from: 75, to: 150}}
                demands:
                  - {ends-to-centre: 0.7}
                  - {band: soft, coverage: 0.5, depth: 6, zone: {depth: [5, 10]}}
                """)
            .with("low.csv", "x,y,depth,ppfd\n12,12,6,100\n")
            .read();

    assertThat(setup.assumptions())
        .containsExactly(
            "tank does not state, so taken: walls clean, bottom reflectance 0.3, opening free (no"
                + " rim, brace or lid), surface still, yellowing 0.05 1/m, yellowing slope 0.015"
                + " 1/nm, refractive index 1.34, scattering 0 1/m, freeboard none",
            "fixtures.pendant.channels.blue does not state, so taken: spectrum flat over 400 to 700"
                + " nm, output proportional to the dial",
            "fixtures.pendant.channels.white does not state, so taken: spectrum flat over 400 to"
                + " 700 nm, output proportional to the dial",
            "fixtures.pendant does not state, so taken: aperture of its emitters unknown (a fit"
                + " seeks it, else points),"
                + " distribution fitted",
            "rigs.low does not state, so taken: dial blue 100, dial white 100",
            "meters.probe does not state, so taken: immersion 1, applied true (readings hold the"
                + " immersion factor already), ambient 0 µmol/m²/s, scale error 0.05, repeat error"
                + " 0.02, position error 0.19685 in, resolution 1 µmol/m²/s",
            "low.csv states no unit for depth, x, y: in taken, as in the setup",
            "demands[1] does not state, so taken: of volume",
            "demands[2] does not state, so taken: of plane");
    assertThat(setup.surveys().get("low").readings().get(0).place())
        .isEqualTo(new Place(12 * 0.0254, 12 * 0.0254, 6 * 0.0254));
    assertThat(setup.meters().get("probe").positionError()).isCloseTo(0.005, within(1e-15));
    Zone zone = ((Extent.Plane) setup.demands().get(1).extent()).zone().orElseThrow();
    assertThat(zone.name()).isEqualTo("2");
    assertThat(zone.area()).isEqualTo(new Rectangle(0, 36 * 0.0254, 0, 24 * 0.0254));
  }

  @Test
  void takesEachNameOfAWall() {
    Map<String, Wall> walls =
        Map.of(
            "clean", Wall.clean(),
            "film", Wall.film(),
            "coralline", Wall.coralline(),
            "painted", Wall.painted(),
            "covered", Wall.coveredWithAirGap(),
            "opaque", Wall.opaque());
    walls.forEach(
        (name, wall) -> {
          assertThat(walls("walls: " + name).left()).isEqualTo(wall);
          assertThat(walls("walls: {back: " + name + "}").back()).isEqualTo(wall);
          assertThat(walls("walls: {back: {" + name + ": true}}").back()).isEqualTo(wall);
        });
  }

  private parfield.tank.Walls walls(String walls) {
    return TestBench.in(folder)
        .replacing(
            "walls: {left: clean, right: film, front: {clear: 0.8, diffuse: 0.1, cover: water},"
                + " back: {painted: true}}",
            walls)
        .read()
        .tank()
        .walls();
  }

  @Test
  void takesEachLid() {
    assertThat(lid("lid: none")).isEqualTo(new Lid.None());
    assertThat(lid("lid: {clear: glass}")).isEqualTo(new Lid.Clear(1.52));
    assertThat(lid("lid: {clear: acrylic}")).isEqualTo(new Lid.Clear(1.49));
  }

  private Lid lid(String lid) {
    return TestBench.in(folder).replacing("lid: {mesh: 0.7}", lid).read().tank().opening().lid();
  }

  @Test
  void readsADistributionFromATable() {
    IntensityDistribution table =
        TestBench.in(folder)
            .with("pendant.csv", "gamma_deg,0,90\n0,100,100\n45,80,40\n90,0,0\n")
            .replacing(
                "distribution: {beam: 90, photon flux: 120}", "distribution: {table: pendant.csv}")
            .read()
            .fixtures()
            .get("pendant")
            .channels()
            .get(0)
            .distribution()
            .orElseThrow();

    assertThat(table).isInstanceOf(TabulatedIntensity.class);
    assertThat(table.intensity(Math.PI / 4, Math.PI / 2)).isCloseTo(40, within(1e-9));
    assertThat(table.quadrantSymmetric()).isTrue();
  }

  @Test
  void leavesAFittedDistributionOpen() {
    Fixture fixture =
        TestBench.in(folder)
            .replacing("distribution: {beam: 90, photon flux: 120}", "distribution: fitted")
            .read()
            .fixtures()
            .get("pendant");

    assertThat(fixture.channels().get(0).distribution()).isEmpty();
    assertThat(fixture.channels().get(1).distribution()).isPresent();
  }

  @Test
  void writesOutAliases() {
    Setup setup =
        TestBench.in(folder)
            .replacing(
                "[{x: -12, y: 0, aperture: 3}, {x: 12, y: 0, aperture: 3}]",
                "[&one {x: -12, y: 0, aperture: 3}, *one]")
            .read();

    assertThat(setup.fixtures().get("pendant").emitters()).hasSize(2);
  }

  @Test
  void takesByteOrderMarksAndWindowsLineEnds() {
    Setup setup =
        TestBench.in(folder)
            .with("setup.yaml", "\uFEFF" + TestBench.FULL.replace("\n", "\r\n"))
            .with("low.csv", "\uFEFF" + TestBench.READINGS.replace("\n", "\r\n"))
            .with("spectra/blue.csv", "\uFEFF" + TestBench.SPECTRUM.replace("\n", "\r\n"))
            .read();

    assertThat(setup.surveys().get("low").readings())
        .isEqualTo(TestBench.in(folder).read().surveys().get("low").readings());
  }
}
