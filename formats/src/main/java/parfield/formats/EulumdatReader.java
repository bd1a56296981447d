package parfield.formats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.formats.CandelaTable.Symmetry;
import parfield.formats.PhotometricFile.Label;

/**
 * Reads EULUMDAT (Stockmar 1990): a field a line, intensities in cd per 1000 lm. For one file and
 * one thread.
 *
 * <p>Its plane C0 lies across the lamp's length, ours along it: C here is that of the file less 90
 * degrees.
 */
final class EulumdatReader {
  /** Fields before the lamps. */
  private static final int HEAD = 26;

  private static final int LAMP_FIELDS = 6;
  private static final int DIRECT_RATIOS = 10;

  /** Most standard sets of lamps. */
  private static final int MOST_SETS = 20;

  private static final Limit INTENSITY = Limit.between(0, 5e8, "cd per 1000 lm");

  private final String file;
  private final String[] lines;
  private final Notes notes;
  private final List<String> cautions;
  private boolean commas;

  EulumdatReader(String file, String[] lines, Notes notes, List<String> cautions) {
    this.file = file;
    this.lines = lines;
    this.notes = notes;
    this.cautions = cautions;
  }

  /**
   * Reads the file.
   *
   * @throws InvalidFile as soon as nothing more can be read; faults that leave the rest readable
   *     are in the notes
   */
  PhotometricFile read() {
    whole(1, "type indicator", 0, 3);
    int symmetry = whole(2, "symmetry indicator", 0, 4);
    int planes = whole(3, "number of C-planes", 1, PhotometricFile.MOST_VALUES);
    double planeStep = optional(4, "distance between C-planes", Limit.between(0, 360, "degrees"));
    int gammas = whole(5, "number of intensities in a C-plane", 2, PhotometricFile.MOST_VALUES);
    double gammaStep =
        optional(6, "distance between intensities", Limit.between(0, 180, "degrees"));
    Limit size = Limit.between(0, 1e6, "mm");
    double[] sizes = new double[SIZES.size()];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = optional(12 + i, SIZES.get(i), size) / 1000;
    }
    optional(21, "downward flux fraction", Limit.between(0, 101, "%"));
    double efficiency = optional(22, "light output ratio", Limit.between(0, 1000, "%"));
    double conversion = required(23, "conversion factor for intensities", FACTOR);
    double tilt = optional(24, "tilt during the measurement", Limit.between(-360, 360, "degrees"));
    int sets = whole(25, "number of sets of lamps", 1, MOST_SETS);
    int lamps = whole(HEAD, "number of lamps", -10_000, 10_000);
    double lumens = required(HEAD + 2, "total flux of the lamps", LUMENS);
    double watts = optional(HEAD + 5, "power of the lamps", Limit.between(0, 1e7, "W"));
    int ratios = HEAD + LAMP_FIELDS * sets;
    for (int i = 0; i < DIRECT_RATIOS; i++) {
      optional(ratios + i, "direct ratio", Limit.between(0, 10));
    }
    notes.throwIfFaulty();
    if (lamps == 0) {
      throw fatal(HEAD, "number of lamps", "0", "1 or more, or negative where absolute", "");
    }
    if (sets > 1) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "it tells of %d sets of lamps: the first is taken, of %s lm",
              sets,
              NumberText.shown(lumens)));
    }
    if (tilt != 0) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "it was measured at a tilt of %s degrees: intensities are taken as of the fixture"
                  + " hung level",
              NumberText.shown(tilt)));
    }
    CandelaTable perKilolumen =
        table(ratios + DIRECT_RATIOS, symmetry, planes, gammas, planeStep, gammaStep);
    double factor = conversion * lumens / 1000;
    CandelaTable table = perKilolumen.times(factor);
    double stated = lumens * efficiency / 100;
    agree(table.flux(), stated, efficiency);
    Optional<PhotonKeywords> photons = PhotonKeywords.read(file, keywords(), table.flux(), notes);
    if (commas) {
      cautions.add("commas within numbers are taken as decimal commas");
    }
    return new PhotometricFile(
        PhotometricFile.Format.EULUMDAT,
        "EULUMDAT",
        labels(),
        Math.abs(lamps),
        lamps < 0 ? OptionalDouble.empty() : OptionalDouble.of(lumens),
        efficiency > 0 ? OptionalDouble.of(stated) : OptionalDouble.empty(),
        factor,
        watts > 0 ? OptionalDouble.of(watts) : OptionalDouble.empty(),
        sizes[3],
        sizes[4],
        sizes[5],
        verticals,
        horizontals,
        Optional.empty(),
        table,
        photons,
        cautions);
  }

  private static final Limit FACTOR = Limit.above(0, 5e8, "");
  private static final Limit LUMENS = Limit.above(0, 5e8, "lm");

  private static final List<String> SIZES =
      List.of(
          "length",
          "width",
          "height",
          "length of the luminous area",
          "width of the luminous area",
          "height of the luminous area at C0",
          "height of the luminous area at C90",
          "height of the luminous area at C180",
          "height of the luminous area at C270");

  private String verticals = "";
  private String horizontals = "";

  private InvalidFile fatal(int at, String what, String value, String limit, String cure) {
    return notes.fatal(new Fault(file, at + 1, 0, what, value, limit, cure));
  }

  /** The text of a field, 0-based. */
  private String field(int at, String what) {
    if (at >= lines.length) {
      throw notes.fatal(
          new Fault(
              file,
              lines.length,
              0,
              what,
              "nothing more",
              "line " + (at + 1),
              "the file ends too soon: check that it is a photometric file, and copy all of it"));
    }
    return lines[at].strip();
  }

  private int whole(int at, String what, int from, int to) {
    String text = field(at, what);
    double value = parse(text);
    if (!(value >= from && value <= to) || value != Math.rint(value)) {
      throw fatal(
          at,
          what,
          text.isEmpty() ? "nothing" : Notes.shown(text),
          String.format(Locale.ROOT, "a whole number, %d to %d", from, to),
          at < 6
              ? "check that it is a file of EULUMDAT or LM-63, and that no line before is missing"
              : "correct it: the lines after it are counted by it");
    }
    return (int) value;
  }

  private double required(int at, String what, Limit limit) {
    return number(at, what, field(at, what), limit);
  }

  /** A number, 0 where the line is empty: so some leave what they do not know. */
  private double optional(int at, String what, Limit limit) {
    String text = field(at, what);
    return text.isEmpty() ? 0 : number(at, what, text, limit);
  }

  private double number(int at, String what, String text, Limit limit) {
    double value = parse(text);
    if (!limit.contains(value)) {
      if (notes.full(file)) {
        throw notes.fatal();
      }
      notes.fault(
          new Fault(
              file,
              at + 1,
              0,
              what,
              text.isEmpty() ? "nothing" : Notes.shown(text),
              "a number, " + limit.text(),
              Double.isNaN(value)
                  ? "write a number, and check that no line before is missing"
                  : "correct the value"));
      return Double.NaN;
    }
    return value;
  }

  private double parse(String text) {
    if (text.indexOf(',') < 0) {
      return NumberText.parse(text);
    }
    commas = true;
    return NumberText.parse(text, ',');
  }

  private CandelaTable table(
      int from, int indicator, int planes, int gammas, double planeStep, double gammaStep) {
    int[] shown = planesShown(indicator, planes);
    List<String> words = new ArrayList<>();
    List<Integer> at = new ArrayList<>();
    long expected = (long) planes + gammas + (long) shown.length * gammas;
    long all = (long) planes + gammas + (long) planes * gammas;
    if (Math.max(expected, 0) > PhotometricFile.MOST_VALUES) {
      throw fatal(
          3,
          "number of angles and intensities",
          String.valueOf(expected),
          "at most " + PhotometricFile.MOST_VALUES,
          "export larger steps");
    }
    for (int i = from; i < lines.length; i++) {
      for (String word : lines[i].strip().split("[ \t\u001A]+")) {
        if (!word.isEmpty()) {
          words.add(word);
          at.add(i);
        }
      }
      if (words.size() > PhotometricFile.MOST_VALUES) {
        throw fatal(i, "number of angles and intensities", "more", LESS, "export larger steps");
      }
    }
    if (words.size() != expected && words.size() == all) {
      cautions.add(
          "it tells of every plane though its symmetry asks for "
              + shown.length
              + " of "
              + planes
              + ": all are taken");
      indicator = 0;
      shown = planesShown(0, planes);
    } else if (words.size() != expected) {
      throw fatal(
          Math.min(lines.length, from + 1) - 1,
          "number of angles and intensities from here on",
          String.valueOf(words.size()),
          String.format(
              Locale.ROOT,
              "%d: %d C-planes, %d angles in each, and the intensities of %d planes",
              expected,
              planes,
              gammas,
              shown.length),
          "copy all of the file, or correct its counts and its symmetry indicator");
    }
    double[] c = angles(words, at, 0, planes, "C-plane", 360);
    double[] gamma = angles(words, at, planes, gammas, "angle in a C-plane", 180);
    double[][] rows = new double[shown.length][gammas];
    int next = planes + gammas;
    for (double[] row : rows) {
      for (int j = 0; j < gammas; j++) {
        row[j] = number(at.get(next), "intensity", words.get(next), INTENSITY);
        next++;
      }
    }
    notes.throwIfFaulty();
    steps(c, planeStep, "C-planes");
    steps(gamma, gammaStep, "angles in a C-plane");
    downward(gamma, from);
    verticals = CandelaTable.span(gamma);
    horizontals = CandelaTable.span(c);
    return turned(indicator, c, shown, gamma, rows, from);
  }

  private static final String LESS = "at most " + PhotometricFile.MOST_VALUES;

  /** Which of all planes have intensities in the file, 0-based, in its order: Mc1 to Mc2. */
  private int[] planesShown(int indicator, int planes) {
    int divisor = indicator == 2 ? 2 : indicator >= 3 ? 4 : 1;
    if (planes % divisor != 0) {
      throw fatal(
          3,
          "number of C-planes",
          String.valueOf(planes),
          "a multiple of " + divisor + " at symmetry indicator " + indicator,
          "correct it, or the symmetry indicator");
    }
    int from = indicator == 3 ? 3 * planes / 4 : 0;
    int count =
        switch (indicator) {
          case 0 -> planes;
          case 1 -> 1;
          case 4 -> planes / 4 + 1;
          default -> planes / 2 + 1;
        };
    int[] shown = new int[count];
    Arrays.setAll(shown, i -> (from + i) % planes);
    return shown;
  }

  private double[] angles(
      List<String> words, List<Integer> at, int from, int count, String what, double most) {
    double[] angles = new double[count];
    Limit limit = Limit.between(0, most, "degrees");
    for (int i = 0; i < count; i++) {
      angles[i] = number(at.get(from + i), what, words.get(from + i), limit) + 0.0;
      if (i > 0 && angles[i] <= angles[i - 1]) {
        throw fatal(
            at.get(from + i),
            what,
            NumberText.shown(angles[i]) + " after " + NumberText.shown(angles[i - 1]),
            "angles that ascend",
            "sort them with their intensities, and check that no line before is missing");
      }
    }
    return angles;
  }

  private void steps(double[] angles, double step, String what) {
    if (step > 0 && angles.length > 1 && Math.abs(angles[1] - angles[0] - step) > 0.01 * step) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "its %s are %s degrees apart, not %s as it states: the angles are taken",
              what,
              NumberText.shown(angles[1] - angles[0]),
              NumberText.shown(step)));
    }
  }

  private void downward(double[] gamma, int from) {
    double top = gamma[gamma.length - 1];
    if (gamma[0] != 0 && gamma[0] != 90) {
      throw fatal(
          from,
          "first angle in a C-plane",
          NumberText.shown(gamma[0]),
          "0 or 90 degrees",
          "export it from straight down on");
    }
    if (gamma[0] == 90) {
      cautions.add("all its light goes upward: a tank below gets none");
    }
    if (top != 90 && top != 180) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "its angles in a C-plane end at %s degrees: taken as dark beyond",
              NumberText.shown(top)));
    }
  }

  /** The table in our frame, where C is 0 along the length. */
  private CandelaTable turned(
      int indicator, double[] c, int[] shown, double[] gamma, double[][] rows, int from) {
    if (indicator == 1 || c.length == 1) {
      return CandelaTable.onC(Symmetry.AXIAL, new double[] {0}, gamma, rows);
    }
    double first = c[shown[0]];
    double last = c[shown[shown.length - 1]];
    double[] ends =
        switch (indicator) {
          case 2 -> new double[] {0, 180};
          case 3 -> new double[] {270, 90};
          case 4 -> new double[] {0, 90};
          default -> new double[] {first, last};
        };
    boolean round = indicator == 0;
    if (round && c.length > 1) {
      double widest = 0;
      for (int i = 1; i < c.length; i++) {
        widest = Math.max(widest, c[i] - c[i - 1]);
      }
      round = first + 360 - last <= 1.5 * widest;
    }
    if (first != ends[0] || last != ends[1] || (indicator == 0 && !round)) {
      throw fatal(
          from,
          "C-planes with intensities",
          NumberText.shown(first) + " to " + NumberText.shown(last) + " degrees",
          indicator == 0
              ? "planes all round"
              : NumberText.shown(ends[0])
                  + " to "
                  + NumberText.shown(ends[1])
                  + " degrees at symmetry indicator "
                  + indicator,
          "correct the planes or the symmetry indicator");
    }
    double[] azimuths = new double[shown.length];
    for (int i = 0; i < azimuths.length; i++) {
      double plane = c[shown[i]];
      double turned = (plane + 270) % 360;
      azimuths[i] =
          switch (indicator) {
            case 3 -> (360 - turned) % 360;
            case 4 -> 90 - plane;
            default -> turned;
          };
    }
    Symmetry symmetry =
        switch (indicator) {
          case 2 -> Symmetry.ACROSS;
          case 3 -> Symmetry.ALONG;
          case 4 -> Symmetry.QUADRANTS;
          default -> Symmetry.NONE;
        };
    return CandelaTable.onC(symmetry, azimuths, gamma, rows);
  }

  private void agree(double flux, double stated, double efficiency) {
    if (efficiency > 0 && Math.abs(flux - stated) > (Lm63Reader.LEEWAY - 1) * stated) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "its intensities add up to %.0f lm, not to the %.0f lm of its lamps' flux times light"
                  + " output ratio: the intensities are taken",
              flux,
              stated));
    }
  }

  private List<Label> labels() {
    List<Label> labels = new ArrayList<>();
    label(labels, "company", 0);
    label(labels, "measurement report", 7);
    label(labels, "luminaire", 8);
    label(labels, "luminaire number", 9);
    label(labels, "file", 10);
    label(labels, "date and user", 11);
    label(labels, "lamps", HEAD + 1);
    label(labels, "colour", HEAD + 3);
    label(labels, "colour rendering", HEAD + 4);
    return labels;
  }

  private void label(List<Label> labels, String name, int at) {
    String text = lines[at].strip();
    if (!text.isEmpty() && !text.startsWith(PhotonKeywords.PREFIX)) {
      labels.add(new Label(name, text));
    }
  }

  /** Our keywords, which stand in the lines of report and luminaire number. */
  private List<PhotonKeywords.Line> keywords() {
    List<PhotonKeywords.Line> found = new ArrayList<>();
    for (int at : new int[] {7, 9}) {
      String text = lines[at].strip();
      if (text.startsWith(PhotonKeywords.PREFIX)) {
        for (String part : text.split(";")) {
          String[] words = part.strip().split(" ", 2);
          String name =
              words[0].startsWith(PhotonKeywords.PREFIX)
                  ? words[0]
                  : PhotonKeywords.PREFIX + "_" + words[0];
          found.add(
              new PhotonKeywords.Line(
                  name.equals(PhotonKeywords.PREFIX + "_" + PhotonKeywords.SHORT_CHANNEL)
                      ? PhotonKeywords.CHANNEL
                      : name,
                  words.length > 1 ? words[1].strip() : "",
                  at + 1));
        }
      }
    }
    return found;
  }
}
