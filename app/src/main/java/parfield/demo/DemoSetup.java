package parfield.demo;

/** The setup file of the invented bench: what its person believes. */
final class DemoSetup {
  static final String TEXT =
      """
      # An invented bench: tank, fixture, meter and readings were made up by a generator.
      # They stand for nothing that can be bought or visited.
      parfield: 1
      length: cm
      tank:
        length: 120
        width: 55
        water: 50
        walls: {left: film, right: film, front: clean, back: painted}
        bottom: {reflectance: 0.30}
        rim: 2
        surface: gentle
        yellowing: 0.05
        room: {height: 60}
      fixtures:
        bar:
          length: 44
          width: 9
          emitters:
            - {x: -16.5, y: 0, aperture: 3}
            - {x: -5.5, y: 0, aperture: 3}
            - {x: 5.5, y: 0, aperture: 3}
            - {x: 16.5, y: 0, aperture: 3}
          channels:
            blue: {spectrum: spectra/blue.csv, watts: 48}
            white: {spectrum: spectra/white.csv, watts: 42, output: {0: 0, 50: 0.42, 100: 1}}
            violet: {spectrum: spectra/violet.csv, watts: 16}
          dials:
            overall: {scales: [blue, white]}
          distribution: fitted
      rigs:
        low:
          hang:
            - {fixture: bar, x: 32, y: 27.5, height: 18}
            - {fixture: bar, x: 88, y: 27.5, height: 18}
          dials: {overall: 100, blue: 100, white: 100, violet: 100}
        high:
          hang:
            - {fixture: bar, x: 32, y: 27.5, height: 32}
            - {fixture: bar, x: 88, y: 27.5, height: 32}
          dials: {overall: 100, blue: 100, white: 100, violet: 100}
      meters:
        probe:
          immersion: 1.08
          applied: true
          ambient: 0
          scale_error: 0.05
          repeat_error: 0.02
          position_error: 0.5
          resolution: 1
      surveys:
        low: {rig: low, meter: probe, readings: low.csv}
        high: {rig: high, meter: probe, readings: high.csv}
      bands:
        soft: {from: 80, to: 160}
        stony: {from: 180, to: 320}
      demands:
        - {band: stony, coverage: 0.65}
        - {retention: 0.85, of: lowest height}
        - {ends_to_centre: 0.75, depth: 15}
      """;

  private DemoSetup() {}
}
