package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.field.SpectralField;
import parfield.lamp.Fixture;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.WaveBands;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/** Whether the colours of a rig blend, predicted at places in its tank. */
public final class PredictedBlend {
  private static final int COLUMNS = 5;
  private static final int ROWS = 2;

  private PredictedBlend() {}

  /**
   * The usual places: ten, in two rows of five.
   *
   * @param depth below the water line [m]
   */
  public static Places usualPlaces(Rig rig, double depth) {
    return Places.plane(rig.tank(), depth, COLUMNS, ROWS);
  }

  /**
   * Predicts the spectra at places, and holds them against their mean.
   *
   * @param solver predicts PPFD
   * @param lit the rig; every channel carries a distribution
   * @param asked the places
   * @param depth of all of them [m], where it is one
   * @param bands of which shares are told
   * @param unit in which places are named
   * @param left files that are left
   * @throws Refusal if how its channels differ in direction is not known
   * @throws IllegalArgumentException if a channel has no spectrum, or a place gets no light
   */
  public static BlendAnswer of(
      FieldSolver solver,
      Rig lit,
      Places asked,
      OptionalDouble depth,
      WaveBands bands,
      LengthUnit unit,
      List<String> left) {
    refuseAlike(lit);
    SpectralField field = SpectralField.of(solver, lit, asked);
    List<String> names = new ArrayList<>();
    for (int i = 0; i < asked.size(); i++) {
      Place place = asked.get(i);
      names.add(
          String.format(
              Locale.ROOT,
              "x %s, y %s",
              Numbers.length(place.x(), unit),
              Numbers.length(place.y(), unit)));
    }
    String rests =
        String.format(
            Locale.ROOT,
            "Predicted under rig %s by the best estimate%s; x, y in %s.",
            lit.name(),
            depth.isPresent() ? ", " + Numbers.withUnit(depth.getAsDouble(), unit) + " deep" : "",
            unit.symbol());
    return new BlendAnswer(field.blend(bands, names), bands, List.of(rests), List.of(), left);
  }

  /** Where all channels send their light the same way, colours blend by assumption alone. */
  private static void refuseAlike(Rig lit) {
    for (Hanging hanging : lit.hangings()) {
      Fixture fixture = hanging.fixture();
      if (AlikeChannels.of(fixture).size() < fixture.channels().size()) {
        return;
      }
    }
    throw Refusal.of(
        "how the colours of rig "
            + lit.name()
            + " blend is not known: its channels send their light"
            + " the same way, as far as the readings tell",
        "read a plane with one channel alone, so that a fit can tell them apart",
        "or measure spectra at ten places, and name their files");
  }
}
