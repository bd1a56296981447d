package parfield.validation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import parfield.photon.Effort;
import parfield.photon.PlaneParallel;
import parfield.photon.PlaneParallelLight;
import parfield.photon.Watch;

/**
 * A published case: what is computed, under the names of its published values.
 *
 * @param name of the case
 * @param packets that full precision takes; 0 where nothing is left to chance
 * @param counting does it
 */
record PublishedCase(String name, long packets, Counting counting) {
  /** Counts or computes the figures of a case. */
  @FunctionalInterface
  interface Counting {
    /**
     * Does it.
     *
     * @param effort seed and number of packets
     * @param watch told of the progress; may stop it
     * @return the figures by quantity, maybe more than were published
     */
    Map<String, Figure> figures(Effort effort, Watch watch);
  }

  PublishedCase {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(counting, "counting");
    if (!(packets >= 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "%s: packets must be 0 or more; got %d", name, packets));
    }
  }

  /** A case without chance. */
  static PublishedCase computed(String name, Counting counting) {
    return new PublishedCase(name, 0, counting);
  }

  /** A case of even layers. */
  static PublishedCase layered(
      String name, long packets, PlaneParallel medium, List<Double> depths) {
    return new PublishedCase(
        name,
        packets,
        (effort, watch) -> figures(medium.trace(depths, effort, watch), medium, depths));
  }

  private static Map<String, Figure> figures(
      PlaneParallelLight light, PlaneParallel medium, List<Double> depths) {
    Map<String, Figure> figures = new LinkedHashMap<>();
    Figure returned = figure(light.returned());
    Figure escaped = figure(light.escaped());
    figures.put("R", returned.plus(escaped));
    figures.put("R_d", escaped);
    figures.put("T", figure(light.transmitted()));
    Figure absorbed = Figure.computed(0);
    for (int i = 0; i < medium.layers().size(); i++) {
      Figure here = figure(light.absorbed(i));
      figures.put("A of layer " + (i + 1), here);
      absorbed = absorbed.plus(here);
    }
    figures.put("A", absorbed);
    for (int i = 0; i < depths.size(); i++) {
      String at = " at depth " + plain(depths.get(i));
      figures.put("E_d" + at, figure(light.downwelling(i)));
      figures.put("E_u" + at, figure(light.upwelling(i)));
      figures.put("E_0d" + at, figure(light.downwellingScalar(i)));
      figures.put("E_0u" + at, figure(light.upwellingScalar(i)));
      figures.put("L_u" + at, figure(light.radianceUpward(i)));
      figures.put("L from above" + at, figure(light.radianceFromAbove(i)));
    }
    return figures;
  }

  private static String plain(double depth) {
    return depth == Math.rint(depth) ? String.valueOf((long) depth) : String.valueOf(depth);
  }

  private static Figure figure(PlaneParallelLight.Count count) {
    return new Figure(count.value(), count.error());
  }

  /**
   * Computes the case and holds it against its published values.
   *
   * @param precision greatest standard error relative to a value, where it is {@link
   *     Validation#FULL} at full precision
   * @param seed of all chance
   * @param threads that work at once
   * @param watch told of the progress; may stop it
   */
  List<Finding> findings(double precision, long seed, int threads, Watch watch) {
    double coarseness = precision / Validation.FULL;
    double wanted = Math.min(1e15, packets / (coarseness * coarseness));
    Effort effort =
        Effort.packets((long) Math.max(Validation.FEWEST, wanted), seed + name.hashCode())
            .withThreads(threads);
    Map<String, Figure> figures = counting.figures(effort, watch);
    return PublishedValues.of(name).stream()
        .map(value -> Finding.of(value, figures.get(value.quantity()), coarseness))
        .toList();
  }
}
