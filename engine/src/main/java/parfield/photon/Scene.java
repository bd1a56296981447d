package parfield.photon;

import parfield.aquascape.Aquascape;
import parfield.tank.Opening;
import parfield.tank.Tank;
import parfield.tank.Walls;

/**
 * Everything that photons meet: a box of water, or layers without end to the sides.
 *
 * <p>Immutable; arrays are not copied.
 *
 * @param length of the box along x [m]; infinite where there are no panes
 * @param width of the box along y [m]; infinite where there are no panes
 * @param layers from top to bottom, at least one
 * @param indexAbove refractive index above the first layer
 * @param indexBelow refractive index below the last layer, where there is no floor
 * @param slopeVariance of the upper face: total variance of its slope
 * @param opening where light may enter; null where there are no panes
 * @param walls the panes; null where there are none, or where they reflect everything
 * @param floor the bottom; null where there is none
 * @param rocks what stands in the water
 * @param rockFaces how each rock reflects
 */
record Scene(
    double length,
    double width,
    Layer[] layers,
    double indexAbove,
    double indexBelow,
    double slopeVariance,
    Opening opening,
    Walls walls,
    Diffuser floor,
    Aquascape rocks,
    Diffuser[] rockFaces) {

  /** A tank with its panes, bottom, rock and surface. */
  static Scene of(Tank tank, Wavebands bands) {
    return of(tank, bands, bands.layer(tank));
  }

  /** A tank whose panes reflect everything and whose water takes nothing: for flux checks. */
  static Scene lossless(Tank tank, Wavebands bands) {
    return of(tank, bands, bands.clearLayer(tank)).withPerfectPanes();
  }

  private static Scene of(Tank tank, Wavebands bands, Layer water) {
    return new Scene(
        tank.length(),
        tank.width(),
        new Layer[] {water},
        1,
        1,
        tank.surface().slopeVariance(),
        tank.opening(),
        tank.walls(),
        new Diffuser(bands.constant(tank.bottomReflectance())),
        tank.aquascape(),
        tank.aquascape().rocks().stream()
            .map(rock -> new Diffuser(bands.at(rock.reflectance()::at)))
            .toArray(Diffuser[]::new));
  }

  /** Layers without end to the sides. */
  static Scene planeParallel(
      Layer[] layers, double indexAbove, double indexBelow, double slopeVariance, Diffuser floor) {
    return new Scene(
        Double.POSITIVE_INFINITY,
        Double.POSITIVE_INFINITY,
        layers,
        indexAbove,
        indexBelow,
        slopeVariance,
        null,
        null,
        floor,
        Aquascape.none(),
        new Diffuser[0]);
  }

  /** This scene with panes that reflect everything: for checks of flux conservation. */
  Scene withPerfectPanes() {
    return new Scene(
        length,
        width,
        layers,
        indexAbove,
        indexBelow,
        slopeVariance,
        opening,
        null,
        floor,
        rocks,
        rockFaces);
  }

  boolean bounded() {
    return length < Double.POSITIVE_INFINITY;
  }
}
