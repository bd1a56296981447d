package parfield.web.transfer;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import parfield.formats.Setup;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.SurveyPlan;
import parfield.tank.Place;
import parfield.units.LengthUnit;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.SetupBlocks;
import parfield.web.bench.SetupLines;
import parfield.web.bench.YamlText;
import parfield.web.measure.GridPoint;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;
import parfield.workspace.ReadingWrite;
import parfield.workspace.WriteResult;

/**
 * The survey of the few readings that would confirm a transferred model: stated in the setup with
 * the recommended rig and its places, so that it can be read on any page that measures.
 */
final class ConfirmingSurvey {
  /** Places nearer than this are one [m]. */
  private static final double SAME = 1e-3;

  /** Dials nearer than this are one [%]. */
  private static final double SAME_DIAL = 0.01;

  private final Desk desk;

  ConfirmingSurvey(Desk desk) {
    this.desk = desk;
  }

  /** The survey that was stated for these readings before, with this meter. */
  private static Optional<String> stated(Setup setup, Rig rig, List<Place> places, String meter) {
    return setup.plans().values().stream()
        .filter(plan -> plan.meter().name().equals(meter))
        .filter(plan -> plan.grid().map(grid -> alike(grid.places(), places)).orElse(false))
        .filter(plan -> alike(plan.rig(), rig))
        .map(SurveyPlan::name)
        .findFirst();
  }

  private static boolean alike(List<Place> some, List<Place> others) {
    if (some.size() != others.size()) {
      return false;
    }
    for (int i = 0; i < some.size(); i++) {
      if (!new GridPoint(new UUID(0, 0), some.get(i), 0).at(others.get(i))) {
        return false;
      }
    }
    return true;
  }

  private static boolean alike(Rig some, Rig other) {
    if (some.hangings().size() != other.hangings().size()) {
      return false;
    }
    for (int i = 0; i < some.hangings().size(); i++) {
      Hanging one = some.hangings().get(i);
      Hanging two = other.hangings().get(i);
      boolean same =
          one.fixture().name().equals(two.fixture().name())
              && Math.abs(one.x() - two.x()) < SAME
              && Math.abs(one.y() - two.y()) < SAME
              && Math.abs(one.height() - two.height()) < SAME
              && Math.abs(one.tilt() - two.tilt()) < SAME
              && Math.abs(one.yaw() - two.yaw()) < SAME
              && one.fixture().dials().stream()
                  .allMatch(
                      dial ->
                          Math.abs(one.setting().percent(dial) - two.setting().percent(dial))
                              < SAME_DIAL);
      if (!same) {
        return false;
      }
    }
    return true;
  }

  /**
   * Finds the survey in the setup, or states it there with its rig.
   *
   * @param bench as it is now
   * @param kept whose readings
   * @param meter name of the meter that is read with
   * @return id of the survey
   * @throws parfield.answer.Refusal if the setup is written in a way that cannot be changed
   * @throws parfield.formats.InvalidFile if the places do not fit the tank
   * @throws parfield.workspace.StaleSetup if somebody changed the setup meanwhile
   */
  UUID prepare(OpenBench bench, KeptTransfer kept, String meter, String who) {
    Setup setup = bench.setupOrRefuse();
    Rig rig = kept.best().over(setup, "confirming");
    List<Place> places = kept.places();
    Optional<String> there = stated(setup, rig, places, meter);
    if (there.isPresent()) {
      return desk.workspace().surveys().named(bench.id(), there.get()).id();
    }
    String hung =
        setup.rigs().entrySet().stream()
            .filter(known -> alike(known.getValue(), rig))
            .map(Map.Entry::getKey)
            .findFirst()
            .orElse("");
    LengthUnit unit = setup.length();
    String text = bench.text();
    if (hung.isEmpty()) {
      hung = free("advised", setup.rigs());
      text =
          SetupBlocks.append(
              text,
              "rigs",
              hung,
              SetupLines.rig(hung, rig, unit),
              SetupLines.rigInLine(hung, rig, unit));
    }
    String name = free("confirming", setup.plans());
    String line = line(name, hung, meter, places, unit);
    text = SetupBlocks.append(text, "surveys", name, List.of(line), line);
    desk.benches().preview(bench, text, bench.files());
    desk.workspace().benches().saveSetup(bench.id(), bench.revision(), text, who);
    return desk.workspace().surveys().named(bench.id(), name).id();
  }

  private static String free(String stem, Map<String, ?> taken) {
    int number = 1;
    while (taken.containsKey(stem + "-" + number)) {
      number++;
    }
    return stem + "-" + number;
  }

  private static String line(
      String name, String rig, String meter, List<Place> places, LengthUnit unit) {
    String all =
        places.stream()
            .map(
                place ->
                    "["
                        + number(place.x(), unit)
                        + ", "
                        + number(place.y(), unit)
                        + ", "
                        + number(place.depth(), unit)
                        + "]")
            .collect(Collectors.joining(", "));
    return String.format(
        Locale.ROOT,
        "%s: {rig: %s, meter: %s, grid: {places: [%s]}}",
        YamlText.quoted(name),
        YamlText.quoted(rig),
        YamlText.quoted(meter),
        all);
  }

  private static String number(double metres, LengthUnit unit) {
    double rounded = Math.round(unit.fromMetres(metres) * 1e4) / 1e4;
    return rounded == Math.rint(rounded)
        ? String.format(Locale.ROOT, "%.0f", rounded)
        : String.valueOf(rounded);
  }

  /**
   * Stores what was typed for places of a prepared survey; what is stored already stays.
   *
   * @param survey as prepared
   * @param bench after it was prepared
   * @param typed by the number of the place, from 0
   * @return whether all of it is stored: not if somebody else wrote one of them just now
   */
  boolean store(UUID survey, OpenBench bench, Map<Integer, Typed> typed, String who) {
    SurveyPlan plan =
        bench.setupOrRefuse().plans().values().stream()
            .filter(
                it -> desk.workspace().surveys().named(bench.id(), it.name()).id().equals(survey))
            .findFirst()
            .orElseThrow();
    List<Place> places = plan.grid().orElseThrow().places();
    List<ReadingRevision> known = desk.workspace().readings().of(survey);
    List<ReadingWrite> writes = new ArrayList<>();
    typed.forEach(
        (index, value) -> {
          GridPoint point = GridPoint.of(survey, places.get(index), index + 1);
          Optional<ReadingRevision> before =
              known.stream()
                  .filter(
                      reading ->
                          reading.entry().kind() == Entry.Kind.GRID
                              && point.at(reading.entry().place()))
                  .findFirst();
          writes.add(
              new ReadingWrite(
                  UUID.randomUUID(),
                  before.map(ReadingRevision::reading).orElse(point.reading()),
                  before.map(ReadingRevision::revision).orElse(0L),
                  entry(point, value),
                  Instant.now()));
        });
    return desk.workspace().readings().writeTogether(survey, writes, who).stream()
        .noneMatch(WriteResult.Conflict.class::isInstance);
  }

  private static Entry entry(GridPoint point, Typed value) {
    Entry entry = Entry.typed(point.place(), point.order(), value.text(), value.ppfd());
    return value.kept() ? entry.withKept() : entry;
  }

  /**
   * A reading as it was typed.
   *
   * @param text as typed
   * @param ppfd its value [µmol m⁻² s⁻¹]
   * @param kept whether it looked odd and was kept
   */
  record Typed(String text, double ppfd, boolean kept) {}
}
