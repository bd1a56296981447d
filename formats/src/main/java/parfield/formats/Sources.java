package parfield.formats;

import java.nio.file.InvalidPathException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import parfield.lamp.TabulatedIntensity;
import parfield.optics.Reflectance;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.SensorResponse;
import parfield.survey.Reading;

/** The files that a setup names; each is read once, all within one budget. */
final class Sources {
  /** Most bytes of all files together. */
  private static final int MOST_BYTES = 256 << 20;

  private final Attachments files;
  private final Notes notes;
  private final Map<String, List<MeasuredSpectrum>> spectra = new HashMap<>();
  private final Map<String, Optional<TabulatedIntensity>> tables = new HashMap<>();
  private final Map<String, Optional<PhotometricFile>> photometric = new HashMap<>();
  private final Map<String, Optional<Reflectance>> reflectances = new HashMap<>();
  private final Map<String, Optional<MeshSource>> meshes = new HashMap<>();
  private long read;

  Sources(Attachments files, Notes notes) {
    this.files = files;
    this.notes = notes;
  }

  /** The spectrum of a channel in the file that an entry names; empty with faults. */
  Optional<PhotonSpectrum> spectrum(Entry entry, String channel) {
    return spectra(entry, (file, all) -> SpectrumFile.ofChannel(file, all, channel, notes));
  }

  /** The only spectrum in the file that an entry names; empty with faults. */
  Optional<PhotonSpectrum> spectrum(Entry entry) {
    return spectra(entry, (file, all) -> SpectrumFile.only(file, all, notes));
  }

  private Optional<PhotonSpectrum> spectra(
      Entry entry, BiFunction<String, List<MeasuredSpectrum>, Optional<PhotonSpectrum>> choice) {
    Optional<String> name = entry.text("name a file, as in spectrum: blue.csv");
    Optional<String> path = name.flatMap(text -> resolve(entry, text));
    if (path.isEmpty()) {
      return Optional.empty();
    }
    String file = Notes.shown(name.get());
    if (!spectra.containsKey(path.get())) {
      spectra.put(
          path.get(),
          bytes(entry, name.get(), path.get(), SpectrumFile.MOST_BYTES)
              .map(bytes -> SpectrumFile.read(file, bytes, Optional.empty(), notes))
              .orElse(List.of()));
    }
    List<MeasuredSpectrum> all = spectra.get(path.get());
    return all.isEmpty() ? Optional.empty() : choice.apply(file, all);
  }

  /** The sensor's response in the file that an entry names; empty with faults. */
  Optional<SensorResponse> response(Entry entry) {
    Optional<String> name = entry.text("name a file, as in response: probe.csv");
    return name.flatMap(text -> resolve(entry, text))
        .flatMap(path -> bytes(entry, name.get(), path, ResponseFile.MOST_BYTES))
        .flatMap(bytes -> ResponseFile.read(Notes.shown(name.get()), bytes, notes));
  }

  /** The intensity table in the file that an entry names; empty with faults. */
  Optional<TabulatedIntensity> intensity(Entry entry) {
    Optional<String> name = entry.text("name a file, as in {table: pendant.csv}");
    Optional<String> path = name.flatMap(text -> resolve(entry, text));
    if (path.isEmpty()) {
      return Optional.empty();
    }
    if (!tables.containsKey(path.get())) {
      tables.put(
          path.get(),
          bytes(entry, name.get(), path.get(), IntensityFile.MOST_BYTES)
              .flatMap(bytes -> IntensityFile.read(Notes.shown(name.get()), bytes, notes)));
    }
    return tables.get(path.get());
  }

  /** The photometric file that an entry names; empty with faults. */
  Optional<PhotometricFile> photometric(Entry entry) {
    Optional<String> name = entry.text("name a file, as in {file: pendant.ies}");
    Optional<String> path = name.flatMap(text -> resolve(entry, text));
    if (path.isEmpty()) {
      return Optional.empty();
    }
    if (!photometric.containsKey(path.get())) {
      photometric.put(
          path.get(),
          bytes(entry, name.get(), path.get(), PhotometricFile.MOST_BYTES)
              .flatMap(bytes -> PhotometricFile.read(Notes.shown(name.get()), bytes, notes)));
    }
    return photometric.get(path.get());
  }

  /** The reflectance in the file that an entry names; empty with faults. */
  Optional<Reflectance> reflectance(Entry entry) {
    Optional<String> name = entry.text("name a file, as in reflectance: coralline.csv");
    Optional<String> path = name.flatMap(text -> resolve(entry, text));
    if (path.isEmpty()) {
      return Optional.empty();
    }
    if (!reflectances.containsKey(path.get())) {
      reflectances.put(
          path.get(),
          bytes(entry, name.get(), path.get(), ReflectanceFile.MOST_BYTES)
              .flatMap(bytes -> ReflectanceFile.read(Notes.shown(name.get()), bytes, notes)));
    }
    return reflectances.get(path.get());
  }

  /**
   * What a mesh file holds.
   *
   * @param name of the file as it may stand in a message
   * @param kind of file
   * @param triangles in its own unit and axes
   */
  record MeshSource(String name, MeshFile.Kind kind, Triangles triangles) {}

  /** The mesh in the file that an entry names; empty with faults. */
  Optional<MeshSource> mesh(Entry entry) {
    Optional<String> name = entry.text("name a file, as in mesh: rock.stl");
    Optional<String> path = name.flatMap(text -> resolve(entry, text));
    if (path.isEmpty()) {
      return Optional.empty();
    }
    Optional<MeshFile.Kind> kind = MeshFile.Kind.of(name.get());
    if (kind.isEmpty()) {
      entry.fault(
          Notes.shown(name.get()),
          "a file that ends in .obj, .stl, .glb or .gltf",
          "export the mesh as one of these");
      return Optional.empty();
    }
    if (!meshes.containsKey(path.get())) {
      String shown = Notes.shown(name.get());
      meshes.put(
          path.get(),
          bytes(entry, name.get(), path.get(), MeshFile.MOST_BYTES)
              .flatMap(bytes -> MeshFile.read(shown, kind.get(), bytes, notes))
              .map(triangles -> new MeshSource(shown, kind.get(), triangles)));
    }
    return meshes.get(path.get());
  }

  /** The readings in the file that an entry names; none with faults. */
  List<Reading> readings(Entry entry, ReadingsFile.Context context) {
    Optional<String> name = entry.text("name a file, as in readings: low.csv");
    return name.flatMap(text -> resolve(entry, text))
        .flatMap(path -> bytes(entry, name.get(), path, ReadingsFile.MOST_BYTES))
        .map(bytes -> ReadingsFile.read(Notes.shown(name.get()), bytes, context, notes))
        .orElse(List.of());
  }

  private Optional<String> resolve(Entry entry, String name) {
    try {
      return Optional.of(files.canonical(name));
    } catch (InvalidPathException e) {
      entry.fault(Notes.shown(name), "the name of a file", "write its name beside the setup file");
      return Optional.empty();
    }
  }

  private Optional<byte[]> bytes(Entry entry, String name, String path, int limit) {
    try {
      byte[] bytes = files.bytes(path, limit);
      read += bytes.length;
      if (read > MOST_BYTES) {
        entry.fault(
            "more",
            String.format(Locale.ROOT, "%d MiB in all files together", MOST_BYTES >> 20),
            "split the setup");
        throw notes.fatal();
      }
      return Optional.of(bytes);
    } catch (Unreadable e) {
      notes.fault(e.namedAt(entry.file(), entry.line(), entry.column(), entry.path(), name));
      return Optional.empty();
    }
  }
}
