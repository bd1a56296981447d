package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import parfield.plan.Demand;
import parfield.plan.Extent;
import parfield.plan.Zone;
import parfield.survey.Band;
import parfield.tank.Rectangle;
import parfield.tank.Tank;

/** One of the setup's {@code demands}: what a plan must meet, and where. */
final class DemandSection {
  private static final List<String> KINDS =
      List.of("coverage", "retention", "evenness", "ends to centre", "hot spot", "mean ppfd");

  private static final String HOW = "write a demand as in {band: soft, coverage: 0.70}";
  private static final String LIVING = "living surface";
  private static final Limit SHARE = Limit.above(0, 1, "");
  private static final Limit PPFD = Limit.above(0, ReadingPlaces.BRIGHTEST, "µmol/m²/s");

  /** Relative error of a length that went to metres and back. */
  private static final double ROUNDING = 1e-12;

  private final Map<String, Optional<Band>> bands;
  private final Optional<Tank> tank;
  private final Lengths lengths;

  /** A reader of demands; bands are empty where they are stated but wrong. */
  DemandSection(Map<String, Optional<Band>> bands, Optional<Tank> tank, Lengths lengths) {
    this.bands = bands;
    this.tank = tank;
    this.lengths = lengths;
  }

  /** The demands of the list here, without those that are wrong. */
  List<Demand> read(Entry list) {
    List<Demand> demands = new ArrayList<>();
    List<Entry> entries = list.list("write demands: [{band: soft, coverage: 0.70}]");
    if (list.isList() && entries.isEmpty()) {
      list.fault("an empty list", "1 demand or more", "fill it in, or delete the key");
    }
    for (Entry entry : entries) {
      List<String> keys = new ArrayList<>(KINDS);
      keys.addAll(List.of("band", "of", "depth", "zone"));
      Optional<Section> section = entry.section(keys.toArray(String[]::new));
      if (section.isPresent()) {
        try (Section open = section.get()) {
          demand(entry, open, demands.size() + 1).ifPresent(demands::add);
        }
      }
    }
    return demands;
  }

  private Optional<Demand> demand(Entry entry, Section demand, int ordinal) {
    int faults = entry.notes().count();
    List<String> kinds = KINDS.stream().filter(demand::has).toList();
    if (kinds.size() != 1) {
      entry.fault(
          kinds.isEmpty() ? "no kind" : String.join(" and ", kinds),
          "one of " + String.join(", ", KINDS),
          kinds.isEmpty() ? HOW : "write one demand for each");
      return Optional.empty();
    }
    String kind = kinds.get(0);
    if (demand.has("band") && !kind.equals("coverage")) {
      demand
          .optional("band")
          .orElseThrow()
          .fault("a band for " + kind, "a band for coverage only", "delete it");
    }
    Extent extent = extent(demand, kind, ordinal);
    Optional<Demand> read = demand(demand, kind, extent);
    return entry.notes().count() > faults ? Optional.empty() : read;
  }

  private Optional<Demand> demand(Section demand, String kind, Extent extent) {
    return switch (kind) {
      case "coverage" -> {
        Optional<Band> band = band(demand);
        double share = demand.number(kind, SHARE, "write 70 % as 0.70");
        yield band.isEmpty() || Double.isNaN(share)
            ? Optional.empty()
            : Optional.of(new Demand.Coverage(band.get(), share, extent));
      }
      case "retention" ->
          one(demand, kind, SHARE, "write 85 % as 0.85", x -> new Demand.Retention(x, extent));
      case "evenness" ->
          one(
              demand,
              kind,
              SHARE,
              "evenness is lowest over mean, at most 1",
              x -> new Demand.Evenness(x, extent));
      case "ends to centre" ->
          one(
              demand,
              kind,
              Limit.above(0, 10, ""),
              "it is the mean of the end columns over that of the centre columns",
              x -> new Demand.EndsToCentre(x, extent));
      case "hot spot" ->
          one(
              demand,
              kind,
              PPFD,
              "state the PPFD that no place may exceed",
              x -> new Demand.HotSpot(x, extent));
      default -> {
        double[] range = Span.read(demand, kind, Limit.between(0, PPFD.high(), PPFD.unit()));
        yield Double.isNaN(range[0])
            ? Optional.empty()
            : Optional.of(new Demand.MeanPpfd(range[0], range[1], extent));
      }
    };
  }

  private static Optional<Demand> one(
      Section demand, String kind, Limit limit, String cure, DoubleFunction<Demand> make) {
    double value = demand.number(kind, limit, cure);
    return Double.isNaN(value) ? Optional.empty() : Optional.of(make.apply(value));
  }

  private Optional<Band> band(Section demand) {
    Optional<Entry> stated = demand.required("band", "name the band to cover");
    Optional<String> name = stated.flatMap(entry -> entry.text("name a band"));
    if (name.isEmpty()) {
      return Optional.empty();
    }
    if (!bands.containsKey(name.get())) {
      stated
          .get()
          .unknown(
              stated.get().path() + " is not stated",
              name.get(),
              bands.keySet(),
              "state it under bands");
      return Optional.empty();
    }
    return bands.get(name.get());
  }

  private Extent extent(Section demand, String kind, int ordinal) {
    Optional<Zone> zone =
        demand.optional("zone").flatMap(entry -> zone(entry, String.valueOf(ordinal)));
    boolean plane = plane(demand, kind);
    if (!plane) {
      return demand.optional("of").filter(entry -> entry.shown().equals(LIVING)).isPresent()
          ? new Extent.Living(zone)
          : new Extent.Volume(zone);
    }
    double depth =
        demand.number("depth", depths(), "state the depth of the plane, as in depth: 20");
    if (Double.isNaN(depth)) {
      return Extent.volume();
    }
    double metres = lengths.metres(depth);
    if (zone.isPresent() && !(metres >= zone.get().fromDepth() && metres <= zone.get().toDepth())) {
      demand
          .optional("depth")
          .orElseThrow()
          .fault(
              NumberText.shown(depth),
              "a depth within the zone",
              "change the depth, or the zone's depth");
      return Extent.volume();
    }
    return new Extent.Plane(metres, zone);
  }

  /** Whether a demand is of a plane: where it says so, or states a depth. */
  private static boolean plane(Section demand, String kind) {
    boolean depth = demand.has("depth");
    if (!demand.has("of")) {
      demand.taken("of", depth ? "plane" : "volume");
      return depth;
    }
    Entry stated = demand.optional("of").orElseThrow();
    List<String> words =
        kind.equals("retention")
            ? List.of("volume", "plane", LIVING, "lowest height")
            : List.of("volume", "plane", LIVING);
    if (stated.text("").filter("readings"::equals).isPresent()) {
      stated.fault(
          "readings",
          Notes.shown(words),
          "a plan is of the field between the readings too: write plane with its depth");
      return depth;
    }
    String word = stated.word(words).orElse("");
    if ((word.equals("volume") || word.equals(LIVING)) && depth) {
      stated.fault(
          word + " with a depth", "a plane with a depth, or a " + word, "delete one of the two");
    }
    return word.equals("plane") || depth;
  }

  private Optional<Zone> zone(Entry entry, String ordinal) {
    Optional<Section> section = entry.section("name", "x", "y", "depth");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section zone = section.get();
    if (!zone.has("x") && !zone.has("y") && !zone.has("depth")) {
      entry.fault(
          "no limits", "x, y or depth", "write zone: {x: [20, 40], y: [10, 30], depth: [10, 25]}");
      return Optional.empty();
    }
    String name =
        zone.optional("name").flatMap(given -> given.text("name the zone")).orElse(ordinal);
    double[] x = span(zone, "x", Tank::length);
    double[] y = span(zone, "y", Tank::width);
    double[] depth = span(zone, "depth", Tank::depth);
    return Double.isNaN(x[1] + y[1] + depth[1])
        ? Optional.empty()
        : Optional.of(new Zone(name, new Rectangle(x[0], x[1], y[0], y[1]), depth[0], depth[1]));
  }

  /** Two ends [m], those of the tank where none are stated. */
  private double[] span(Section zone, String key, ToDoubleFunction<Tank> size) {
    if (!zone.has(key)) {
      return new double[] {0, tank.map(size::applyAsDouble).orElse(Double.NaN)};
    }
    double[] ends = Span.read(zone, key, upTo(size));
    return new double[] {lengths.metres(ends[0]), lengths.metres(ends[1])};
  }

  private Limit depths() {
    return upTo(Tank::depth);
  }

  private Limit upTo(ToDoubleFunction<Tank> size) {
    return tank.map(
            known ->
                lengths.between(
                    0, lengths.unit().fromMetres(size.applyAsDouble(known)) * (1 + ROUNDING)))
        .orElse(lengths.notNegative());
  }
}
