package parfield.aquascape;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;

/** Which way the triangles of a mesh face: neighbours alike, every part outward. */
final class Facing {
  private Facing() {}

  private record Corners(int low, int middle, int high) {}

  /** The triangles, each set of three corners only once. */
  static int[] once(int[] corners) {
    Set<Corners> seen = new HashSet<>(corners.length);
    int[] kept = new int[corners.length];
    int n = 0;
    for (int t = 0; t < corners.length; t += 3) {
      int[] three = {corners[t], corners[t + 1], corners[t + 2]};
      Arrays.sort(three);
      if (seen.add(new Corners(three[0], three[1], three[2]))) {
        System.arraycopy(corners, t, kept, n, 3);
        n += 3;
      }
    }
    return Arrays.copyOf(kept, n);
  }

  /**
   * Turns triangles in place, so that two that share an edge with no third face alike; a part keeps
   * the way that most of it faced.
   *
   * @return how many were turned
   */
  static int alike(int[] corners) {
    EdgeTable edges = new EdgeTable(corners.clone());
    int count = corners.length / 3;
    boolean[] turn = new boolean[count];
    boolean[] seen = new boolean[count];
    int[] part = new int[count];
    int turned = 0;
    for (int start = 0; start < count; start++) {
      if (seen[start]) {
        continue;
      }
      int size = 0;
      int against = 0;
      part[size++] = start;
      seen[start] = true;
      for (int at = 0; at < size; at++) {
        int t = part[at];
        against += turn[t] ? 1 : 0;
        for (int side = 3 * t; side < 3 * t + 3; side++) {
          int partner = edges.partner(side);
          if (partner >= 0 && !seen[partner / 3]) {
            boolean sameWay = edges.from(side) == edges.from(partner);
            turn[partner / 3] = turn[t] ^ sameWay;
            seen[partner / 3] = true;
            part[size++] = partner / 3;
          }
        }
      }
      boolean other = 2 * against > size;
      for (int at = 0; at < size; at++) {
        if (turn[part[at]] ^ other) {
          swap(corners, part[at]);
          turned++;
        }
      }
    }
    return turned;
  }

  /**
   * Turns every part whose volume counts negative, parts being what hangs together by edges.
   *
   * @return how many triangles were turned
   */
  static int outward(double[] vertices, int[] corners) {
    EdgeTable edges = new EdgeTable(corners);
    int count = corners.length / 3;
    boolean[] seen = new boolean[count];
    int[] part = new int[count];
    int turned = 0;
    for (int start = 0; start < count; start++) {
      if (seen[start]) {
        continue;
      }
      int size = 0;
      part[size++] = start;
      seen[start] = true;
      for (int at = 0; at < size; at++) {
        for (int side = 3 * part[at]; side < 3 * part[at] + 3; side++) {
          for (int s = edges.firstAlong(side); s >= 0; s = edges.nextAlong(s)) {
            if (!seen[s / 3]) {
              seen[s / 3] = true;
              part[size++] = s / 3;
            }
          }
        }
      }
      int[] own = new int[3 * size];
      for (int at = 0; at < size; at++) {
        System.arraycopy(corners, 3 * part[at], own, 3 * at, 3);
      }
      if (Mesh.volume(vertices, own) < 0) {
        for (int at = 0; at < size; at++) {
          // The table is asked about edges of this part no more.
          swap(corners, part[at]);
        }
        turned += size;
      }
    }
    return turned;
  }

  private static void swap(int[] corners, int triangle) {
    int kept = corners[3 * triangle + 1];
    corners[3 * triangle + 1] = corners[3 * triangle + 2];
    corners[3 * triangle + 2] = kept;
  }
}
