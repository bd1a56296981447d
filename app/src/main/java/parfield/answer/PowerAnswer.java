package parfield.answer;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.care.Caution;
import parfield.care.DailyProgram;
import parfield.care.DayOutputs;
import parfield.care.Power;
import parfield.fit.LightModel;
import parfield.rig.Rig;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * What a rig draws, costs and warms.
 *
 * @param source name of the setup
 * @param rig at its setting
 * @param program its day
 * @param use at the rig's setting, all channels on
 * @param day energy and photons of the day
 * @param tariff price of a kilowatt-hour, if stated
 * @param currency that it is in; may be empty
 */
public record PowerAnswer(
    String source,
    Rig rig,
    DailyProgram program,
    Power.Use use,
    Power.Day day,
    OptionalDouble tariff,
    String currency)
    implements Answer {
  public PowerAnswer {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(use, "use");
    Objects.requireNonNull(day, "day");
    Objects.requireNonNull(currency, "currency");
  }

  /**
   * Asks about power.
   *
   * @throws Refusal if a channel states no watts
   */
  public static PowerAnswer of(
      String source,
      LightModel model,
      Rig rig,
      DailyProgram program,
      OptionalDouble tariff,
      String currency) {
    if (tariff.isPresent() && !(tariff.getAsDouble() >= 0)) {
      throw Refusal.of(
          "a tariff must be 0 or more a kWh; got " + Numbers.plain(tariff.getAsDouble(), 4),
          "state the price of a kilowatt-hour");
    }
    try {
      Power power = Power.of(rig, model);
      double[][] outputs =
          rig.hangings().stream()
              .map(hanging -> hanging.fixture().outputs(hanging.setting()))
              .toArray(double[][]::new);
      return new PowerAnswer(
          source,
          rig,
          program,
          power.at(outputs),
          power.through(DayOutputs.of(program, rig)),
          tariff,
          currency);
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage());
    }
  }

  /**
   * A figure with its name and unit.
   *
   * @param name what it is
   * @param value with its interval where it has one
   * @param unit after it
   */
  public record Figure(String name, String value, String unit) {}

  /** All figures, in their order. */
  public List<Figure> figures() {
    List<Figure> all = new ArrayList<>();
    all.add(new Figure("power at the rig's setting", Numbers.fixed(use.watts(), 0), "W"));
    all.add(new Figure("photons from the lamps", Numbers.ppfd(use.emitted()), "µmol s⁻¹"));
    all.add(new Figure("photons into the water", Numbers.ppfd(use.entered()), "µmol s⁻¹"));
    all.add(new Figure("photons of the lamps per energy", shown(use.efficacy(), 2), "µmol J⁻¹"));
    all.add(
        new Figure("photons in the water per energy", shown(use.efficacyInWater(), 2), "µmol J⁻¹"));
    all.add(new Figure("heat into the water", Numbers.ppfd(use.intoWater()), "W"));
    all.add(new Figure("heat into the room", Numbers.ppfd(use.intoRoom()), "W"));
    all.add(new Figure("energy of a day", Numbers.fixed(day.kilowattHours(), 2), "kWh"));
    all.add(
        new Figure("energy of a mean month", Numbers.fixed(day.monthKilowattHours(), 1), "kWh"));
    all.add(
        new Figure(
            "photons into the water in a day", shown(Optional.of(day.enteredMol()), 1), "mol"));
    if (tariff.isPresent()) {
      double price = tariff.getAsDouble();
      all.add(new Figure("cost of a mean month", Numbers.fixed(day.monthCost(price), 2), currency));
      all.add(new Figure("cost of a mole in the water", shown(day.costPerMol(price), 4), currency));
    }
    return all;
  }

  private static String shown(Optional<Estimate> figure, int digits) {
    return figure
        .map(
            of ->
                Numbers.fixed(of.value(), digits)
                    + " ("
                    + Numbers.fixed(of.low(), digits)
                    + "–"
                    + Numbers.fixed(of.high(), digits)
                    + ")")
        .orElse(Numbers.NONE);
  }

  /** What to mind. */
  public static List<String> cautions() {
    return List.of(Caution.ELECTRICITY.inWords(), Caution.LOAD.inWords(), Caution.CODES.inWords());
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(String.format(Locale.ROOT, "Power of rig %s of %s\n", rig.name(), source));
    AskedDay.words(program).forEach(line -> text.append(Lines.item(line)));
    text.append('\n');
    Table table = new Table("lrl", "figure", "value", "unit");
    figures().forEach(figure -> table.row(figure.name(), figure.value(), figure.unit()));
    text.append(table.text());
    text.append(Lines.section("Taken", Power.ASSUMPTIONS));
    text.append(Lines.section("Cautions", cautions()));
    return text.toString();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("setup", source);
    json.put("rig", rig.name());
    Json.strings(json, "program", AskedDay.words(program));
    Json.number(json, "watts", use.watts());
    Json.number(json, "emitted_umol_s", use.emitted());
    Json.number(json, "entered_umol_s", use.entered());
    put(json, "efficacy_umol_j", use.efficacy());
    put(json, "efficacy_in_water_umol_j", use.efficacyInWater());
    Json.number(json, "heat_into_water_w", use.intoWater());
    Json.number(json, "heat_into_room_w", use.intoRoom());
    Json.number(json, "day_kwh", day.kilowattHours());
    Json.number(json, "month_kwh", day.monthKilowattHours());
    Json.number(json, "day_into_water_mol", day.enteredMol());
    if (tariff.isPresent()) {
      Json.number(json, "tariff_per_kwh", tariff.getAsDouble());
      json.put("currency", currency);
      Json.number(json, "month_cost", day.monthCost(tariff.getAsDouble()));
      put(json, "cost_per_mol", day.costPerMol(tariff.getAsDouble()));
    }
    Json.strings(json, "assumptions", Power.ASSUMPTIONS);
    Json.strings(json, "cautions", cautions());
    return json;
  }

  private static void put(ObjectNode json, String key, Optional<Estimate> figure) {
    if (figure.isPresent()) {
      Json.number(json, key, figure.get());
    } else {
      json.putNull(key);
    }
  }
}
