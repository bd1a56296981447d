package parfield.formats;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** An invented bench on disk whose files a test may spoil. */
final class TestBench {
  /** States everything that the format knows. */
  static final String FULL =
      """
      parfield: 1
      length: cm
      tank:
        length: 90
        width: 60
        water: 50
        walls: {left: clean, right: film, front: {clear: 0.8, diffuse: 0.1, cover: water}, back: {painted: true}}
        bottom: {reflectance: 0.35}
        rim: 2
        braces: [{from: 43, to: 47}, {from: 20, to: 24, along: width}]
        opaque: [{x: [0, 10], y: [0, 5]}]
        lid: {mesh: 0.7}
        surface: gentle
        yellowing: 0.08
        yellowing slope: 0.016
        refractive index: 1.339
        scattering: 0.1
        freeboard: 3
        aquascape:
          arch: {box: {length: 20, width: 15, height: 10}, x: 30, y: 35, above bottom: 1, yaw: 20, reflectance: 0.2}
          boulder: {ellipsoid: {length: 16, width: 12, height: 10}, x: 65, y: 30, above bottom: -1, yaw: 0, reflectance: 0.3}
        room: {height: 60, length: 100, width: 70}
      fixtures:
        pendant:
          length: 40
          width: 20
          emitters: [{x: -12, y: 0, aperture: 3}, {x: 12, y: 0, aperture: 3}]
          channels:
            blue: {spectrum: spectra/blue.csv, watts: 90, output: {0: 0, 50: 0.4, 100: 1}}
            violet: {spectrum: spectra/blue.csv, watts: 30, output: {0: 0, 100: 1}, distribution: {lobe: 2, peak: 40}}
          dials:
            overall: {scales: [blue]}
          distribution: {beam: 90, photon flux: 120}
      rigs:
        low:
          hang: [{fixture: pendant, x: 45, y: 30, height: 20, tilt: 10, yaw: 90, dials: {violet: 50}}]
          dials: {blue: 80, violet: 100, overall: 90}
      meters:
        probe: {immersion: 1.25, applied: false, ambient: 2, scale_error: 0.04, repeat_error: 0.03, position_error: 0.7, resolution: 0.1}
      surveys:
        low: {rig: low, meter: probe, readings: low.csv}
      bands:
        soft: {from: 75, to: 150}
      demands:
        - {band: soft, coverage: 0.70, of: plane, depth: 20}
        - {retention: 0.85, of: lowest height}
        - {evenness: 0.5, of: volume, zone: {name: reef, x: [20, 40], y: [10, 30], depth: [10, 25]}}
        - {ends to centre: 0.75, of: volume}
        - {hot spot: 400, of: volume}
        - {mean ppfd: [100, 200], of: volume}
        - {evenness: 0.1, of: living surface}
      """;

  static final String READINGS =
      """
      x_cm,y_cm,depth_cm,ppfd
      10,10,15,120
      45,30,15,420
      80,50,15,118
      """;

  static final String SPECTRUM =
      """
      wavelength_nm,relative_photon_flux
      380,0
      400,0.1
      420,0.4
      440,1
      460,1
      480,0.3
      500,0.1
      """;

  private final Path folder;

  private TestBench(Path folder) {
    this.folder = folder;
  }

  /** A sound bench in a folder. */
  static TestBench in(Path folder) {
    return new TestBench(folder)
        .with("setup.yaml", FULL)
        .with("low.csv", READINGS)
        .with("spectra/blue.csv", SPECTRUM);
  }

  TestBench with(String name, String text) {
    return with(name, text.getBytes(StandardCharsets.UTF_8));
  }

  TestBench with(String name, byte[] bytes) {
    try {
      Path path = folder.resolve(name);
      Files.createDirectories(path.getParent());
      Files.write(path, bytes);
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The bench with a part of its setup replaced; the part must be there. */
  TestBench replacing(String part, String replacement) {
    if (!FULL.contains(part)) {
      throw new IllegalArgumentException("the setup does not hold: " + part);
    }
    return with("setup.yaml", FULL.replace(part, replacement));
  }

  Path path(String name) {
    return folder.resolve(name);
  }

  Setup read() {
    return SetupFile.read(path("setup.yaml"));
  }

  /** The messages of the faults, none if the bench is sound. */
  List<String> faults() {
    try {
      read();
      return List.of();
    } catch (InvalidFile e) {
      return e.faults().stream().map(Fault::message).toList();
    }
  }
}
