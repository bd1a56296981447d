package parfield.plan;

import java.util.Locale;
import java.util.Objects;
import parfield.survey.Band;
import parfield.units.LengthUnit;

/** One thing that a plan must meet. */
public sealed interface Demand {
  /** Where it must hold. */
  Extent extent();

  /** The least value that meets it; 0 where there is no lower limit. */
  double least();

  /** The greatest value that meets it; infinite where there is no upper limit. */
  double most();

  /** Whether a value of the demanded figure meets it. */
  default boolean metBy(double value) {
    return value >= least() && value <= most();
  }

  /** The demand as a sentence without its full stop, lengths in {@code unit}. */
  String inWords(LengthUnit unit);

  /** The demand as a sentence without its full stop, lengths in centimetres. */
  default String inWords() {
    return inWords(LengthUnit.CM);
  }

  /**
   * At least a share of the extent lies inside a band.
   *
   * @param band wanted range of PPFD
   * @param share of the extent, above 0 to 1
   * @param extent of which the share is taken
   */
  record Coverage(Band band, double share, Extent extent) implements Demand {
    public Coverage {
      Objects.requireNonNull(band, "band");
      Objects.requireNonNull(extent, "extent");
      requireShare("coverage of band " + band.name(), share);
    }

    @Override
    public double least() {
      return share;
    }

    @Override
    public double most() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public String inWords(LengthUnit unit) {
      return String.format(
          Locale.ROOT,
          "at least %s of %s in %s",
          Wording.percent(share),
          extent.inWords(unit),
          Wording.band(band));
    }
  }

  /**
   * At least a share of the mean at the lowest height considered, everything else alike, is kept.
   *
   * @param atLeast mean at the height over mean at the lowest height, above 0 to 1
   * @param extent over which both means are taken
   */
  record Retention(double atLeast, Extent extent) implements Demand {
    public Retention {
      Objects.requireNonNull(extent, "extent");
      requireShare("retention", atLeast);
    }

    @Override
    public double least() {
      return atLeast;
    }

    @Override
    public double most() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public String inWords(LengthUnit unit) {
      return String.format(
          Locale.ROOT,
          "mean PPFD of %s at least %s of that at the lowest height",
          extent.inWords(unit),
          Wording.percent(atLeast));
    }
  }

  /**
   * Evenness U₀, lowest over mean, is at least a value.
   *
   * @param atLeast U₀, above 0 to 1
   * @param extent over which minimum and mean are taken
   */
  record Evenness(double atLeast, Extent extent) implements Demand {
    public Evenness {
      Objects.requireNonNull(extent, "extent");
      requireShare("evenness U₀", atLeast);
    }

    @Override
    public double least() {
      return atLeast;
    }

    @Override
    public double most() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public String inWords(LengthUnit unit) {
      return String.format(
          Locale.ROOT,
          "evenness U₀ of %s at least %s",
          extent.inWords(unit),
          Wording.number(atLeast, 3));
    }
  }

  /**
   * The ends of the extent are at least this bright beside its centre.
   *
   * @param atLeast mean of the end columns over mean of the centre columns, above 0
   * @param extent whose ends, along the tank's length
   */
  record EndsToCentre(double atLeast, Extent extent) implements Demand {
    public EndsToCentre {
      Objects.requireNonNull(extent, "extent");
      if (!(atLeast > 0) || Double.isInfinite(atLeast)) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "an ends-to-centre ratio must be above 0; got %s", atLeast));
      }
    }

    @Override
    public double least() {
      return atLeast;
    }

    @Override
    public double most() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public String inWords(LengthUnit unit) {
      return String.format(
          Locale.ROOT,
          "ends-to-centre ratio of %s at least %s",
          extent.inWords(unit),
          Wording.number(atLeast, 3));
    }
  }

  /**
   * No place of the extent is brighter than this.
   *
   * @param atMost PPFD [µmol m⁻² s⁻¹], above 0
   * @param extent in which
   */
  record HotSpot(double atMost, Extent extent) implements Demand {
    public HotSpot {
      Objects.requireNonNull(extent, "extent");
      if (!(atMost > 0) || Double.isInfinite(atMost)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the limit of a hot spot must be above 0 %s; got %s",
                Wording.PPFD,
                atMost));
      }
    }

    @Override
    public double least() {
      return 0;
    }

    @Override
    public double most() {
      return atMost;
    }

    @Override
    public String inWords(LengthUnit unit) {
      return String.format(
          Locale.ROOT,
          "no place of %s above %s %s",
          extent.inWords(unit),
          Wording.number(atMost, 1),
          Wording.PPFD);
    }
  }

  /**
   * The mean PPFD lies in a range.
   *
   * @param from at least [µmol m⁻² s⁻¹], 0 or more
   * @param to at most [µmol m⁻² s⁻¹], above {@code from}
   * @param extent over which the mean is taken
   */
  record MeanPpfd(double from, double to, Extent extent) implements Demand {
    public MeanPpfd {
      Objects.requireNonNull(extent, "extent");
      if (!(from >= 0) || !(to > from) || Double.isInfinite(to)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a mean PPFD must run upward from 0 or more; got %s to %s %s",
                from,
                to,
                Wording.PPFD));
      }
    }

    @Override
    public double least() {
      return from;
    }

    @Override
    public double most() {
      return to;
    }

    @Override
    public String inWords(LengthUnit unit) {
      return String.format(
          Locale.ROOT,
          "mean PPFD of %s from %s to %s %s",
          extent.inWords(unit),
          Wording.number(from, 1),
          Wording.number(to, 1),
          Wording.PPFD);
    }
  }

  private static void requireShare(String what, double share) {
    if (!(share > 0 && share <= 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%s must lie above 0 and be at most 1; got %s; write 70 %% as 0.70",
              what,
              share));
    }
  }
}
