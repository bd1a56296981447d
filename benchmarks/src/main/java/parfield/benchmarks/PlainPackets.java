package parfield.benchmarks;

import java.util.SplittableRandom;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.optics.Interface;
import parfield.optics.Pane;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Tank;

/**
 * The reference solver's loop written down plainly, to measure what its form gains: one wavelength
 * and one channel a packet, drawn by the channel's photons, an exponential at every step,
 * directions drawn evenly over the hemisphere's projection, plain chance.
 *
 * <p>Clean panes, still water, diffuse bottom, nothing over the opening; scalar irradiance in
 * voxels. It shares no code with the reference solver's loop, so that the two check each other.
 */
final class PlainPackets {
  private final Rig rig;
  private final int columns;
  private final int rows;
  private final int layers;

  PlainPackets(Rig rig, int columns, int rows, int layers) {
    this.rig = rig;
    this.columns = columns;
    this.rows = rows;
    this.layers = layers;
  }

  /**
   * Sends packets.
   *
   * @return E_o of each channel of all fixtures together, one channel after another, in each voxel,
   *     x fastest, then y, then depth [µmol m⁻² s⁻¹]
   */
  double[] scalarIrradiance(long packets, long seed) {
    Tank tank = rig.tank();
    Water water = tank.water();
    SplittableRandom random = new SplittableRandom(seed);
    int voxels = columns * rows * layers;
    int channels = rig.hangings().get(0).fixture().channels().size();
    double[] sum = new double[channels * voxels];
    int lamps = 0;
    for (Hanging hanging : rig.hangings()) {
      lamps += hanging.fixture().emitters().size() * hanging.fixture().channels().size();
    }
    for (long n = 0; n < packets; n++) {
      Hanging hanging = rig.hangings().get(random.nextInt(rig.hangings().size()));
      Emitter emitter =
          hanging.fixture().emitters().get(random.nextInt(hanging.fixture().emitters().size()));
      int number = random.nextInt(channels);
      Channel channel = hanging.fixture().channels().get(number);
      double wavelength = wavelength(channel.spectrumOrFlat(), random);
      double a = water.absorption(wavelength);
      double cosine = Math.sqrt(1 - random.nextDouble());
      double sine = Math.sqrt(1 - cosine * cosine);
      double angle = 2 * Math.PI * random.nextDouble();
      double intensity = channel.distribution().orElseThrow().intensity(Math.acos(cosine), angle);
      // Drawn with the density cos γ / π.
      double weight = intensity * Math.PI / cosine * lamps;
      double dx = sine * Math.cos(angle);
      double dy = sine * Math.sin(angle);
      double dz = cosine;
      double x = hanging.x() + emitter.x() + emitter.aperture() * (random.nextDouble() - 0.5);
      double y = hanging.y() + emitter.y() + emitter.aperture() * (random.nextDouble() - 0.5);
      x += hanging.height() / dz * dx;
      y += hanging.height() / dz * dy;
      if (x <= 0 || x >= tank.length() || y <= 0 || y >= tank.width()) {
        continue;
      }
      double index = water.refractiveIndex();
      if (random.nextDouble() < Interface.reflectance(dz, 1, index)) {
        continue;
      }
      dx /= index;
      dy /= index;
      dz = Math.sqrt(1 - dx * dx - dy * dy);
      follow(sum, number * voxels, tank, random, weight, a, new double[] {x, y, 0, dx, dy, dz});
    }
    double cell = tank.length() * tank.width() * tank.depth() / voxels;
    for (int i = 0; i < sum.length; i++) {
      sum[i] /= cell * packets;
    }
    return sum;
  }

  private void follow(
      double[] sum,
      int first,
      Tank tank,
      SplittableRandom random,
      double weight,
      double a,
      double[] ray) {
    double left = weight;
    while (true) {
      double toX = ray[3] > 0 ? (tank.length() - ray[0]) / ray[3] : -ray[0] / ray[3];
      double toY = ray[4] > 0 ? (tank.width() - ray[1]) / ray[4] : -ray[1] / ray[4];
      double toZ = ray[5] > 0 ? (tank.depth() - ray[2]) / ray[5] : -ray[2] / ray[5];
      double length = Math.max(0, Math.min(toX, Math.min(toY, toZ)));
      count(sum, first, tank, ray, length, left, a);
      left *= Math.exp(-a * length);
      for (int axis = 0; axis < 3; axis++) {
        ray[axis] += length * ray[3 + axis];
      }
      double index = tank.water().refractiveIndex();
      if (length == toX || length == toY) {
        int axis = length == toX ? 3 : 4;
        double reflectance = Pane.reflectance(Math.abs(ray[axis]), index, Pane.GLASS, 1);
        if (random.nextDouble() >= reflectance) {
          return;
        }
        ray[axis] = -ray[axis];
      } else if (ray[5] > 0) {
        if (random.nextDouble() >= tank.bottomReflectance()) {
          return;
        }
        double cosine = Math.sqrt(1 - random.nextDouble());
        double sine = Math.sqrt(1 - cosine * cosine);
        double angle = 2 * Math.PI * random.nextDouble();
        ray[3] = sine * Math.cos(angle);
        ray[4] = sine * Math.sin(angle);
        ray[5] = -cosine;
      } else {
        if (random.nextDouble() >= Interface.reflectance(-ray[5], index, 1)) {
          return;
        }
        ray[5] = -ray[5];
      }
      if (left < 0.02 * weight) {
        if (random.nextDouble() >= 0.1) {
          return;
        }
        left *= 10;
      }
    }
  }

  /** Adds flux times length to every voxel on the way, in steps to the nearest face. */
  private void count(
      double[] sum, int first, Tank tank, double[] ray, double length, double weight, double a) {
    double sizeX = tank.length() / columns;
    double sizeY = tank.width() / rows;
    double sizeZ = tank.depth() / layers;
    double at = 0;
    while (at < length - 1e-12) {
      double x = ray[0] + (at + 1e-9) * ray[3];
      double y = ray[1] + (at + 1e-9) * ray[4];
      double z = ray[2] + (at + 1e-9) * ray[5];
      int i = Math.max(0, Math.min(columns - 1, (int) (x / sizeX)));
      int j = Math.max(0, Math.min(rows - 1, (int) (y / sizeY)));
      int k = Math.max(0, Math.min(layers - 1, (int) (z / sizeZ)));
      double step =
          Math.min(
              toFace(x, ray[3], i, sizeX),
              Math.min(toFace(y, ray[4], j, sizeY), toFace(z, ray[5], k, sizeZ)));
      double to = Math.min(length, at + 1e-9 + Math.max(0, step));
      sum[first + (k * rows + j) * columns + i] +=
          (to - at) * weight * Math.exp(-a * (at + to) / 2);
      at = to;
    }
  }

  private static double toFace(double at, double direction, int cell, double size) {
    if (direction == 0) {
      return Double.POSITIVE_INFINITY;
    }
    return ((direction > 0 ? cell + 1 : cell) * size - at) / direction;
  }

  /** A wavelength drawn as the channel's photons are spread, by rejection [nm]. */
  private static double wavelength(PhotonSpectrum spectrum, SplittableRandom random) {
    double most = 0;
    for (int i = 0; i < spectrum.size(); i++) {
      most = Math.max(most, spectrum.photonFlux(i));
    }
    while (true) {
      double wavelength =
          PhotonSpectrum.PAR_FROM_NM
              + (PhotonSpectrum.PAR_TO_NM - PhotonSpectrum.PAR_FROM_NM) * random.nextDouble();
      if (random.nextDouble() * most < spectrum.at(wavelength)) {
        return wavelength;
      }
    }
  }
}
