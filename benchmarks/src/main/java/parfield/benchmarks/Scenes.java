package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.field.Places;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.HarmonicIntensity;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.OutputCurve;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Tank;

/** Invented scenes to time; they stand for no real fixture. */
final class Scenes {
  /** Mean wavelengths of the channels [nm]. */
  private static final double[] PEAKS_NM = {420, 450, 520, 660};

  /** Exponents of the channels' lobes. */
  private static final double[] EXPONENTS = {2, 2.5, 1.8, 3};

  private static final double PEAK_INTENSITY = 60;

  private Scenes() {}

  /** A tank of 90 × 60 × 50 cm, clean panes, bottom of reflectance 0.35, slightly yellow water. */
  static Tank tank() {
    return Tank.of(0.9, 0.6, 0.5).withBottomReflectance(0.35).withWater(Water.seaWater(0.05));
  }

  /** The full field: the centres of 48 × 36 × 16 = 27,648 equal cells. */
  static Places volume(Tank tank) {
    return Places.volume(tank, 48, 36, 16);
  }

  /**
   * Two fixtures of two emitters and four channels each, 20 cm over the water.
   *
   * @param lamp {@code round}: the same at every azimuth; {@code oval}: wider along its length
   */
  static Rig twoFixtures(Tank tank, String lamp) {
    Fixture fixture = fixture(lamp, 2);
    return new Rig(
        lamp,
        tank,
        List.of(Hanging.level(fixture, 0.25, 0.3, 0.2), Hanging.level(fixture, 0.65, 0.3, 0.2)));
  }

  /** A fixture with some emitters in a row, 20 cm apart, and four channels. */
  static Fixture fixture(String lamp, int emitters) {
    List<Emitter> places = new ArrayList<>();
    for (int i = 0; i < emitters; i++) {
      places.add(new Emitter(0.2 * (i - (emitters - 1) / 2.0), 0, 0));
    }
    List<Channel> channels = new ArrayList<>();
    for (int c = 0; c < PEAKS_NM.length; c++) {
      IntensityDistribution distribution =
          lamp.equals("round")
              ? new CosinePower(PEAK_INTENSITY, EXPONENTS[c])
              : oval(PEAK_INTENSITY, EXPONENTS[c]);
      channels.add(
          new Channel(
              "channel " + (c + 1),
              Optional.of(narrow(PEAKS_NM[c])),
              OptionalDouble.of(30),
              OutputCurve.proportional(),
              Optional.of(distribution)));
    }
    return new Fixture("pendant", 0.4, 0.1, places, channels, List.of());
  }

  /** A cosine-power lobe that is brighter along its length axis than across it. */
  private static IntensityDistribution oval(double peak, double exponent) {
    int nodes = 37;
    double[][] cosine = new double[3][nodes];
    for (int i = 0; i < nodes; i++) {
      double gamma = Math.PI / 2 * i / (nodes - 1);
      double sine = Math.sin(gamma);
      cosine[0][i] = Math.log(peak) + exponent * Math.log(Math.max(0.03, Math.cos(gamma)));
      cosine[2][i] = 0.3 * sine * sine;
    }
    return new HarmonicIntensity(cosine, new double[0][]);
  }

  /** A bell of 10 nm standard deviation. */
  private static PhotonSpectrum narrow(double peakNm) {
    double[] wavelengths = new double[151];
    double[] photons = new double[151];
    for (int i = 0; i < photons.length; i++) {
      wavelengths[i] = PhotonSpectrum.PAR_FROM_NM + 2.0 * i;
      double away = (wavelengths[i] - peakNm) / 10;
      photons[i] = Math.exp(-away * away / 2);
    }
    return new PhotonSpectrum(wavelengths, photons);
  }
}
