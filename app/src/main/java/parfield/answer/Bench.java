package parfield.answer;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import parfield.aquascape.Rock;
import parfield.formats.InvalidFile;
import parfield.formats.Nearest;
import parfield.formats.Setup;
import parfield.formats.SetupFile;
import parfield.plan.Demands;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/**
 * A bench that is asked something.
 *
 * @param setup what it states
 */
public record Bench(Setup setup) {
  /**
   * Reads a setup and every file it names.
   *
   * @throws InvalidFile with all faults
   */
  public static Bench read(Path path) {
    return new Bench(SetupFile.read(path));
  }

  /**
   * The surveys, in the order of the setup.
   *
   * @throws Refusal if there is none
   */
  public List<Survey> surveys() {
    if (setup.surveys().isEmpty()) {
      throw Refusal.of(
          setup.source() + " states no survey",
          "add one under surveys, as in low: {rig: low, meter: probe, readings: low.csv}");
    }
    return List.copyOf(setup.surveys().values());
  }

  /**
   * A rig by its name.
   *
   * @throws Refusal if there is none of that name; it names those that there are
   */
  public Rig rig(String name) {
    Rig rig = setup.rigs().get(name);
    if (rig == null) {
      throw Refusal.of(
          String.format(Locale.ROOT, "%s states no rig named %s", setup.source(), name),
          Nearest.of(name, setup.rigs().keySet())
              .map(nearest -> "did you mean " + nearest + "?")
              .orElse("its rigs are " + String.join(", ", setup.rigs().keySet())));
    }
    return rig;
  }

  /**
   * Checks depths that were asked for.
   *
   * @param depths below the water line [m]
   * @throws Refusal if one lies outside the water
   */
  public void checkDepths(List<Double> depths, LengthUnit unit) {
    for (double depth : depths) {
      if (!(depth >= 0 && depth <= setup.tank().depth() + 1e-9)) {
        throw Refusal.of(
            String.format(
                Locale.ROOT,
                "the depth %s lies outside the water, which is %s deep",
                Numbers.withUnit(depth, unit),
                Numbers.withUnit(setup.tank().depth(), unit)),
            "ask for a depth from 0 to the bottom");
      }
    }
  }

  /**
   * Checks a place that was asked about.
   *
   * @throws Refusal if it is outside the water or in a rock
   */
  public Place checked(Place place, LengthUnit unit) {
    Optional<String> rock =
        setup.tank().aquascape().at(place.x(), place.y(), place.depth()).map(Rock::name);
    if (rock.isPresent() || !setup.tank().contains(place)) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "the place %s, %s deep, is %s",
              Numbers.spot(place, unit),
              Numbers.withUnit(place.depth(), unit),
              rock.map(name -> "in rock " + name).orElse("not in the water")),
          "ask for a place between the panes, in no rock");
    }
    return place;
  }

  /** The bands, in the order of the setup. */
  public List<Band> bands() {
    return List.copyOf(setup.bands().values());
  }

  /** The depth at which most readings were taken [m]; the middle of the water if there are none. */
  public double usualDepth() {
    return setup.surveys().values().stream()
        .flatMap(survey -> survey.readings().stream())
        .collect(
            Collectors.groupingBy(
                reading -> reading.place().depth(), TreeMap::new, Collectors.counting()))
        .entrySet()
        .stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .orElse(setup.tank().depth() / 2);
  }

  /**
   * What a plan must meet: as stated, else what custom asks for.
   *
   * @throws Refusal if neither demands nor bands are stated
   */
  public Demands demands() {
    if (!setup.demands().isEmpty()) {
      return Demands.stated(bands(), setup.demands());
    }
    if (setup.bands().isEmpty()) {
      throw Refusal.of(
          setup.source() + " states neither demands nor bands: there is nothing to aim at",
          "add a band, as in bands: {soft: {from: 75, to: 150}}",
          "or a demand, as in demands: [{retention: 0.85, of: lowest height}]");
    }
    return Demands.byCustom(bands());
  }
}
