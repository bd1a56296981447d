package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.aquascape.LivingSurface;
import parfield.care.Caution;
import parfield.care.CoralGroup;
import parfield.care.DailyProgram;
import parfield.care.DayLight;
import parfield.care.DayOutputs;
import parfield.care.Home;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.plan.Zone;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * Which group of corals can live where under a rig's day.
 *
 * @param source name of the setup
 * @param rig whose light it is
 * @param program when it is lit
 * @param groups who was asked about
 * @param water every group in every part of the water, part by part
 * @param surface every group on the whole living surface: rocks and bottom
 * @param whole every group in all of the water
 * @param planes level ones that were asked for, maybe none
 * @param section the upright plane through the middle, if it was asked for
 * @param files that were left
 */
public record HomesAnswer(
    String source,
    Rig rig,
    DailyProgram program,
    List<CoralGroup> groups,
    List<Home> water,
    List<Home> surface,
    List<Home> whole,
    List<DayPlane> planes,
    Optional<DayPlane> section,
    List<String> files)
    implements Answer {
  /** Places in the water: about a hundred, so a percent each, in each of nine parts. */
  private static final int COLUMNS = 18;

  private static final int ROWS = 6;
  private static final int LAYERS = 9;
  private static final int SURFACE = 400;

  public HomesAnswer {
    Objects.requireNonNull(source, "source");
    groups = List.copyOf(groups);
    water = List.copyOf(water);
    surface = List.copyOf(surface);
    whole = List.copyOf(whole);
    planes = List.copyOf(planes);
    Objects.requireNonNull(section, "section");
    files = List.copyOf(files);
  }

  /**
   * Asks who can live where.
   *
   * @param layers of the water, 1 to 3
   * @param parts along the length, 1 or 3
   */
  public static HomesAnswer of(
      String source,
      LightModel model,
      FieldSolver solver,
      Rig rig,
      DailyProgram program,
      List<CoralGroup> groups,
      int layers,
      int parts) {
    DayOutputs outputs = DayOutputs.of(program, rig);
    Tank tank = rig.tank();
    Places water = Places.volume(tank, COLUMNS, ROWS, LAYERS);
    Places surface =
        Places.of(
            LivingSurface.of(tank.aquascape(), tank.length(), tank.width(), tank.depth(), SURFACE)
                .samples()
                .stream()
                .map(sample -> new Place(sample.x(), sample.y(), sample.depth()))
                .toList());
    DayLight wet = DayLight.of(model.predict(solver, rig, water), outputs);
    return new HomesAnswer(
        source,
        rig,
        program,
        groups,
        Home.of(wet, water, Home.zones(tank, layers, parts), groups),
        Home.of(
            DayLight.of(model.predict(solver, rig, surface), outputs),
            surface,
            List.of(Zone.depths("rocks and bottom", tank, 0, tank.depth())),
            groups),
        Home.of(wet, water, List.of(Zone.depths("all the water", tank, 0, tank.depth())), groups),
        List.of(),
        Optional.empty(),
        List.of());
  }

  /** This answer with level planes of the same day. */
  public HomesAnswer withPlanes(List<DayPlane> levels) {
    return new HomesAnswer(
        source, rig, program, groups, water, surface, whole, levels, section, files);
  }

  /**
   * This answer with level planes.
   *
   * @param depths of them [m]
   * @param cell greatest side of their cells [m]
   */
  public HomesAnswer withPlanes(
      LightModel model, FieldSolver solver, List<Double> depths, double cell) {
    DayOutputs outputs = DayOutputs.of(program, rig);
    return withPlanes(
        depths.stream()
            .map(depth -> DayPlane.level(model, solver, rig, outputs, depth, cell))
            .toList());
  }

  /** This answer with the section, in cells of at most {@code cell} [m]. */
  public HomesAnswer withSection(LightModel model, FieldSolver solver, double cell) {
    DayPlane upright = DayPlane.upright(model, solver, rig, DayOutputs.of(program, rig), cell);
    return new HomesAnswer(
        source, rig, program, groups, water, surface, whole, planes, Optional.of(upright), files);
  }

  /** This answer with files that were left. */
  public HomesAnswer leaving(List<String> left) {
    return new HomesAnswer(
        source, rig, program, groups, water, surface, whole, planes, section, left);
  }

  /** Parts of the water, in their order. */
  public List<Zone> zones() {
    return water.stream().map(Home::zone).distinct().toList();
  }

  /** A group in a part of the water. */
  public Home home(CoralGroup group, Zone zone) {
    return water.stream()
        .filter(home -> home.group().equals(group) && home.zone().equals(zone))
        .findFirst()
        .orElseThrow();
  }

  /** Where a group is best off, in a sentence without its full stop. */
  public String best(CoralGroup group) {
    Optional<Home> best =
        water.stream()
            .filter(home -> home.group().equals(group))
            .max(Comparator.comparingDouble(home -> home.fits().value()));
    Home home = best.orElseThrow();
    if (home.answer() == Home.Answer.NO) {
      return String.format(
          Locale.ROOT,
          "%s: nowhere; %s is mostly %s",
          group.name(),
          home.zone().name(),
          home.mostly().words());
    }
    return String.format(
        Locale.ROOT,
        "%s: best in %s, where %s %% of the places suit it",
        group.name(),
        home.zone().name(),
        Numbers.percent(home.fits()));
  }

  /** What a group is asked to have, in a sentence without its full stop. */
  public static String wants(CoralGroup group) {
    return String.format(
        Locale.ROOT,
        "%s: %s to %s %s at most in the day, %s to %s %s; confidence %s, %s",
        group.name(),
        Numbers.plain(group.ppfd().from(), 0),
        Numbers.plain(group.ppfd().to(), 0),
        Numbers.PPFD,
        Numbers.plain(group.dliFrom(), 1),
        Numbers.plain(group.dliTo(), 1),
        DayAnswer.MOL,
        group.certainty().word(),
        group.source());
  }

  /** A share with what it says, as in {@code 71 (66–75) yes}. */
  public static String cell(Home home) {
    return Numbers.percent(home.fits()) + " " + home.answer().word();
  }

  /** All the water, then rocks and bottom: every group in each. */
  public List<Home> wholes() {
    List<Home> all = new ArrayList<>(whole);
    all.addAll(surface);
    return all;
  }

  private Table shares() {
    Table table = new Table("llrrr", "where", "group", "by PPFD", "by DLI", "by both");
    for (Home home : wholes()) {
      table.row(
          List.of(
              home.zone().name(),
              home.group().name(),
              Numbers.percent(home.byPeak()),
              Numbers.percent(home.byDose()),
              Numbers.percent(home.fits())));
    }
    return table;
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(Locale.ROOT, "Who can live where under rig %s of %s\n", rig.name(), source));
    AskedDay.words(program).forEach(line -> text.append(Lines.item(line)));
    text.append("\nShare of the places (%) whose peak and dose suit a group\n");
    List<String> header = new ArrayList<>(List.of("where"));
    groups.forEach(group -> header.add(group.name()));
    Table table = new Table("l" + "r".repeat(groups.size()), header);
    for (Zone zone : zones()) {
      List<String> row = new ArrayList<>(List.of(zone.name()));
      groups.forEach(group -> row.add(cell(home(group, zone))));
      table.row(row);
    }
    List<String> row = new ArrayList<>(List.of("rocks and bottom"));
    surface.forEach(home -> row.add(cell(home)));
    table.row(row);
    text.append(table.text());
    text.append("\nShare (%) by the peak alone, by the dose alone, and by both\n");
    text.append(shares().text());
    for (DayPlane plane : planes()) {
      text.append('\n').append("Plane ").append(plane.where(unit)).append('\n');
      groups.forEach(group -> text.append(Lines.item(plane.standing(group))));
    }
    section.ifPresent(
        plane -> {
          text.append('\n').append("S").append(plane.where(unit).substring(1)).append('\n');
          groups.forEach(group -> text.append(Lines.item(plane.standing(group))));
        });
    text.append(Lines.section("In short", groups.stream().map(this::best).toList()));
    text.append(Lines.section("What they want", groups.stream().map(HomesAnswer::wants).toList()));
    text.append(
        "\nIntervals run from 5 to 95 %, the meter's scale error included. Light is one thing that"
            + " corals need;\nflow, water and neighbours are others.\n");
    text.append(Lines.section("Cautions", List.of(Caution.ANIMALS.inWords())));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("setup", source);
    json.put("rig", rig.name());
    Json.strings(json, "program", AskedDay.words(program));
    ArrayNode who = json.putArray("groups");
    groups.forEach(group -> DayAnswer.group(who.addObject(), group));
    ArrayNode homes = json.putArray("homes");
    water.forEach(home -> put(homes.addObject(), home));
    wholes().forEach(home -> put(homes.addObject(), home));
    ArrayNode all = json.putArray("planes");
    planes.forEach(plane -> put(all.addObject(), plane));
    section.ifPresent(plane -> put(json.putObject("section"), plane));
    Json.strings(json, "cautions", List.of(Caution.ANIMALS.inWords()));
    Json.strings(json, "files", files);
    return json;
  }

  private static void put(ObjectNode entry, Home home) {
    entry.put("zone", home.zone().name());
    Json.length(entry, "from_depth", home.zone().fromDepth());
    Json.length(entry, "to_depth", home.zone().toDepth());
    entry.put("group", home.group().name());
    entry.put("places", home.places());
    Json.number(entry, "fits", home.fits());
    Json.number(entry, "fits_by_ppfd", home.byPeak());
    Json.number(entry, "fits_by_dli", home.byDose());
    entry.put("answer", home.answer().word());
    entry.put("mostly", home.mostly().words());
  }

  private void put(ObjectNode entry, DayPlane plane) {
    plane.depth().ifPresent(depth -> Json.length(entry, "depth", depth));
    ArrayNode who = entry.putArray("standings");
    for (CoralGroup group : groups) {
      ObjectNode of = who.addObject();
      of.put("group", group.name());
      ArrayNode shares = of.putArray("shares");
      plane
          .standings(group)
          .forEach(
              (words, share) -> {
                ObjectNode one = shares.addObject();
                one.put("standing", words);
                Json.number(one, "share", share);
              });
    }
  }
}
