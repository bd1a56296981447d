package parfield.web.home;

/** What a bench of one's own begins with: a setup that is whole, to be changed line by line. */
final class BlankBench {
  static final String SETUP =
      """
      # A beginning: change what is different on your bench.
      parfield: 1
      length: cm
      tank:
        length: 90
        width: 60
        water: 50
        walls: {left: clean, right: clean, front: clean, back: clean}
        surface: gentle
      fixtures:
        light:
          emitters:
            - {x: 0, y: 0}
          channels:
            all: {}
          distribution: fitted
      rigs:
        first:
          hang:
            - {fixture: light, x: 45, y: 30, height: 20}
          dials: {all: 100}
      meters:
        probe:
          applied: true
      surveys:
        first: {rig: first, meter: probe, grid: {depths: [15, 35]}}
      bands:
        wanted: {from: 100, to: 250}
      demands:
        - {band: wanted, coverage: 0.70}
      """;

  private BlankBench() {}
}
