package parfield.formats;

import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.formats.CandelaTable.Symmetry;

/**
 * Writes EULUMDAT: absolute photometry, one set of lamps, photons in the lines of measurement
 * report and luminaire number.
 *
 * <p>Its plane C0 lies across the fixture's length: C there is ours and 90 degrees.
 */
final class EulumdatWriter {
  /** Longest text, by the field. */
  private static final int LONGEST = 78;

  private static final int LONGEST_LAMP = 24;
  private static final String END = "\r\n";

  private final StringBuilder text = new StringBuilder();

  private EulumdatWriter() {}

  /** The file of a light. */
  static byte[] bytes(FixtureLight light) {
    EulumdatWriter writer = new EulumdatWriter();
    writer.write(light, light.written());
    return writer.text.toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  private void write(FixtureLight light, FixtureLight.Written written) {
    LightGrid grid = written.grid();
    PhotonKeywords keywords = written.keywords();
    double lumens = grid.table().flux();
    Symmetry symmetry = grid.symmetry();
    boolean axial = symmetry == Symmetry.AXIAL;
    boolean quadrants = symmetry == Symmetry.QUADRANTS;
    double planeStep = axial ? 0 : grid.azimuth(1);
    int planes = axial ? 1 : (int) Math.rint(360 / planeStep);
    words("a light model fitted to readings in a tank", LONGEST);
    line(axial ? "1" : "3");
    line(axial ? "1" : quadrants ? "4" : "0");
    line(String.valueOf(planes));
    line(PhotonKeywords.number(planeStep));
    line(String.valueOf(grid.angles()));
    line(PhotonKeywords.number(grid.gamma(1)));
    words(photons(keywords), Integer.MAX_VALUE);
    words(light.fixture() + ": " + Lm63Writer.channels(light), LONGEST);
    words(channels(keywords), LONGEST);
    line("LIGHT.LDT");
    line(DateTimeFormatter.ISO_LOCAL_DATE.format(light.date()));
    String[] sizes = new String[9];
    java.util.Arrays.fill(sizes, "0");
    sizes[0] = millimetres(light.length());
    sizes[1] = millimetres(light.width());
    sizes[3] = sizes[0];
    sizes[4] = sizes[1];
    for (String size : sizes) {
      line(size);
    }
    line(String.format(Locale.ROOT, "%.1f", 100 * grid.table().downwardShare()));
    line("100");
    line("1");
    line("0");
    line("1");
    line("-1");
    words("as fitted", LONGEST_LAMP);
    line(PhotonKeywords.number(lumens));
    line("");
    line("");
    line(PhotonKeywords.number(light.watts().orElse(0)));
    for (int i = 0; i < 10; i++) {
      line("0");
    }
    for (int i = 0; i < planes; i++) {
      line(PhotonKeywords.number(i * planeStep));
    }
    for (int j = 0; j < grid.angles(); j++) {
      line(PhotonKeywords.number(grid.gamma(j)));
    }
    int shown = axial ? 1 : quadrants ? planes / 4 + 1 : planes;
    for (int i = 0; i < shown; i++) {
      // Quadrants run the other way from C0 across to C90 along the length.
      int ours = axial ? 0 : quadrants ? planes / 4 - i : Math.floorMod(i - planes / 4, planes);
      for (int j = 0; j < grid.angles(); j++) {
        line(PhotonKeywords.number(grid.value(ours, j) * 1000 / lumens));
      }
    }
  }

  private static String photons(PhotonKeywords keywords) {
    return PhotonKeywords.FORMAT
        + " "
        + PhotonKeywords.VERSION
        + "; PHOTONS "
        + PhotonKeywords.number(keywords.photonsPerLumen())
        + "; PPF "
        + keywords.ppfText();
  }

  /** Digits of a channel's photon flux: the field is short. */
  private static final MathContext SHORT = new MathContext(5);

  /** What the channels give, where it fits into the field; else nothing. */
  private static String channels(PhotonKeywords keywords) {
    List<String> channels = new ArrayList<>();
    for (PhotonKeywords.ChannelFlux channel : keywords.channels()) {
      if (channel.name().contains(";")) {
        return "";
      }
      String ppf = String.valueOf(new BigDecimal(channel.ppf()).round(SHORT).stripTrailingZeros());
      channels.add(PhotonKeywords.SHORT_CHANNEL + " " + ppf + " " + channel.name());
    }
    String all = PhotonKeywords.PREFIX + "_" + String.join("; ", channels);
    return channels.isEmpty() || all.length() > LONGEST ? "" : all;
  }

  private static String millimetres(double metres) {
    return String.format(Locale.ROOT, "%.0f", 1000 * metres);
  }

  private void line(String line) {
    text.append(line).append(END);
  }

  private void words(String words, int longest) {
    String printable = Fault.printable(words);
    line(printable.substring(0, Math.min(printable.length(), longest)));
  }
}
