package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import parfield.care.Caution;
import parfield.spectrum.EyeExposure;
import parfield.units.LengthUnit;

/**
 * What a light does to eyes, and when limits are reached.
 *
 * @param light that is looked at
 * @param ppfd where the eye is [µmol m⁻² s⁻¹]
 * @param exposure of the eye
 */
public record EyesAnswer(Light light, double ppfd, EyeExposure exposure) implements Answer {
  /** Ultraviolet below this is weighted by S(λ) most [nm]. */
  private static final double ULTRAVIOLET_NM = 315;

  private static final List<String> CAUTIONS =
      List.of(
          Caution.EYES.inWords(),
          "An estimate from one spectrum, no clearance: bright points on a lamp are brighter than"
              + " its mean, lenses and reflectors raise them, and mirrors and water reflect them",
          "The limits are for healthy adults at work; children, eyes without their own lens and some"
              + " medicines need lower ones",
          "Competent people with calibrated instruments decide; local codes apply");

  public EyesAnswer {
    Objects.requireNonNull(light, "light");
    Objects.requireNonNull(exposure, "exposure");
  }

  /** What the estimate is not, a sentence each. */
  public List<String> cautions() {
    if (exposure.fromNm() <= ULTRAVIOLET_NM) {
      return CAUTIONS;
    }
    List<String> all = new java.util.ArrayList<>(CAUTIONS);
    all.add(
        0,
        String.format(
            Locale.ROOT,
            "The spectrum begins at %s nm: ultraviolet below is not counted; a lamp that may give"
                + " some must be measured there",
            Numbers.plain(exposure.fromNm(), 1)));
    return all;
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(situation(unit)).append("\n\n");
    text.append(figures().text()).append('\n');
    text.append(limitTable().text());
    text.append(Lines.section("Cautions", cautions()));
    text.append(Lines.section("About the spectra", about()));
    return text.toString();
  }

  /** What is looked at, from where, and how bright it is there, in a line. */
  public String situation(LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "Eyes that look at %s from %s, %s × %s %s, PPFD %s %s there: an estimate",
        light.name(),
        Numbers.withUnit(exposure.source().distance(), unit),
        Numbers.length(exposure.source().width(), unit),
        Numbers.length(exposure.source().height(), unit),
        unit.symbol(),
        Numbers.significant(ppfd),
        Numbers.PPFD);
  }

  /** What the spectrum may suffer from, a sentence each. */
  public List<String> about() {
    return Light.cautions(List.of(light));
  }

  /** What reaches the eye, weighted. */
  public Table figures() {
    Table figures = new Table("lr", "figure", "value");
    figures.row(
        "blue-light-weighted radiance L_B (W m⁻² sr⁻¹)",
        Numbers.significant(exposure.blueRadiance()));
    figures.row(
        "blue-light-weighted irradiance E_B (W m⁻²)",
        Numbers.significant(exposure.blueIrradiance()));
    figures.row(
        "actinic ultraviolet, weighted, E_S (W m⁻²)",
        Numbers.significant(exposure.actinicIrradiance()));
    figures.row(
        "near ultraviolet 315–400 nm, E_UVA (W m⁻²)",
        Numbers.significant(exposure.nearUltraviolet()));
    return figures;
  }

  /** The limits, and after what time each is reached. */
  public Table limitTable() {
    Table limits = new Table("lll", "limit", "of", "reached after");
    for (EyeExposure.Limit limit : exposure.limits()) {
      limits.row(limit.about(), limit.source(), time(limit.longestSeconds()));
    }
    return limits;
  }

  private static String time(OptionalDouble seconds) {
    if (seconds.isEmpty()) {
      return "not within 8 hours, by this estimate";
    }
    double time = seconds.getAsDouble();
    if (time < 120) {
      return Numbers.significant(time) + " s";
    }
    return time < 7200
        ? Numbers.plain(time / 60, 0) + " minutes"
        : Numbers.plain(time / 3600, 1) + " hours";
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("light", light.name());
    Json.ppfd(json, "ppfd", ppfd);
    Json.length(json, "distance", exposure.source().distance());
    Json.length(json, "width", exposure.source().width());
    Json.length(json, "height", exposure.source().height());
    json.put("small_source", exposure.source().small());
    Json.number(json, "blue_radiance_w_m2_sr", exposure.blueRadiance(), 6);
    Json.number(json, "blue_irradiance_w_m2", exposure.blueIrradiance(), 6);
    Json.number(json, "actinic_irradiance_w_m2", exposure.actinicIrradiance(), 9);
    Json.number(json, "near_ultraviolet_w_m2", exposure.nearUltraviolet(), 6);
    Json.number(json, "spectrum_from_nm", exposure.fromNm());
    ArrayNode limits = json.putArray("limits");
    for (EyeExposure.Limit limit : exposure.limits()) {
      ObjectNode entry = limits.addObject();
      entry.put("about", limit.about());
      entry.put("of", limit.source());
      Json.number(entry, "reached_after_s", limit.longestSeconds());
    }
    Json.strings(json, "cautions", cautions());
    return json;
  }
}
