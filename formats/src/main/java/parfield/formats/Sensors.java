package parfield.formats;

import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import parfield.spectrum.Illuminants;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.SensorResponse;

/** Sensors' responses, by name or from a file, and the lights that they are calibrated under. */
public final class Sensors {
  private Sensors() {}

  /** Responses by name: the ideal one, then the made-up shapes. */
  public static Map<String, SensorResponse> responses() {
    Map<String, SensorResponse> named = new LinkedHashMap<>();
    Stream.concat(Stream.of(SensorResponse.ideal()), SensorResponse.generics().stream())
        .forEach(response -> named.put(response.name(), response));
    return Collections.unmodifiableMap(named);
  }

  /** Lights by name. */
  public static Map<String, PhotonSpectrum> lights() {
    Map<String, PhotonSpectrum> named = new LinkedHashMap<>();
    named.put("illuminant A", Illuminants.a());
    named.put("illuminant D65", Illuminants.d65());
    named.put("equal photons", PhotonSpectrum.flat());
    return Collections.unmodifiableMap(named);
  }

  /**
   * A response from a file.
   *
   * @param response its table, named after the file
   * @param assumptions what was taken without being stated, one plain sentence each
   */
  public record Read(SensorResponse response, List<String> assumptions) {
    public Read {
      Objects.requireNonNull(response, "response");
      assumptions = List.copyOf(assumptions);
    }
  }

  /**
   * Reads a response.
   *
   * @param path the file
   * @throws InvalidFile with every fault of the file
   */
  public static Read read(Path path) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    Notes notes = new Notes();
    try {
      byte[] bytes = Source.bytes(path, ResponseFile.MOST_BYTES);
      Optional<SensorResponse> response = ResponseFile.read(file, bytes, notes);
      notes.throwIfFaulty();
      return new Read(response.orElseThrow(), notes.assumptions());
    } catch (Unreadable e) {
      throw notes.fatal(e.of(file));
    }
  }
}
