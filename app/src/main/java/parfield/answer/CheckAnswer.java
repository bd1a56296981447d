package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Objects;
import parfield.aquascape.Bounds;
import parfield.aquascape.Rock;
import parfield.field.Departure;
import parfield.formats.Setup;
import parfield.lamp.Fixture;
import parfield.plan.Demand;
import parfield.plan.Demands;
import parfield.survey.Band;
import parfield.survey.Meter;
import parfield.survey.Survey;
import parfield.units.LengthUnit;

/**
 * What a setup holds, what was assumed, and which readings look wrong.
 *
 * @param setup without faults
 * @param demands stated or by custom; none where there is nothing to aim at
 * @param suspicions by survey, in the setup's order, surveys without any left out
 */
public record CheckAnswer(
    Setup setup, java.util.Optional<Demands> demands, List<SuspectReadings> suspicions)
    implements Answer {
  public CheckAnswer {
    Objects.requireNonNull(setup, "setup");
    Objects.requireNonNull(demands, "demands");
    suspicions = List.copyOf(suspicions);
  }

  /** Whether some reading looks wrong. */
  public boolean anySuspicion() {
    return !suspicions.isEmpty();
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(setup.source()).append(" holds a bench without faults.\n\n");
    text.append(TankWords.lines(setup.tank(), setup.room(), unit));
    text.append('\n').append(fixtures());
    text.append('\n').append(rigs(unit));
    if (!setup.meters().isEmpty()) {
      text.append('\n').append(meters(unit));
    }
    text.append('\n').append(surveys(unit));
    if (!setup.bands().isEmpty()) {
      text.append('\n').append(bands());
    }
    demands.ifPresent(
        known -> {
          text.append("\nDemands\n");
          known.all().forEach(demand -> text.append(Lines.item(demand.inWords(unit))));
        });
    text.append(assumed());
    text.append('\n').append(SuspectReadings.text(suspicions, unit));
    return text.toString();
  }

  private String fixtures() {
    Table table =
        new Table(
            "lllrlr", "fixture", "channel", "spectrum", "power (W)", "distribution", "emitters");
    for (Fixture fixture : setup.fixtures().values()) {
      for (int c = 0; c < fixture.channels().size(); c++) {
        var channel = fixture.channels().get(c);
        table.row(
            c == 0 ? fixture.name() : "",
            channel.name(),
            channel.spectrum().isPresent() ? "stated" : "flat",
            channel.watts().isPresent()
                ? Numbers.plain(channel.watts().getAsDouble(), 1)
                : Numbers.NONE,
            channel.distribution().isPresent() ? "stated" : "fitted",
            c == 0 ? String.valueOf(fixture.emitters().size()) : "");
      }
    }
    StringBuilder text = new StringBuilder(table.text());
    for (Fixture fixture : setup.fixtures().values()) {
      fixture
          .masters()
          .forEach(
              master ->
                  text.append(
                      Lines.item(
                          String.format(
                              "%s: the dial %s scales %s",
                              fixture.name(), master.name(), String.join(", ", master.scales())))));
    }
    return text.toString();
  }

  private String rigs(LengthUnit unit) {
    Table table =
        new Table(
            "llrrrl",
            "rig",
            "fixture",
            "x (" + unit.symbol() + ")",
            "y (" + unit.symbol() + ")",
            "height (" + unit.symbol() + ")",
            "dials (%)");
    setup
        .rigs()
        .values()
        .forEach(
            rig -> {
              for (int h = 0; h < rig.hangings().size(); h++) {
                var hanging = rig.hangings().get(h);
                table.row(
                    h == 0 ? rig.name() : "",
                    hanging.fixture().name(),
                    Numbers.length(hanging.x(), unit),
                    Numbers.length(hanging.y(), unit),
                    Numbers.length(hanging.height(), unit),
                    dials(hanging.fixture(), hanging.setting()));
              }
            });
    return table.text();
  }

  private static String dials(Fixture fixture, parfield.lamp.Setting setting) {
    return String.join(
        ", ",
        fixture.dials().stream()
            .map(dial -> dial + " " + Numbers.plain(setting.percent(dial), 1))
            .toList());
  }

  private String meters(LengthUnit unit) {
    Table table =
        new Table(
            "lrrrlr",
            "meter",
            "scale error (%)",
            "repeat error (%)",
            "place error (" + unit.symbol() + ")",
            "immersion factor",
            "ambient (" + Numbers.PPFD + ")");
    for (Meter meter : setup.meters().values()) {
      table.row(
          meter.name(),
          Numbers.finePercent(meter.scaleError()),
          Numbers.finePercent(meter.repeatError()),
          Numbers.length(meter.positionError(), unit),
          Numbers.plain(meter.immersion(), 3) + (meter.applied() ? " (applied)" : " (to apply)"),
          Numbers.plain(meter.ambient(), 1));
    }
    return table.text();
  }

  private String surveys(LengthUnit unit) {
    if (setup.surveys().isEmpty()) {
      return "No survey is stated: there is nothing to fit yet.\n";
    }
    Table table =
        new Table(
            "lllrlrr",
            "survey",
            "rig",
            "meter",
            "readings",
            "depths (" + unit.symbol() + ")",
            "least",
            "greatest (" + Numbers.PPFD + ")");
    for (Survey survey : setup.surveys().values()) {
      double[] ppfd = survey.ppfd();
      List<String> depths =
          survey.readings().stream()
              .map(reading -> reading.place().depth())
              .sorted()
              .map(depth -> Numbers.length(depth, unit))
              .distinct()
              .toList();
      table.row(
          survey.name(),
          survey.rig().name(),
          survey.meter().name(),
          String.valueOf(ppfd.length),
          depths.size() <= 6
              ? String.join(", ", depths)
              : depths.get(0) + " to " + depths.get(depths.size() - 1),
          Numbers.ppfd(java.util.Arrays.stream(ppfd).min().orElseThrow()),
          Numbers.ppfd(java.util.Arrays.stream(ppfd).max().orElseThrow()));
    }
    return table.text();
  }

  private String bands() {
    Table table = new Table("lrr", "band", "from", "to (" + Numbers.PPFD + ")");
    for (Band band : setup.bands().values()) {
      table.row(band.name(), Numbers.plain(band.from(), 1), Numbers.plain(band.to(), 1));
    }
    return table.text();
  }

  private List<String> assumptions() {
    List<String> all = new java.util.ArrayList<>(setup.assumptions());
    demands.ifPresent(known -> all.addAll(known.assumptions()));
    Departure.of(setup.tank()).forEach(left -> all.add(left.inWords()));
    return all;
  }

  private String assumed() {
    return assumptions().isEmpty()
        ? "\nNothing was assumed.\n"
        : Lines.section("Assumed", assumptions());
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("setup", setup.source());
    ObjectNode tank = json.putObject("tank");
    Json.length(tank, "length", setup.tank().length());
    Json.length(tank, "width", setup.tank().width());
    Json.length(tank, "water_depth", setup.tank().depth());
    Json.number(tank, "bottom_reflectance", setup.tank().bottomReflectance());
    Json.number(tank, "yellowing_per_m", setup.tank().water().yellowing());
    Json.number(tank, "scattering_per_m", setup.tank().water().scattering().coefficient());
    Json.length(tank, "freeboard", setup.tank().opening().freeboard());
    ArrayNode rocks = tank.putArray("rocks");
    for (Rock rock : setup.tank().aquascape().rocks()) {
      Bounds bounds = rock.shape().bounds();
      ObjectNode entry = rocks.addObject();
      entry.put("name", rock.name());
      Json.length(entry, "from_x", bounds.fromX());
      Json.length(entry, "to_x", bounds.toX());
      Json.length(entry, "from_y", bounds.fromY());
      Json.length(entry, "to_y", bounds.toY());
      Json.length(entry, "from_depth", bounds.fromDepth());
      Json.length(entry, "to_depth", bounds.toDepth());
    }
    json.set("fixtures", names(setup.fixtures().keySet()));
    json.set("rigs", names(setup.rigs().keySet()));
    ArrayNode surveys = json.putArray("surveys");
    for (Survey survey : setup.surveys().values()) {
      ObjectNode entry = surveys.addObject();
      entry.put("name", survey.name());
      entry.put("rig", survey.rig().name());
      entry.put("meter", survey.meter().name());
      entry.put("readings", survey.readings().size());
    }
    ArrayNode bands = json.putArray("bands");
    for (Band band : setup.bands().values()) {
      ObjectNode entry = bands.addObject();
      entry.put("name", band.name());
      Json.ppfd(entry, "from", band.from());
      Json.ppfd(entry, "to", band.to());
    }
    ArrayNode wanted = json.putArray("demands");
    demands.ifPresent(known -> known.all().stream().map(Demand::inWords).forEach(wanted::add));
    ArrayNode assumed = json.putArray("assumptions");
    assumptions().forEach(assumed::add);
    json.set("suspicious_readings", SuspectReadings.json(suspicions));
    return json;
  }

  private static ArrayNode names(Iterable<String> names) {
    ArrayNode array = com.fasterxml.jackson.databind.node.JsonNodeFactory.instance.arrayNode();
    names.forEach(array::add);
    return array;
  }
}
