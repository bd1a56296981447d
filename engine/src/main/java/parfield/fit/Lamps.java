package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parfield.lamp.HarmonicIntensity;
import parfield.lamp.IntensityDistribution;

/** Lamps of a truth, changed. */
final class Lamps {
  /** Factor of each channel of each fixture. */
  interface Factor {
    double of(String fixture, int channel);
  }

  private Lamps() {}

  /** The same lamps, each channel's light multiplied. */
  static Map<String, List<IntensityDistribution>> scaled(
      Map<String, List<IntensityDistribution>> lamps, Factor factor) {
    Map<String, List<IntensityDistribution>> scaled = new TreeMap<>();
    lamps.forEach(
        (fixture, channels) -> {
          List<IntensityDistribution> list = new ArrayList<>();
          for (int c = 0; c < channels.size(); c++) {
            list.add(scaled(channels.get(c), factor.of(fixture, c)));
          }
          scaled.put(fixture, list);
        });
    return scaled;
  }

  /** The same distribution with more or less light; a harmonic one stays one. */
  static IntensityDistribution scaled(IntensityDistribution lamp, double factor) {
    if (factor == 1) {
      return lamp;
    }
    if (lamp instanceof HarmonicIntensity harmonic) {
      double[][] cosine = harmonic.cosine();
      for (int i = 0; i < cosine[0].length; i++) {
        cosine[0][i] += Math.log(factor);
      }
      return new HarmonicIntensity(cosine, harmonic.sine());
    }
    return lamp.scaled(factor);
  }
}
