package parfield.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Rectangle2D;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Rock;
import parfield.optics.Reflectance;
import parfield.survey.Band;
import parfield.tank.Tank;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** What every picture keeps to, and what each of them shows. */
class PicturesTest {
  private static final int MOST_BYTES = 120_000;

  @Test
  void everyPictureIsWellFormedSmallAndDescribed() {
    for (Map.Entry<String, String> picture : Samples.all().entrySet()) {
      String name = picture.getKey();
      Element root = Parsed.of(picture.getValue()).root();
      assertThat(picture.getValue().getBytes(StandardCharsets.UTF_8).length)
          .as(name)
          .isLessThan(MOST_BYTES);
      assertThat(root.getAttribute("width")).as(name).matches("\\d+");
      assertThat(root.getAttribute("height")).as(name).matches("\\d+");
      assertThat(root.getAttribute("role")).as(name).isEqualTo("img");
      assertThat(root.getAttribute("aria-label"))
          .as(name)
          .startsWith(root.getElementsByTagName("title").item(0).getTextContent());
      assertThat(root.getElementsByTagName("desc").getLength()).as(name).isEqualTo(1);
      assertThat(picture.getValue()).as(name).doesNotContain("NaN", "Infinity", " id=", "url(");
    }
  }

  @Test
  @DisplayName("the same text, byte for byte, again and in any locale")
  void deterministic() {
    Map<String, String> first = Samples.all();
    Locale before = Locale.getDefault();
    try {
      for (String tag : List.of("de-DE", "ar-EG", "tr-TR")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertThat(Samples.all()).as(tag).isEqualTo(first);
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void namesAreEscaped() {
    String nasty = "a<b>&\"c'\u0001\ud83d\udc20";
    HeatMapSpec spec =
        HeatMapSpec.of(
                new Caption(nasty, nasty),
                Scene.of(Samples.TANK, LengthUnit.CM),
                Samples.raster(12, 8, 0.6, (x, y) -> 100 * x))
            .withBands(List.of(new Band(nasty, 30, 60)));

    Parsed heat = Parsed.of(HeatMap.svg(spec));

    String clean = "a<b>&\"c'\ud83d\udc20";
    assertThat(heat.all("title").get(0).getTextContent()).isEqualTo(clean);
    assertThat(heat.root().getAttribute("aria-label")).isEqualTo(clean + ". " + clean);
    assertThat(heat.texts()).contains(clean + " from 30", clean + " 30–60");
    Parsed curves =
        Parsed.of(
            Curves.svg(
                new CurvesSpec(
                    new Caption("x", ""),
                    Axis.ppfd(nasty),
                    Axis.percent("y"),
                    List.of(new Series(nasty, List.of(point(1, 0.5), point(2, 0.6)))),
                    List.of(new Threshold(nasty, 0.55)))));
    assertThat(curves.texts()).contains(clean).contains(clean + ", µmol m⁻² s⁻¹");
  }

  @Test
  void isolinesAndBandEndsAreLabelled() {
    Parsed heat = Parsed.of(HeatMap.svg(Samples.heat()));

    assertThat(heat.texts())
        .contains("200", "300", "500", "soft to 150", "stony from 250", "stony to 400")
        .contains("soft 75–150", "stony 250–400", "PPFD, µmol m⁻² s⁻¹")
        .contains("from the left pane, cm", "reading", "outside what was measured");
    assertThat(Parsed.of(HeatMap.svg(Samples.heatInches())).texts())
        .contains("from the left pane, in", "60")
        .doesNotContain("reading");
  }

  @Test
  void rocksAreDrawnWhereThePlaneCutsThem() {
    String heat = HeatMap.svg(Samples.heatWithRocks());
    assertThat(Parsed.of(heat).texts()).contains("rock");
    assertThat(faces(heat)).hasSize(2);
    // The front pane is at the bottom: the block stands left and toward the back.
    assertThat(faces(heat).get(0).getBounds().getCenterX())
        .isLessThan(faces(heat).get(1).getBounds().getCenterX());
    // 30 cm of boulder at its waist, of the 90 cm of the tank.
    Area boulder = faces(heat).get(1);
    double shown = boulder.getBounds2D().getWidth() / (600 - 2 * Look.MARGIN - Frame.GUTTER);
    double cut = 0.3 * Math.sqrt(1 - Math.pow(0.05 / 0.12, 2)) / 0.9;
    assertThat(shown).isCloseTo(cut, within(0.01));

    String section = Section.svg(Samples.sectionWithRocks());
    assertThat(Parsed.of(section).texts()).contains("rock");
    assertThat(faces(section)).hasSize(1);

    assertThat(faces(HeatMap.svg(Samples.heat()))).isEmpty();
    String bare =
        HeatMap.svg(
            HeatMapSpec.of(
                new Caption("t", ""),
                Samples.rocky().atDepth(0.1),
                Samples.raster(9, 9, 0.6, (x, y) -> 100 * x)));
    assertThat(Parsed.of(bare).texts()).doesNotContain("rock");
  }

  /** The outlines of the stone-coloured path, from left to right. */
  private static List<Area> faces(String svg) {
    List<Area> faces = new ArrayList<>();
    for (Element path : Parsed.of(svg).all("path")) {
      if (path.getAttribute("fill").equals("#8d8780")) {
        for (String part : path.getAttribute("d").split("(?=M)")) {
          java.awt.geom.Path2D outline = new java.awt.geom.Path2D.Double();
          String[] points = part.substring(1).replace("Z", "").split("L");
          for (int i = 0; i < points.length; i++) {
            String[] xy = points[i].strip().split(" ");
            double x = Double.parseDouble(xy[0]);
            double y = Double.parseDouble(xy[1]);
            if (i == 0) {
              outline.moveTo(x, y);
            } else {
              outline.lineTo(x, y);
            }
          }
          outline.closePath();
          faces.add(new Area(outline));
        }
      }
    }
    faces.sort(java.util.Comparator.comparingDouble(face -> face.getBounds2D().getCenterX()));
    return faces;
  }

  @Test
  void whatIsRockIsNoPartOfABandMapsShares() {
    // Half of the plane is in the band, the half that a rock fills for the most part.
    Tank half =
        Samples.TANK.withAquascape(
            Aquascape.of(
                List.of(
                    new Rock(
                        "block", new Box(0, 0.3, 0.3, 0.6, 2, 0.4, 0), Reflectance.gray(0.2)))));
    Raster values = Samples.raster(90, 60, 0.6, (x, y) -> x < 0.45 ? 100 : 500);
    Parsed map =
        Parsed.of(
            BandMap.svg(
                new BandMapSpec(
                    new Caption("t", ""),
                    Scene.of(half, LengthUnit.CM).atDepth(0.3),
                    values,
                    values,
                    new Band("soft", 75, 150))));
    // 15 cm of the 60 cm that are water.
    assertThat(map.texts()).anyMatch(text -> text.matches("in soft[^:]*: 2[3-5] %"));
  }

  @Test
  @DisplayName("no label along an isoline covers another")
  void labelsKeepApart() {
    for (Map.Entry<String, String> picture : Samples.all().entrySet()) {
      List<Area> slips = slips(Parsed.of(picture.getValue()));
      for (int i = 0; i < slips.size(); i++) {
        for (int j = 0; j < i; j++) {
          Area both = new Area(slips.get(i));
          both.intersect(slips.get(j));
          assertThat(both.isEmpty()).as("labels %d, %d of %s", i, j, picture.getKey()).isTrue();
        }
      }
    }
    assertThat(slips(Parsed.of(HeatMap.svg(Samples.heat())))).hasSizeGreaterThan(5);
  }

  @Test
  @DisplayName("on one fixed scale equal PPFD has one colour, in whichever map")
  void fixedScaleIsHonoured() {
    Scale shared = new Scale(0, 300);
    HeatMapSpec dim = ramp(0, 150).withScale(shared);
    HeatMapSpec bright = ramp(75, 375).withScale(shared);

    // 112.5 µmol m⁻² s⁻¹ stands at 3/4 of the one and at 1/8 of the other.
    int expected = 0xff000000 | Viridis.rgb(112.5 / 300);
    assertThat(pixel(dim, 0.75)).isEqualTo(expected);
    assertThat(pixel(bright, 0.125)).isEqualTo(expected);
    assertThat(pixel(bright, 0.99)).isEqualTo(0xff000000 | Viridis.rgb(1));
    assertThat(Parsed.of(HeatMap.svg(dim)).texts()).contains("0", "300");
    assertThat(pixel(ramp(0, 150), 0.75)).isNotEqualTo(expected);
  }

  @Test
  @DisplayName("seen from above the front is at the bottom; in a section the surface is on top")
  void orientation() {
    Scene scene = Scene.of(Tank.of(0.9, 0.6, 0.6), LengthUnit.CM);
    HeatMapSpec rising =
        HeatMapSpec.of(
            new Caption("t", ""), scene, Samples.raster(9, 9, 0.6, (x, second) -> second * 100));
    var plan = Parsed.of(HeatMap.svg(rising)).image();
    var section = Parsed.of(Section.svg(rising)).image();

    assertThat(plan.getRGB(3, plan.getHeight() - 1) & 0xffffff).isEqualTo(Viridis.rgb(0));
    assertThat(plan.getRGB(3, 0) & 0xffffff).isEqualTo(Viridis.rgb(1));
    assertThat(section.getRGB(3, 0) & 0xffffff).isEqualTo(Viridis.rgb(0));
  }

  @Test
  void bandMapSaysWhatIsWhereAndHowMuch() {
    // PPFD falls from 300 to 0 along the tank; the intervals reach 10 to both sides.
    Raster low = Samples.raster(90, 20, 0.6, (x, y) -> 300 * (1 - x / 0.9) - 10);
    Raster high = Samples.raster(90, 20, 0.6, (x, y) -> 300 * (1 - x / 0.9) + 10);
    Parsed map =
        Parsed.of(
            BandMap.svg(
                new BandMapSpec(
                    new Caption("t", ""),
                    Scene.of(Samples.TANK, LengthUnit.CM),
                    low,
                    high,
                    new Band("soft", 90, 180))));

    // By arithmetic: above from 190 on, in 100–170, below up to 80, the rest open.
    assertThat(map.texts())
        .contains(
            "below 90: 27 %", "in soft 90–180: 23 %", "above 180: 37 %", "too close to call: 13 %")
        .contains("below 90", "in soft 90–180", "above 180")
        .containsAnyOf("too close to call", "too close");
  }

  @Test
  void bandMapChecksItsIntervals() {
    Raster one = new Raster(2, 2, new double[] {1, 1, 1, 1});
    Raster two = new Raster(2, 2, new double[] {2, 2, 2, 0});
    Scene scene = Scene.of(Samples.TANK, LengthUnit.CM);
    assertThatThrownBy(() -> new BandMapSpec(new Caption("t", ""), scene, one, two, Samples.SOFT))
        .hasMessage("an interval must run from low to high; got 1.0 to 0.0 in column 1 of row 1");
    Raster wide = new Raster(3, 2, new double[6]);
    assertThatThrownBy(() -> new BandMapSpec(new Caption("t", ""), scene, one, wide, Samples.SOFT))
        .hasMessage("both ends of the intervals need the same cells; got 2 x 2 and 3 x 2");
  }

  @Test
  void sectionShowsWaterLineAndMountingHeight() {
    assertThat(Parsed.of(Section.svg(Samples.section())).texts())
        .contains("water line", "20 cm", "depth, cm");
  }

  @Test
  @DisplayName("curves differ by dash, marker and name, not by colour alone")
  void curvesAreToldApart() {
    List<Style> styles = List.of(Style.values());
    assertThat(styles).hasSize(CurvesSpec.MOST_SERIES);
    assertThat(styles.stream().map(style -> style.dashes)).doesNotHaveDuplicates();
    assertThat(styles.stream().map(style -> style.marker)).doesNotHaveDuplicates();

    Parsed chart = Parsed.of(Curves.svg(Samples.curves()));

    assertThat(chart.texts())
        .contains("retention", "evenness U₀", "coverage of soft")
        .contains("keep 85 %", "at least 70 %", "5–95 % interval")
        .contains("mounting height, cm", "share, %");
  }

  @Test
  void curvesRefuseWhatCannotBeToldApart() {
    Series series = new Series("a", List.of(point(1, 0.5)));
    assertThatThrownBy(
            () ->
                new CurvesSpec(
                    new Caption("t", ""),
                    Axis.ppfd("x"),
                    Axis.percent("y"),
                    java.util.Collections.nCopies(7, series),
                    List.of()))
        .hasMessage("a chart shows 1 to 6 curves; got 7: draw several charts");
    assertThatThrownBy(() -> new Series("a", List.of(point(2, 0.5), point(1, 0.5))))
        .hasMessage("the points of curve a must run from left to right; got 1.0 after 2.0");
    assertThatThrownBy(() -> point(Double.NaN, 1)).hasMessageContaining("must be finite");
  }

  private static Series.Point point(double x, double y) {
    return new Series.Point(x, Estimate.exact(y));
  }

  /** PPFD that rises evenly along the tank. */
  private static HeatMapSpec ramp(double from, double to) {
    return HeatMapSpec.of(
        new Caption("ramp", ""),
        Scene.of(Samples.TANK, LengthUnit.CM),
        Samples.raster(30, 20, 0.6, (x, y) -> from + (to - from) * x / 0.9));
  }

  private static int pixel(HeatMapSpec spec, double share) {
    var image = Parsed.of(HeatMap.svg(spec)).image();
    return image.getRGB((int) Math.round(share * (image.getWidth() - 1)), 5);
  }

  private static List<Area> slips(Parsed picture) {
    Pattern placed = Pattern.compile("translate\\((\\S+) (\\S+)\\) rotate\\((\\S+)\\)");
    List<Area> slips = new ArrayList<>();
    for (Element group : picture.all("g")) {
      Matcher place = placed.matcher(group.getAttribute("transform"));
      if (place.matches()) {
        Element rect = (Element) group.getElementsByTagName("rect").item(0);
        AffineTransform transform =
            AffineTransform.getTranslateInstance(number(place.group(1)), number(place.group(2)));
        transform.rotate(Math.toRadians(number(place.group(3))));
        Area area =
            new Area(
                new Rectangle2D.Double(
                    number(rect.getAttribute("x")),
                    number(rect.getAttribute("y")),
                    number(rect.getAttribute("width")),
                    number(rect.getAttribute("height"))));
        slips.add(area.createTransformedArea(transform));
      }
    }
    return slips;
  }

  private static double number(String text) {
    return Double.parseDouble(text);
  }
}
