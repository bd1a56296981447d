package parfield.aquascape;

/**
 * Which axes are seen as x and y by one who looks along a ray, and which one the ray mostly runs
 * along; they turn the same way as the tank's own axes, or the other way if it runs backward.
 */
enum View {
  ALONG_X(1, 2, 0),
  ALONG_Y(2, 0, 1),
  ALONG_Z(0, 1, 2);

  final int x;
  final int y;
  final int z;

  View(int x, int y, int z) {
    this.x = x;
    this.y = y;
    this.z = z;
  }

  static View along(double dx, double dy, double dz) {
    double x = Math.abs(dx);
    double y = Math.abs(dy);
    double z = Math.abs(dz);
    if (x > y) {
      return x > z ? ALONG_X : ALONG_Z;
    }
    return y > z ? ALONG_Y : ALONG_Z;
  }

  static double pick(int axis, double x, double y, double z) {
    return axis == 0 ? x : axis == 1 ? y : z;
  }
}
