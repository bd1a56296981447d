package parfield.survey;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.rig.Hanging;
import parfield.tank.Place;

/**
 * Retention: mean PPFD at one mounting height over the mean at the reference height, both at the
 * same places and the same dials. Common practice keeps 0.85 of the lowest height's mean (no
 * source).
 *
 * @param mean PPFD at this height [µmol m⁻² s⁻¹]
 * @param reference mean PPFD at the reference height [µmol m⁻² s⁻¹], above 0
 */
public record Retention(double mean, double reference) {
  /** Two readings this close were taken at the same place [m]. */
  private static final double SAME_PLACE = 1e-3;

  public Retention {
    if (!(reference > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "retention needs light at the reference height; its mean PPFD is %s",
              reference));
    }
  }

  /** The ratio of the means. */
  public double ratio() {
    return mean / reference;
  }

  /**
   * Retention of two surveys.
   *
   * @param survey readings at this height
   * @param reference readings at the reference height
   * @throws IllegalArgumentException if they were not read at the same places or not at the same
   *     dials; the message names what differs
   */
  public static Retention of(Survey survey, Survey reference) {
    requireSameOutputs(survey, reference);
    requireSamePlaces(survey.name(), survey.places(), reference.name(), reference.places());
    return new Retention(Statistics.mean(survey.ppfd()), Statistics.mean(reference.ppfd()));
  }

  /**
   * Retention of two solved fields at the same dials.
   *
   * @param field at this height
   * @param reference at the reference height
   * @throws IllegalArgumentException if they were not solved at the same places
   */
  public static Retention of(LightField field, LightField reference) {
    requireSamePlaces("this field", field.places(), "the reference", reference.places());
    return new Retention(Statistics.mean(field.ppfd()), Statistics.mean(reference.ppfd()));
  }

  private static void requireSameOutputs(Survey survey, Survey reference) {
    List<double[]> outputs = outputs(survey);
    List<double[]> others = outputs(reference);
    boolean same =
        outputs.size() == others.size()
            && IntStream.range(0, outputs.size())
                .allMatch(h -> Arrays.equals(outputs.get(h), others.get(h)));
    if (!same) {
      throw new IllegalArgumentException(
          String.format(
              "retention compares heights at the same dials; surveys %s and %s were read with other"
                  + " fixtures or dials",
              survey.name(), reference.name()));
    }
  }

  private static List<double[]> outputs(Survey survey) {
    return survey.rig().hangings().stream()
        .map((Hanging hanging) -> hanging.fixture().outputs(hanging.setting()))
        .toList();
  }

  private static void requireSamePlaces(
      String name, Places places, String referenceName, Places reference) {
    if (places.size() != reference.size()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "retention needs both heights at the same places; %s has %d and %s has %d",
              name,
              places.size(),
              referenceName,
              reference.size()));
    }
    List<Place> ordered = ordered(places);
    List<Place> others = ordered(reference);
    for (int i = 0; i < ordered.size(); i++) {
      Place a = ordered.get(i);
      Place b = others.get(i);
      if (Math.abs(a.x() - b.x()) > SAME_PLACE
          || Math.abs(a.y() - b.y()) > SAME_PLACE
          || Math.abs(a.depth() - b.depth()) > SAME_PLACE) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "retention needs both heights at the same places; %s has x %.3f, y %.3f, depth %.3f"
                    + " m where %s has x %.3f, y %.3f, depth %.3f m",
                name,
                a.x(),
                a.y(),
                a.depth(),
                referenceName,
                b.x(),
                b.y(),
                b.depth()));
      }
    }
  }

  /** Sorted by depth, y, x, each rounded to what counts as the same place. */
  private static List<Place> ordered(Places places) {
    return IntStream.range(0, places.size())
        .mapToObj(places::get)
        .sorted(
            Comparator.<Place>comparingLong(place -> steps(place.depth()))
                .thenComparingLong(place -> steps(place.y()))
                .thenComparingLong(place -> steps(place.x())))
        .toList();
  }

  private static long steps(double metres) {
    return Math.round(metres / SAME_PLACE);
  }
}
