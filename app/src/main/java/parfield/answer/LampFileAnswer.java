package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import parfield.formats.CandelaTable;
import parfield.formats.PhotometricFile;
import parfield.formats.PhotonKeywords;
import parfield.units.LengthUnit;

/**
 * What a photometric file holds.
 *
 * @param name of the file
 * @param file what it holds
 */
public record LampFileAnswer(String name, PhotometricFile file) implements Answer {
  public LampFileAnswer {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(file, "file");
  }

  /** Angle between the directions of half the intensity straight down, along the length axis. */
  private OptionalDouble beam() {
    CandelaTable table = file.table();
    double half = table.candela(0, 0) / 2;
    if (!(half > 0)) {
      return OptionalDouble.empty();
    }
    for (double degrees = 0; degrees <= 90; degrees += 0.5) {
      if (table.candela(Math.toRadians(degrees), 0) < half) {
        return OptionalDouble.of(2 * degrees);
      }
    }
    return OptionalDouble.empty();
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(name).append(": ").append(file.format().words());
    text.append(file.edition().equals(file.format().words()) ? "" : ", " + file.edition());
    text.append("\n\n").append(figures(unit));
    List<String> labels = new ArrayList<>();
    for (PhotometricFile.Label label : file.labels()) {
      String said = label.text().replace("\n", " ");
      labels.add(label.name().isEmpty() ? said : label.name() + ": " + said);
    }
    text.append(Lines.section("What it says of itself", labels));
    text.append(Lines.section("What was taken, and what does not fit", file.cautions()));
    return text.toString();
  }

  /** The figures alone, as a table. */
  String figures(LengthUnit unit) {
    CandelaTable table = file.table();
    Table figures = new Table("ll", "figure", "value");
    figures.row("photometry", file.absolute() ? "absolute" : "relative to its lamps' rated flux");
    figures.row(
        "lamps",
        file.lamps()
            + (file.lampLumens().isPresent()
                ? String.format(Locale.ROOT, ", %.0f lm in all", file.lampLumens().getAsDouble())
                : ""));
    figures.row("planes", "type " + table.planes() + ", symmetry: " + table.symmetry().words());
    figures.row("vertical angles", file.verticals());
    figures.row("horizontal angles", file.horizontals());
    figures.row("luminous flux by its intensities", lumens(table.flux()));
    file.statedLumens()
        .ifPresent(stated -> figures.row("luminous flux as it states", lumens(stated)));
    figures.row("of that below the horizon", Numbers.percent(table.downwardShare()) + " %");
    figures.row("intensity straight down", candela(table.candela(0, 0)));
    figures.row("highest intensity", candela(table.peak()));
    beam()
        .ifPresent(
            beam ->
                figures.row("beam angle along its length", Numbers.plain(beam, 0) + " degrees"));
    figures.row("factor on its numbers", Numbers.plain(file.factor(), 6));
    figures.row(
        "luminous opening",
        Numbers.length(file.length(), unit)
            + " × "
            + Numbers.length(file.width(), unit)
            + " × "
            + Numbers.withUnit(file.height(), unit));
    file.watts().ifPresent(watts -> figures.row("electric power", Numbers.plain(watts, 1) + " W"));
    if (file.photons().isPresent()) {
      PhotonKeywords photons = file.photons().get();
      figures.row("photon flux (PPF)", Numbers.plain(photons.ppf(), 1) + " µmol s⁻¹");
      figures.row(
          "photons of a lumen",
          Numbers.significant(photons.photonsPerLumen()) + " µmol s⁻¹ per lm");
      for (PhotonKeywords.ChannelFlux channel : photons.channels()) {
        figures.row(
            "channel " + channel.name() + " at full output",
            Numbers.plain(channel.ppf(), 1) + " µmol s⁻¹");
      }
      if (!photons.source().isEmpty()) {
        figures.row("photons from", photons.source());
      }
    } else {
      figures.row(
          "photons", "not told: they follow from the spectrum, or from a photon flux, in a setup");
    }
    return figures.text();
  }

  private static String lumens(double lumens) {
    return Numbers.plain(lumens, lumens < 100 ? 2 : 0) + " lm";
  }

  private static String candela(double candela) {
    return Numbers.plain(candela, candela < 100 ? 2 : 0) + " cd";
  }

  @Override
  public ObjectNode json() {
    CandelaTable table = file.table();
    ObjectNode json = Json.object();
    json.put("file", name);
    json.put("format", file.format().key());
    json.put("edition", file.edition());
    json.put("absolute", file.absolute());
    json.put("lamps", file.lamps());
    Json.number(json, "lamp_flux_lm", file.lampLumens());
    json.put("planes", table.planes().name());
    json.put("symmetry", table.symmetry().name().toLowerCase(Locale.ROOT));
    json.put("vertical_angles", file.verticals());
    json.put("horizontal_angles", file.horizontals());
    Json.number(json, "flux_lm", table.flux());
    Json.number(json, "stated_flux_lm", file.statedLumens());
    Json.number(json, "downward_share", table.downwardShare());
    Json.number(json, "straight_down_cd", table.candela(0, 0));
    Json.number(json, "highest_cd", table.peak());
    Json.number(json, "beam_angle_degrees", beam());
    Json.number(json, "factor", file.factor(), 9);
    Json.length(json, "opening_length", file.length());
    Json.length(json, "opening_width", file.width());
    Json.length(json, "opening_height", file.height());
    Json.number(json, "power_w", file.watts());
    if (file.tilt().isPresent()) {
      ObjectNode tilt = json.putObject("tilt");
      tilt.put("geometry", file.tilt().get().geometry());
      file.tilt().get().degrees().forEach(tilt.putArray("degrees")::add);
      file.tilt().get().factors().forEach(tilt.putArray("factors")::add);
    } else {
      json.putNull("tilt");
    }
    if (file.photons().isPresent()) {
      PhotonKeywords keywords = file.photons().get();
      ObjectNode photons = json.putObject("photons");
      Json.number(photons, "umol_s_per_lm", keywords.photonsPerLumen(), 9);
      Json.number(photons, "ppf_umol_s", keywords.ppf());
      ArrayNode channels = photons.putArray("channels");
      for (PhotonKeywords.ChannelFlux channel : keywords.channels()) {
        ObjectNode one = channels.addObject();
        one.put("channel", channel.name());
        Json.number(one, "ppf_umol_s", channel.ppf());
      }
      photons.put("source", keywords.source());
    } else {
      json.putNull("photons");
    }
    ArrayNode labels = json.putArray("labels");
    for (PhotometricFile.Label label : file.labels()) {
      ObjectNode one = labels.addObject();
      one.put("name", label.name());
      one.put("text", label.text());
    }
    Json.strings(json, "cautions", file.cautions());
    return json;
  }
}
