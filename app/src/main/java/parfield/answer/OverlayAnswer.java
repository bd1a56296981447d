package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import parfield.plot.Axis;
import parfield.plot.Caption;
import parfield.plot.CurvesSpec;
import parfield.plot.SpectrumChart;
import parfield.plot.SpectrumChartSpec;
import parfield.plot.SpectrumLine;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.Scale;
import parfield.units.LengthUnit;

/**
 * Lights laid over each other, as a picture and as its values.
 *
 * @param title of the picture
 * @param lights one to {@link #MOST}
 * @param height what their curves have in common
 */
public record OverlayAnswer(String title, List<Light> lights, Height height) implements Answer {
  /** Lights that one picture tells apart. */
  public static final int MOST = CurvesSpec.MOST_SERIES;

  /** Steps of the table of values [nm]. */
  private static final int STEP_NM = 10;

  /** What the curves have in common. */
  public enum Height {
    /** Photons of 400–700 nm: shares of them per nm. */
    PPFD,
    /** The highest point of each is 1. */
    PEAK,
    /** Nothing: all in one known unit. */
    MEASURED,
    /** The highest point of all is 1; for light that was one before something took from it. */
    COMMON
  }

  /**
   * Lays lights over each other.
   *
   * @throws Refusal if that many cannot be told apart, if one has no photons within 400–700 nm
   *     where that is made equal, or if scales are unknown or differ where nothing is made equal
   */
  public OverlayAnswer {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(height, "height");
    lights = List.copyOf(lights);
    if (lights.isEmpty() || lights.size() > MOST) {
      throw Refusal.of(
          String.format(
              Locale.ROOT, "one picture shows 1 to %d spectra; got %d", MOST, lights.size()),
          "choose fewer");
    }
    for (Light light : lights) {
      if (height == Height.PPFD && !(light.photons().parPhotons() > 0)) {
        throw Refusal.of(
            light.name()
                + " has no photons within 400 to 700 nm, so that its PPFD cannot be made equal",
            "show it with the same peak");
      }
      if (height == Height.MEASURED
          && (light.photons().scale() == Scale.RELATIVE
              || light.photons().scale() != lights.get(0).photons().scale())) {
        throw Refusal.of(
            light.photons().scale() == Scale.RELATIVE
                ? "the scale of "
                    + light.name()
                    + " is not known: as measured it cannot be laid over another"
                : light.name() + " is measured in another unit than " + lights.get(0).name(),
            "show them at the same PPFD or with the same peak");
      }
    }
  }

  private double divisor(Light light) {
    return switch (height) {
      case PPFD -> light.photons().parPhotons();
      case PEAK -> highest(light.photons());
      case MEASURED -> 1;
      case COMMON ->
          lights.stream().mapToDouble(each -> highest(each.photons())).max().orElseThrow();
    };
  }

  private static double highest(PhotonSpectrum photons) {
    return DoubleStream.of(photons.photonFluxes()).max().orElseThrow();
  }

  private Axis axis() {
    return switch (height) {
      case PPFD -> Axis.percent("share of the photons of 400–700 nm, per nm");
      case PEAK -> SpectrumPictures.bare("photons per nm, each one's highest = 1");
      case COMMON -> SpectrumPictures.bare("photons per nm, highest of all = 1");
      case MEASURED ->
          SpectrumPictures.absolute(
              lights.get(0).photons().scale(),
              lights.stream().mapToDouble(each -> highest(each.photons())).max().orElseThrow());
    };
  }

  private String made() {
    return switch (height) {
      case PPFD -> "At equal PPFD.";
      case PEAK -> "Each with a highest point of 1.";
      case MEASURED -> "As measured.";
      case COMMON -> "";
    };
  }

  /** What the picture shows, in one line. */
  public String summary() {
    List<String> words = new ArrayList<>();
    for (Light light : lights) {
      PhotonSpectrum photons = light.photons();
      int at =
          IntStream.range(0, photons.size())
              .reduce((a, b) -> photons.photonFlux(b) > photons.photonFlux(a) ? b : a)
              .orElseThrow();
      words.add(
          String.format(
              Locale.ROOT,
              "%s is highest at %s nm",
              light.name(),
              Numbers.plain(photons.wavelengthNm(at), 1)));
    }
    return (made() + " " + String.join("; ", words) + ".").strip();
  }

  /** The curves. */
  public String picture() {
    List<SpectrumLine> lines = new ArrayList<>();
    for (Light light : lights) {
      double divisor = divisor(light);
      lines.add(
          new SpectrumLine(
              light.name(),
              light.photons().wavelengths().toArray(),
              DoubleStream.of(light.photons().photonFluxes())
                  .map(value -> value / divisor)
                  .toArray()));
    }
    return SpectrumChart.svg(
        new SpectrumChartSpec(
            new Caption(title, summary()),
            axis(),
            lines,
            lines.size() == 1,
            List.of(),
            Optional.empty()));
  }

  /** The values of the curves at every tenth nanometre. */
  public Table table() {
    Axis axis = axis();
    String unit = axis.unit().isEmpty() ? axis.label() : axis.label() + ", " + axis.unit();
    List<String> header = new ArrayList<>(List.of("nm"));
    lights.forEach(light -> header.add(light.name() + " (" + unit + ")"));
    Table table = new Table("r".repeat(header.size()), header);
    for (int nm : wavelengths()) {
      List<String> row = new ArrayList<>(List.of(String.valueOf(nm)));
      for (Light light : lights) {
        row.add(Numbers.fixed(light.photons().at(nm) / divisor(light) * axis.perValue(), 3));
      }
      table.row(row);
    }
    return table;
  }

  private List<Integer> wavelengths() {
    double from =
        lights.stream()
            .mapToDouble(light -> light.photons().wavelengths().first())
            .min()
            .orElseThrow();
    double to =
        lights.stream()
            .mapToDouble(light -> light.photons().wavelengths().last())
            .max()
            .orElseThrow();
    List<Integer> all = new ArrayList<>();
    for (int nm = (int) (Math.ceil(from / STEP_NM) * STEP_NM); nm <= to; nm += STEP_NM) {
      all.add(nm);
    }
    return all;
  }

  @Override
  public String text(LengthUnit unit) {
    return title + "\n" + summary() + "\n\n" + table().text();
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("height", height.name().toLowerCase(Locale.ROOT));
    ArrayNode array = json.putArray("lights");
    for (Light light : lights) {
      ObjectNode entry = array.addObject();
      entry.put("light", light.name());
      ArrayNode values = entry.putArray("values");
      for (int nm : wavelengths()) {
        ObjectNode value = values.addObject();
        value.put("nm", nm);
        Json.number(value, "value", light.photons().at(nm) / divisor(light), 9);
      }
    }
    return json;
  }
}
