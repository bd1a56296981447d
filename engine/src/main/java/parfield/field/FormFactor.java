package parfield.field;

/**
 * How much of a diffuse polygon's radiosity reaches a small receiver: exact, without absorption.
 *
 * <p>Lambert's contour formula for a uniform diffuse polygon seen from a differential element
 * (Lambert 1760; Baum, Rushmeier and Winget 1989, Computer Graphics 23(3):325, eq. 8), the part
 * below the receiver's own horizon cut off first.
 */
public final class FormFactor {
  /** Height above the horizon below which a polygon counts as edge-on [m]. */
  private static final double EDGE_ON = 1e-12;

  private FormFactor() {}

  /**
   * Form factor from a differential receiver to a polygon.
   *
   * @param receiver position [m], {x, y, z}
   * @param normal unit normal of the receiver
   * @param polygon corners [m] in order around it, [corner][x, y, z]; either sense
   * @return E / M, 0 to 1: irradiance at the receiver over the polygon's radiosity
   */
  public static double toPolygon(double[] receiver, double[] normal, double[][] polygon) {
    double[][] corners = aboveHorizon(receiver, normal, polygon);
    if (corners.length < 3) {
      return 0;
    }
    double sum = 0;
    for (int i = 0; i < corners.length; i++) {
      double[] a = corners[i];
      double[] b = corners[(i + 1) % corners.length];
      double[] cross = cross(a, b);
      double crossLength = Math.sqrt(dot(cross, cross));
      if (crossLength < 1e-15) {
        continue;
      }
      double angle = Math.atan2(crossLength, dot(a, b));
      sum += angle * dot(cross, normal) / crossLength;
    }
    return Math.abs(sum) / (2 * Math.PI);
  }

  /** Corners relative to the receiver, the part behind its plane cut off (Sutherland–Hodgman). */
  private static double[][] aboveHorizon(double[] receiver, double[] normal, double[][] polygon) {
    double[][] kept = new double[polygon.length + 2][];
    int count = 0;
    double highest = 0;
    for (int i = 0; i < polygon.length; i++) {
      double[] a = subtract(polygon[i], receiver);
      double[] b = subtract(polygon[(i + 1) % polygon.length], receiver);
      double heightA = dot(a, normal);
      double heightB = dot(b, normal);
      highest = Math.max(highest, heightA);
      if (heightA >= 0) {
        kept[count++] = a;
      }
      if ((heightA > 0 && heightB < 0) || (heightA < 0 && heightB > 0)) {
        double t = heightA / (heightA - heightB);
        kept[count++] =
            new double[] {
              a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])
            };
      }
    }
    // A polygon in the receiver's own plane is seen edge-on: nothing arrives.
    return java.util.Arrays.copyOf(kept, highest <= EDGE_ON ? 0 : count);
  }

  private static double[] subtract(double[] a, double[] b) {
    return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }
}
