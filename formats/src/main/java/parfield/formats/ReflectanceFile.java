package parfield.formats;

import java.util.List;
import java.util.Optional;
import parfield.optics.Reflectance;

/** A diffuse reflectance by wavelength, as separated values. */
final class ReflectanceFile {
  /** Most bytes of a reflectance. */
  static final int MOST_BYTES = 4 << 20;

  private static final WavelengthTable.Layout LAYOUT =
      new WavelengthTable.Layout(
          "reflectance",
          "wavelength_nm and reflectance",
          "wavelength_nm,reflectance",
          "reflectance",
          List.of(List.of("reflectance")),
          Limit.below(0, 1),
          "write a share: 20 % as 0.20");

  private ReflectanceFile() {}

  /**
   * Reads a reflectance.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param notes where faults and assumptions go
   * @return the reflectance, empty if a fault was noted
   */
  static Optional<Reflectance> read(String file, byte[] bytes, Notes notes) {
    Optional<WavelengthTable> table = WavelengthTable.read(file, bytes, notes, LAYOUT);
    if (table.isPresent() && table.get().values().length == 0) {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "number of samples",
              "0",
              "1 or more",
              "give wavelengths and reflectances"));
      return Optional.empty();
    }
    return table.map(of -> Reflectance.tabulated(of.wavelengths(), of.values()));
  }
}
