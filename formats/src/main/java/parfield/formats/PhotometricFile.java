package parfield.formats;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * What a photometric file holds: the luminous intensities of a lamp, or of a fixture as a whole,
 * and what is told of it. See docs/PHOTOMETRIC_FILES.md.
 *
 * @param format which of the open formats
 * @param edition of the format, as in {@code LM-63-2002}
 * @param labels what it says of itself, in its order
 * @param lamps number of lamps
 * @param lampLumens rated flux of all lamps together [lm]; empty where the photometry is absolute
 * @param statedLumens flux of the fixture as the file states it [lm], if it does
 * @param factor by which the file's intensities were multiplied
 * @param watts input power [W], if stated
 * @param length of the luminous opening along the length axis [m], 0 if not told
 * @param width of the luminous opening across it [m], 0 if not told
 * @param height of the luminous opening [m], 0 if not told
 * @param verticals the file's vertical angles in short
 * @param horizontals the file's horizontal angles or C-planes in short
 * @param tilt how its lamps' light depends on how the fixture is tilted, if told; not applied
 * @param table the intensities
 * @param photons what our own keywords add, if there are any
 * @param cautions what was taken without being stated, or does not fit; one plain sentence each
 */
public record PhotometricFile(
    Format format,
    String edition,
    List<Label> labels,
    int lamps,
    OptionalDouble lampLumens,
    OptionalDouble statedLumens,
    double factor,
    OptionalDouble watts,
    double length,
    double width,
    double height,
    String verticals,
    String horizontals,
    Optional<TiltTable> tilt,
    CandelaTable table,
    Optional<PhotonKeywords> photons,
    List<String> cautions) {
  /** Most bytes of a photometric file. */
  static final int MOST_BYTES = 4 << 20;

  /** Most intensities of a photometric file: a plane a degree, a value a quarter of a degree. */
  static final int MOST_VALUES = 1 << 19;

  /** Open formats of photometric files. */
  public enum Format {
    LM63("ANSI/IES LM-63", "lm63", ".ies"),
    EULUMDAT("EULUMDAT", "eulumdat", ".ldt");

    private final String words;
    private final String key;
    private final String ending;

    Format(String words, String key, String ending) {
      this.words = words;
      this.key = key;
      this.ending = ending;
    }

    /** Its name. */
    public String words() {
      return words;
    }

    /** Its name as a program says it. */
    public String key() {
      return key;
    }

    /** How files of it end. */
    public String ending() {
      return ending;
    }
  }

  /**
   * Something that the file says of itself.
   *
   * @param name keyword or field
   * @param text what it says
   */
  public record Label(String name, String text) {}

  /**
   * How the light of lamps depends on the fixture's tilt.
   *
   * @param geometry 1 to 3: how the lamp lies in the fixture
   * @param degrees tilts
   * @param factors on the intensity, one for each
   */
  public record TiltTable(int geometry, List<Double> degrees, List<Double> factors) {
    public TiltTable {
      degrees = List.copyOf(degrees);
      factors = List.copyOf(factors);
    }
  }

  public PhotometricFile {
    Objects.requireNonNull(format, "format");
    Objects.requireNonNull(edition, "edition");
    labels = List.copyOf(labels);
    Objects.requireNonNull(lampLumens, "lampLumens");
    Objects.requireNonNull(statedLumens, "statedLumens");
    Objects.requireNonNull(watts, "watts");
    Objects.requireNonNull(verticals, "verticals");
    Objects.requireNonNull(horizontals, "horizontals");
    Objects.requireNonNull(tilt, "tilt");
    Objects.requireNonNull(table, "table");
    Objects.requireNonNull(photons, "photons");
    cautions = List.copyOf(cautions);
  }

  /** Whether its intensities are those of the very lamps that were measured. */
  public boolean absolute() {
    return lampLumens.isEmpty();
  }

  /**
   * Reads a file.
   *
   * @param path of it
   * @throws InvalidFile with every fault found
   */
  public static PhotometricFile read(Path path) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    try {
      return read(file, Source.bytes(path, MOST_BYTES));
    } catch (Unreadable e) {
      throw new Notes().fatal(e.of(file));
    }
  }

  /**
   * Reads a file that is held in memory.
   *
   * @param file what it is called in messages
   * @param bytes what it holds
   * @throws InvalidFile with every fault found
   */
  public static PhotometricFile read(String file, byte[] bytes) {
    Notes notes = new Notes();
    List<String> cautions = new ArrayList<>();
    String text;
    try {
      text = text(Source.checked(bytes, MOST_BYTES), cautions);
    } catch (Unreadable e) {
      throw notes.fatal(e.of(file));
    }
    if (SpdxFile.isXml(text)) {
      throw notes.fatal(
          new Fault(
              file,
              0,
              0,
              "kind of file",
              "XML",
              "ANSI/IES LM-63 or EULUMDAT",
              "a spectrum of IES TM-27 is read by spectrum describe, and named by spectrum: in a"
                  + " setup"));
    }
    String[] lines = LINE_END.split(text, -1);
    PhotometricFile read =
        Lm63Reader.isLm63(lines)
            ? new Lm63Reader(file, lines, notes, cautions).read()
            : new EulumdatReader(file, lines, notes, cautions).read();
    notes.throwIfFaulty();
    return read;
  }

  /** Reads a file into a note pad of others: empty if a fault was noted. */
  static Optional<PhotometricFile> read(String file, byte[] bytes, Notes notes) {
    try {
      PhotometricFile read = read(file, bytes);
      read.cautions().forEach(caution -> notes.assume(file + ": " + caution));
      return Optional.of(read);
    } catch (InvalidFile e) {
      e.faults().forEach(notes::fault);
      return Optional.empty();
    }
  }

  private static final Pattern LINE_END = Pattern.compile("\r\n|\n|\r");

  /** UTF-8; else, as the formats are older than it, Latin-1. */
  private static String text(byte[] bytes, List<String> cautions) throws Unreadable {
    try {
      return Source.text(bytes);
    } catch (Unreadable e) {
      if (!e.inText()) {
        throw e;
      }
      cautions.add("letters beyond ASCII are taken as Latin-1");
      return new String(bytes, StandardCharsets.ISO_8859_1);
    }
  }

  /** A share of two fluxes as a caution shows it. */
  static String percent(double share) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }
}
