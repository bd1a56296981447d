package parfield.aquascape;

import java.util.Arrays;
import java.util.List;

/**
 * A bounding-volume hierarchy over the boxes, ellipsoids and triangles of all rocks, in flat
 * arrays.
 *
 * <p>Nodes stand in depth-first order: the first child of an inner node follows it, and every node
 * knows the one that comes after its whole branch. Bodies stand in the order of the leaves, nine
 * numbers each: a triangle's corners, or centre, cosine and sine of the yaw and half sizes of a box
 * or an ellipsoid. Immutable.
 */
final class Hierarchy {
  /** No branch is deeper than this. */
  static final int DEEPEST = 64;

  static final byte TRIANGLE = 0;
  static final byte BOX = 1;
  static final byte ELLIPSOID = 2;

  /** Numbers that describe a body. */
  static final int NUMBERS = 9;

  /** Points closer than this are taken to be one corner [m]. */
  private static final double MARGIN = 1e-12;

  private static final double MISS = Double.POSITIVE_INFINITY;

  /**
   * Directions along which surfaces are counted to find out whether a place is inside: if one runs
   * too near an edge to be sure, the next is taken.
   */
  private static final double[][] PROBES = {
    {0.3090170, 0.2360680, 0.9212671},
    {-0.7548777, 0.5698403, 0.3247180},
    {0.4142136, -0.7320508, 0.5411961},
    {-0.2679492, -0.6180340, -0.7390851},
    {0.5772157, 0.2614972, -0.7736043}
  };

  /** An edge function below this share of all three is too near an edge to be sure. */
  private static final double NEAR_EDGE = 1e-9;

  private static final int UNSURE = Integer.MIN_VALUE;

  private final int nodes;

  /** Least x, y, z, greatest x, y, z of each node. */
  private final double[] bounds;

  /** Node that comes after the whole branch of each node. */
  private final int[] after;

  /** First body of a leaf; of an inner node, −1 less the axis that its children part along. */
  private final int[] first;

  /** Second child of an inner node; number of bodies of a leaf. */
  private final int[] second;

  private final double[] bodies;
  private final byte[] kind;
  private final int[] rock;
  private final int[] solids;
  private final boolean meshes;

  private Hierarchy(HierarchyBuilder built) {
    nodes = built.nodes();
    bounds = Arrays.copyOf(built.bounds, 6 * nodes);
    after = Arrays.copyOf(built.after, nodes);
    first = Arrays.copyOf(built.first, nodes);
    second = Arrays.copyOf(built.second, nodes);
    int count = built.order.length;
    bodies = new double[NUMBERS * count];
    kind = new byte[count];
    rock = new int[count];
    int[] found = new int[count];
    int size = 0;
    for (int i = 0; i < count; i++) {
      int from = built.order[i];
      System.arraycopy(built.bodies, NUMBERS * from, bodies, NUMBERS * i, NUMBERS);
      kind[i] = built.kind[from];
      rock[i] = built.rock[from];
      if (kind[i] != TRIANGLE) {
        found[size++] = i;
      }
    }
    solids = Arrays.copyOf(found, size);
    meshes = size < count;
  }

  static Hierarchy of(List<Rock> rocks) {
    return new Hierarchy(
        new HierarchyBuilder(rocks.stream().map(Rock::shape).toArray(Shape[]::new)));
  }

  static Hierarchy of(Mesh mesh) {
    return new Hierarchy(new HierarchyBuilder(mesh));
  }

  boolean nearest(
      double ox, double oy, double oz, double dx, double dy, double dz, double limit, RockHit hit) {
    hit.rock = -1;
    hit.distance = MISS;
    if (nodes == 0) {
      return false;
    }
    double ix = 1 / dx;
    double iy = 1 / dy;
    double iz = 1 / dz;
    View view = View.along(dx, dy, dz);
    int kx = view.x;
    int ky = view.y;
    int kz = view.z;
    double px = View.pick(kx, ox, oy, oz);
    double py = View.pick(ky, ox, oy, oz);
    double pz = View.pick(kz, ox, oy, oz);
    double stretch = 1 / View.pick(kz, dx, dy, dz);
    double shearX = View.pick(kx, dx, dy, dz) * stretch;
    double shearY = View.pick(ky, dx, dy, dz) * stretch;
    double best = limit;
    int found = -1;
    int[] waiting = hit.waiting;
    int waits = 0;
    int node = 0;
    while (true) {
      if (enters(node, ox, oy, oz, ix, iy, iz, best)) {
        int from = first[node];
        if (from < 0) {
          int axis = -1 - from;
          boolean backward = (axis == 0 ? dx : axis == 1 ? dy : dz) < 0;
          waiting[waits++] = backward ? node + 1 : second[node];
          node = backward ? second[node] : node + 1;
          continue;
        }
        for (int i = from; i < from + second[node]; i++) {
          double distance =
              switch (kind[i]) {
                case TRIANGLE ->
                    triangle(NUMBERS * i, kx, ky, kz, px, py, pz, shearX, shearY, stretch);
                case BOX -> box(NUMBERS * i, ox, oy, oz, dx, dy, dz);
                default -> ellipsoid(NUMBERS * i, ox, oy, oz, dx, dy, dz);
              };
          if (distance < best) {
            best = distance;
            found = i;
          }
        }
      }
      if (waits == 0) {
        break;
      }
      node = waiting[--waits];
    }
    if (found < 0) {
      return false;
    }
    hit.distance = best;
    hit.rock = rock[found];
    normal(found, ox + best * dx, oy + best * dy, oz + best * dz, dx, dy, dz, hit);
    return true;
  }

  boolean blocks(double ox, double oy, double oz, double dx, double dy, double dz, double limit) {
    if (nodes == 0) {
      return false;
    }
    double ix = 1 / dx;
    double iy = 1 / dy;
    double iz = 1 / dz;
    if (!enters(0, ox, oy, oz, ix, iy, iz, limit)) {
      return false;
    }
    View view = View.along(dx, dy, dz);
    int kx = view.x;
    int ky = view.y;
    int kz = view.z;
    double px = View.pick(kx, ox, oy, oz);
    double py = View.pick(ky, ox, oy, oz);
    double pz = View.pick(kz, ox, oy, oz);
    double stretch = 1 / View.pick(kz, dx, dy, dz);
    double shearX = View.pick(kx, dx, dy, dz) * stretch;
    double shearY = View.pick(ky, dx, dy, dz) * stretch;
    int node = 0;
    while (node < nodes) {
      if (!enters(node, ox, oy, oz, ix, iy, iz, limit)) {
        node = after[node];
        continue;
      }
      int from = first[node];
      if (from >= 0) {
        for (int i = from; i < from + second[node]; i++) {
          double distance =
              switch (kind[i]) {
                case TRIANGLE ->
                    triangle(NUMBERS * i, kx, ky, kz, px, py, pz, shearX, shearY, stretch);
                case BOX -> box(NUMBERS * i, ox, oy, oz, dx, dy, dz);
                default -> ellipsoid(NUMBERS * i, ox, oy, oz, dx, dy, dz);
              };
          if (distance < limit) {
            return true;
          }
        }
      }
      node++;
    }
    return false;
  }

  boolean inside(double x, double y, double z) {
    for (int i : solids) {
      if (kind[i] == BOX
          ? insideBox(NUMBERS * i, x, y, z)
          : insideEllipsoid(NUMBERS * i, x, y, z)) {
        return true;
      }
    }
    if (!meshes || !enters(0, x, y, z, MISS, MISS, MISS, 1)) {
      return false;
    }
    int turns = 0;
    for (double[] probe : PROBES) {
      turns = turns(x, y, z, probe[0], probe[1], probe[2]);
      if (turns != UNSURE) {
        break;
      }
    }
    return turns != 0;
  }

  /**
   * How often the triangles enclose a place: surfaces that a ray leaves less those it enters.
   *
   * @return {@link #UNSURE} if the ray passes too near an edge
   */
  private int turns(double ox, double oy, double oz, double dx, double dy, double dz) {
    double ix = 1 / dx;
    double iy = 1 / dy;
    double iz = 1 / dz;
    int turns = 0;
    int node = 0;
    while (node < nodes) {
      if (!enters(node, ox, oy, oz, ix, iy, iz, MISS)) {
        node = after[node];
        continue;
      }
      int from = first[node];
      if (from >= 0) {
        for (int i = from; i < from + second[node]; i++) {
          if (kind[i] == TRIANGLE) {
            int crossing = crossing(NUMBERS * i, ox, oy, oz, dx, dy, dz);
            if (crossing == UNSURE) {
              return UNSURE;
            }
            turns += crossing;
          }
        }
      }
      node++;
    }
    return turns;
  }

  /** Sides of a mesh's triangles that pass through others of them, without a common corner. */
  int selfCrossings(Mesh mesh) {
    int crossings = 0;
    double[] a = new double[3];
    double[] d = new double[3];
    for (int t = 0; t < mesh.triangles(); t++) {
      for (int corner = 0; corner < 3; corner++) {
        for (int axis = 0; axis < 3; axis++) {
          a[axis] = mesh.coordinate(t, corner, axis);
          d[axis] = mesh.coordinate(t, (corner + 1) % 3, axis) - a[axis];
        }
        // Each edge of a closed mesh is run through both ways: one is enough.
        boolean ascends = d[0] > 0 || (d[0] == 0 && (d[1] > 0 || (d[1] == 0 && d[2] > 0)));
        if (ascends && crossesApart(a, d)) {
          crossings++;
        }
      }
    }
    return crossings;
  }

  private boolean crossesApart(double[] a, double[] d) {
    double[] b = {a[0] + d[0], a[1] + d[1], a[2] + d[2]};
    int node = 0;
    while (node < nodes) {
      if (!enters(node, a[0], a[1], a[2], 1 / d[0], 1 / d[1], 1 / d[2], 1)) {
        node = after[node];
        continue;
      }
      int from = first[node];
      if (from >= 0) {
        for (int i = from; i < from + second[node]; i++) {
          int at = NUMBERS * i;
          if (!isCorner(at, a)
              && !isCorner(at, b)
              && Math.abs(crossing(at, a[0], a[1], a[2], d[0], d[1], d[2])) == 1
              && Math.abs(crossing(at, b[0], b[1], b[2], -d[0], -d[1], -d[2])) == 1) {
            return true;
          }
        }
      }
      node++;
    }
    return false;
  }

  private boolean isCorner(int at, double[] point) {
    for (int corner = at; corner < at + NUMBERS; corner += 3) {
      if (Math.abs(bodies[corner] - point[0]) <= MARGIN
          && Math.abs(bodies[corner + 1] - point[1]) <= MARGIN
          && Math.abs(bodies[corner + 2] - point[2]) <= MARGIN) {
        return true;
      }
    }
    return false;
  }

  /** 1 where a ray leaves through a triangle, −1 where it enters, 0 where it misses. */
  private int crossing(int at, double ox, double oy, double oz, double dx, double dy, double dz) {
    double ax = bodies[at] - ox;
    double ay = bodies[at + 1] - oy;
    double az = bodies[at + 2] - oz;
    double bx = bodies[at + 3] - ox;
    double by = bodies[at + 4] - oy;
    double bz = bodies[at + 5] - oz;
    double cx = bodies[at + 6] - ox;
    double cy = bodies[at + 7] - oy;
    double cz = bodies[at + 8] - oz;
    // Volumes spanned by the ray and each edge: positive where the edge turns outward about it.
    double u = dx * (by * cz - bz * cy) + dy * (bz * cx - bx * cz) + dz * (bx * cy - by * cx);
    double v = dx * (cy * az - cz * ay) + dy * (cz * ax - cx * az) + dz * (cx * ay - cy * ax);
    double w = dx * (ay * bz - az * by) + dy * (az * bx - ax * bz) + dz * (ax * by - ay * bx);
    double near = NEAR_EDGE * (Math.abs(u) + Math.abs(v) + Math.abs(w));
    boolean above = u > near && v > near && w > near;
    boolean below = u < -near && v < -near && w < -near;
    double spanned = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    double determinant = u + v + w;
    if (above || below) {
      return spanned / determinant > 0 ? above ? 1 : -1 : 0;
    }
    boolean missed = (u < -near || v < -near || w < -near) && (u > near || v > near || w > near);
    boolean behind = spanned / determinant < 0;
    return missed || behind ? 0 : UNSURE;
  }

  /**
   * Whether a ray enters a node's bounds before a limit.
   *
   * <p>Where the ray runs along a face its distance to it is 0 times infinity: the comparisons let
   * that NaN pass as no bound, so that nothing is missed.
   */
  private boolean enters(
      int node, double ox, double oy, double oz, double ix, double iy, double iz, double limit) {
    int at = 6 * node;
    double near = 0;
    double far = limit;
    double low = (bounds[at] - ox) * ix;
    double high = (bounds[at + 3] - ox) * ix;
    if (ix < 0) {
      double swap = low;
      low = high;
      high = swap;
    }
    if (low > near) {
      near = low;
    }
    if (high < far) {
      far = high;
    }
    low = (bounds[at + 1] - oy) * iy;
    high = (bounds[at + 4] - oy) * iy;
    if (iy < 0) {
      double swap = low;
      low = high;
      high = swap;
    }
    if (low > near) {
      near = low;
    }
    if (high < far) {
      far = high;
    }
    low = (bounds[at + 2] - oz) * iz;
    high = (bounds[at + 5] - oz) * iz;
    if (iz < 0) {
      double swap = low;
      low = high;
      high = swap;
    }
    if (low > near) {
      near = low;
    }
    if (high < far) {
      far = high;
    }
    return near <= far;
  }

  /**
   * Distance to a triangle along a ray, infinite where it is missed.
   *
   * <p>Woop, Benthin, Wald 2013, Watertight Ray/Triangle Intersection, JCGT 2(1), in double
   * precision: seen along the ray, the edge functions of two triangles that share an edge are
   * exactly opposite, rounding never turns their sign, and edges count as inside. So no ray slips
   * between neighbours. Axes k are those that are seen as x and y, and the one along which the ray
   * mostly runs; p is the origin in these.
   */
  private double triangle(
      int at,
      int kx,
      int ky,
      int kz,
      double px,
      double py,
      double pz,
      double shearX,
      double shearY,
      double stretch) {
    double az = bodies[at + kz] - pz;
    double bz = bodies[at + 3 + kz] - pz;
    double cz = bodies[at + 6 + kz] - pz;
    double ax = bodies[at + kx] - px - shearX * az;
    double ay = bodies[at + ky] - py - shearY * az;
    double bx = bodies[at + 3 + kx] - px - shearX * bz;
    double by = bodies[at + 3 + ky] - py - shearY * bz;
    double cx = bodies[at + 6 + kx] - px - shearX * cz;
    double cy = bodies[at + 6 + ky] - py - shearY * cz;
    double u = cx * by - cy * bx;
    double v = ax * cy - ay * cx;
    double w = bx * ay - by * ax;
    if ((u < 0 || v < 0 || w < 0) && (u > 0 || v > 0 || w > 0)) {
      return MISS;
    }
    // A triangle seen edge on has no such distance; the comparison sorts its NaN out.
    double distance = stretch * (u * az + v * bz + w * cz) / (u + v + w);
    return distance > 0 ? distance : MISS;
  }

  /** Distance to a box along a ray: where it enters, or leaves if it starts within. */
  private double box(int at, double ox, double oy, double oz, double dx, double dy, double dz) {
    double cosine = bodies[at + 3];
    double sine = bodies[at + 4];
    double rx = ox - bodies[at];
    double ry = oy - bodies[at + 1];
    double near = Double.NEGATIVE_INFINITY;
    double far = MISS;
    for (int axis = 0; axis < 3; axis++) {
      double p;
      double d;
      if (axis == 2) {
        p = oz - bodies[at + 2];
        d = dz;
      } else if (axis == 0) {
        p = cosine * rx + sine * ry;
        d = cosine * dx + sine * dy;
      } else {
        p = cosine * ry - sine * rx;
        d = cosine * dy - sine * dx;
      }
      double half = bodies[at + 5 + axis];
      double low = (-half - p) / d;
      double high = (half - p) / d;
      if (low > high) {
        double swap = low;
        low = high;
        high = swap;
      }
      if (low > near) {
        near = low;
      }
      if (high < far) {
        far = high;
      }
    }
    if (!(near <= far)) {
      return MISS;
    }
    double distance = near > 0 ? near : far;
    return distance > 0 ? distance : MISS;
  }

  /**
   * Distance to an ellipsoid along a ray: where it enters, or leaves if it starts within.
   *
   * <p>Scaled to the unit sphere; the discriminant is taken from the point nearest to the centre,
   * and the nearer root from the product of both (Haines, Günther, Akenine-Möller 2019, Precision
   * Improvements for Ray/Sphere Intersection, Ray Tracing Gems ch. 7).
   */
  private double ellipsoid(
      int at, double ox, double oy, double oz, double dx, double dy, double dz) {
    double cosine = bodies[at + 3];
    double sine = bodies[at + 4];
    double rx = ox - bodies[at];
    double ry = oy - bodies[at + 1];
    double px = (cosine * rx + sine * ry) / bodies[at + 5];
    double py = (cosine * ry - sine * rx) / bodies[at + 6];
    double pz = (oz - bodies[at + 2]) / bodies[at + 7];
    double ux = (cosine * dx + sine * dy) / bodies[at + 5];
    double uy = (cosine * dy - sine * dx) / bodies[at + 6];
    double uz = dz / bodies[at + 7];
    double a = ux * ux + uy * uy + uz * uz;
    double b = -(px * ux + py * uy + pz * uz);
    double share = b / a;
    double lx = px + share * ux;
    double ly = py + share * uy;
    double lz = pz + share * uz;
    double discriminant = 1 - (lx * lx + ly * ly + lz * lz);
    if (!(discriminant >= 0)) {
      return MISS;
    }
    double c = px * px + py * py + pz * pz - 1;
    double q = b + Math.copySign(Math.sqrt(a * discriminant), b);
    double one = c / q;
    double other = q / a;
    double near = one < other ? one : other;
    double far = one < other ? other : one;
    double distance = near > 0 ? near : far;
    return distance > 0 ? distance : MISS;
  }

  private boolean insideBox(int at, double x, double y, double z) {
    double rx = x - bodies[at];
    double ry = y - bodies[at + 1];
    return Math.abs(bodies[at + 3] * rx + bodies[at + 4] * ry) < bodies[at + 5]
        && Math.abs(bodies[at + 3] * ry - bodies[at + 4] * rx) < bodies[at + 6]
        && Math.abs(z - bodies[at + 2]) < bodies[at + 7];
  }

  private boolean insideEllipsoid(int at, double x, double y, double z) {
    double rx = x - bodies[at];
    double ry = y - bodies[at + 1];
    double u = (bodies[at + 3] * rx + bodies[at + 4] * ry) / bodies[at + 5];
    double v = (bodies[at + 3] * ry - bodies[at + 4] * rx) / bodies[at + 6];
    double w = (z - bodies[at + 2]) / bodies[at + 7];
    return u * u + v * v + w * w < 1;
  }

  private void normal(
      int body, double x, double y, double z, double dx, double dy, double dz, RockHit hit) {
    int at = NUMBERS * body;
    double nx;
    double ny;
    double nz;
    if (kind[body] == TRIANGLE) {
      double ux = bodies[at + 3] - bodies[at];
      double uy = bodies[at + 4] - bodies[at + 1];
      double uz = bodies[at + 5] - bodies[at + 2];
      double vx = bodies[at + 6] - bodies[at];
      double vy = bodies[at + 7] - bodies[at + 1];
      double vz = bodies[at + 8] - bodies[at + 2];
      nx = uy * vz - uz * vy;
      ny = uz * vx - ux * vz;
      nz = ux * vy - uy * vx;
    } else {
      double cosine = bodies[at + 3];
      double sine = bodies[at + 4];
      double u = (cosine * (x - bodies[at]) + sine * (y - bodies[at + 1])) / bodies[at + 5];
      double v = (cosine * (y - bodies[at + 1]) - sine * (x - bodies[at])) / bodies[at + 6];
      double w = (z - bodies[at + 2]) / bodies[at + 7];
      if (kind[body] == BOX) {
        // The face is the one that the point is farthest out toward.
        boolean alongU = Math.abs(u) >= Math.abs(v) && Math.abs(u) >= Math.abs(w);
        boolean alongV = !alongU && Math.abs(v) >= Math.abs(w);
        u = alongU ? 1 : 0;
        v = alongV ? 1 : 0;
        w = alongU || alongV ? 0 : 1;
      } else {
        u /= bodies[at + 5];
        v /= bodies[at + 6];
        w /= bodies[at + 7];
      }
      nx = cosine * u - sine * v;
      ny = sine * u + cosine * v;
      nz = w;
    }
    double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    if (!(length > 0)) {
      // A triangle without area: any normal against the ray will do.
      nx = -dx;
      ny = -dy;
      nz = -dz;
      length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    }
    double turn = nx * dx + ny * dy + nz * dz > 0 ? -1 / length : 1 / length;
    hit.normalX = turn * nx;
    hit.normalY = turn * ny;
    hit.normalZ = turn * nz;
  }
}
