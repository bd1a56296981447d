package parfield.benchmarks;

import java.util.List;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * The field by brute force, to measure the fast solver's error against: every image path solved by
 * itself, no path tables, optics written down anew.
 *
 * <p>Covers what the timed scenes hold: level point emitters, still water, an open tank with clean
 * panes and a diffuse bottom. Slow on purpose.
 */
final class ImageReference {
  private static final double GLASS = 1.52;

  /** Image orders of direct light to each side; farther ones cross outside the opening. */
  private static final int ORDERS = 5;

  /**
   * Images of diffuse light are taken this far, as a multiple of twice the depth; 8 gives the same.
   */
  private static final double DIFFUSE_REACH = 3;

  private static final int BOUNCES = 12;
  private static final int BOTTOM_COLUMNS = 18;
  private static final int BOTTOM_ROWS = 12;
  private static final double ATTENUATION_STEP = 1e-3;
  private static final double LONGEST = 20;

  private final Tank tank;
  private final double index;
  private final List<Hanging> hangings;
  private final int channels;

  /** Transmittance of water [channel][millimetres of path]. */
  private final double[][] attenuation;

  /** Radiosity of the bottom's cells, all hangings together [channel][cell]. */
  private final double[][] radiosity;

  ImageReference(Rig rig) {
    tank = rig.tank();
    if (!tank.walls().equals(Walls.all(Wall.clean()))
        || tank.opening().rim() > 0
        || !tank.opening().opaque().isEmpty()
        || rig.hangings().stream().anyMatch(hanging -> hanging.tilt() != 0)) {
      throw new IllegalArgumentException(
          "the brute-force reference knows level lamps over an open tank with clean panes only");
    }
    index = tank.water().refractiveIndex();
    hangings = rig.hangings();
    List<Channel> all = hangings.get(0).fixture().channels();
    channels = all.size();
    attenuation = new double[channels][];
    for (int c = 0; c < channels; c++) {
      attenuation[c] = attenuation(all.get(c).spectrumOrFlat());
    }
    radiosity = radiosity();
  }

  /** E_d of every channel at full output, all hangings together [µmol m⁻² s⁻¹]. */
  double[] downwelling(Place place) {
    double[] sum = direct(place.x(), place.y(), place.depth());
    for (int cell = 0; cell < BOTTOM_COLUMNS * BOTTOM_ROWS; cell++) {
      addDiffuse(cell, place.x(), place.y(), place.depth(), sum);
    }
    return sum;
  }

  private double[] attenuation(PhotonSpectrum spectrum) {
    double[] table = new double[(int) (LONGEST / ATTENUATION_STEP) + 2];
    double stepNm = 1;
    int points = (int) ((PhotonSpectrum.PAR_TO_NM - PhotonSpectrum.PAR_FROM_NM) / stepNm);
    double[] share = new double[points + 1];
    double[] absorption = new double[points + 1];
    double total = 0;
    for (int i = 0; i <= points; i++) {
      double wavelength = PhotonSpectrum.PAR_FROM_NM + i * stepNm;
      share[i] = spectrum.at(wavelength) * (i == 0 || i == points ? 0.5 : 1);
      absorption[i] = tank.water().absorption(wavelength);
      total += share[i];
    }
    for (int p = 0; p < table.length; p++) {
      double sum = 0;
      for (int i = 0; i <= points; i++) {
        sum += share[i] * Math.exp(-absorption[i] * p * ATTENUATION_STEP);
      }
      table[p] = sum / total;
    }
    return table;
  }

  private double transmittance(int channel, double length) {
    double position = length / ATTENUATION_STEP;
    int i = (int) position;
    double[] table = attenuation[channel];
    return table[i] + (position - i) * (table[i + 1] - table[i]);
  }

  private double[] direct(double x, double y, double depth) {
    double[] sum = new double[channels];
    for (Hanging hanging : hangings) {
      for (Emitter emitter : hanging.fixture().emitters()) {
        double cosYaw = Math.cos(hanging.yaw());
        double sinYaw = Math.sin(hanging.yaw());
        double sourceX = hanging.x() + emitter.x() * cosYaw - emitter.y() * sinYaw;
        double sourceY = hanging.y() + emitter.x() * sinYaw + emitter.y() * cosYaw;
        for (int i = -ORDERS; i <= ORDERS; i++) {
          double dx = image(x, i, tank.length()) - sourceX;
          for (int j = -ORDERS; j <= ORDERS; j++) {
            double dy = image(y, j, tank.width()) - sourceY;
            addPath(hanging, sourceX, sourceY, dx, dy, depth, Math.abs(i), Math.abs(j), sum);
          }
        }
      }
    }
    return sum;
  }

  private static double image(double coordinate, int order, double span) {
    double inCell = order % 2 == 0 ? coordinate : span - coordinate;
    return order * span + inCell;
  }

  private void addPath(
      Hanging hanging,
      double sourceX,
      double sourceY,
      double dx,
      double dy,
      double depth,
      int panesX,
      int panesY,
      double[] sum) {
    double height = hanging.height();
    double distance = Math.hypot(dx, dy);
    double zenith = zenithInAir(height, depth, distance);
    double inWater = Math.asin(Math.sin(zenith) / index);
    double crossing = height * Math.tan(zenith);
    double towardX = distance == 0 ? 1 : dx / distance;
    double towardY = distance == 0 ? 0 : dy / distance;
    double atX = sourceX + crossing * towardX;
    double atY = sourceY + crossing * towardY;
    if (atX < 0 || atX > tank.length() || atY < 0 || atY > tank.width()) {
      return;
    }
    double spread;
    if (distance == 0) {
      spread = 1 / Math.pow(height + depth / index, 2);
    } else {
      double slope =
          height / Math.pow(Math.cos(zenith), 2)
              + depth
                  / Math.pow(Math.cos(inWater), 2)
                  * Math.cos(zenith)
                  / (index * Math.cos(inWater));
      spread = Math.sin(zenith) / (distance * slope);
    }
    double factor =
        spread
            * (1 - fresnel(zenith, inWater, 1, index))
            * Math.pow(pane(Math.sin(inWater) * Math.abs(towardX)), panesX)
            * Math.pow(pane(Math.sin(inWater) * Math.abs(towardY)), panesY);
    double azimuth = Math.atan2(towardY, towardX) - hanging.yaw();
    for (int c = 0; c < channels; c++) {
      double intensity =
          hanging
              .fixture()
              .channels()
              .get(c)
              .distribution()
              .orElseThrow()
              .intensity(zenith, azimuth);
      sum[c] += intensity * factor * transmittance(c, depth / Math.cos(inWater));
    }
  }

  /** Newton's method on Snell's law, r = h tan θ + d tan θ_w, kept between bounds. */
  private double zenithInAir(double height, double depth, double distance) {
    double low = 0;
    double high = Math.atan2(distance, height);
    double zenith = Math.atan2(distance, height + depth);
    for (int i = 0; i < 200 && high - low > 1e-15; i++) {
      double inWater = Math.asin(Math.sin(zenith) / index);
      double miss = height * Math.tan(zenith) + depth * Math.tan(inWater) - distance;
      if (miss > 0) {
        high = zenith;
      } else {
        low = zenith;
      }
      double slope =
          height / Math.pow(Math.cos(zenith), 2)
              + depth
                  / Math.pow(Math.cos(inWater), 2)
                  * Math.cos(zenith)
                  / (index * Math.cos(inWater));
      double next = zenith - miss / slope;
      next = next > low && next < high ? next : (low + high) / 2;
      if (Math.abs(next - zenith) < 1e-15) {
        return next;
      }
      zenith = next;
    }
    return zenith;
  }

  /** Fresnel's equations in their sine and tangent form; the limit near normal incidence. */
  private static double fresnel(double from, double to, double indexFrom, double indexTo) {
    if (from < 1e-6) {
      double ratio = (indexFrom - indexTo) / (indexFrom + indexTo);
      return ratio * ratio;
    }
    double perpendicular = Math.sin(from - to) / Math.sin(from + to);
    double parallel = Math.tan(from - to) / Math.tan(from + to);
    return (perpendicular * perpendicular + parallel * parallel) / 2;
  }

  /** Reflectance of a clean pane with air behind, rays summed inside the glass one by one. */
  private double pane(double cosine) {
    double sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
    if (sine * index >= 1) {
      return 1;
    }
    double inWater = Math.asin(sine);
    double inGlass = Math.asin(sine * index / GLASS);
    double inAir = Math.asin(sine * index);
    double near = fresnel(inWater, inGlass, index, GLASS);
    double far = fresnel(inGlass, inAir, GLASS, 1);
    double sum = near;
    double travelling = (1 - near) * far;
    while (travelling > 1e-16) {
      sum += travelling * (1 - near);
      travelling *= near * far;
    }
    return sum;
  }

  private double[][] radiosity() {
    int cells = BOTTOM_COLUMNS * BOTTOM_ROWS;
    double[][] first = new double[channels][cells];
    double reflectance = tank.bottomReflectance();
    if (reflectance == 0) {
      return first;
    }
    double offset = 0.5 / Math.sqrt(3);
    for (int cell = 0; cell < cells; cell++) {
      for (int point = 0; point < 4; point++) {
        double u = (point & 1) == 0 ? -offset : offset;
        double v = (point & 2) == 0 ? -offset : offset;
        double[] light =
            direct(
                cellX(cell) + u * tank.length() / BOTTOM_COLUMNS,
                cellY(cell) + v * tank.width() / BOTTOM_ROWS,
                tank.depth());
        for (int c = 0; c < channels; c++) {
          first[c][cell] += reflectance * light[c] / 4;
        }
      }
    }
    double[][][] between = between();
    double[][] total = first;
    for (int round = 0; round < BOUNCES; round++) {
      double[][] next = new double[channels][cells];
      for (int c = 0; c < channels; c++) {
        for (int to = 0; to < cells; to++) {
          double received = 0;
          for (int from = 0; from < cells; from++) {
            received += between[to][from][c] * total[c][from];
          }
          next[c][to] = first[c][to] + reflectance * received;
        }
      }
      total = next;
    }
    return total;
  }

  /** Transfer between the bottom's cells [to][from][channel]. */
  private double[][][] between() {
    int cells = BOTTOM_COLUMNS * BOTTOM_ROWS;
    double[][][] between = new double[cells][cells][channels];
    for (int to = 0; to < cells; to++) {
      for (int from = 0; from < cells; from++) {
        addTransfer(from, cellX(to), cellY(to), tank.depth(), between[to][from]);
      }
    }
    return between;
  }

  private double cellX(int cell) {
    return tank.length() * (cell % BOTTOM_COLUMNS + 0.5) / BOTTOM_COLUMNS;
  }

  private double cellY(int cell) {
    int row = cell / BOTTOM_COLUMNS;
    return tank.width() * (row + 0.5) / BOTTOM_ROWS;
  }

  private void addDiffuse(int cell, double x, double y, double depth, double[] sum) {
    double[] transfer = new double[channels];
    addTransfer(cell, x, y, depth, transfer);
    for (int c = 0; c < channels; c++) {
      sum[c] += transfer[c] * radiosity[c][cell];
    }
  }

  /** E_d per radiosity of a cell of the bottom, mirrored by the surface and the panes. */
  private void addTransfer(int cell, double x, double y, double depth, double[] transfer) {
    double rise = tank.depth() + depth;
    double area = tank.length() * tank.width() / (BOTTOM_COLUMNS * BOTTOM_ROWS);
    double reach = DIFFUSE_REACH * 2 * tank.depth();
    int mostX = (int) Math.ceil(reach / tank.length());
    int mostY = (int) Math.ceil(reach / tank.width());
    for (int i = -mostX; i <= mostX; i++) {
      double dx = image(cellX(cell), i, tank.length()) - x;
      for (int j = -mostY; j <= mostY; j++) {
        double dy = image(cellY(cell), j, tank.width()) - y;
        double square = dx * dx + dy * dy + rise * rise;
        double path = Math.sqrt(square);
        if (path > reach) {
          continue;
        }
        double cosine = rise / path;
        double value = cosine * cosine * area / (Math.PI * square) * underside(cosine);
        if (i != 0) {
          value *= Math.pow(pane(Math.abs(dx) / path), Math.abs(i));
        }
        if (j != 0) {
          value *= Math.pow(pane(Math.abs(dy) / path), Math.abs(j));
        }
        for (int c = 0; c < channels; c++) {
          transfer[c] += value * transmittance(c, path);
        }
      }
    }
  }

  /** Reflectance of the surface from below. */
  private double underside(double cosine) {
    double sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
    if (sine * index >= 1) {
      return 1;
    }
    return fresnel(Math.asin(sine), Math.asin(sine * index), index, 1);
  }
}
