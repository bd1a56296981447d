package parfield.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parfield.field.Places;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * The figures of a survey's readings, all together and by depth.
 *
 * <p>They tell of the readings, not of the tank: readings at the centres of cells overstate the
 * minimum and misjudge coverage. For area and volume see {@link PlaneStatistics} and {@link
 * VolumeStatistics}, which take a solved field.
 *
 * @param all figures of all readings
 * @param coverageOfReadings share of all readings in each band, in the order asked for
 * @param depths the same for the readings of each depth, the shallowest first
 */
public record SurveyStatistics(
    Statistics all, List<Coverage> coverageOfReadings, List<AtDepth> depths) {
  /** Depths that differ by less belong to one plane [m]. */
  private static final double SAME_DEPTH = 1e-4;

  public SurveyStatistics {
    coverageOfReadings = List.copyOf(coverageOfReadings);
    depths = List.copyOf(depths);
  }

  /**
   * The figures of the readings of one depth.
   *
   * @param depth of the plane [m]
   * @param statistics figures of its readings
   * @param coverageOfReadings share of its readings in each band
   */
  public record AtDepth(double depth, Statistics statistics, List<Coverage> coverageOfReadings) {
    public AtDepth {
      coverageOfReadings = List.copyOf(coverageOfReadings);
    }
  }

  /**
   * The figures of a survey, after the meter's corrections.
   *
   * @param survey the readings
   * @param bands ranges to take the coverage of, may be empty
   * @param regions parts of the tank to take means of, may be empty
   */
  public static SurveyStatistics of(Survey survey, List<Band> bands, List<Region> regions) {
    Tank tank = survey.rig().tank();
    Places places = survey.places();
    double[] ppfd = survey.ppfd();
    List<AtDepth> depths = new ArrayList<>();
    planes(places)
        .forEach(
            (depth, indices) -> {
              List<Place> there = indices.stream().map(places::get).toList();
              double[] values = indices.stream().mapToDouble(i -> ppfd[i]).toArray();
              depths.add(
                  new AtDepth(
                      depth,
                      Statistics.of(tank, Places.of(there), values, regions),
                      Coverage.ofEach(values, bands)));
            });
    return new SurveyStatistics(
        Statistics.of(tank, places, ppfd, regions), Coverage.ofEach(ppfd, bands), depths);
  }

  /** Indices of the places by depth plane, the shallowest first. */
  static Map<Double, List<Integer>> planes(Places places) {
    TreeMap<Double, List<Integer>> planes = new TreeMap<>();
    for (int i = 0; i < places.size(); i++) {
      double depth = places.depth(i);
      Double known = planes.ceilingKey(depth - SAME_DEPTH);
      double key = known != null && known <= depth + SAME_DEPTH ? known : depth;
      planes.computeIfAbsent(key, k -> new ArrayList<>()).add(i);
    }
    return planes;
  }
}
