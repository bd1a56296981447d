package parfield.photon;

import java.util.SplittableRandom;
import parfield.aquascape.Aquascape;
import parfield.aquascape.RockHit;
import parfield.optics.Interface;
import parfield.optics.Pane;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Rectangle;
import parfield.tank.Side;
import parfield.tank.Wall;

/**
 * Follows one packet at a time from its lamp to its end.
 *
 * <p>At every boundary chance decides between reflection, transmission and loss with the physical
 * probabilities, so that a gray packet never changes its weight there; water dims it all along.
 * Single-threaded.
 */
final class Walk {
  /** A packet this faint, against what it began with, plays for its life. */
  private final double faint;

  private static final double SURVIVAL = 0.1;

  /** A path with more events than this is given up: it would be one that runs in a circle. */
  private static final int MOST_EVENTS = 100_000;

  private final Scene scene;
  private final Detector[] detectors;
  private final Ledger ledger;
  private final SplittableRandom random;
  private final Facets surface;
  private final Facets flat;
  private final RockHit hit = new RockHit();
  private final double[] totals;
  private final boolean rocky;

  private Packet packet;
  private int layer;
  private double energy;
  private double least;

  /**
   * Prepares walks.
   *
   * @param scene what packets meet
   * @param detectors what counts them
   * @param totals what detectors count into
   * @param ledger what counts their ends
   * @param random chance
   * @param faint share of its first energy below which a packet plays for its life, 0 to below 1
   */
  Walk(
      Scene scene,
      Detector[] detectors,
      double[] totals,
      Ledger ledger,
      SplittableRandom random,
      double faint) {
    this.scene = scene;
    this.detectors = detectors;
    this.totals = totals;
    this.ledger = ledger;
    this.random = random;
    this.faint = faint;
    surface = new Facets(scene.slopeVariance(), random);
    flat = new Facets(0, random);
    rocky = !scene.rocks().isEmpty();
  }

  /** Follows a launched packet to its end. It starts above the water. */
  void follow(Packet launched) {
    packet = launched;
    energy = packet.energy();
    least = energy * faint;
    layer = -1;
    ledger.launch(energy);
    if (!(energy > 0)) {
      return;
    }
    for (int event = 0; event < MOST_EVENTS; event++) {
      boolean goesOn = layer < 0 ? throughAir() : throughWater();
      if (!goesOn) {
        return;
      }
    }
    end(Fate.DROPPED);
  }

  private boolean end(Fate fate) {
    ledger.end(fate, energy);
    return false;
  }

  private Fate upward() {
    return packet.entered ? Fate.ESCAPED : Fate.RETURNED;
  }

  // --- above the water ---

  private boolean throughAir() {
    Opening opening = scene.opening();
    if (opening == null) {
      if (packet.dz <= 0) {
        return end(upward());
      }
      packet.move(-packet.z / packet.dz);
      return meetSurface();
    }
    double rim = -opening.freeboard();
    if (packet.z < rim) {
      if (packet.dz <= 0) {
        return end(packet.entered ? Fate.ESCAPED : Fate.SPILLED);
      }
      packet.move((rim - packet.z) / packet.dz);
      packet.z = rim;
      if (!(packet.x > 0
          && packet.x < scene.length()
          && packet.y > 0
          && packet.y < scene.width())) {
        return end(Fate.SPILLED);
      }
      if (!passOpening(opening)) {
        return false;
      }
    }
    // Between rim and water.
    double toSurface = packet.dz > 0 ? -packet.z / packet.dz : (rim - packet.z) / packet.dz;
    if (packet.dz == 0) {
      toSurface = Double.POSITIVE_INFINITY;
    }
    Side side = nearestPane(toSurface);
    if (side != null) {
      return meetPane(side, scene.indexAbove());
    }
    packet.move(toSurface);
    if (packet.dz > 0) {
      return meetSurface();
    }
    packet.z = rim;
    if (!passOpening(opening)) {
      return false;
    }
    // A lid may have thrown it back down.
    return packet.dz > 0 || end(upward());
  }

  /** Rim, braces and lid, from either side. Returns whether the packet goes straight on. */
  private boolean passOpening(Opening opening) {
    double rim = opening.rim();
    double x = packet.x;
    double y = packet.y;
    if (x < rim || x > scene.length() - rim || y < rim || y > scene.width() - rim) {
      return end(Fate.STOPPED);
    }
    for (Rectangle rectangle : opening.opaque()) {
      if (rectangle.contains(x, y)) {
        return end(Fate.STOPPED);
      }
    }
    if (opening.lid() instanceof Lid.Mesh mesh) {
      return random.nextDouble() < mesh.openFraction() || end(Fate.STOPPED);
    }
    if (opening.lid() instanceof Lid.Clear clear) {
      double reflectance = Pane.reflectance(Math.abs(packet.dz), 1, clear.refractiveIndex(), 1);
      if (random.nextDouble() < reflectance) {
        packet.dz = -packet.dz;
        if (packet.dz < 0) {
          return end(upward());
        }
      }
    }
    return true;
  }

  /** At the upper face of the water, from above. */
  private boolean meetSurface() {
    packet.z = 0;
    if (surface.split(packet, scene.indexAbove(), scene.layers()[0].index)) {
      if (!(packet.dz > 0)) {
        return end(Fate.DROPPED);
      }
      layer = 0;
      packet.entered = true;
    }
    // A facet may throw the packet down again: then it meets the surface once more.
    return true;
  }

  // --- in the water ---

  private boolean throughWater() {
    Layer water = scene.layers()[layer];
    double length = Double.POSITIVE_INFINITY;
    if (packet.dz > 0) {
      length = (water.bottom - packet.z) / packet.dz;
    } else if (packet.dz < 0) {
      length = (water.top - packet.z) / packet.dz;
    }
    length = Math.max(0, length);
    Side side = scene.bounded() ? nearestPane(length) : null;
    if (side != null) {
      length = toPane(side);
    }
    boolean rock =
        rocky
            && scene
                .rocks()
                .nearest(
                    packet.x, packet.y, packet.z, packet.dx, packet.dy, packet.dz, length, hit);
    if (rock) {
      length = hit.distance();
    }
    boolean scatters = false;
    if (water.scattering > 0) {
      double free = -Math.log(1 - random.nextDouble()) / water.scattering;
      if (free < length) {
        length = free;
        scatters = true;
      }
    }
    packet.in(water);
    for (Detector detector : detectors) {
      detector.pass(packet, length, totals);
    }
    if (length == Double.POSITIVE_INFINITY) {
      ledger.absorb(layer, energy);
      return false;
    }
    water.attenuate(packet.weight, length);
    double left = packet.energy();
    ledger.absorb(layer, energy - left);
    energy = left;
    packet.move(length);
    if (scatters) {
      scatter(water);
    } else if (rock) {
      if (!meetRock()) {
        return false;
      }
    } else if (side != null) {
      if (!meetPane(side, water.index)) {
        return false;
      }
    } else if (!meetFace(water)) {
      return false;
    }
    return energy > least || survives();
  }

  private void scatter(Layer water) {
    double angle = 2 * Math.PI * random.nextDouble();
    packet.turn(water.phase.cosineAt(random.nextDouble()), Math.cos(angle), Math.sin(angle));
    if (!water.gray) {
      packet.scale(water.scatteringRatio);
      double left = packet.energy();
      // What the common coefficient dims too much or too little on the way is made up for here: in
      // the mean the two are what the water absorbs.
      ledger.absorb(layer, energy - left);
      energy = left;
    }
  }

  /** At the upper or lower face of a layer, from inside. */
  private boolean meetFace(Layer water) {
    if (packet.dz > 0) {
      packet.z = water.bottom;
      if (layer + 1 < scene.layers().length) {
        if (flat.split(packet, water.index, scene.layers()[layer + 1].index)) {
          layer++;
        }
        return true;
      }
      if (scene.floor() != null) {
        return reflectDiffusely(scene.floor(), 0, 0, -1, Fate.BOTTOM);
      }
      return !flat.split(packet, water.index, scene.indexBelow()) || end(Fate.BELOW);
    }
    packet.z = water.top;
    if (layer > 0) {
      if (flat.split(packet, water.index, scene.layers()[layer - 1].index)) {
        layer--;
      }
      return true;
    }
    if (surface.split(packet, water.index, scene.indexAbove())) {
      if (!(packet.dz < 0)) {
        return end(Fate.DROPPED);
      }
      layer = -1;
    }
    return true;
  }

  private boolean meetRock() {
    packet.x += Aquascape.OFF_SURFACE * hit.normalX();
    packet.y += Aquascape.OFF_SURFACE * hit.normalY();
    packet.z += Aquascape.OFF_SURFACE * hit.normalZ();
    return reflectDiffusely(
        scene.rockFaces()[hit.rock()], hit.normalX(), hit.normalY(), hit.normalZ(), Fate.ROCK);
  }

  // --- panes ---

  /** The pane that the packet meets within a distance, or null. */
  private Side nearestPane(double within) {
    double best = within;
    Side side = null;
    if (packet.dx != 0) {
      double t = (packet.dx > 0 ? scene.length() - packet.x : -packet.x) / packet.dx;
      if (t < best) {
        best = t;
        side = packet.dx > 0 ? Side.RIGHT : Side.LEFT;
      }
    }
    if (packet.dy != 0) {
      double t = (packet.dy > 0 ? scene.width() - packet.y : -packet.y) / packet.dy;
      if (t < best) {
        side = packet.dy > 0 ? Side.BACK : Side.FRONT;
      }
    }
    return side;
  }

  private double toPane(Side side) {
    double distance =
        switch (side) {
          case LEFT -> -packet.x / packet.dx;
          case RIGHT -> (scene.length() - packet.x) / packet.dx;
          case FRONT -> -packet.y / packet.dy;
          case BACK -> (scene.width() - packet.y) / packet.dy;
        };
    return Math.max(0, distance);
  }

  private boolean meetPane(Side side, double index) {
    if (layer < 0) {
      packet.move(toPane(side));
    }
    double nx = 0;
    double ny = 0;
    switch (side) {
      case LEFT -> {
        packet.x = 0;
        nx = 1;
      }
      case RIGHT -> {
        packet.x = scene.length();
        nx = -1;
      }
      case FRONT -> {
        packet.y = 0;
        ny = 1;
      }
      case BACK -> {
        packet.y = scene.width();
        ny = -1;
      }
    }
    if (scene.walls() == null) {
      mirror(nx, ny);
      return true;
    }
    Wall wall = scene.walls().on(side);
    double cosine = Math.min(1, Math.abs(packet.dx * nx + packet.dy * ny));
    boolean clear = wall.clear() == 1 || random.nextDouble() < wall.clear();
    double reflectance;
    if (clear) {
      reflectance = Pane.reflectance(cosine, index, Pane.GLASS, 1);
    } else if (wall.cover() == Wall.Cover.BEHIND_GLASS) {
      reflectance = Interface.reflectance(cosine, index, Pane.GLASS);
    } else {
      reflectance = 0;
    }
    if (reflectance > 0 && random.nextDouble() < reflectance) {
      mirror(nx, ny);
      return true;
    }
    if (clear) {
      return end(Fate.THROUGH_PANES);
    }
    if (random.nextDouble() < wall.diffuse()) {
      lambert(nx, ny, 0);
      return true;
    }
    return end(Fate.PANES);
  }

  private void mirror(double nx, double ny) {
    if (nx != 0) {
      packet.dx = -packet.dx;
    }
    if (ny != 0) {
      packet.dy = -packet.dy;
    }
  }

  // --- diffuse reflection, and the end of faint packets ---

  /** Survives with the probability of the brightest waveband; the others are dimmed to theirs. */
  private boolean reflectDiffusely(Diffuser face, double nx, double ny, double nz, Fate loss) {
    if (!(random.nextDouble() < face.most)) {
      return end(loss);
    }
    if (!face.gray) {
      packet.scale(face.ratio);
      double left = packet.energy();
      ledger.end(loss, energy - left);
      energy = left;
    }
    lambert(nx, ny, nz);
    return true;
  }

  /** A direction spread as a perfectly diffuse face spreads it, about its normal. */
  private void lambert(double nx, double ny, double nz) {
    packet.dx = nx;
    packet.dy = ny;
    packet.dz = nz;
    double angle = 2 * Math.PI * random.nextDouble();
    // Never quite along the face.
    double cosine = Math.sqrt(1 - random.nextDouble());
    packet.turn(cosine, Math.cos(angle), Math.sin(angle));
  }

  private boolean survives() {
    if (random.nextDouble() < SURVIVAL) {
      packet.scale(1 / SURVIVAL);
      double left = packet.energy();
      ledger.end(Fate.DROPPED, energy - left);
      energy = left;
      return true;
    }
    return end(Fate.DROPPED);
  }
}
