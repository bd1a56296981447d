package parfield.aquascape;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Where coral can live: faces of rocks that look upward, as far as they lie free in the water, and
 * the bottom that no rock stands on; as places that all stand for the same area.
 *
 * <p>A face looks upward if its outward normal has an upward component. It lies free where a place
 * {@value #OFF} m off it along its normal is in the water, in no rock, and nothing comes between.
 * Surfaces are taken in order of their rocks, the bottom last, and cut evenly into as many shares
 * as places are wanted; within a share the place follows the R₂ sequence (Roberts 2018, the
 * two-dimensional generalisation of the golden ratio). The same question gives the same places.
 * Immutable.
 */
public final class LivingSurface {
  /** Distance of a place from the surface that it stands for, along the normal [m]. */
  public static final double OFF = 0.01;

  /** Faces whose normals are more level than this count as upright. */
  private static final double UPRIGHT = 1e-6;

  /** Steps of an ellipsoid's upper half from top to waist, and a quarter round. */
  private static final int STEPS = 16;

  /** One over the root of x³ = x + 1, and its square. */
  private static final double R1 = 0.7548776662466927;

  private static final double R2 = 0.5698402909980532;

  /**
   * A place just off the living surface.
   *
   * @param x along the length [m]
   * @param y front to back [m]
   * @param depth below the still surface [m]
   * @param normalX unit normal of the surface, into the water, x component
   * @param normalY its y component
   * @param normalZ its downward component, below 0
   * @param area that it stands for [m²]
   * @param rock name of the rock whose surface it is; empty for the bottom
   */
  public record Sample(
      double x,
      double y,
      double depth,
      double normalX,
      double normalY,
      double normalZ,
      double area,
      Optional<String> rock) {}

  /**
   * A flat piece of surface.
   *
   * @param rock whose it is, or −1 for the bottom
   * @param at one corner {x, y, z}
   * @param u edge from there
   * @param v other edge
   * @param triangle whether it is half of the parallelogram
   * @param area [m²]
   */
  private record Piece(
      int rock, double[] at, double[] u, double[] v, boolean triangle, double area) {
    static Piece of(int rock, double[] at, double[] u, double[] v, boolean triangle) {
      double[] normal = cross(u, v);
      double area =
          Math.sqrt(normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]);
      return new Piece(rock, at, u, v, triangle, triangle ? area / 2 : area);
    }
  }

  private final List<Sample> samples;
  private final double share;

  private LivingSurface(List<Sample> samples, double share) {
    this.samples = samples;
    this.share = share;
  }

  /**
   * Finds the living surface of a tank.
   *
   * @param rocks in it
   * @param length inner length of the tank [m]
   * @param width inner width [m]
   * @param depth of the water [m]
   * @param number of places that all upward faces and the whole bottom would get; what is buried,
   *     out of the water or stood upon gets none, so that there are fewer
   * @throws IllegalArgumentException if {@code number} is below 1
   */
  public static LivingSurface of(
      Aquascape rocks, double length, double width, double depth, int number) {
    if (number < 1) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a living surface needs 1 place or more to look at; got %d", number));
    }
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < rocks.rocks().size(); i++) {
      Shape shape = rocks.rocks().get(i).shape();
      if (shape instanceof Box box) {
        addTop(pieces, i, box);
      } else if (shape instanceof Ellipsoid ellipsoid) {
        addUpperHalf(pieces, i, ellipsoid);
      } else if (shape instanceof Mesh mesh) {
        addUpward(pieces, i, mesh);
      }
    }
    pieces.add(
        Piece.of(
            -1,
            new double[] {0, 0, depth},
            new double[] {0, width, 0},
            new double[] {length, 0, 0},
            false));
    double all = pieces.stream().mapToDouble(Piece::area).sum();
    List<Sample> samples = new ArrayList<>();
    int piece = 0;
    double before = 0;
    for (int k = 0; k < number; k++) {
      double reached = all * (k + 0.5) / number;
      while (piece + 1 < pieces.size() && before + pieces.get(piece).area() < reached) {
        before += pieces.get(piece++).area();
      }
      double[] point = point(pieces.get(piece), fraction(k * R1 + 0.5), fraction(k * R2 + 0.5));
      double[] normal = normal(pieces.get(piece), rocks, point);
      if (free(rocks, point, normal, length, width, depth)) {
        int rock = pieces.get(piece).rock();
        samples.add(
            new Sample(
                point[0] + OFF * normal[0],
                point[1] + OFF * normal[1],
                point[2] + OFF * normal[2],
                normal[0],
                normal[1],
                normal[2],
                all / number,
                rock < 0 ? Optional.empty() : Optional.of(rocks.rocks().get(rock).name())));
      }
    }
    return new LivingSurface(List.copyOf(samples), all / number);
  }

  /** The places, by rock in order, the bottom last. */
  public List<Sample> samples() {
    return samples;
  }

  /** Area of the living surface as its places tell it [m²]. */
  public double area() {
    return share * samples.size();
  }

  private static void addTop(List<Piece> pieces, int rock, Box box) {
    double cosine = Math.cos(box.yaw());
    double sine = Math.sin(box.yaw());
    double[] u = {cosine * box.sizeX(), sine * box.sizeX(), 0};
    double[] v = {-sine * box.sizeY(), cosine * box.sizeY(), 0};
    double[] at = {
      box.x() - (u[0] + v[0]) / 2, box.y() - (u[1] + v[1]) / 2, box.depth() - box.sizeZ() / 2
    };
    pieces.add(Piece.of(rock, at, v, u, false));
  }

  private static void addUpperHalf(List<Piece> pieces, int rock, Ellipsoid ellipsoid) {
    for (int ring = 0; ring < STEPS; ring++) {
      for (int sector = 0; sector < 4 * STEPS; sector++) {
        double[] a = point(ellipsoid, ring, sector);
        double[] b = point(ellipsoid, ring, sector + 1);
        double[] c = point(ellipsoid, ring + 1, sector);
        double[] d = point(ellipsoid, ring + 1, sector + 1);
        pieces.add(Piece.of(rock, c, minus(a, c), minus(d, c), true));
        pieces.add(Piece.of(rock, b, minus(d, b), minus(a, b), true));
      }
    }
  }

  private static double[] point(Ellipsoid ellipsoid, int ring, int sector) {
    double polar = Math.PI / 2 * ring / STEPS;
    double azimuth = Math.PI / 2 * sector / STEPS;
    double u = Math.sin(polar) * Math.cos(azimuth);
    double v = Math.sin(polar) * Math.sin(azimuth);
    return inTank(ellipsoid, u, v, -Math.cos(polar));
  }

  /** From the unit sphere to the ellipsoid. */
  private static double[] inTank(Ellipsoid ellipsoid, double u, double v, double w) {
    double cosine = Math.cos(ellipsoid.yaw());
    double sine = Math.sin(ellipsoid.yaw());
    double a = ellipsoid.semiX() * u;
    double b = ellipsoid.semiY() * v;
    return new double[] {
      ellipsoid.x() + cosine * a - sine * b,
      ellipsoid.y() + sine * a + cosine * b,
      ellipsoid.depth() + ellipsoid.semiZ() * w
    };
  }

  private static void addUpward(List<Piece> pieces, int rock, Mesh mesh) {
    for (int t = 0; t < mesh.triangles(); t++) {
      double[][] corner = new double[3][3];
      for (int i = 0; i < 9; i++) {
        corner[i / 3][i % 3] = mesh.coordinate(t, i / 3, i % 3);
      }
      Piece piece =
          Piece.of(rock, corner[0], minus(corner[1], corner[0]), minus(corner[2], corner[0]), true);
      double down = cross(piece.u(), piece.v())[2];
      if (down < -UPRIGHT * 2 * piece.area()) {
        pieces.add(piece);
      }
    }
  }

  private static double[] point(Piece piece, double u, double v) {
    boolean beyond = piece.triangle() && u + v > 1;
    double a = beyond ? 1 - u : u;
    double b = beyond ? 1 - v : v;
    double[] point = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      point[axis] = piece.at()[axis] + a * piece.u()[axis] + b * piece.v()[axis];
    }
    return point;
  }

  /** Outward unit normal; a point on a facet of an ellipsoid is moved out onto it first. */
  private static double[] normal(Piece piece, Aquascape rocks, double[] point) {
    double[] normal = cross(piece.u(), piece.v());
    if (piece.rock() >= 0
        && rocks.rocks().get(piece.rock()).shape() instanceof Ellipsoid ellipsoid) {
      double cosine = Math.cos(ellipsoid.yaw());
      double sine = Math.sin(ellipsoid.yaw());
      double dx = point[0] - ellipsoid.x();
      double dy = point[1] - ellipsoid.y();
      double u = (cosine * dx + sine * dy) / ellipsoid.semiX();
      double v = (cosine * dy - sine * dx) / ellipsoid.semiY();
      double w = (point[2] - ellipsoid.depth()) / ellipsoid.semiZ();
      double r = Math.sqrt(u * u + v * v + w * w);
      System.arraycopy(inTank(ellipsoid, u / r, v / r, w / r), 0, point, 0, 3);
      double a = u / ellipsoid.semiX();
      double b = v / ellipsoid.semiY();
      normal = new double[] {cosine * a - sine * b, sine * a + cosine * b, w / ellipsoid.semiZ()};
    }
    double length =
        Math.sqrt(normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]);
    return new double[] {normal[0] / length, normal[1] / length, normal[2] / length};
  }

  private static boolean free(
      Aquascape rocks, double[] point, double[] normal, double length, double width, double depth) {
    for (double off : new double[] {0, OFF}) {
      double x = point[0] + off * normal[0];
      double y = point[1] + off * normal[1];
      double z = point[2] + off * normal[2];
      if (!(x >= 0 && x <= length && y >= 0 && y <= width && z >= 0 && z <= depth)) {
        return false;
      }
    }
    double start = Aquascape.OFF_SURFACE;
    return !rocks.inside(
            point[0] + OFF * normal[0], point[1] + OFF * normal[1], point[2] + OFF * normal[2])
        && !rocks.blocks(
            point[0] + start * normal[0],
            point[1] + start * normal[1],
            point[2] + start * normal[2],
            normal[0],
            normal[1],
            normal[2],
            OFF);
  }

  private static double fraction(double value) {
    return value - Math.floor(value);
  }

  private static double[] minus(double[] a, double[] b) {
    return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }
}
