package parfield.spectrum;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Invented light-emitting diodes: bells about a wavelength. They stand for no real part. */
final class Leds {
  private Leds() {}

  /** A bell of irradiance, sampled every nanometre of 380–780 nm, with a PPFD of about 100. */
  static PhotonSpectrum bell(double peakNm, double sigmaNm) {
    Wavelengths wavelengths = Wavelengths.even(380, 780, 1);
    double[] values = new double[wavelengths.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] =
          100
              / (sigmaNm * Math.sqrt(2 * Math.PI))
              * Math.exp(-Math.pow((wavelengths.nm(i) - peakNm) / sigmaNm, 2) / 2);
    }
    return new PhotonSpectrum(wavelengths, values, Scale.IRRADIANCE);
  }

  /** Violet, blue, cyan, a broad white-like hump and red. */
  static List<ChannelLight> fixture() {
    return List.of(
        new ChannelLight("violet", bell(415, 8)),
        new ChannelLight("blue", bell(450, 10)),
        new ChannelLight("cyan", bell(490, 14)),
        new ChannelLight("white", bell(565, 50)),
        new ChannelLight("red", bell(660, 11)));
  }

  /** Two to six bells of any place, width and brightness. */
  static List<ChannelLight> random(SplittableRandom random) {
    List<ChannelLight> channels = new ArrayList<>();
    int n = 2 + random.nextInt(5);
    for (int c = 0; c < n; c++) {
      channels.add(
          new ChannelLight(
              "channel " + c,
              bell(395 + 290 * random.nextDouble(), 6 + 40 * random.nextDouble())
                  .times(0.2 + 2 * random.nextDouble())));
    }
    return channels;
  }
}
