package parfield.web.recommend;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.answer.Refusal;
import parfield.formats.Setup;
import parfield.plan.Demand;
import parfield.plan.Extent;
import parfield.units.LengthUnit;
import parfield.web.bench.SetupBlocks;
import parfield.web.bench.YamlText;

/**
 * Bands and demands as fields of a form: what a person types, kept as typed.
 *
 * @param bands a row each
 * @param demands a row each
 * @param editable whether the form can say all that the setup demands
 */
public record DemandForm(List<BandRow> bands, List<DemandRow> demands, boolean editable) {
  /** Kinds of demands, by the key of the setup, and how each begins as a sentence. */
  public enum Kind {
    COVERAGE("coverage", "share inside a band, %, at least"),
    RETENTION("retention", "light kept of the lowest height, %, at least"),
    EVENNESS("evenness", "evenness U₀, %, at least"),
    ENDS("ends to centre", "ends over centre, %, at least"),
    HOT_SPOT("hot spot", "no place above, µmol m⁻² s⁻¹"),
    MEAN("mean ppfd", "mean PPFD from … to, µmol m⁻² s⁻¹");

    private final String key;
    private final String words;

    Kind(String key, String words) {
      this.key = key;
      this.words = words;
    }

    /** What it asks for. */
    public String words() {
      return words;
    }
  }

  /**
   * A band as typed.
   *
   * @param name of it
   * @param from PPFD
   * @param to PPFD
   */
  public record BandRow(String name, String from, String to) {}

  /**
   * A demand as typed.
   *
   * @param kind of it; empty if none was chosen
   * @param band that is covered, of a coverage
   * @param value the number that is wanted; of a mean its lower end
   * @param to upper end of a mean
   * @param where {@code volume}, {@code plane} or {@code living surface}
   * @param depth of a plane, in the setup's unit
   */
  public record DemandRow(
      Optional<Kind> kind, String band, String value, String to, String where, String depth) {}

  private static final Pattern NUMBER =
      Pattern.compile(
          "([-+−]?(?:\\d{1,9}(?:[.,]\\d{0,9})?|[.,]\\d{1,9}))"
              + "(?:\\s*(?:%|[µμu]mol|cm|in|″|\").*|\\s+\\p{L}.*)?");

  /** A row that shall no longer be a demand. */
  public static final String DELETE = "DELETE";

  public DemandForm {
    bands = List.copyOf(bands);
    demands = List.copyOf(demands);
  }

  /** What a setup states. */
  static DemandForm of(Setup setup) {
    LengthUnit unit = setup.length();
    boolean zones = setup.demands().stream().anyMatch(d -> d.extent().zone().isPresent());
    return new DemandForm(
        setup.bands().values().stream()
            .map(band -> new BandRow(band.name(), number(band.from()), number(band.to())))
            .toList(),
        setup.demands().stream().map(demand -> row(demand, unit)).toList(),
        !zones);
  }

  private static DemandRow row(Demand demand, LengthUnit unit) {
    String where =
        demand.extent() instanceof Extent.Plane
            ? "plane"
            : demand.extent() instanceof Extent.Living ? "living surface" : "volume";
    String depth =
        demand.extent() instanceof Extent.Plane plane ? number(unit.fromMetres(plane.depth())) : "";
    if (demand instanceof Demand.Coverage of) {
      return row(Kind.COVERAGE, of.band().name(), percent(of.share()), "", where, depth);
    } else if (demand instanceof Demand.Retention of) {
      return row(Kind.RETENTION, "", percent(of.atLeast()), "", where, depth);
    } else if (demand instanceof Demand.HotSpot) {
      return row(Kind.HOT_SPOT, "", number(demand.most()), "", where, depth);
    } else if (demand instanceof Demand.MeanPpfd) {
      return row(Kind.MEAN, "", number(demand.least()), number(demand.most()), where, depth);
    }
    Kind kind = demand instanceof Demand.Evenness ? Kind.EVENNESS : Kind.ENDS;
    return row(kind, "", percent(demand.least()), "", where, depth);
  }

  private static DemandRow row(
      Kind kind, String band, String value, String to, String where, String depth) {
    return new DemandRow(Optional.of(kind), band, value, to, where, depth);
  }

  private static String percent(double share) {
    return number(100 * share);
  }

  private static String number(double value) {
    double rounded = Math.round(value * 1e6) / 1e6;
    return rounded == Math.rint(rounded)
        ? String.format(Locale.ROOT, "%.0f", rounded)
        : String.valueOf(rounded);
  }

  /** What was typed into the form. */
  static DemandForm typed(Context context) {
    List<BandRow> bands = new ArrayList<>();
    List<String> names = context.formParams("band-name");
    for (int i = 0; i < names.size(); i++) {
      BandRow row =
          new BandRow(names.get(i).strip(), at(context, "band-from", i), at(context, "band-to", i));
      if (!(row.name + row.from + row.to).isEmpty()) {
        bands.add(row);
      }
    }
    List<DemandRow> demands = new ArrayList<>();
    List<String> kinds = context.formParams("demand-kind");
    for (int i = 0; i < kinds.size(); i++) {
      DemandRow row =
          new DemandRow(
              kind(kinds.get(i)),
              at(context, "demand-band", i),
              at(context, "demand-value", i),
              at(context, "demand-to", i),
              at(context, "demand-where", i),
              at(context, "demand-depth", i));
      boolean typed = !(row.band + row.value + row.to + row.depth).isEmpty();
      if (!kinds.get(i).equals(DELETE) && (row.kind.isPresent() || typed)) {
        demands.add(row);
      }
    }
    return new DemandForm(bands, demands, true);
  }

  private static Optional<Kind> kind(String name) {
    return Arrays.stream(Kind.values()).filter(kind -> kind.name().equals(name)).findFirst();
  }

  private static String at(Context context, String name, int i) {
    List<String> values = context.formParams(name);
    return i < values.size() ? values.get(i).strip() : "";
  }

  /**
   * The setup's text with these bands and demands in place of its own; bands or demands that say
   * what is stated already stay as they are written.
   *
   * @param text of the setup
   * @param stated what that text states; empty if it has faults
   * @throws Refusal if a number is none; the message names it
   */
  String into(String text, Optional<DemandForm> stated) {
    List<String> bandLines = bandLines();
    List<String> demandLines = demandLines();
    String changed =
        stated.map(now -> now.bandLines().equals(bandLines)).orElse(false)
            ? text
            : SetupBlocks.replace(text, "bands", bandLines);
    boolean keepDemands =
        stated.map(now -> !now.editable || now.demandLines().equals(demandLines)).orElse(false);
    return keepDemands ? changed : SetupBlocks.replace(changed, "demands", demandLines);
  }

  private List<String> bandLines() {
    return bands.stream()
        .map(
            row ->
                "  "
                    + YamlText.quoted(row.name)
                    + ": {from: "
                    + typedNumber("lower end of band " + row.name, row.from)
                    + ", to: "
                    + typedNumber("upper end of band " + row.name, row.to)
                    + "}")
        .toList();
  }

  private List<String> demandLines() {
    return demands.stream().map(row -> "  - {" + demand(row) + "}").toList();
  }

  private static String demand(DemandRow row) {
    Kind kind =
        row.kind.orElseThrow(
            () ->
                Refusal.of(
                    "a demand says "
                        + (row.value.isEmpty() ? "something" : row.value)
                        + " but not of what",
                    "choose what it asks for, or empty its fields"));
    String what = kind.words;
    String where =
        row.where.equals("plane")
            ? ", of: plane, depth: " + typedNumber("depth of a plane", row.depth)
            : row.where.equals("living surface") ? ", of: living surface" : "";
    return switch (kind) {
      case COVERAGE ->
          "band: " + YamlText.quoted(row.band) + ", coverage: " + share(what, row.value) + where;
      case RETENTION ->
          "retention: "
              + share(what, row.value)
              + (where.isEmpty() ? ", of: lowest height" : where);
      case EVENNESS, ENDS -> kind.key + ": " + share(what, row.value) + where;
      case HOT_SPOT -> "hot spot: " + typedNumber(what, row.value) + where;
      case MEAN ->
          "mean ppfd: ["
              + typedNumber("mean PPFD, lower end", row.value)
              + ", "
              + typedNumber("mean PPFD, upper end", row.to)
              + "]"
              + where;
    };
  }

  private static String share(String what, String percent) {
    return number(Double.parseDouble(typedNumber(what, percent)) / 100);
  }

  /** A number as a person types it: a decimal comma is one, a unit behind it is left out. */
  static String typedNumber(String what, String typed) {
    Matcher match = NUMBER.matcher(typed.strip());
    if (match.matches()) {
      return number(Double.parseDouble(match.group(1).replace(',', '.').replace('−', '-')));
    }
    throw Refusal.of(
        what + ": got " + (typed.isBlank() ? "nothing" : typed), "type a number, as in 70 or 12.5");
  }

  /** Names of the bands, to choose from. */
  public List<String> bandNames() {
    return bands.stream().map(BandRow::name).toList();
  }
}
