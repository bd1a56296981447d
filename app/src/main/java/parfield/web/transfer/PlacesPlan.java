package parfield.web.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Place;

/**
 * The places of the readings in the tank, seen from above, the front pane below.
 *
 * @param height of the tank on the plan [px]; it is {@link #WIDTH} wide
 * @param spots the places, numbered in their order
 * @param fixtures corners of what hangs above them
 */
public record PlacesPlan(String height, List<Spot> spots, List<String> fixtures) {
  /** Width of the tank on the plan [px]. */
  public static final int WIDTH = 480;

  /**
   * A place.
   *
   * @param x on the plan [px]
   * @param y on the plan, downward [px]
   * @param number from 1
   */
  public record Spot(String x, String y, int number) {}

  public PlacesPlan {
    spots = List.copyOf(spots);
    fixtures = List.copyOf(fixtures);
  }

  static PlacesPlan of(Rig rig, List<Place> places) {
    double scale = WIDTH / rig.tank().length();
    double width = rig.tank().width();
    List<Spot> spots = new ArrayList<>();
    for (Place place : places) {
      spots.add(new Spot(px(scale * place.x()), px(scale * (width - place.y())), spots.size() + 1));
    }
    List<String> fixtures = new ArrayList<>();
    for (Hanging hanging : rig.hangings()) {
      double cos = Math.cos(hanging.yaw());
      double sin = Math.sin(hanging.yaw());
      double along = hanging.fixture().length() / 2;
      double across = hanging.fixture().width() / 2;
      StringBuilder corners = new StringBuilder();
      for (int[] side : new int[][] {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
        double x = hanging.x() + side[0] * along * cos - side[1] * across * sin;
        double y = hanging.y() + side[0] * along * sin + side[1] * across * cos;
        corners.append(px(scale * x)).append(',').append(px(scale * (width - y))).append(' ');
      }
      fixtures.add(corners.toString().strip());
    }
    return new PlacesPlan(px(scale * width), spots, fixtures);
  }

  private static String px(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}
