package parfield.plot;

import java.util.List;
import parfield.spectrum.Chromaticity;
import parfield.spectrum.DisplayColour;
import parfield.spectrum.SpectralWeight;
import parfield.spectrum.StandardObserver;

/** Colours of single wavelengths on a screen, fading toward the ends of what is seen. */
final class WavelengthColour {
  /** Beyond these light is hardly seen [nm]: it is drawn grey. */
  private static final double FROM_NM = 380;

  private static final double TO_NM = 780;

  /** Share of white in every colour: a quiet picture, and lines over it stay legible. */
  private static final double PALE = 0.3;

  private static final String UNSEEN = "#8d959a";

  private WavelengthColour() {}

  /** Where a wavelength [nm] of 380 to 780 stands among the colours. */
  static Chromaticity chromaticity(double nm) {
    List<SpectralWeight> observer = StandardObserver.matchingFunctions();
    double x = observer.get(0).at(nm);
    double y = observer.get(1).at(nm);
    double z = observer.get(2).at(nm);
    return new Chromaticity(x / (x + y + z), y / (x + y + z));
  }

  /** The colour of a wavelength [nm], as {@code #rrggbb}. */
  static String hex(double nm) {
    if (!(nm > FROM_NM && nm < TO_NM)) {
      return UNSEEN;
    }
    DisplayColour pure = DisplayColour.of(chromaticity(nm));
    double grey = Math.max(0, 1 - Math.min((nm - FROM_NM) / 30, (TO_NM - nm) / 90));
    return new DisplayColour(
            faded(pure.red(), grey), faded(pure.green(), grey), faded(pure.blue(), grey), true)
        .hex();
  }

  private static double faded(double channel, double grey) {
    return PALE + (1 - PALE) * (channel * (1 - grey) + 0.57 * grey);
  }
}
