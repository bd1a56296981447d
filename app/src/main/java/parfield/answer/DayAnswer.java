package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import parfield.care.Caution;
import parfield.care.CoralGroup;
import parfield.care.DailyProgram;
import parfield.care.DayLight;
import parfield.care.DayOutputs;
import parfield.care.Spans;
import parfield.care.Standing;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.PredictedField;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * The light of a day under one rig, the meter's scale error in every interval.
 *
 * @param source name of the setup
 * @param rig whose light it is
 * @param program when it is lit
 * @param place at which the day is followed
 * @param curve PPFD there through the day
 * @param peak highest PPFD of the day there [µmol m⁻² s⁻¹]
 * @param dli daily light integral there [mol m⁻² d⁻¹]
 * @param stands how each group would stand there
 * @param planes doses of whole planes, maybe none
 * @param files that were left
 */
public record DayAnswer(
    String source,
    Rig rig,
    DailyProgram program,
    Place place,
    List<Moment> curve,
    Estimate peak,
    Estimate dli,
    List<Stand> stands,
    List<DayPlane> planes,
    List<String> files)
    implements Answer {
  /** Unit of a daily light integral. */
  public static final String MOL = "mol m⁻² d⁻¹";

  /** From this share of the truths on, something is said to be so. */
  private static final double SURE = 0.95;

  /**
   * A moment of the day.
   *
   * @param second of the day, 0 to 86 400
   * @param ppfd then [µmol m⁻² s⁻¹]
   */
  public record Moment(double second, Estimate ppfd) {}

  /**
   * How a group stands at the place.
   *
   * @param group who
   * @param shares of the truths in each standing; they add up to 1
   * @param words what to make of it
   */
  public record Stand(CoralGroup group, Map<Standing, Double> shares, String words) {}

  public DayAnswer {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(place, "place");
    curve = List.copyOf(curve);
    stands = List.copyOf(stands);
    planes = List.copyOf(planes);
    files = List.copyOf(files);
  }

  /**
   * Asks about a day.
   *
   * @param source name of the setup
   * @param model of the bench
   * @param solver of its light
   * @param rig as the bench states it
   * @param program when it is lit
   * @param place at which the day is followed
   * @param depths of the planes whose doses are wanted [m]
   * @param cell greatest side of their cells [m]
   * @param groups that might live there
   */
  public static DayAnswer of(
      String source,
      LightModel model,
      FieldSolver solver,
      Rig rig,
      DailyProgram program,
      Place place,
      List<Double> depths,
      double cell,
      List<CoralGroup> groups) {
    DayOutputs outputs = DayOutputs.of(program, rig);
    PredictedField here = model.predict(solver, rig, Places.of(List.of(place)));
    DayLight light = DayLight.of(here, outputs);
    List<Moment> curve =
        Arrays.stream(outputs.moments())
            .mapToObj(second -> new Moment(second, DayLight.ppfdAt(here, outputs, second)[0]))
            .toList();
    List<DayPlane> planes =
        depths.stream()
            .map(depth -> DayPlane.level(model, solver, rig, outputs, depth, cell))
            .toList();
    return new DayAnswer(
        source,
        rig,
        program,
        place,
        curve,
        light.peak()[0],
        light.dli()[0],
        groups.stream().map(group -> stand(group, light, program)).toList(),
        planes,
        List.of());
  }

  private static Stand stand(CoralGroup group, DayLight light, DailyProgram program) {
    Map<Standing, Double> shares = new EnumMap<>(Standing.class);
    for (Standing standing : Standing.values()) {
      long count =
          IntStream.range(1, light.truths())
              .filter(t -> group.under(light.peak(t, 0), light.dli(t, 0)) == standing)
              .count();
      shares.put(standing, (double) count / (light.truths() - 1));
    }
    Standing best = group.under(light.peak(0, 0), light.dli(0, 0));
    String words =
        shares.values().stream().anyMatch(share -> share >= SURE)
            ? shares.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey()
                .words()
            : "too close to call, most likely " + best.words();
    if (best == Standing.DAY_TOO_MUCH) {
      long minutes =
          (long) (program.photoperiod().toMinutes() * group.dliTo() / light.dli(0, 0)) / 10 * 10;
      words +=
          String.format(
              Locale.ROOT,
              ": the peak is in the band, yet %s a day give %s %s against at most %s; %s of the same"
                  + " light would be enough",
              Spans.words(program.photoperiod()),
              Numbers.fixed(light.dli(0, 0), 1),
              MOL,
              Numbers.plain(group.dliTo(), 1),
              Spans.words(Duration.ofMinutes(minutes)));
    }
    return new Stand(group, shares, words);
  }

  /** This answer with files that were left. */
  public DayAnswer leaving(List<String> left) {
    return new DayAnswer(source, rig, program, place, curve, peak, dli, stands, planes, left);
  }

  /** A dose with its interval, as in {@code 7.2 (6.8–7.7)}. */
  public static String dose(Estimate dli) {
    return Numbers.fixed(dli.value(), 1)
        + " ("
        + Numbers.fixed(dli.low(), 1)
        + "–"
        + Numbers.fixed(dli.high(), 1)
        + ")";
  }

  /** A time of day, as in {@code 09:30}. */
  public static String clock(double second) {
    long minutes = Math.round(second / 60);
    return String.format(Locale.ROOT, "%02d:%02d", minutes / 60, minutes % 60);
  }

  /** The day at every whole hour at which there is light. */
  public List<Moment> hours() {
    return curve.stream()
        .filter(moment -> moment.second() % 3600 == 0 && moment.ppfd().high() > 0)
        .toList();
  }

  /** What dose and peak are, in a sentence. */
  public String summary(LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "At %s, %s deep: at most %s %s, %s %s in a day of %s",
        Numbers.spot(place, unit),
        Numbers.withUnit(place.depth(), unit),
        Numbers.ppfd(peak),
        Numbers.PPFD,
        dose(dli),
        MOL,
        Spans.words(program.photoperiod()));
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(String.format(Locale.ROOT, "A day under rig %s of %s\n", rig.name(), source));
    AskedDay.words(program).forEach(line -> text.append(Lines.item(line)));
    text.append('\n').append(summary(unit)).append("\n\n");
    Table hours = new Table("rr", "time", "PPFD (" + Numbers.PPFD + ")");
    hours().forEach(at -> hours.row(clock(at.second()), Numbers.ppfd(at.ppfd())));
    text.append(hours.text());
    if (!stands.isEmpty()) {
      text.append("\nWho could live there\n");
      stands.forEach(
          stand ->
              text.append(
                  Lines.item(
                      stand.group().name()
                          + ": "
                          + stand.words()
                          + " (confidence "
                          + stand.group().certainty().word()
                          + ", "
                          + stand.group().source()
                          + ")")));
    }
    if (!planes.isEmpty()) {
      List<String> header =
          new ArrayList<>(
              List.of("depth (" + unit.symbol() + ")", "mean DLI (" + MOL + ")", "least", "most"));
      stands.forEach(stand -> header.add(stand.group().name() + " (% of area)"));
      Table table = new Table("r".repeat(header.size()), header);
      for (DayPlane plane : planes) {
        List<String> row = new ArrayList<>();
        row.add(Numbers.length(plane.depth().orElseThrow(), unit));
        row.add(dose(plane.mean()));
        row.add(dose(plane.light().leastDli()));
        row.add(dose(plane.light().mostDli()));
        stands.forEach(stand -> row.add(Numbers.percent(plane.dosed(stand.group()))));
        table.row(row);
      }
      text.append("\nDose by depth, and the share of the area whose dose suits a group\n");
      text.append(table.text());
    }
    text.append("\nIntervals run from 5 to 95 %, the meter's scale error included.\n");
    text.append(Lines.section("Cautions", cautions()));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  /** What to mind. */
  public static List<String> cautions() {
    return List.of(Caution.ANIMALS.inWords(), Caution.EYES.inWords());
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("setup", source);
    json.put("rig", rig.name());
    Json.strings(json, "program", AskedDay.words(program));
    json.put("photoperiod_min", program.photoperiod().toMinutes());
    Json.place(json.putObject("place"), place);
    Json.ppfd(json, "peak", peak);
    dli(json, "dli", dli);
    ArrayNode moments = json.putArray("curve");
    for (Moment moment : curve) {
      ObjectNode entry = moments.addObject();
      Json.number(entry, "second", moment.second());
      Json.ppfd(entry, "ppfd", moment.ppfd());
    }
    ArrayNode who = json.putArray("groups");
    for (Stand stand : stands) {
      ObjectNode entry = who.addObject();
      group(entry, stand.group());
      entry.put("standing", stand.words());
      Json.number(entry, "probability_fits", stand.shares().get(Standing.FITS));
    }
    ArrayNode all = json.putArray("planes");
    for (DayPlane plane : planes) {
      ObjectNode entry = all.addObject();
      Json.length(entry, "depth", plane.depth().orElseThrow());
      dli(entry, "mean_dli", plane.mean());
      dli(entry, "least_dli", plane.light().leastDli());
      dli(entry, "most_dli", plane.light().mostDli());
      ArrayNode shares = entry.putArray("dose_suits");
      for (Stand stand : stands) {
        ObjectNode share = shares.addObject();
        share.put("group", stand.group().name());
        Json.number(share, "inside", plane.dosed(stand.group()));
      }
    }
    Json.strings(json, "cautions", cautions());
    Json.strings(json, "files", files);
    return json;
  }

  /** Puts a dose with its interval under {@code key_mol_m2_d}. */
  static void dli(ObjectNode json, String key, Estimate dli) {
    Json.number(json, key + "_mol_m2_d", dli);
  }

  /** Puts what a group wants. */
  static void group(ObjectNode entry, CoralGroup group) {
    entry.put("group", group.name());
    Json.ppfd(entry, "ppfd_from", group.ppfd().from());
    Json.ppfd(entry, "ppfd_to", group.ppfd().to());
    Json.number(entry, "dli_from_mol_m2_d", group.dliFrom());
    Json.number(entry, "dli_to_mol_m2_d", group.dliTo());
    entry.put("confidence", group.certainty().word());
    entry.put("source", group.source());
  }
}
