package parfield.formats;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parfield.spectrum.Scale;

/**
 * What the numbers of a spectrum count, each of them per nanometre.
 *
 * @param quantity energy, photons or an instrument's counts
 * @param scale of a place, of the whole lamp, or unknown
 * @param factor from the written number to W or µmol s⁻¹, per m² where of a place, per nm; 1 where
 *     the scale is not known
 */
public record SpectralUnit(Quantity quantity, Scale scale, double factor) {
  /** What is counted. */
  public enum Quantity {
    /** Energy: W. */
    ENERGY,
    /** Photons: µmol s⁻¹. */
    PHOTONS,
    /** What a spectrometer shows before its own response is divided out. */
    COUNTS
  }

  /** How a unit may be written. */
  static final String EXAMPLES = "W/m2/nm, uW/cm2/nm, W/nm, umol/m2/s/nm, energy, photons, counts";

  private static final Pattern TOKEN = Pattern.compile("([a-z]+)([+-]?\\d)?");
  private static final Pattern BRACKETS = Pattern.compile("^(.*?)[(\\[]([^()\\[\\]]+)[)\\]]$");
  private static final Set<String> PHOTON_WORDS = Set.of("photon", "photons", "quanta", "quantum");
  private static final Set<String> ENERGY_WORDS =
      Set.of("energy", "power", "irradiance", "radiant", "watts", "watt", "spd");
  private static final Set<String> RELATIVE_WORDS =
      Set.of("relative", "rel", "arbitrary", "arb", "normalised", "normalized");

  /** Words about a quantity that name no spectrum. */
  private static final Set<String> FILLERS =
      Set.of("relative", "rel", "arbitrary", "spectral", "flux", "density", "per", "value");

  public SpectralUnit {
    Objects.requireNonNull(quantity, "quantity");
    Objects.requireNonNull(scale, "scale");
    if (!(factor > 0) || Double.isInfinite(factor)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a unit's factor must be above 0 and finite; got %s", factor));
    }
  }

  /** A quantity of unknown scale. */
  public static SpectralUnit relative(Quantity quantity) {
    return new SpectralUnit(quantity, Scale.RELATIVE, 1);
  }

  /**
   * What a text states, as in {@code W/m²/nm}, {@code µmol m⁻² s⁻¹ nm⁻¹}, {@code relative photon
   * flux} or {@code counts}.
   *
   * @return empty if the text states nothing that is known
   */
  public static Optional<SpectralUnit> of(String text) {
    String plain = plain(text);
    Optional<SpectralUnit> written = symbols(plain);
    return written.isPresent() ? written : words(plain);
  }

  /** The head of a column: a name, and a unit if one is written after it. */
  record Head(String name, Optional<SpectralUnit> unit) {}

  /** Reads the head of a column of values. */
  static Head head(String text) {
    String stripped = text.strip();
    Matcher brackets = BRACKETS.matcher(stripped);
    if (brackets.matches() && of(brackets.group(2)).isPresent()) {
      return new Head(
          withoutWords(brackets.group(1).strip().split("[\\s_]+")),
          scaled(text, of(brackets.group(2))));
    }
    String[] parts = stripped.split("[\\s_]+");
    for (int from = 0; from < parts.length; from++) {
      String rest = String.join(" ", List.of(parts).subList(from, parts.length));
      // A single letter is rather the name of a channel.
      Optional<SpectralUnit> unit = rest.length() > 3 ? symbols(plain(rest)) : Optional.empty();
      if (unit.isPresent()) {
        return new Head(withoutWords(Arrays.copyOf(parts, from)), scaled(text, unit));
      }
    }
    Optional<SpectralUnit> unit = words(plain(stripped));
    return new Head(unit.isPresent() ? withoutWords(parts) : stripped, unit);
  }

  /** The name that remains where a head says what is counted in words. */
  private static String withoutWords(String[] parts) {
    return Stream.of(parts)
        .filter(part -> words(plain(part)).isEmpty())
        .filter(part -> !FILLERS.contains(plain(part)))
        .collect(Collectors.joining(" "));
  }

  /** The unit that a line of text before the samples states somewhere. */
  static Optional<SpectralUnit> within(String line) {
    for (String piece : line.split("[,;:()\\[\\]|]")) {
      Optional<SpectralUnit> unit = head(piece).unit();
      if (unit.isPresent()) {
        return scaled(line, unit);
      }
    }
    return Optional.empty();
  }

  /** What calls itself relative has no scale, whatever its unit. */
  private static Optional<SpectralUnit> scaled(String text, Optional<SpectralUnit> unit) {
    boolean relative = wordsOf(plain(text)).stream().anyMatch(RELATIVE_WORDS::contains);
    return relative ? unit.map(known -> relative(known.quantity())) : unit;
  }

  private static Optional<SpectralUnit> symbols(String plain) {
    String rest = plain;
    Set<String> seen = new HashSet<>();
    Matcher tokens = TOKEN.matcher(plain);
    while (tokens.find()) {
      String power = tokens.group(2) == null ? "" : tokens.group(2).replaceAll("[+-]", "");
      seen.add(tokens.group(1) + (power.equals("1") ? "" : power));
    }
    rest = TOKEN.matcher(rest).replaceAll("").replaceAll("[\\s/.*-]", "");
    if (!rest.isEmpty()) {
      return Optional.empty();
    }
    Optional<Base> base = Base.in(seen);
    if (base.isEmpty()) {
      return Optional.empty();
    }
    seen.remove(base.get().symbol);
    seen.removeAll(PHOTON_WORDS);
    double area = seen.remove("m2") ? 1 : seen.remove("cm2") ? 1e4 : 0;
    boolean second = seen.remove("s") || base.get().quantity == Quantity.ENERGY;
    double wavelength = seen.remove("nm") ? 1 : seen.remove("um") ? 1e-3 : 0;
    boolean radiance = seen.remove("sr");
    if (!seen.isEmpty()) {
      return Optional.empty();
    }
    if (base.get().quantity == Quantity.COUNTS || wavelength == 0 || !second || radiance) {
      return Optional.of(relative(base.get().quantity));
    }
    Scale scale = area > 0 ? Scale.IRRADIANCE : Scale.FLUX;
    return Optional.of(
        new SpectralUnit(
            base.get().quantity, scale, base.get().factor * Math.max(area, 1) * wavelength));
  }

  private static Optional<SpectralUnit> words(String plain) {
    Set<String> words = wordsOf(plain);
    boolean photons = words.stream().anyMatch(PHOTON_WORDS::contains);
    boolean energy = words.stream().anyMatch(ENERGY_WORDS::contains);
    boolean counts = words.contains("counts");
    if (counts) {
      return Optional.of(relative(Quantity.COUNTS));
    }
    if (photons) {
      return Optional.of(relative(Quantity.PHOTONS));
    }
    return energy ? Optional.of(relative(Quantity.ENERGY)) : Optional.empty();
  }

  private static Set<String> wordsOf(String plain) {
    return Set.copyOf(new HashSet<>(List.of(plain.split("[^a-z]+"))));
  }

  /** Lower case, superscripts and signs as plain letters. */
  private static String plain(String text) {
    String plain =
        Normalizer.normalize(text, Normalizer.Form.NFKC)
            .toLowerCase(Locale.ROOT)
            .replace('μ', 'u')
            .replace('−', '-')
            .replace('·', ' ')
            .replace('×', ' ')
            .replace('_', ' ')
            .replace("^", "")
            .replaceAll("[()\\[\\]{}]", " ")
            .replaceAll("\\bmicromols?\\b", "umol")
            .replaceAll("\\b(count|cts|adu)\\b", "counts")
            .replaceAll("\\bper\\b", "/");
    return plain.strip();
  }

  /** The units that a unit of spectra is built on. */
  private enum Base {
    W(Quantity.ENERGY, 1, "w"),
    MILLIWATT(Quantity.ENERGY, 1e-3, "mw"),
    MICROWATT(Quantity.ENERGY, 1e-6, "uw"),
    NANOWATT(Quantity.ENERGY, 1e-9, "nw"),
    MICROMOL(Quantity.PHOTONS, 1, "umol"),
    MILLIMOL(Quantity.PHOTONS, 1e3, "mmol"),
    NANOMOL(Quantity.PHOTONS, 1e-3, "nmol"),
    MOL(Quantity.PHOTONS, 1e6, "mol"),
    COUNTS(Quantity.COUNTS, 1, "counts");

    private final Quantity quantity;
    private final double factor;
    private final String symbol;

    Base(Quantity quantity, double factor, String symbol) {
      this.quantity = quantity;
      this.factor = factor;
      this.symbol = symbol;
    }

    static Optional<Base> in(Set<String> tokens) {
      for (Base base : values()) {
        if (tokens.contains(base.symbol)) {
          return Optional.of(base);
        }
      }
      return Optional.empty();
    }
  }
}
