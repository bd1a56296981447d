package parfield.spectrum;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Whether the colours of a fixture blend into one light: spectra at several places under it, side
 * by side.
 *
 * <p>Each place is held against the mean light of all places, every place at the same PPFD, so that
 * brightness is left out and only colour counts. The greatest Δu′v′ from that mean is the colour
 * uniformity of IES LM-79 (section 12, there over angles instead of places; from memory).
 * Immutable.
 */
public final class Blend {
  /**
   * Δu′v′ that half of all observers just notice side by side: CIE TN 001:2014 (from memory). It
   * was found about white light; saturated blue is less well known.
   */
  public static final double JUST_NOTICEABLE = 0.0013;

  /**
   * Δu′v′ from the mean within which a luminaire counts as even in colour over its beam: ENERGY
   * STAR for solid-state luminaires 1.1 (from memory).
   */
  public static final double EVEN = 0.004;

  /**
   * A spectrum and where it was taken.
   *
   * @param name what the place is called
   * @param spectrum any scale; must hold photons within 400–700 nm
   */
  public record Spot(String name, PhotonSpectrum spectrum) {
    public Spot {
      Objects.requireNonNull(name, "name");
      if (!(spectrum.parPhotons() > 0)) {
        throw new IllegalArgumentException(
            String.format(
                "the spectrum at %s holds no photons within 400 to 700 nm; measure it in the light",
                name));
      }
    }
  }

  /**
   * One place against the mean light.
   *
   * @param name what the place is called
   * @param shares of photons by band
   * @param chromaticity of its light
   * @param deviation Δu′v′ from the mean light
   */
  public record Row(String name, List<Double> shares, Chromaticity chromaticity, double deviation) {
    public Row {
      shares = List.copyOf(shares);
    }
  }

  /**
   * How far the places differ in one band.
   *
   * @param band the band
   * @param mean share of the mean light
   * @param least lowest share of a place
   * @param leastAt the place that has it
   * @param most highest share of a place
   * @param mostAt the place that has it
   */
  public record Spread(
      WaveBand band, double mean, double least, String leastAt, double most, String mostAt) {
    /** Highest less lowest share. */
    public double range() {
      return most - least;
    }
  }

  /** What the greatest deviation means. */
  public enum Verdict {
    /** Below what is noticed side by side. */
    ONE_LIGHT,
    /** Noticed side by side at most, within what counts as even. */
    EVEN,
    /** Beyond what counts as even. */
    UNEVEN
  }

  private final List<Row> rows;
  private final List<Spread> spreads;
  private final Chromaticity mean;

  private Blend(List<Row> rows, List<Spread> spreads, Chromaticity mean) {
    this.rows = List.copyOf(rows);
    this.spreads = List.copyOf(spreads);
    this.mean = mean;
  }

  /**
   * Holds places against each other.
   *
   * @param division the bands; places must hold photons within their range
   * @param spots two or more
   * @throws IllegalArgumentException if there are fewer than two, or light at one has no band
   *     shares or no colour; the message names the place
   */
  public static Blend of(WaveBands division, List<Spot> spots) {
    if (spots.size() < 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a blend needs the spectra of two places or more, ten are common; got %d",
              spots.size()));
    }
    List<PhotonSpectrum> alike = spots.stream().map(spot -> spot.spectrum().atPpfd(1)).toList();
    List<Double> once = alike.stream().map(spectrum -> 1.0).toList();
    PhotonSpectrum whole = Superposition.of(alike, once);
    Chromaticity mean = colour("all places together", whole);
    List<Double> meanShares = shares("all places together", division, whole);
    List<Row> rows = new ArrayList<>();
    for (Spot spot : spots) {
      Chromaticity colour = colour(spot.name(), spot.spectrum());
      rows.add(
          new Row(
              spot.name(),
              shares(spot.name(), division, spot.spectrum()),
              colour,
              colour.distance(mean)));
    }
    List<Spread> spreads = new ArrayList<>();
    for (int k = 0; k < meanShares.size(); k++) {
      spreads.add(spread(division.bands().get(k), k, meanShares.get(k), rows));
    }
    return new Blend(rows, spreads, mean);
  }

  private static Chromaticity colour(String place, PhotonSpectrum spectrum) {
    return defined(place, "colour", Chromaticity.of(spectrum.toRadiant()));
  }

  private static List<Double> shares(String place, WaveBands division, PhotonSpectrum spectrum) {
    return defined(place, "band shares", division.shares(spectrum));
  }

  private static <T> T defined(String place, String what, Finding<T> finding) {
    if (finding instanceof Finding.NotDefined<T> none) {
      throw new IllegalArgumentException(
          String.format("%s: %s not defined: %s", place, what, none.reason()));
    }
    return finding.toOptional().orElseThrow();
  }

  private static Spread spread(WaveBand band, int k, double mean, List<Row> rows) {
    Row least = rows.get(0);
    Row most = rows.get(0);
    for (Row row : rows) {
      least = row.shares().get(k) < least.shares().get(k) ? row : least;
      most = row.shares().get(k) > most.shares().get(k) ? row : most;
    }
    return new Spread(
        band, mean, least.shares().get(k), least.name(), most.shares().get(k), most.name());
  }

  /** Every place, in the order given. */
  public List<Row> rows() {
    return rows;
  }

  /** Every band. */
  public List<Spread> spreads() {
    return spreads;
  }

  /** The colour of the mean light: all places at the same PPFD together. */
  public Chromaticity mean() {
    return mean;
  }

  /** The place that differs most from the mean light in colour; the first of several. */
  public Row farthest() {
    Row farthest = rows.get(0);
    for (Row row : rows) {
      farthest = row.deviation() > farthest.deviation() ? row : farthest;
    }
    return farthest;
  }

  /** The greatest Δu′v′ between any two places. */
  public double widest() {
    double widest = 0;
    for (Row one : rows) {
      for (Row other : rows) {
        widest = Math.max(widest, one.chromaticity().distance(other.chromaticity()));
      }
    }
    return widest;
  }

  /** Root mean square of the places' Δu′v′ from the mean light. */
  public double typical() {
    double squares = 0;
    for (Row row : rows) {
      squares += row.deviation() * row.deviation();
    }
    return Math.sqrt(squares / rows.size());
  }

  /** What the greatest deviation means. */
  public Verdict verdict() {
    double most = farthest().deviation();
    if (most <= JUST_NOTICEABLE) {
      return Verdict.ONE_LIGHT;
    }
    return most <= EVEN ? Verdict.EVEN : Verdict.UNEVEN;
  }

  /** The verdict in words, with the number that made it. */
  public String words() {
    Row farthest = farthest();
    String measured =
        String.format(
            Locale.ROOT,
            "%s differs most from the mean light, by Δu′v′ %.4f",
            farthest.name(),
            farthest.deviation());
    return switch (verdict()) {
      case ONE_LIGHT ->
          String.format(
              Locale.ROOT,
              "The colours blend into one light: %s, no more than the %.4f that half of all"
                  + " observers notice side by side (CIE TN 001:2014).",
              measured,
              JUST_NOTICEABLE);
      case EVEN ->
          String.format(
              Locale.ROOT,
              "The colours blend, with differences that may be seen side by side: %s, more than a"
                  + " just noticeable %.4f (CIE TN 001:2014), no more than the %.3f that count as"
                  + " even (ENERGY STAR SSL 1.1).",
              measured,
              JUST_NOTICEABLE,
              EVEN);
      case UNEVEN ->
          String.format(
              Locale.ROOT,
              "The colours do not blend into one light: %s, more than the %.3f that count as even"
                  + " (ENERGY STAR SSL 1.1).",
              measured,
              EVEN);
    };
  }
}
