package parfield.survey;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import parfield.tank.Place;

/** Rows and columns of readings that could have been written at each other's places. */
final class GridLines {
  /** Readings of one line differ by less across it [m]. */
  private static final double SAME_LINE = 1e-3;

  /** Fewer readings are no line. */
  private static final int LEAST_READINGS = 3;

  private GridLines() {}

  /**
   * Two lines of one depth with readings at the same stations.
   *
   * @param first indices of the readings of one, in order along it
   * @param second indices of the readings of the other, in the same order
   */
  record Pair(List<Integer> first, List<Integer> second) {}

  /**
   * Pairs of rows (along x) that could be exchanged.
   *
   * @param places of the readings, by index
   * @param indices of the readings to look at
   * @param eligible which rows, as indices in order along x, to pair
   */
  static List<Pair> rows(
      List<Place> places, Collection<Integer> indices, Predicate<List<Integer>> eligible) {
    return pairs(places, indices, eligible, Place::x, Place::y);
  }

  /** Pairs of columns (along y) that could be exchanged; parameters as for rows. */
  static List<Pair> columns(
      List<Place> places, Collection<Integer> indices, Predicate<List<Integer>> eligible) {
    return pairs(places, indices, eligible, Place::y, Place::x);
  }

  private static List<Pair> pairs(
      List<Place> places,
      Collection<Integer> indices,
      Predicate<List<Integer>> eligible,
      ToDoubleFunction<Place> along,
      ToDoubleFunction<Place> across) {
    Map<List<Long>, List<Integer>> lines = new LinkedHashMap<>();
    for (int i : indices) {
      Place place = places.get(i);
      lines
          .computeIfAbsent(
              List.of(steps(place.depth()), steps(across.applyAsDouble(place))),
              line -> new ArrayList<>())
          .add(i);
    }
    // Lines that share depth and stations can be exchanged with each other.
    Map<List<Long>, List<List<Integer>>> alike = new LinkedHashMap<>();
    for (List<Integer> line : lines.values()) {
      line.sort(Comparator.comparingDouble(i -> along.applyAsDouble(places.get(i))));
      if (line.size() >= LEAST_READINGS && eligible.test(line)) {
        List<Long> stations = new ArrayList<>();
        stations.add(steps(places.get(line.get(0)).depth()));
        line.forEach(i -> stations.add(steps(along.applyAsDouble(places.get(i)))));
        alike.computeIfAbsent(stations, key -> new ArrayList<>()).add(line);
      }
    }
    List<Pair> pairs = new ArrayList<>();
    for (List<List<Integer>> group : alike.values()) {
      for (int a = 0; a < group.size(); a++) {
        for (int b = a + 1; b < group.size(); b++) {
          pairs.add(new Pair(List.copyOf(group.get(a)), List.copyOf(group.get(b))));
        }
      }
    }
    return pairs;
  }

  private static long steps(double metres) {
    return Math.round(metres / SAME_LINE);
  }
}
