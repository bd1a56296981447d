package parfield.formats;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parfield.spectrum.SensorResponse;
import parfield.spectrum.Wavelengths;

/**
 * A sensor's relative signal by wavelength, as separated values.
 *
 * <p>A signal per energy is converted to one per photon: a photon holds energy in inverse
 * proportion to wavelength.
 */
final class ResponseFile {
  /** Most bytes of a response. */
  static final int MOST_BYTES = 1 << 20;

  private static final WavelengthTable.Layout LAYOUT =
      new WavelengthTable.Layout(
          "sensor's response",
          "wavelength_nm and response, or response_per_energy",
          "wavelength_nm,response",
          "response",
          List.of(
              List.of("response", "quantum response", "response per photon"),
              List.of("response per energy", "responsivity")),
          Limit.between(0, 100_000),
          "no signal is negative: subtract the dark signal, or write 0");

  /** Which of the layout's quantities is a signal per energy. */
  private static final int PER_ENERGY = 1;

  private ResponseFile() {}

  /**
   * Reads a response.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param notes where faults and assumptions go
   * @return the response, empty if a fault was noted
   */
  static Optional<SensorResponse> read(String file, byte[] bytes, Notes notes) {
    return WavelengthTable.read(file, bytes, notes, LAYOUT)
        .flatMap(table -> response(file, table, notes));
  }

  private static Optional<SensorResponse> response(
      String file, WavelengthTable table, Notes notes) {
    double[] wavelengths = table.wavelengths();
    double[] values = table.values();
    if (table.quantity() == PER_ENERGY) {
      notes.assume(
          file + ": signal per energy is converted to signal per photon, by 1 over wavelength");
      for (int i = 0; i < values.length; i++) {
        values[i] /= wavelengths[i];
      }
    }
    if (wavelengths.length < 2 || Arrays.stream(values).allMatch(value -> value == 0)) {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "samples of the response",
              wavelengths.length < 2 ? String.valueOf(wavelengths.length) : "0 everywhere",
              "2 or more, one of them above 0",
              "give the signal over 400 to 700 nm"));
      return Optional.empty();
    }
    return Optional.of(SensorResponse.table(file, Wavelengths.of(wavelengths), values));
  }
}
