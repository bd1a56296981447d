package parfield.formats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.formats.CandelaTable.Planes;
import parfield.formats.CandelaTable.Symmetry;
import parfield.formats.PhotometricFile.Label;
import parfield.formats.PhotometricFile.TiltTable;

/**
 * Reads ANSI/IES LM-63 of 1986, 1991, 1995, 2002 and 2019. For one file and one thread.
 *
 * <p>After the line of TILT a file is a row of numbers; where its lines break means nothing.
 */
final class Lm63Reader {
  private static final Pattern TILT = Pattern.compile("\\s*TILT\\s*=\\s*(.*?)\\s*");
  private static final Pattern LABEL = Pattern.compile("\\s*\\[([^\\]]{1,64})\\]\\s*(.*?)\\s*");
  private static final Pattern YEAR = Pattern.compile("LM-63-(\\d{4})");

  /** Most lines before TILT that are kept, those that go on with another included. */
  private static final int MOST_LABELS = 2000;

  private static final double METRES_PER_FOOT = 0.3048;

  private final String file;
  private final String[] lines;
  private final Notes notes;
  private final List<String> cautions;
  private final List<Label> labels = new ArrayList<>();
  private final List<PhotonKeywords.Line> keywords = new ArrayList<>();
  private NumberRow row;
  private int kept;
  private int year;

  Lm63Reader(String file, String[] lines, Notes notes, List<String> cautions) {
    this.file = file;
    this.lines = lines;
    this.notes = notes;
    this.cautions = cautions;
  }

  /** Whether lines are rather of this format than of another. */
  static boolean isLm63(String[] lines) {
    for (String line : lines) {
      if (isTilt(line)) {
        return true;
      }
    }
    return lines[0].strip().startsWith("IES");
  }

  private static boolean isTilt(String line) {
    return line.stripLeading().regionMatches(true, 0, "TILT", 0, 4) && line.indexOf('=') > 0;
  }

  /**
   * Reads the file.
   *
   * @throws InvalidFile as soon as nothing more can be read; faults that leave the rest readable
   *     are in the notes
   */
  PhotometricFile read() {
    int tiltLine = head();
    Optional<TiltTable> tilt = tilt(tiltLine);
    int lamps = row.whole("number of lamps", 1, 10_000);
    double lumens = row.number("lumens per lamp", Limit.between(-1, 1e8, "lm, or -1"));
    double multiplier = row.number("candela multiplier", Limit.between(0, 1e6));
    int gammas = row.whole("number of vertical angles", 2, PhotometricFile.MOST_VALUES);
    int around = row.whole("number of horizontal angles", 1, PhotometricFile.MOST_VALUES);
    int type = row.whole("photometric type", 1, 3);
    int unit = row.whole("units type", 1, 2);
    double toMetres = unit == 1 ? METRES_PER_FOOT : 1;
    Limit size = Limit.between(-1e4, 1e4);
    double width = Math.abs(row.number("width", size)) * toMetres;
    double length = Math.abs(row.number("length", size)) * toMetres;
    double height = Math.abs(row.number("height", size)) * toMetres;
    double ballast = row.number("ballast factor", Limit.between(0, 100));
    double second = row.number(year >= 2019 ? "file generation type" : secondName(), SECOND);
    double watts = row.number("input watts", Limit.between(0, 1e6, "W"));
    row.promise((long) gammas + around + (long) gammas * around, "angles and intensities");
    double[] verticals = row.ascending("vertical angle", gammas, type == 1 ? 0 : -90, 180);
    double[] horizontals = row.ascending("horizontal angle", around, type == 1 ? 0 : -180, 360);
    double[][] candela = new double[around][];
    for (int i = 0; i < around; i++) {
      candela[i] = row.several("luminous intensity", gammas, CANDELA);
    }
    row.end();
    notes.throwIfFaulty();
    double factor = multiplier * ballast * secondFactor(second);
    if (!(factor > 0)) {
      throw fatal(
          row.line(),
          "factor on all intensities",
          "0",
          "above 0",
          "correct the candela multiplier or the ballast factor");
    }
    CandelaTable table =
        type == 1
            ? onC(verticals, horizontals, candela)
            : aimed(type == 2 ? Planes.B : Planes.A, verticals, horizontals, candela);
    table = table.times(factor);
    OptionalDouble lampLumens = lampLumens(lamps, lumens, table.flux());
    Optional<PhotonKeywords> photons = PhotonKeywords.read(file, keywords, table.flux(), notes);
    return new PhotometricFile(
        PhotometricFile.Format.LM63,
        "LM-63-" + year,
        labels,
        lamps,
        lampLumens,
        OptionalDouble.empty(),
        factor,
        watts > 0 ? OptionalDouble.of(watts) : OptionalDouble.empty(),
        length,
        width,
        height,
        CandelaTable.span(verticals),
        CandelaTable.span(horizontals),
        tilt,
        table,
        photons,
        cautions);
  }

  private static final Limit CANDELA = Limit.between(0, 5e8);
  private static final Limit SECOND = Limit.between(0, 1e4);

  private InvalidFile fatal(int line, String what, String value, String limit, String cure) {
    return notes.fatal(new Fault(file, line, 0, what, value, limit, cure));
  }

  /** Reads all lines before the numbers; returns the index of the line of TILT. */
  private int head() {
    String first = lines[0].strip().toUpperCase(Locale.ROOT);
    Matcher edition = YEAR.matcher(first);
    year = 1986;
    int at = 0;
    if (first.startsWith("IES")) {
      at = 1;
      if (first.equals("IESNA91")) {
        year = 1991;
      } else if (edition.find()) {
        year = Integer.parseInt(edition.group(1));
      } else {
        year = 2002;
        cautions.add("the edition " + Notes.shown(first) + " is not known: read as LM-63-2002");
      }
      if (year > 2019 || year < 1986) {
        cautions.add("the edition " + Notes.shown(first) + " is not known: read as LM-63-2019");
        year = 2019;
      }
    } else {
      cautions.add("no line names the edition: read as LM-63-1986");
    }
    for (; at < lines.length; at++) {
      if (isTilt(lines[at])) {
        return at;
      }
      label(lines[at], at + 1);
    }
    throw fatal(
        0,
        "line of TILT",
        "none",
        "TILT=NONE or TILT=INCLUDE before the numbers",
        "check that it is a photometric file, and all of it");
  }

  private void label(String line, int number) {
    if (line.isBlank() || kept >= MOST_LABELS) {
      return;
    }
    kept++;
    Matcher label = LABEL.matcher(line);
    if (!label.matches()) {
      labels.add(new Label("", line.strip()));
      return;
    }
    String name = label.group(1).strip().toUpperCase(Locale.ROOT);
    String text = label.group(2);
    if (name.startsWith(PhotonKeywords.PREFIX)) {
      keywords.add(new PhotonKeywords.Line(name, text, number));
    } else if (name.equals("MORE") && !keywords.isEmpty() && lastIsOurs(number)) {
      PhotonKeywords.Line last = keywords.remove(keywords.size() - 1);
      keywords.add(new PhotonKeywords.Line(last.name(), last.text() + " " + text, number));
    } else if (name.equals("MORE") && !labels.isEmpty()) {
      Label last = labels.remove(labels.size() - 1);
      labels.add(new Label(last.name(), last.text() + "\n" + text));
    } else {
      labels.add(new Label(name, text));
    }
  }

  private boolean lastIsOurs(int number) {
    return keywords.get(keywords.size() - 1).line() == number - 1;
  }

  private Optional<TiltTable> tilt(int at) {
    Matcher tilt = TILT_LINE.matcher(lines[at]);
    String value = tilt.matches() ? tilt.group(1) : "";
    row = new NumberRow(file, lines, at + 1, notes);
    if (value.equalsIgnoreCase("NONE")) {
      return Optional.empty();
    }
    if (!value.equalsIgnoreCase("INCLUDE")) {
      throw fatal(
          at + 1,
          "TILT",
          value.isEmpty() ? "nothing" : Notes.shown(value),
          "NONE or INCLUDE",
          value.isEmpty()
              ? "write TILT=NONE if the lamp's light does not depend on how it is tilted"
              : "how its light depends on tilt is in another file: write TILT=INCLUDE and that"
                  + " file's numbers after this line, or TILT=NONE if the lamp does not mind");
    }
    int geometry = row.whole("lamp-to-luminaire geometry", 1, 3);
    int pairs = row.whole("number of tilt angles", 1, 1000);
    row.promise(2L * pairs, "tilt angles and factors");
    double[] angles = row.ascending("tilt angle", pairs, 0, 180);
    double[] factors = row.several("tilt factor", pairs, Limit.between(0, 10));
    cautions.add(
        "how its lamps' light depends on tilt is told, but not applied: intensities are those of"
            + " the fixture as it was measured");
    return Optional.of(
        new TiltTable(
            geometry,
            Arrays.stream(angles).boxed().toList(),
            Arrays.stream(factors).boxed().toList()));
  }

  private static final Pattern TILT_LINE =
      Pattern.compile(TILT.pattern(), Pattern.CASE_INSENSITIVE);

  private String secondName() {
    return year >= 1995 ? "future use" : "ballast-lamp photometric factor";
  }

  /** The twelfth number: a factor until 1991, without meaning until 2002, a code since 2019. */
  private double secondFactor(double second) {
    if (year >= 2019) {
      return 1;
    }
    if (year < 1995) {
      return second;
    }
    if (second == 0) {
      cautions.add("its number for future use is 0: taken as 1, which the standard asks for");
      return 1;
    }
    if (second != 1) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "its number for future use is %s where the standard asks for 1: taken as the"
                  + " ballast-lamp photometric factor of older editions",
              NumberText.shown(second)));
    }
    return second;
  }

  private OptionalDouble lampLumens(int lamps, double lumens, double flux) {
    if (lumens < 0) {
      return OptionalDouble.empty();
    }
    double all = lamps * lumens;
    if (flux > LEEWAY * all) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "its intensities add up to %.0f lm, more than the %.0f lm of its lamps",
              flux,
              all));
    }
    return OptionalDouble.of(all);
  }

  /**
   * How much more light than its lamps' a sound file may tell of, by rounding and coarse angles.
   */
  static final double LEEWAY = 1.03;

  private CandelaTable onC(double[] verticals, double[] horizontals, double[][] candela) {
    int last = horizontals.length - 1;
    double top = verticals[verticals.length - 1];
    if (verticals[0] != 0 && verticals[0] != 90) {
      throw fatal(
          row.line(),
          "first vertical angle",
          NumberText.shown(verticals[0]),
          "0 or 90 degrees",
          "export it from straight down on");
    }
    if (verticals[0] == 90) {
      cautions.add("all its light goes upward: a tank below gets none");
    }
    if (top != 90 && top != 180) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "its vertical angles end at %s degrees: taken as dark beyond",
              NumberText.shown(top)));
    }
    if (last == 0) {
      return CandelaTable.onC(Symmetry.AXIAL, new double[] {0}, verticals, candela);
    }
    double from = horizontals[0];
    double to = horizontals[last];
    if (from == 0 && to == 90) {
      return CandelaTable.onC(Symmetry.QUADRANTS, horizontals, verticals, candela);
    }
    if (from == 0 && to == 180) {
      return CandelaTable.onC(Symmetry.ALONG, horizontals, verticals, candela);
    }
    if (from == 90 && to == 270) {
      return CandelaTable.onC(Symmetry.ACROSS, horizontals, verticals, candela);
    }
    double widest = 0;
    for (int i = 0; i < last; i++) {
      widest = Math.max(widest, horizontals[i + 1] - horizontals[i]);
    }
    // Some leave out the plane at 360 degrees, as it repeats the first.
    if (from != 0 || to < 180 || 360 - to > 1.5 * widest) {
      throw fatal(
          row.line(),
          "range of the horizontal angles",
          NumberText.shown(from) + " to " + NumberText.shown(to) + " degrees",
          "0 alone, 0 to 90, 0 to 180, 90 to 270 or 0 to 360",
          "export the planes that its symmetry asks for");
    }
    if (to == 360) {
      closes(candela[0], candela[last]);
    }
    return CandelaTable.onC(Symmetry.NONE, horizontals, verticals, candela);
  }

  private void closes(double[] first, double[] last) {
    double most = Arrays.stream(first).max().orElse(0);
    for (int j = 0; j < first.length; j++) {
      if (Math.abs(first[j] - last[j]) > 0.001 * most) {
        cautions.add("its planes at 0 and 360 degrees differ: that at 0 is taken");
        return;
      }
    }
  }

  private CandelaTable aimed(
      Planes planes, double[] verticals, double[] horizontals, double[][] candela) {
    cautions.add(
        "it is of type "
            + planes
            + ": its axis, where both angles are 0, is taken as hung straight down, horizontal"
            + " angles as going to the right along the fixture's length");
    int last = horizontals.length - 1;
    int top = verticals.length - 1;
    boolean turns = planes == Planes.A;
    within("vertical", verticals, top, turns ? 90 : 180);
    within("horizontal", horizontals, last, turns ? 180 : 90);
    if (verticals[0] >= 0) {
      throw fatal(
          row.line(),
          "first vertical angle of a file of type " + planes,
          NumberText.shown(verticals[0]),
          "below 0 degrees: else nothing is told of the lower half of the light",
          "export it from -90 degrees on");
    }
    if (last == 0 || horizontals[0] > 0) {
      throw fatal(
          row.line(),
          "horizontal angles of a file of type " + planes,
          CandelaTable.span(horizontals),
          "several, from below 0 degrees, or from 0 for light that is the same left and right",
          "export it so");
    }
    return CandelaTable.aimed(planes, horizontals[0] == 0, horizontals, verticals, candela);
  }

  private void within(String what, double[] angles, int last, double most) {
    if (angles[0] < -most || angles[last] > most) {
      throw fatal(
          row.line(),
          what + " angles",
          CandelaTable.span(angles),
          String.format(
              Locale.ROOT, "-%s to %s degrees", NumberText.shown(most), NumberText.shown(most)),
          "check its photometric type: 1 is C, 2 is B, 3 is A");
    }
  }
}
