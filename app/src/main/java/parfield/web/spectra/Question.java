package parfield.web.spectra;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.answer.Light;
import parfield.formats.Setup;
import parfield.optics.Water;
import parfield.spectrum.WaveBands;
import parfield.units.LengthUnit;
import parfield.web.bench.OpenBench;

/**
 * What is asked of which spectra.
 *
 * @param bench beside whose steps it is asked; empty where none is open
 * @param chosen the spectra, by names that tell them apart
 * @param asked what was typed
 * @param unit of lengths
 * @param bands of which shares are told
 */
record Question(
    Optional<OpenBench> bench,
    List<Lights.Offered> chosen,
    Asked asked,
    LengthUnit unit,
    WaveBands bands) {
  /** Depth to which water is looked at where no tank tells it [m]. */
  private static final double DEEPEST = 1;

  /** Yellowing where none is stated [m⁻¹]; as in a setup. */
  private static final double YELLOWING = 0.05;

  private static final int MOST_EDGES = 31;

  Question {
    chosen = List.copyOf(chosen);
  }

  /** The bands whose ends were typed, or the common ones; what are none become a fault. */
  static WaveBands bands(Asked asked) {
    Optional<String> typed = asked.text("bands");
    if (typed.isEmpty()) {
      return WaveBands.COMMON;
    }
    String[] ends = typed.get().split("[,;\\s–-]+", -1);
    try {
      double[] edges = new double[ends.length];
      for (int i = 0; i < ends.length; i++) {
        if (!ends[i].matches("\\d{2,4}(\\.\\d{1,3})?")) {
          throw new IllegalArgumentException(ends[i]);
        }
        edges[i] = Double.parseDouble(ends[i]);
      }
      if (edges.length >= 2 && edges.length <= MOST_EDGES) {
        return WaveBands.edges(edges);
      }
    } catch (IllegalArgumentException e) {
      // Told below.
    }
    asked.fault(
        "bands",
        String.format(
            Locale.ROOT,
            "wavebands are told by their ends in nm, upward, 2 to %d of them, as in 380, 400, 430,"
                + " 480, 510, 600, 700",
            MOST_EDGES));
    return WaveBands.COMMON;
  }

  List<Light> lights() {
    return chosen.stream().map(Lights.Offered::light).toList();
  }

  /** The light that a field names among the chosen ones. */
  Optional<Light> light(String field) {
    return asked
        .text(field)
        .flatMap(key -> chosen.stream().filter(one -> one.key().equals(key)).findFirst())
        .map(Lights.Offered::light);
  }

  /** That light, or the first of the chosen ones. */
  Optional<Light> lightOrFirst(String field) {
    return light(field).or(() -> lights().stream().findFirst());
  }

  /** The chosen lights but one. */
  List<Light> without(Optional<Light> one) {
    return lights().stream().filter(light -> one.filter(light::equals).isEmpty()).toList();
  }

  /** The water: the bench's tank's if there is one. */
  Water water() {
    return setup().map(setup -> setup.tank().water()).orElse(Water.seaWater(YELLOWING));
  }

  /** How deep it is looked at [m]. */
  double deepest() {
    return setup().map(setup -> setup.tank().depth()).orElse(DEEPEST);
  }

  Optional<Setup> setup() {
    return bench.flatMap(OpenBench::setup);
  }
}
