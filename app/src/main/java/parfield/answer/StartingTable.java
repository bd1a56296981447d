package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import parfield.plan.BandCoverage;
import parfield.plan.Figures;
import parfield.plan.Option;
import parfield.plan.StartingPoint;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/** Where to begin over tanks of a list, as a table and the sentences that belong to it. */
public final class StartingTable {
  private StartingTable() {}

  /**
   * A row for each tank.
   *
   * @param points at least one
   */
  public static Table of(List<StartingPoint> points, LengthUnit unit) {
    List<BandCoverage> bands = points.get(0).option().figures().get(0).coverage();
    List<String> header = new ArrayList<>();
    header.add("tank");
    header.add("inside, water depth (" + unit.symbol() + ")");
    header.add("fixtures");
    header.add("height (" + unit.symbol() + ")");
    header.add("dials");
    header.add("all met");
    header.add("mean (" + Numbers.PPFD + ")");
    bands.forEach(band -> header.add(band.band().name() + " (% of the water)"));
    Table table = new Table("lllrlrr" + "r".repeat(bands.size()), header);
    for (StartingPoint point : points) {
      Option option = point.option();
      Figures volume = option.figures().get(0);
      List<String> row = new ArrayList<>();
      row.add(point.tank().name());
      row.add(size(point.tank().tank(), unit));
      row.add(option.arrangement().inWords(unit));
      row.add(Numbers.length(option.height(), unit));
      row.add(option.dials());
      row.add(option.probability().inWords());
      row.add(Numbers.ppfd(volume.mean()));
      volume.coverage().forEach(band -> row.add(Numbers.percent(band.share())));
      table.row(row);
    }
    return table;
  }

  private static String size(Tank tank, LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "%s × %s × %s",
        Numbers.length(tank.length(), unit),
        Numbers.length(tank.width(), unit),
        Numbers.length(tank.depth(), unit));
  }

  /** What the rows rest on, a sentence each. */
  public static List<String> about(List<StartingPoint> points) {
    return Stream.concat(
            Stream.of(
                "Found by a coarse search for the same demands; nothing was read in these tanks."
                    + " Intervals hold what is not known of their panes, water and bottom, and of"
                    + " another specimen of the fixture.",
                "Begin below these dials, read three places once it hangs, and let the light model"
                    + " be corrected by them before corals are brought up to them."),
            points.stream().flatMap(point -> point.assumptions().stream()).distinct())
        .toList();
  }
}
