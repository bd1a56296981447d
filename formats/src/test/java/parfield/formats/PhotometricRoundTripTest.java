package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import parfield.formats.PhotometricFile.Format;
import parfield.lamp.CosinePower;
import parfield.lamp.HarmonicIntensity;
import parfield.lamp.IntensityDistribution;

/**
 * Lights whose intensity is a formula, written in every symmetry and system of planes that the
 * formats know, by texts made here or by our writers, and read back. The formula is the truth.
 */
class PhotometricRoundTripTest {
  private static final long SEED = Long.getLong("seed", 20261130L);

  /** A light by direction: components forward (down), along the length, across it. */
  private interface Light {
    double at(double down, double along, double across);

    default double at(double[] v) {
      return at(v[0], v[1], v[2]);
    }
  }

  /** Down, along, across of γ and C [degrees]. */
  private static double[] ofC(double gamma, double c) {
    double g = Math.toRadians(gamma);
    double a = Math.toRadians(c);
    return new double[] {Math.cos(g), Math.sin(g) * Math.cos(a), Math.sin(g) * Math.sin(a)};
  }

  private static double[] ofA(double h, double v) {
    double x = Math.toRadians(h);
    double y = Math.toRadians(v);
    return new double[] {Math.cos(y) * Math.cos(x), Math.cos(y) * Math.sin(x), Math.sin(y)};
  }

  private static double[] ofB(double h, double v) {
    double x = Math.toRadians(h);
    double y = Math.toRadians(v);
    return new double[] {Math.cos(x) * Math.cos(y), Math.sin(x), Math.cos(x) * Math.sin(y)};
  }

  /** A random smooth light with the wanted mirrors, dark at the horizon. */
  private static Light light(SplittableRandom random, boolean mirrorAlong, boolean mirrorAcross) {
    double a = random.nextDouble(0.5);
    double b = random.nextDouble(0.5);
    double p = mirrorAcross ? 0 : random.nextDouble(-0.4, 0.4);
    double q = mirrorAlong ? 0 : random.nextDouble(-0.4, 0.4);
    double r = mirrorAlong || mirrorAcross ? 0 : random.nextDouble(-0.3, 0.3);
    return (down, along, across) ->
        down <= 0
            ? 0
            : 1000
                * down
                * down
                * (1
                    + a * along * along
                    + b * across * across * across * across
                    + p * along
                    + q * across
                    + r * along * across);
  }

  private static String numbers(List<Double> values, SplittableRandom random) {
    return values.stream()
        .map(value -> String.format(Locale.ROOT, "%.6f", value))
        .collect(Collectors.joining(random.nextInt(2) == 0 ? "\r\n" : ", "));
  }

  private static List<Double> range(double from, double to, double step) {
    List<Double> range = new ArrayList<>();
    for (int i = 0; from + i * step <= to + 1e-9; i++) {
      range.add(from + i * step);
    }
    return range;
  }

  private interface Direction {
    double[] of(double horizontal, double vertical);
  }

  private static PhotometricFile lm63(
      int type,
      List<Double> horizontals,
      List<Double> verticals,
      Direction direction,
      Light light,
      SplittableRandom random) {
    List<Double> candela = new ArrayList<>();
    double multiplier = random.nextDouble(0.5, 3);
    for (double h : horizontals) {
      for (double v : verticals) {
        candela.add(light.at(direction.of(h, v)) / multiplier);
      }
    }
    String text =
        String.format(
            Locale.ROOT,
            "IESNA:LM-63-1995%n[TEST] 1%nTILT=NONE%n2 500 %.17g%n%d %d,%d 2%n0 0 0 1 1 0%n",
            multiplier,
            verticals.size(),
            horizontals.size(),
            type);
    text += numbers(verticals, random) + "\n" + numbers(horizontals, random) + "\n";
    text += numbers(candela, random) + "\n";
    return PhotometricFile.read("a.ies", text.getBytes(StandardCharsets.UTF_8));
  }

  private static void same(
      PhotometricFile file, Light light, String what, SplittableRandom random) {
    IntensityDistribution read = file.table().distribution(1);
    for (int i = 0; i < 100; i++) {
      double gamma = random.nextDouble(0, 179);
      double c = random.nextDouble(-360, 720);
      double truth = light.at(ofC(gamma, c));
      assertThat(read.intensity(Math.toRadians(gamma), Math.toRadians(c)))
          .as("seed %d, %s, gamma %s, C %s", SEED, what, gamma, c)
          .isCloseTo(truth, within(3.0));
    }
    double flux = 0;
    int steps = 400;
    for (int i = 0; i < steps; i++) {
      double down = (i + 0.5) / steps;
      for (int j = 0; j < 60; j++) {
        flux += light.at(ofC(Math.toDegrees(Math.acos(down)), 6 * j)) * 2 * Math.PI / steps / 60;
      }
    }
    assertThat(file.table().flux()).as(what).isCloseTo(flux, within(0.002 * flux));
  }

  @Test
  void typeC() {
    SplittableRandom random = new SplittableRandom(SEED);
    List<Double> gammas = range(0, 90, 2.5);
    for (int i = 0; i < 4; i++) {
      Light none = light(random, false, false);
      Light along = light(random, true, false);
      Light across = light(random, false, true);
      Light both = light(random, true, true);
      Direction c = (h, v) -> ofC(v, h);
      same(lm63(1, range(0, 360, 5), gammas, c, none, random), none, "0 to 360", random);
      same(lm63(1, range(0, 355, 5), gammas, c, none, random), none, "0 to 355", random);
      same(lm63(1, range(0, 180, 5), gammas, c, along, random), along, "0 to 180", random);
      same(lm63(1, range(90, 270, 5), gammas, c, across, random), across, "90 to 270", random);
      same(lm63(1, range(0, 90, 5), gammas, c, both, random), both, "0 to 90", random);
      Light axial = (down, x, y) -> none.at(down, Math.sqrt(1 - down * down), 0);
      same(lm63(1, range(0, 0, 1), gammas, c, axial, random), axial, "0", random);
    }
  }

  @Test
  void typesAandB() {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    List<Double> all = range(-90, 90, 2.5);
    List<Double> half = range(0, 90, 2.5);
    for (int i = 0; i < 3; i++) {
      Light none = light(random, false, false);
      Light mirrored = light(random, false, true);
      same(lm63(3, all, all, PhotometricRoundTripTest::ofA, none, random), none, "A", random);
      same(lm63(2, all, all, PhotometricRoundTripTest::ofB, none, random), none, "B", random);
      same(
          lm63(3, half, all, PhotometricRoundTripTest::ofA, mirrored, random),
          mirrored,
          "A, 0 to 90",
          random);
      same(
          lm63(2, half, all, PhotometricRoundTripTest::ofB, mirrored, random),
          mirrored,
          "B, 0 to 90",
          random);
    }
  }

  /** A text of EULUMDAT whose plane C is turned by a quarter: C0 lies across the length. */
  private static PhotometricFile eulumdat(
      int symmetry, int planes, int from, int shown, Light light, boolean commas) {
    List<Double> gammas = range(0, 90, 2.5);
    double step = 360.0 / planes;
    List<String> lines =
        new ArrayList<>(
            List.of("company", "3", "" + symmetry, "" + planes, "" + step, "" + gammas.size()));
    lines.addAll(List.of("2.5", "report", "lamp", "number", "FILE", "today"));
    for (int i = 0; i < 9; i++) {
      lines.add("100");
    }
    // The light gives 1300 lm of lamps of 2000 lm, its conversion factor is 2.
    lines.addAll(List.of("100", "0", "2", "0", "1", "3", "lamps", "2000", "", "", "60"));
    for (int i = 0; i < 10; i++) {
      lines.add("0.5");
    }
    for (int i = 0; i < planes; i++) {
      lines.add(String.format(Locale.ROOT, "%.3f", i * step));
    }
    gammas.forEach(gamma -> lines.add(String.valueOf(gamma)));
    for (int i = from; i < from + shown; i++) {
      for (double gamma : gammas) {
        double candela = light.at(ofC(gamma, i * step - 90));
        lines.add(String.format(Locale.ROOT, "%.5f", candela * 1000 / 2000 / 2));
      }
    }
    String text = String.join("\r\n", lines) + "\r\n";
    return PhotometricFile.read(
        "a.ldt", (commas ? text.replace('.', ',') : text).getBytes(StandardCharsets.ISO_8859_1));
  }

  @Test
  void eulumdat() {
    SplittableRandom random = new SplittableRandom(SEED + 2);
    for (int i = 0; i < 4; i++) {
      boolean commas = i % 2 == 0;
      Light none = light(random, false, false);
      // The plane C0–C180 lies across, C90–C270 along the length.
      Light along = light(random, true, false);
      Light across = light(random, false, true);
      Light both = light(random, true, true);
      Light axial = (down, x, y) -> none.at(down, Math.sqrt(1 - down * down), 0);
      same(eulumdat(0, 72, 0, 72, none, commas), none, "Isym 0", random);
      same(eulumdat(1, 1, 0, 1, axial, commas), axial, "Isym 1", random);
      same(eulumdat(1, 24, 0, 1, axial, commas), axial, "Isym 1, planes listed", random);
      same(eulumdat(2, 72, 0, 37, across, commas), across, "Isym 2", random);
      same(eulumdat(3, 72, 54, 37, along, commas), along, "Isym 3", random);
      same(eulumdat(4, 72, 0, 19, both, commas), both, "Isym 4", random);
      same(eulumdat(4, 72, 0, 72, both, commas), both, "Isym 4, all planes told", random);
      // No plane lies along the length.
      same(eulumdat(0, 70, 0, 70, none, commas), none, "Isym 0, 70 planes", random);
    }
  }

  /** A light such as a fit finds: a lobe with harmonics. */
  private static IntensityDistribution fitted(SplittableRandom random, int harmonics) {
    double[][] cosine = new double[harmonics + 1][10];
    double[][] sine = new double[harmonics > 2 ? harmonics + 1 : 0][10];
    double power = random.nextDouble(1, 8);
    for (int j = 0; j < 10; j++) {
      double gamma = Math.PI / 2 * j / 9;
      cosine[0][j] = 4 + power * Math.log(Math.max(0.02, Math.cos(gamma)));
      for (int k = 1; k <= harmonics; k++) {
        boolean kept = harmonics > 2 || k % 2 == 0;
        cosine[k][j] = kept ? random.nextDouble(-0.1, 0.1) * Math.sin(gamma) : 0;
        if (harmonics > 2) {
          sine[k][j] = random.nextDouble(-0.1, 0.1) * Math.sin(gamma);
        }
      }
    }
    return new HarmonicIntensity(cosine, sine);
  }

  private static FixtureLight fixture(List<FixtureLight.Part> parts) {
    return new FixtureLight(
        "pendant weiß",
        parts,
        2,
        0.3,
        0.05,
        0.95,
        1.06,
        "an invented light, told in a sentence that is long enough to need a second line of text",
        LocalDate.of(2026, 11, 30));
  }

  /** Written and read back, the photons of each direction are those of the light. */
  @Test
  void written() {
    SplittableRandom random = new SplittableRandom(SEED + 3);
    for (int i = 0; i < 8; i++) {
      IntensityDistribution emitter =
          i % 4 == 0 ? new CosinePower(40, 1 + i) : fitted(random, i % 4 == 1 ? 0 : 1 + i % 4);
      FixtureLight light =
          fixture(
              List.of(
                  new FixtureLight.Part("blue", emitter, 1, 20 + i, OptionalDouble.of(90)),
                  new FixtureLight.Part(
                      "white", emitter.scaled(0.5), 0.4, 60, OptionalDouble.of(50))));
      assertThat(light.worstByDirection()).isLessThan(1e-5);
      for (Format format : Format.values()) {
        PhotometricFile file = PhotometricFile.read("a", light.bytes(format));
        PhotonKeywords photons = file.photons().orElseThrow();
        assertThat(file.format()).isEqualTo(format);
        assertThat(file.watts()).hasValue(110);
        assertThat(photons.channels()).hasSize(2);
        assertThat(photons.ppf().low()).isCloseTo(0.95 * photons.ppf().value(), within(1e-3));
        IntensityDistribution read = file.table().distribution(photons.photonsPerLumen());
        double peak = 2 * 1.2 * emitter.intensity(0, 0);
        for (int j = 0; j < 400; j++) {
          double gamma = Math.toRadians(random.nextDouble(0, 90));
          double c = Math.toRadians(random.nextDouble(0, 360));
          double truth = 2 * 1.2 * emitter.intensity(gamma, c);
          assertThat(read.intensity(gamma, c))
              .as("seed %d, case %d, %s, %s, %s", SEED, i, format, gamma, c)
              .isCloseTo(truth, within(0.002 * Math.max(truth, 0.02 * peak)));
        }
      }
    }
  }

  /** Channels of unlike shape cannot be told by one table of candela: that is measured. */
  @Test
  void unlikeShapes() {
    FixtureLight light =
        fixture(
            List.of(
                new FixtureLight.Part(
                    "blue", new CosinePower(40, 1), 1, 10, OptionalDouble.empty()),
                new FixtureLight.Part(
                    "white", new CosinePower(40, 4), 1, 60, OptionalDouble.empty())));
    assertThat(light.worstByDirection()).isGreaterThan(0.2);
    PhotometricFile file = PhotometricFile.read("a", light.bytes(Format.LM63));
    assertThat(file.watts()).isEmpty();
    assertThat(file.photons().orElseThrow().channel("BLUE").orElseThrow().ppf())
        .isCloseTo(2 * Math.PI * 40, within(0.5));
  }

  @Test
  void linesAreShort() {
    FixtureLight light =
        fixture(
            List.of(
                new FixtureLight.Part(
                    "blue", new CosinePower(40, 1), 1, 10, OptionalDouble.empty())));
    String text = new String(light.bytes(Format.LM63), StandardCharsets.ISO_8859_1);
    assertThat(text.split("\r\n")).allSatisfy(line -> assertThat(line.length()).isLessThan(81));
    assertThat(text).startsWith("IESNA:LM-63-2002\r\n[TEST] ").contains("\r\n[TESTLAB] ");
    assertThat(text).contains("\r\n[ISSUEDATE] 2026-11-30\r\n[MANUFAC] not stated\r\n");
    PhotometricFile read = PhotometricFile.read("a", light.bytes(Format.LM63));
    assertThat(read.photons().orElseThrow().source()).isEqualTo(light.source());
    assertThat(read.labels())
        .contains(new PhotometricFile.Label("LUMINAIRE", "pendant weiß: blue"));
  }
}
