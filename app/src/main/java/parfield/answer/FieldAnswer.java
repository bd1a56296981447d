package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import parfield.field.Cells;
import parfield.field.Places;
import parfield.survey.Band;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * The predicted light of one rig.
 *
 * @param source name of the setup
 * @param rig name of the rig
 * @param places where
 * @param asShown PPFD at each place as the bench's meter would show it [µmol m⁻² s⁻¹]
 * @param withMeterScale the same with the meter's own scale error in the interval
 * @param planes figures of whole planes; none where single places were asked for
 * @param reference what the reference solver adds; empty if the fast solver alone was asked
 * @param files that were left
 */
public record FieldAnswer(
    String source,
    String rig,
    Places places,
    List<Estimate> asShown,
    List<Estimate> withMeterScale,
    List<Plane> planes,
    Optional<Reference> reference,
    List<String> files)
    implements Answer {
  public FieldAnswer {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(rig, "rig");
    Objects.requireNonNull(places, "places");
    asShown = List.copyOf(asShown);
    withMeterScale = List.copyOf(withMeterScale);
    planes = List.copyOf(planes);
    Objects.requireNonNull(reference, "reference");
    files = List.copyOf(files);
  }

  /**
   * What the reference solver adds: values are its own then, and intervals move along.
   *
   * @param standardErrors at each place, by chance alone [µmol m⁻² s⁻¹]
   * @param fast what the fast solver makes of each place [µmol m⁻² s⁻¹]
   * @param packets that were sent
   * @param largestError largest relative standard error; in the dark relative to a tenth of the
   *     mean
   */
  public record Reference(
      List<Double> standardErrors, List<Double> fast, long packets, double largestError) {
    public Reference {
      standardErrors = List.copyOf(standardErrors);
      fast = List.copyOf(fast);
    }
  }

  /**
   * Figures of one plane's area, the meter's scale error included in every interval.
   *
   * @param depth of the plane [m]
   * @param cells equal cells, those in rock left out
   * @param mean PPFD [µmol m⁻² s⁻¹]
   * @param min least PPFD of a cell
   * @param max greatest PPFD of a cell
   * @param evenness U₀, least over mean
   * @param bands ranges whose shares follow
   * @param coverage share of the area in each band
   */
  public record Plane(
      double depth,
      Cells cells,
      Estimate mean,
      Estimate min,
      Estimate max,
      Estimate evenness,
      List<Band> bands,
      List<Estimate> coverage) {
    public Plane {
      Objects.requireNonNull(cells, "cells");
      Objects.requireNonNull(mean, "mean");
      Objects.requireNonNull(min, "min");
      Objects.requireNonNull(max, "max");
      Objects.requireNonNull(evenness, "evenness");
      bands = List.copyOf(bands);
      coverage = List.copyOf(coverage);
    }
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "Light of rig %s of %s at %s\n",
            rig,
            source,
            Numbers.count(places.size(), "place")));
    if (!planes.isEmpty()) {
      text.append('\n').append(planes(unit).text());
      text.append("\nPPFD in ").append(Numbers.PPFD);
      text.append("; intervals run from 5 to 95 %, the meter's scale error included.\n");
      text.append("Shares are of the plane's area.\n");
    }
    reference.ifPresent(counted -> text.append('\n').append(counted(counted)));
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  /** What the reference solver adds, in words. */
  public Optional<String> counted() {
    return reference.map(this::counted);
  }

  private String counted(Reference counted) {
    double[] differences = differences(counted);
    return String.format(
        Locale.ROOT,
        "Counted by the reference solver: %s million packets, standard error at most %s %% of a"
            + " value, which is chance\nalone. Intervals are the light model's, which was fitted"
            + " with the fast solver; that one differs by %s %% in the\nmedian and %s %% at the 95th"
            + " percentile of the places.\n",
        Numbers.plain(counted.packets() / 1e6, 2),
        Numbers.plain(100 * counted.largestError(), 2),
        Numbers.plain(100 * share(differences, 0.5), 1),
        Numbers.plain(100 * share(differences, 0.95), 1));
  }

  /** |fast / reference − 1| over the places that have light, ascending. */
  private double[] differences(Reference counted) {
    return IntStream.range(0, places.size())
        .filter(i -> asShown.get(i).value() > 0)
        .mapToDouble(i -> Math.abs(counted.fast().get(i) / asShown.get(i).value() - 1))
        .sorted()
        .toArray();
  }

  private static double share(double[] ascending, double share) {
    return ascending.length == 0
        ? Double.NaN
        : ascending[(int) Math.min(ascending.length - 1, share * ascending.length)];
  }

  /** Figures of the planes, at least one. */
  public Table planes(LengthUnit unit) {
    List<String> header = new ArrayList<>();
    header.add("depth (" + unit.symbol() + ")");
    header.add("mean");
    header.add("min");
    header.add("max");
    header.add("U₀");
    planes.get(0).bands().forEach(band -> header.add(band.name() + " (% of area)"));
    Table table = new Table("r".repeat(header.size()), header);
    for (Plane plane : planes) {
      List<String> row = new ArrayList<>();
      row.add(Numbers.length(plane.depth(), unit));
      row.add(Numbers.ppfd(plane.mean()));
      row.add(Numbers.ppfd(plane.min()));
      row.add(Numbers.ppfd(plane.max()));
      row.add(Numbers.ratio(plane.evenness()));
      plane.coverage().forEach(share -> row.add(Numbers.percent(share)));
      table.row(row);
    }
    return table;
  }

  /** Every place as separated values, lengths in {@code unit}, PPFD in µmol m⁻² s⁻¹. */
  public String csv(LengthUnit unit) {
    String in = unit.symbol();
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "x_%s,y_%s,depth_%s,ppfd,low,high,low_with_meter_scale,high_with_meter_scale%s\n",
            in,
            in,
            in,
            reference.isPresent() ? ",standard_error,fast" : ""));
    for (int i = 0; i < places.size(); i++) {
      Estimate shown = asShown.get(i);
      Estimate scaled = withMeterScale.get(i);
      text.append(exact(places.x(i), unit)).append(',');
      text.append(exact(places.y(i), unit)).append(',');
      text.append(exact(places.depth(i), unit)).append(',');
      text.append(Numbers.plain(shown.value(), 1)).append(',');
      text.append(Numbers.plain(shown.low(), 1)).append(',');
      text.append(Numbers.plain(shown.high(), 1)).append(',');
      text.append(Numbers.plain(scaled.low(), 1)).append(',');
      text.append(Numbers.plain(scaled.high(), 1));
      if (reference.isPresent()) {
        text.append(',').append(Numbers.plain(reference.get().standardErrors().get(i), 2));
        text.append(',').append(Numbers.plain(reference.get().fast().get(i), 1));
      }
      text.append('\n');
    }
    return text.toString();
  }

  /** A length for a program, so that a place is found again. */
  private static String exact(double metres, LengthUnit unit) {
    return Numbers.plain(unit.fromMetres(metres), 4);
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("setup", source);
    json.put("rig", rig);
    json.put("solver", reference.isPresent() ? "reference" : "fast");
    reference.ifPresent(counted -> put(json.putObject("reference"), counted));
    ArrayNode figures = json.putArray("planes");
    for (Plane plane : planes) {
      ObjectNode entry = figures.addObject();
      Json.length(entry, "depth", plane.depth());
      Json.ppfd(entry, "mean", plane.mean());
      Json.ppfd(entry, "min", plane.min());
      Json.ppfd(entry, "max", plane.max());
      Json.number(entry, "evenness_u0", plane.evenness());
      ArrayNode coverage = entry.putArray("coverage_of_plane");
      for (int b = 0; b < plane.bands().size(); b++) {
        ObjectNode band = coverage.addObject();
        band.put("band", plane.bands().get(b).name());
        Json.number(band, "inside", plane.coverage().get(b));
      }
    }
    ArrayNode all = json.putArray("places");
    for (int i = 0; i < places.size(); i++) {
      ObjectNode entry = all.addObject();
      Json.place(entry, places.get(i));
      Json.ppfd(entry, "ppfd", asShown.get(i).value());
      Json.ppfd(entry, "low", asShown.get(i).low());
      Json.ppfd(entry, "high", asShown.get(i).high());
      Json.ppfd(entry, "low_with_meter_scale", withMeterScale.get(i).low());
      Json.ppfd(entry, "high_with_meter_scale", withMeterScale.get(i).high());
      if (reference.isPresent()) {
        Json.ppfd(entry, "standard_error", reference.get().standardErrors().get(i));
        Json.ppfd(entry, "fast", reference.get().fast().get(i));
      }
    }
    ArrayNode left = json.putArray("files");
    files.forEach(left::add);
    return json;
  }

  private void put(ObjectNode json, Reference counted) {
    double[] differences = differences(counted);
    json.put("packets", counted.packets());
    Json.number(json, "largest_standard_error", counted.largestError());
    Json.number(json, "median_difference", share(differences, 0.5));
    Json.number(json, "percentile_95_difference", share(differences, 0.95));
  }
}
