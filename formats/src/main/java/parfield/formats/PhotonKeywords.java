package parfield.formats;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.units.Estimate;

/**
 * What our own keywords add to a photometric file: how its candela become photons.
 *
 * @param photonsPerLumen photon intensity over luminous intensity of the whole light [µmol s⁻¹ per
 *     lm], above 0
 * @param ppf photon flux of the light that the file tells of, with its interval [µmol s⁻¹]
 * @param channels photon flux of each channel at full output; none where the file does not tell
 * @param source what the numbers come from, in words; empty if not told
 */
public record PhotonKeywords(
    double photonsPerLumen, Estimate ppf, List<ChannelFlux> channels, String source) {
  /** Version of the keywords. */
  static final String VERSION = "1";

  static final String FORMAT = "_PARFIELD_FORMAT";
  static final String PHOTONS = "_PARFIELD_PHOTONS";
  static final String PPF = "_PARFIELD_PPF";
  static final String CHANNEL = "_PARFIELD_CHANNEL";

  /** The same where a field is short: as the first of a line {@code _PARFIELD_CH}. */
  static final String SHORT_CHANNEL = "CH";

  static final String SOURCE = "_PARFIELD_SOURCE";

  private static final Limit PER_LUMEN = Limit.between(0, 1e6, "µmol/s per lm");
  private static final Limit FLUX = Limit.between(0, 5e8, "µmol/s");

  /** Most channels of a file. */
  static final int MOST_CHANNELS = 100;

  /**
   * Photons of a channel.
   *
   * @param name of the channel
   * @param ppf of the whole fixture in this channel at full output [µmol s⁻¹]
   */
  public record ChannelFlux(String name, double ppf) {}

  public PhotonKeywords {
    Objects.requireNonNull(ppf, "ppf");
    channels = List.copyOf(channels);
    Objects.requireNonNull(source, "source");
    if (!(photonsPerLumen > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "photons of a lumen must be above 0; got %s", photonsPerLumen));
    }
  }

  /** The photon flux of a channel at full output, if it is told. */
  public Optional<ChannelFlux> channel(String name) {
    return channels.stream().filter(one -> one.name().equalsIgnoreCase(name)).findFirst();
  }

  /**
   * A keyword of ours and its line.
   *
   * @param name as above
   * @param text that follows it
   * @param line 1-based
   */
  record Line(String name, String text, int line) {}

  /**
   * Reads keywords.
   *
   * @param flux of the table [lm], which the photon flux must agree with
   * @return empty if there are none, or with faults
   */
  static Optional<PhotonKeywords> read(String file, List<Line> lines, double flux, Notes notes) {
    if (lines.isEmpty()) {
      return Optional.empty();
    }
    int faults = notes.count();
    Optional<Line> version = first(lines, FORMAT);
    if (version.isEmpty() || !version.get().text().equals(VERSION)) {
      notes.fault(
          new Fault(
              file,
              version.map(Line::line).orElse(lines.get(0).line()),
              0,
              "version of the photon keywords",
              version.map(line -> Notes.shown(line.text())).orElse("none"),
              VERSION,
              "read the file with the program that wrote it, or delete its lines of " + PREFIX));
      return Optional.empty();
    }
    double[] photons = numbers(file, lines, PHOTONS, 1, PER_LUMEN, notes);
    double[] ppf = numbers(file, lines, PPF, 3, FLUX, notes);
    List<ChannelFlux> channels = new ArrayList<>();
    for (Line line : lines) {
      if (line.name().equals(CHANNEL) && channels.size() < MOST_CHANNELS) {
        String[] parts = line.text().split(" ", 2);
        double value = NumberText.parse(parts[0]);
        if (parts.length < 2 || parts[1].isBlank() || !FLUX.contains(value)) {
          fault(file, line, "its photon flux [µmol/s] and its name, as in 80.5 blue", notes);
        } else {
          channels.add(new ChannelFlux(parts[1].strip(), value));
        }
      }
    }
    if (notes.count() > faults) {
      return Optional.empty();
    }
    if (!(photons[0] > 0) || Math.abs(photons[0] * flux - ppf[0]) > AGREEMENT * ppf[0]) {
      notes.fault(
          new Fault(
              file,
              first(lines, PPF).orElseThrow().line(),
              0,
              "photon flux",
              String.format(Locale.ROOT, "%.5g µmol/s", ppf[0]),
              String.format(
                  Locale.ROOT,
                  "that of its intensities, %.5g lm times %.5g µmol/s per lm",
                  flux,
                  photons[0]),
              "the file was changed after it was written: write it again, or delete its lines of "
                  + PREFIX));
      return Optional.empty();
    }
    return Optional.of(
        new PhotonKeywords(
            photons[0],
            new Estimate(ppf[0], ppf[1], ppf[2]),
            channels,
            first(lines, SOURCE).map(Line::text).orElse("")));
  }

  /** What all keywords of ours begin with. */
  static final String PREFIX = "_PARFIELD";

  /** How far the photon flux told may miss that of the table. */
  private static final double AGREEMENT = 0.005;

  private static Optional<Line> first(List<Line> lines, String name) {
    return lines.stream().filter(line -> line.name().equals(name)).findFirst();
  }

  private static double[] numbers(
      String file, List<Line> lines, String name, int count, Limit limit, Notes notes) {
    double[] numbers = new double[count];
    Optional<Line> line = first(lines, name);
    if (line.isEmpty()) {
      notes.fault(
          new Fault(
              file,
              lines.get(0).line(),
              0,
              name,
              "nothing",
              "a line of it beside " + FORMAT,
              "write the file again, or delete its lines of " + PREFIX));
      return numbers;
    }
    String[] words = line.get().text().strip().split(" +", count + 1);
    boolean sound = words.length >= count;
    for (int i = 0; i < count && sound; i++) {
      numbers[i] = NumberText.parse(words[i]);
      sound = limit.contains(numbers[i]);
    }
    // An interval holds its value.
    sound &= count < 3 || (numbers[1] <= numbers[0] && numbers[0] <= numbers[2]);
    if (!sound) {
      String wanted = count == 1 ? "a number, " : "a value, its low and its high end, each ";
      fault(file, line.get(), wanted + limit.text(), notes);
    }
    return numbers;
  }

  private static void fault(String file, Line line, String limit, Notes notes) {
    notes.fault(
        new Fault(
            file,
            line.line(),
            0,
            line.name(),
            line.text().isEmpty() ? "nothing" : Notes.shown(line.text()),
            limit,
            "write the file again, or delete its lines of " + PREFIX));
  }

  /** Returns the keywords with what follows each, as they are written. */
  List<Line> lines() {
    List<Line> lines = new ArrayList<>();
    lines.add(new Line(FORMAT, VERSION, 0));
    lines.add(new Line(PHOTONS, number(photonsPerLumen) + " umol/s per lm", 0));
    lines.add(new Line(PPF, ppfText() + " umol/s", 0));
    for (ChannelFlux channel : channels) {
      lines.add(new Line(CHANNEL, number(channel.ppf()) + " " + channel.name(), 0));
    }
    if (!source.isEmpty()) {
      lines.add(new Line(SOURCE, source, 0));
    }
    return lines;
  }

  String ppfText() {
    return number(ppf.value()) + " " + number(ppf.low()) + " " + number(ppf.high());
  }

  /** Longest number without an exponent. */
  private static final int LONGEST = 20;

  /** Digits of a number that is written. */
  static final MathContext DIGITS = new MathContext(7);

  /** A number to seven digits, without an exponent where it can be helped. */
  static String number(double value) {
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
    String plain = rounded.toPlainString();
    return plain.length() <= LONGEST ? plain : rounded.toString();
  }
}
