package parfield.plot;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.stream.IntStream;

/**
 * A line through points.
 *
 * @param x of its points
 * @param y of its points
 */
record Line(double[] x, double[] y) {

  int size() {
    return x.length;
  }

  /** Whether its last point is its first. */
  boolean closed() {
    return size() > 2 && x[0] == x[size() - 1] && y[0] == y[size() - 1];
  }

  /** Distance along the line to each of its points. */
  double[] distances() {
    double[] distances = new double[size()];
    for (int i = 1; i < size(); i++) {
      distances[i] = distances[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
    }
    return distances;
  }

  /**
   * This line without the points that lie within a distance of the line through those kept (Douglas
   * and Peucker 1973, Cartographica 10:112).
   */
  Line within(double distance) {
    boolean[] kept = new boolean[size()];
    kept[0] = true;
    kept[size() - 1] = true;
    Deque<int[]> open = new ArrayDeque<>();
    open.push(new int[] {0, size() - 1});
    while (!open.isEmpty()) {
      int[] piece = open.pop();
      int farthest = -1;
      double most = distance;
      for (int i = piece[0] + 1; i < piece[1]; i++) {
        double away = away(i, piece[0], piece[1]);
        if (away > most) {
          most = away;
          farthest = i;
        }
      }
      if (farthest > 0) {
        kept[farthest] = true;
        open.push(new int[] {piece[0], farthest});
        open.push(new int[] {farthest, piece[1]});
      }
    }
    int[] points = IntStream.range(0, size()).filter(i -> kept[i]).toArray();
    return new Line(
        IntStream.of(points).mapToDouble(i -> x[i]).toArray(),
        IntStream.of(points).mapToDouble(i -> y[i]).toArray());
  }

  /** Distance of point {@code i} from the line through two others. */
  private double away(int i, int from, int to) {
    double alongX = x[to] - x[from];
    double alongY = y[to] - y[from];
    double length = Math.hypot(alongX, alongY);
    double offX = x[i] - x[from];
    double offY = y[i] - y[from];
    return length > 0 ? Math.abs(alongX * offY - alongY * offX) / length : Math.hypot(offX, offY);
  }

  /** Path data through all points. */
  String straight() {
    StringBuilder path = new StringBuilder();
    int drawn = closed() ? size() - 1 : size();
    for (int i = 0; i < drawn; i++) {
      path.append(i == 0 ? 'M' : 'L').append(point(x[i], y[i]));
    }
    return closed() ? path.append('Z').toString() : path.toString();
  }

  /** Path data rounded at the points: it touches the middle of every piece. */
  String rounded() {
    int n = size();
    if (n < 3) {
      return straight();
    }
    Pen pen = new Pen();
    if (closed()) {
      pen.move(middleX(0), middleY(0));
      for (int i = 1; i < n; i++) {
        int after = i == n - 1 ? 0 : i;
        pen.curve(x[i], y[i], middleX(after), middleY(after));
      }
      return pen.path.append('z').toString();
    }
    pen.move(x[0], y[0]);
    for (int i = 1; i < n - 2; i++) {
      pen.curve(x[i], y[i], middleX(i), middleY(i));
    }
    pen.curve(x[n - 2], y[n - 2], x[n - 1], y[n - 1]);
    return pen.path.toString();
  }

  /** The middle of the piece that starts at point {@code i}. */
  private double middleX(int i) {
    return (x[i] + x[i + 1]) / 2;
  }

  private double middleY(int i) {
    return (y[i] + y[i + 1]) / 2;
  }

  private static String point(double px, double py) {
    return Svg.number(px) + " " + Svg.number(py);
  }

  /** Writes a path in steps from point to point, which takes half the text of coordinates. */
  private static final class Pen {
    private final StringBuilder path = new StringBuilder();

    /** Where the pen stands, in tenths of a pixel as written, so that rounding does not add up. */
    private long atX;

    private long atY;

    void move(double toX, double toY) {
      path.append('M').append(point(toX, toY));
      atX = Math.round(toX * 10);
      atY = Math.round(toY * 10);
    }

    void curve(double byX, double byY, double toX, double toY) {
      path.append('q');
      step(Math.round(byX * 10), Math.round(byY * 10));
      path.append(' ');
      step(Math.round(toX * 10), Math.round(toY * 10));
      atX = Math.round(toX * 10);
      atY = Math.round(toY * 10);
    }

    private void step(long toX, long toY) {
      String down = Svg.number((toY - atY) / 10.0);
      path.append(Svg.number((toX - atX) / 10.0));
      path.append(down.startsWith("-") ? "" : " ").append(down);
    }
  }
}
