package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.spectrum.Finding;
import parfield.spectrum.SensorResponse;
import parfield.units.LengthUnit;

/**
 * What quantum sensors make of lights.
 *
 * @param calibration name of the light that they were calibrated under
 * @param seen each light by each sensor, at least one
 * @param shown a reading [µmol m⁻² s⁻¹]; empty if none was given
 */
public record MeterAnswer(String calibration, List<Seen> seen, Optional<Double> shown)
    implements Answer {
  public MeterAnswer {
    Objects.requireNonNull(calibration, "calibration");
    Objects.requireNonNull(shown, "shown");
    seen = List.copyOf(seen);
  }

  /**
   * One light by one sensor.
   *
   * @param light the light
   * @param response of the sensor
   * @param factor F, true PPFD over shown
   */
  public record Seen(Light light, SensorResponse response, Finding<Double> factor) {
    public Seen {
      Objects.requireNonNull(light, "light");
      Objects.requireNonNull(response, "response");
      Objects.requireNonNull(factor, "factor");
    }
  }

  private boolean generic() {
    return seen.stream()
        .anyMatch(one -> one.response().standing() == SensorResponse.Standing.GENERIC);
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT, "What a PAR meter calibrated under %s makes of it\n\n", calibration));
    List<String> header = new ArrayList<>(List.of("light", "response", "F", "it shows (%)"));
    shown.ifPresent(reading -> header.add("true PPFD where it shows " + Numbers.plain(reading, 1)));
    Table table = new Table("llrr" + (shown.isPresent() ? "r" : ""), header);
    List<String> none = new ArrayList<>();
    for (Seen one : seen) {
      Optional<Double> factor = one.factor().toOptional();
      List<String> row = new ArrayList<>(List.of(one.light().name(), one.response().name()));
      row.add(factor.map(value -> Numbers.fixed(value, 3)).orElse("not defined"));
      row.add(factor.map(value -> Numbers.percent(1 / value)).orElse(Numbers.NONE));
      shown.ifPresent(
          reading ->
              row.add(factor.map(value -> Numbers.ppfd(value * reading)).orElse(Numbers.NONE)));
      table.row(row);
      if (one.factor() instanceof Finding.NotDefined<Double> reason) {
        none.add(one.light().name() + ", " + one.response().name() + ": " + reason.reason());
      }
    }
    text.append(table.text());
    text.append("\nTrue PPFD is reading × F (CIE e-ILV 17-25-115, in photons).\n");
    if (generic()) {
      text.append(
          """
          The generic responses were made up and belong to no sensor: they say how large an error \
          may be,
          not how large it is. To have readings corrected, measure the sensor's response.
          """);
    }
    text.append(
        """
        To carry this into a survey, state the response in the setup, as in
          meters: {probe: {response: probe.csv, calibrated under: illuminant A}}
        """);
    text.append(Lines.section("Not defined", none));
    text.append(
        Lines.section(
            "About the spectra", Light.cautions(seen.stream().map(Seen::light).toList())));
    return text.toString();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("calibrated_under", calibration);
    ArrayNode array = json.putArray("seen");
    for (Seen one : seen) {
      ObjectNode entry = array.addObject();
      entry.put("light", one.light().name());
      entry.put("response", one.response().name());
      entry.put("standing", one.response().standing().name().toLowerCase(Locale.ROOT));
      Json.number(entry, "spectral_factor", one.factor());
      entry.put(
          "reason", one.factor() instanceof Finding.NotDefined<Double> none ? none.reason() : null);
      if (shown.isPresent()) {
        Json.number(entry, "true_umol_m2_s", one.factor().map(factor -> factor * shown.get()));
      }
    }
    Json.strings(json, "cautions", Light.cautions(seen.stream().map(Seen::light).toList()));
    return json;
  }
}
