package parfield.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * Alike fixtures spread about a point over the tank, at a height yet to be chosen.
 *
 * @param pattern the fixture with its tilt, yaw and dials; its x and y are the middle of the
 *     arrangement, its height is not used
 * @param count how many, 1 to 8
 * @param layout how they hang beside each other
 * @param spacing between the centres of neighbours along the tank's length [m]; 0 for one fixture
 */
public record Arrangement(Hanging pattern, int count, Layout layout, double spacing) {
  /** The most fixtures that are planned for. */
  public static final int MOST_FIXTURES = 8;

  public Arrangement {
    Objects.requireNonNull(pattern, "pattern");
    Objects.requireNonNull(layout, "layout");
    if (count < 1 || count > MOST_FIXTURES) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a plan hangs 1 to %d fixtures; got %d", MOST_FIXTURES, count));
    }
    if (layout == Layout.TWO_BY_TWO && count != 4) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "two by two takes 4 fixtures; got %d", count));
    }
    if (count == 1 ? spacing != 0 : !(spacing > 0) || Double.isInfinite(spacing)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "spacing must be above 0 m for several fixtures and 0 for one; got %s m for %d",
              spacing,
              count));
    }
  }

  /** One fixture in the middle of the arrangement. */
  public static Arrangement single(Hanging pattern) {
    return new Arrangement(pattern, 1, Layout.ROW, 0);
  }

  /** Fixtures in a row along the tank's length. */
  public static Arrangement row(Hanging pattern, int count, double spacing) {
    return new Arrangement(pattern, count, Layout.ROW, spacing);
  }

  /** Four fixtures at the corners of a rectangle. */
  public static Arrangement twoByTwo(Hanging pattern, double spacing) {
    return new Arrangement(pattern, 4, Layout.TWO_BY_TWO, spacing);
  }

  /** The same arrangement of another fixture. */
  Arrangement with(Hanging newPattern) {
    return new Arrangement(newPattern, count, layout, spacing);
  }

  /** The fixtures hung over a tank at one height [m], all at the pattern's dials. */
  public Rig over(Tank tank, double height) {
    List<Hanging> hangings = new ArrayList<>();
    if (layout == Layout.TWO_BY_TWO) {
      double across = spacing * tank.width() / tank.length();
      for (double row : new double[] {-0.5, 0.5}) {
        for (double column : new double[] {-0.5, 0.5}) {
          hangings.add(
              pattern.at(pattern.x() + column * spacing, pattern.y() + row * across, height));
        }
      }
    } else {
      for (int i = 0; i < count; i++) {
        double x = pattern.x() + (i - (count - 1) / 2.0) * spacing;
        hangings.add(pattern.at(x, pattern.y(), height));
      }
    }
    return new Rig(inWords(LengthUnit.CM), tank, hangings);
  }

  /** Whether every fixture's centre hangs over the tank and no two neighbours overlap. */
  boolean fits(Tank tank) {
    double along = sizeAlong(pattern, Math.cos(pattern.yaw()), Math.sin(pattern.yaw()));
    double across = sizeAlong(pattern, Math.sin(pattern.yaw()), Math.cos(pattern.yaw()));
    boolean apart =
        switch (layout) {
          case ROW -> count == 1 || spacing >= along;
          case TWO_BY_TWO -> spacing >= along && spacing * tank.width() / tank.length() >= across;
        };
    return apart
        && over(tank, 1).hangings().stream()
            .allMatch(
                hanging ->
                    hanging.x() >= 0
                        && hanging.x() <= tank.length()
                        && hanging.y() >= 0
                        && hanging.y() <= tank.width());
  }

  private static double sizeAlong(Hanging pattern, double ofLength, double ofWidth) {
    return Math.abs(ofLength) * pattern.fixture().length()
        + Math.abs(ofWidth) * pattern.fixture().width();
  }

  /** In words, such as "2 × pendant, 52 cm apart". */
  public String inWords(LengthUnit unit) {
    String name = count + " × " + pattern.fixture().name();
    if (count == 1) {
      return name;
    }
    return String.format(
        Locale.ROOT,
        "%s%s, %s %s apart",
        name,
        layout == Layout.TWO_BY_TWO ? " two by two" : "",
        Wording.number(unit.fromMetres(spacing), 1),
        unit.symbol());
  }
}
