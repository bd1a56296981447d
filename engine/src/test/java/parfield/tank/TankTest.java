package parfield.tank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Rock;
import parfield.optics.Agitation;
import parfield.optics.Reflectance;
import parfield.optics.Water;

class TankTest {
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5);

  private static void refuses(ThrowingCallable make, String message) {
    assertThatThrownBy(make).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }

  @Test
  void holdsPlacesUpToItsPanesAndSurface() {
    assertThat(TANK.contains(new Place(0, 0, 0))).isTrue();
    assertThat(TANK.contains(new Place(0.9, 0.6, 0.5))).isTrue();
    assertThat(TANK.contains(new Place(0.9001, 0.3, 0.2))).isFalse();
    assertThat(TANK.contains(new Place(0.4, -0.0001, 0.2))).isFalse();
    assertThat(TANK.contains(new Place(0.4, 0.3, 0.5001))).isFalse();
    assertThat(TANK.contains(new Place(0.4, 0.3, -0.0001))).isFalse();
    assertThat(TANK.contains(new Place(Double.NaN, 0.3, 0.2))).isFalse();
  }

  @Test
  void changesOneThingAtATime() {
    Water water = Water.seaWater(0.2);
    Opening opening = new Opening(0.03, List.of(), new Lid.Mesh(0.8));
    Walls walls = Walls.all(Wall.film());

    assertThat(TANK.withBottomReflectance(0.4))
        .isEqualTo(
            new Tank(
                0.9, 0.6, 0.5, TANK.walls(), 0.4, TANK.opening(), TANK.water(), TANK.surface()));
    assertThat(TANK.withWater(water).water()).isEqualTo(water);
    assertThat(TANK.withOpening(opening).opening()).isEqualTo(opening);
    assertThat(TANK.withWalls(walls).walls()).isEqualTo(walls);
    assertThat(TANK.withSurface(Agitation.STRONG).surface()).isEqualTo(Agitation.STRONG);
    assertThat(
            TANK.withWater(water)
                .withOpening(opening)
                .withWalls(walls)
                .withSurface(Agitation.STRONG)
                .withWater(TANK.water())
                .withOpening(TANK.opening())
                .withWalls(TANK.walls())
                .withSurface(TANK.surface()))
        .isEqualTo(TANK);
  }

  @Test
  void namesItsPanesBySide() {
    Walls walls = new Walls(Wall.film(), Wall.clean(), Wall.coralline(), Wall.painted());
    assertThat(walls.on(Side.LEFT)).isEqualTo(Wall.film());
    assertThat(walls.on(Side.RIGHT)).isEqualTo(Wall.clean());
    assertThat(walls.on(Side.FRONT)).isEqualTo(Wall.coralline());
    assertThat(walls.on(Side.BACK)).isEqualTo(Wall.painted());
    Walls same = walls;
    for (Side side : Side.values()) {
      Walls changed = walls.with(side, Wall.opaque());
      for (Side other : Side.values()) {
        assertThat(changed.on(other)).isEqualTo(other == side ? Wall.opaque() : walls.on(other));
      }
      same = same.with(side, walls.on(side));
    }
    assertThat(same).isEqualTo(walls);
  }

  @Test
  void aPaneReflectsDiffuselyWhereItIsCovered() {
    assertThat(Wall.clean().diffuseReflectance()).isZero();
    assertThat(new Wall(0.25, Wall.Cover.IN_WATER, 0.2).diffuseReflectance())
        .isCloseTo(0.15, within(1e-15));
    assertThat(Wall.coveredWithAirGap()).isEqualTo(Wall.clean());
    assertThat(Wall.film().withClear(1).clear()).isEqualTo(1);
  }

  @Test
  void aRectangleHoldsItsEdges() {
    Rectangle rectangle = new Rectangle(0.1, 0.3, 0, 0.6);
    assertThat(rectangle.contains(0.1, 0)).isTrue();
    assertThat(rectangle.contains(0.3, 0.6)).isTrue();
    assertThat(rectangle.contains(0.0999, 0.3)).isFalse();
    assertThat(rectangle.area()).isCloseTo(0.12, within(1e-15));
  }

  @Test
  void refusesATankWithoutSize() {
    refuses(
        () -> Tank.of(0, 0.6, 0.5),
        "a tank's length, width and water depth must be above 0 m; got 0.0, 0.6, 0.5 m");
    refuses(
        () -> Tank.of(0.9, Double.NaN, 0.5),
        "a tank's length, width and water depth must be above 0 m; got 0.9, NaN, 0.5 m");
    refuses(
        () -> Tank.of(0.9, 0.6, -1),
        "a tank's length, width and water depth must be above 0 m; got 0.9, 0.6, -1.0 m");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.01, 1, Double.NaN})
  void refusesABottomThatCannotBe(double reflectance) {
    refuses(
        () -> TANK.withBottomReflectance(reflectance),
        "a bottom's reflectance runs from 0 to below 1; got " + reflectance);
  }

  @Test
  void refusesARimThatLeavesNoOpening() {
    refuses(
        () -> TANK.withOpening(new Opening(0.3, List.of(), new Lid.None())),
        "a rim of 0.3 m leaves no opening in a tank of 0.9 x 0.6 m");
    refuses(
        () -> new Opening(-0.01, List.of(), new Lid.None()),
        "a rim must be 0 m or more; got -0.01 m");
    refuses(
        () -> new Opening(Double.NaN, List.of(), new Lid.None()),
        "a rim must be 0 m or more; got NaN m");
  }

  @Test
  void refusesARectangleWithoutSize() {
    refuses(
        () -> new Rectangle(0.3, 0.3, 0, 1),
        "a rectangle must have some size; got x 0.3 to 0.3 m, y 0.0 to 1.0 m");
    refuses(
        () -> new Rectangle(0, 1, 0.4, Double.NaN),
        "a rectangle must have some size; got x 0.0 to 1.0 m, y 0.4 to NaN m");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, 1.1, Double.NaN})
  void refusesSharesOutsideZeroToOne(double share) {
    refuses(
        () -> new Wall(share, Wall.Cover.IN_WATER, 0),
        "a wall's clear share runs from 0 to 1; got " + share);
    refuses(
        () -> new Wall(1, Wall.Cover.BEHIND_GLASS, share),
        "a wall's diffuse reflectance runs from 0 to 1; got " + share);
    refuses(() -> new Lid.Mesh(share), "a mesh's open fraction runs from 0 to 1; got " + share);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.9, 3, Double.NaN})
  void refusesALidOfNoKnownMaterial(double index) {
    refuses(
        () -> new Lid.Clear(index),
        "a clear lid's refractive index runs from 1 to 3; got " + index);
  }

  @Test
  void aRockMustStandInTheWaterAtLeastInPart() {
    Rock half = new Rock("half", new Box(0, 0.3, 0.4, 0.2, 0.2, 0.2, 0), Reflectance.gray(0.2));
    Aquascape rocks = Aquascape.of(List.of(half));
    assertThat(TANK.aquascape().isEmpty()).isTrue();
    assertThat(TANK.withAquascape(rocks).aquascape()).isEqualTo(rocks);
    assertThat(TANK.withAquascape(rocks).withWater(Water.seaWater(0.2)).aquascape())
        .isEqualTo(rocks);
    assertThat(TANK.withAquascape(rocks).withAquascape(Aquascape.none())).isEqualTo(TANK);

    Rock away = new Rock("away", new Box(1.1, 0.3, 0.4, 0.2, 0.2, 0.2, 0), Reflectance.gray(0.2));
    assertThatThrownBy(() -> TANK.withAquascape(Aquascape.of(List.of(half, away))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "rock away lies outside the water: x 1.000 to 1.200, y 0.200 to 0.400, depth 0.300 to"
                + " 0.500 m in a tank of 0.9 x 0.6 x 0.5 m; move it so that it stands in the water"
                + " at least in part");
  }
}
