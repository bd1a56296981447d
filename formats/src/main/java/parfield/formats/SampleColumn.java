package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.spectrum.PhotonSpectrum;

/** The samples of one spectrum as they come from a file, held to what a spectrum must keep. */
final class SampleColumn {
  /** Widest step between samples within 400–700 nm [nm]: LED peaks are as narrow as this. */
  static final double WIDEST_STEP = 20;

  /** Deepest noise below zero, as a share of the peak. */
  private static final double DEEPEST_NOISE = 0.05;

  private static final Limit WAVELENGTH = Limit.between(100, 4000, "nm");

  private final String file;
  private final Notes notes;
  private final int column;
  private final String name;
  private final SpectralUnit unit;
  private final boolean first;
  private final boolean exchanged;
  private final List<String> spoken = new ArrayList<>();
  private final List<Integer> lines = new ArrayList<>();
  private final List<Double> wavelengths = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();

  /**
   * Starts a spectrum.
   *
   * @param column where its values stand, from 0
   * @param name of it, empty if none is stated
   * @param unit of its values
   * @param first whether it is the first of its file, which alone tells faults of wavelengths
   * @param exchanged whether the file is of a format that means straight lines between samples
   *     however far apart; in a table a wide step is rather a hole
   */
  SampleColumn(
      String file,
      Notes notes,
      int column,
      String name,
      SpectralUnit unit,
      boolean first,
      boolean exchanged) {
    this.file = file;
    this.notes = notes;
    this.column = column;
    this.name = name;
    this.unit = unit;
    this.first = first;
    this.exchanged = exchanged;
  }

  int column() {
    return column;
  }

  String name() {
    return name;
  }

  /** The same column without a name: a lone spectrum goes by its file's. */
  SampleColumn unnamed() {
    return new SampleColumn(file, notes, column, "", unit, first, exchanged);
  }

  void add(int line, double wavelength, double value) {
    lines.add(line);
    wavelengths.add(wavelength);
    values.add(value);
  }

  private void fault(int line, String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, line, 0, what, value, limit, cure));
  }

  private String inName(String what) {
    return name.isEmpty() ? what : what + " of " + Notes.shown(name);
  }

  /**
   * Ends the spectrum.
   *
   * @param bandpass of the spectrometer, full width at half maximum [nm], where it is stated
   * @return empty if a fault was noted
   */
  Optional<MeasuredSpectrum> close(OptionalDouble bandpass) {
    int faults = notes.count();
    if (first) {
      checkWavelengths();
    }
    if (notes.count() == faults && wavelengths.size() >= 2) {
      checkValues();
    }
    if (notes.count() > faults || wavelengths.size() < 2) {
      return Optional.empty();
    }
    double[] nm = wavelengths.stream().mapToDouble(Double::doubleValue).toArray();
    double[] flux = values.stream().mapToDouble(value -> value * unit.factor()).toArray();
    spoken.addAll(SampleCautions.of(nm, flux, bandpass));
    return Optional.of(new MeasuredSpectrum(name, unit, nm, flux, spoken));
  }

  private void checkWavelengths() {
    int n = wavelengths.size();
    if (n < 2) {
      fault(
          n == 0 ? 0 : lines.get(0),
          "number of samples",
          String.valueOf(n),
          "2 or more",
          "give the spectrum over 400 to 700 nm in steps of at most 20 nm");
      return;
    }
    double least = wavelengths.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    double most = wavelengths.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    if ((!WAVELENGTH.contains(least) && !WAVELENGTH.contains(most)) || least > 2500) {
      fault(
          lines.get(0),
          "wavelength",
          NumberText.shown(least) + " to " + NumberText.shown(most),
          WAVELENGTH.text(),
          unitCure(least, most));
      return;
    }
    if (n > 2 && descends()) {
      fault(
          lines.get(1),
          "wavelength",
          NumberText.shown(wavelengths.get(1)) + " after " + NumberText.shown(wavelengths.get(0)),
          "ascending wavelengths",
          "all of them descend: sort the lines upward");
      return;
    }
    // A wavelength that is wrong by itself is no measure for the next.
    double before = 0;
    for (int i = 0; i < n; i++) {
      double wavelength = wavelengths.get(i);
      if (!WAVELENGTH.contains(wavelength)) {
        fault(
            lines.get(i),
            "wavelength",
            NumberText.shown(wavelength),
            WAVELENGTH.text(),
            "give wavelengths in nm");
      } else if (!(wavelength > before)) {
        fault(
            lines.get(i),
            "wavelength",
            NumberText.shown(wavelength) + " after " + NumberText.shown(before),
            "ascending wavelengths",
            "sort the lines, each wavelength once");
      } else {
        checkGap(lines.get(i), before, wavelength);
        before = wavelength;
      }
    }
  }

  private static String unitCure(double least, double most) {
    if (least >= 2000 && most <= 40_000) {
      return "these look like ångström: divide them by 10";
    }
    if (least >= 0.1 && most <= 4) {
      return "these look like micrometres: multiply them by 1000";
    }
    if (least > 0 && most < 1e-5) {
      return "these look like metres: multiply them by 1e9";
    }
    return "give wavelengths in nm";
  }

  private boolean descends() {
    for (int i = 1; i < wavelengths.size(); i++) {
      if (!(wavelengths.get(i) < wavelengths.get(i - 1))) {
        return false;
      }
    }
    return true;
  }

  private void checkGap(int line, double before, double wavelength) {
    boolean within =
        wavelength > PhotonSpectrum.PAR_FROM_NM && before > 0 && before < PhotonSpectrum.PAR_TO_NM;
    if (within && wavelength - before > WIDEST_STEP && exchanged) {
      if (spoken.isEmpty()) {
        spoken.add(
            String.format(
                Locale.ROOT,
                "no sample from %s to %s nm: a straight line is taken, which no narrow peak follows",
                NumberText.shown(before),
                NumberText.shown(wavelength)));
      }
    } else if (within && wavelength - before > WIDEST_STEP) {
      fault(
          line,
          "gap in the spectrum",
          String.format(
              Locale.ROOT,
              "no sample from %s to %s nm",
              NumberText.shown(before),
              NumberText.shown(wavelength)),
          "steps of at most " + NumberText.shown(WIDEST_STEP) + " nm within 400 to 700 nm",
          "measure or fill in the missing wavelengths");
    }
  }

  private void checkValues() {
    double peak = values.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    double lowest = values.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    if (peak <= 0) {
      fault(
          lines.get(0),
          inName("light"),
          lowest == peak ? NumberText.shown(peak) + " at every wavelength" : "nothing above 0",
          "values above 0",
          "measure again: the lamp was off, the sensor covered, or the dark signal was exported");
      return;
    }
    double sum = 0;
    for (int i = 1; i < values.size(); i++) {
      sum +=
          (wavelengths.get(i) - wavelengths.get(i - 1)) * (values.get(i) + values.get(i - 1)) / 2;
    }
    if (!(sum > 0)) {
      fault(
          lines.get(0),
          inName("light"),
          "a sum of " + NumberText.shown(sum) + " over all wavelengths",
          "a sum above 0",
          "average more spectra, or measure nearer to the lamp: this one is noise");
      return;
    }
    for (int i = 0; i < values.size(); i++) {
      // Sensor noise about zero is kept; a value well below it means something is wrong.
      if (values.get(i) < -DEEPEST_NOISE * peak) {
        fault(
            lines.get(i),
            inName("value"),
            NumberText.shown(values.get(i)),
            "0 or more, but for noise below 5 % of the peak",
            "subtract the sensor's dark signal, or correct the value");
        return;
      }
    }
    Saturation.in(wavelengths, values)
        .ifPresent(
            plateau ->
                fault(
                    lines.get(plateau.from()),
                    inName("saturation"),
                    String.format(
                        Locale.ROOT,
                        "%s at every sample from %s to %s nm",
                        NumberText.shown(values.get(plateau.from())),
                        NumberText.shown(wavelengths.get(plateau.from())),
                        NumberText.shown(wavelengths.get(plateau.to()))),
                    "a peak that is not cut off",
                    "measure again with a shorter integration time or further from the lamp"));
  }
}
