package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.LightModelFit;
import parfield.fit.PredictedField;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.Estimate;

/**
 * The invented benches of ../shared/challenge: light models fitted to their surveys alone, held
 * against the simulated truth at the rigs that no survey measured.
 *
 * <p>The truth comes from an independent Monte Carlo program; its own standard error is 0.5–1.3 %.
 */
class OpenBenchesValidationTest {
  /** Cells of a plane whose share in a band is its coverage [m]. */
  private static final double CELL = 0.01;

  /** Errors at one plane of one rig. */
  private record Line(
      String plane,
      boolean measured,
      double[] errors,
      double mean,
      int held,
      int heldWithScale,
      Map<String, double[]> coverage) {
    double quantile(double probability) {
      double[] sorted = errors.clone();
      Arrays.sort(sorted);
      return Estimate.quantile(sorted, probability);
    }
  }

  private static Path challenge() {
    for (String up : new String[] {"../..", ".."}) {
      Path folder = Path.of(up, "shared", "challenge");
      if (Files.isDirectory(folder)) {
        return folder;
      }
    }
    assumeTrue(false, "skipped: no folder ../shared/challenge beside the repository");
    return Path.of("");
  }

  @Test
  void predictsRigsThatNoSurveyMeasured() throws IOException {
    List<Line> unmeasured = new ArrayList<>();
    List<Path> benches;
    try (var folders = Files.list(challenge())) {
      benches =
          folders.filter(folder -> Files.exists(folder.resolve("setup.yaml"))).sorted().toList();
    }
    System.out.printf(
        "%-18s %8s %7s %7s %7s %7s  coverage predicted / true%n",
        "bench rig-depth", "median", "90 %", "mean", "held", "w.scale");
    for (Path bench : benches) {
      for (Line line : lines(bench)) {
        System.out.println(row(line));
        if (!line.measured) {
          unmeasured.add(line);
        }
      }
    }
    double[] all = unmeasured.stream().flatMapToDouble(l -> Arrays.stream(l.errors)).toArray();
    Arrays.sort(all);
    double held = unmeasured.stream().mapToInt(Line::held).sum() / (double) all.length;
    System.out.printf(
        Locale.ROOT,
        "all unmeasured: median %.1f %%, 90th percentile %.1f %%, 90 %% intervals hold %.0f %%%n",
        100 * Estimate.quantile(all, 0.5),
        100 * Estimate.quantile(all, 0.9),
        100 * held);
    assertThat(Estimate.quantile(all, 0.5)).isLessThan(0.03);
    assertThat(Estimate.quantile(all, 0.9)).isLessThan(0.08);
    assertThat(held).isBetween(0.85, 0.95);
    for (Line line : unmeasured) {
      assertThat(line.mean).as("mean of %s", line.plane).isBetween(-0.015, 0.015);
      line.coverage.forEach(
          (band, pair) ->
              assertThat(pair[0] - pair[1])
                  .as("coverage of %s, %s", line.plane, band)
                  .isBetween(-0.03, 0.03));
    }
  }

  private static String row(Line line) {
    StringBuilder coverage = new StringBuilder();
    line.coverage.forEach(
        (band, pair) ->
            coverage.append(
                String.format(Locale.ROOT, " %s %.1f/%.1f", band, 100 * pair[0], 100 * pair[1])));
    int n = line.errors.length;
    return String.format(
        Locale.ROOT,
        "%-18s %6.1f %% %5.1f %% %+5.1f %% %5.0f %% %5.0f %% %s%s",
        line.plane,
        100 * line.quantile(0.5),
        100 * line.quantile(0.9),
        100 * line.mean,
        100.0 * line.held / n,
        100.0 * line.heldWithScale / n,
        coverage,
        line.measured ? "  (measured)" : "");
  }

  private static List<Line> lines(Path bench) throws IOException {
    Setup setup = SetupFile.read(bench.resolve("setup.yaml"));
    FastSolver solver = new FastSolver();
    LightModel model = LightModelFit.with(solver).fit(List.copyOf(setup.surveys().values()));
    JsonNode answers =
        new ObjectMapper().readTree(bench.resolve("answers").resolve("answers.json").toFile());
    List<Line> lines = new ArrayList<>();
    for (Map.Entry<String, Rig> rig : setup.rigs().entrySet()) {
      boolean measured =
          setup.surveys().values().stream()
              .map(Survey::rig)
              .anyMatch(other -> other.name().equals(rig.getKey()));
      TreeMap<Integer, JsonNode> depths = new TreeMap<>();
      answers
          .get(rig.getKey())
          .properties()
          .forEach(entry -> depths.put(Integer.parseInt(entry.getKey()), entry.getValue()));
      for (Map.Entry<Integer, JsonNode> depth : depths.entrySet()) {
        String plane = rig.getKey() + "-" + depth.getKey();
        Path truth = bench.resolve("answers").resolve(plane + ".csv");
        lines.add(
            line(
                bench.getFileName() + " " + plane,
                measured,
                setup,
                model,
                solver,
                rig.getValue(),
                depth.getKey() / 100.0,
                Files.readAllLines(truth),
                depth.getValue()));
      }
    }
    return lines;
  }

  private static Line line(
      String plane,
      boolean measured,
      Setup setup,
      LightModel model,
      FastSolver solver,
      Rig rig,
      double depth,
      List<String> truth,
      JsonNode answer) {
    List<Place> places = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    for (String row : truth.subList(1, truth.size())) {
      String[] cells = row.split(",");
      places.add(
          new Place(
              Double.parseDouble(cells[0]) / 100,
              Double.parseDouble(cells[1]) / 100,
              Double.parseDouble(cells[2]) / 100));
      values.add(Double.parseDouble(cells[3]));
    }
    PredictedField field = model.predict(solver, rig, Places.of(places));
    double[] best = field.best();
    Estimate[] shown = field.asShown();
    Estimate[] scaled = field.withMeterScale();
    double[] errors = new double[best.length];
    int held = 0;
    int heldWithScale = 0;
    for (int i = 0; i < errors.length; i++) {
      double value = values.get(i);
      errors[i] = Math.abs(best[i] / value - 1);
      held += value >= shown[i].low() && value <= shown[i].high() ? 1 : 0;
      heldWithScale += value >= scaled[i].low() && value <= scaled[i].high() ? 1 : 0;
    }
    Tank tank = rig.tank();
    Places cells =
        Places.plane(
            tank,
            depth,
            (int) Math.round(tank.length() / CELL),
            (int) Math.round(tank.width() / CELL));
    double[] fine = solver.solve(model.best().applyTo(rig), cells).ppfd();
    Map<String, double[]> coverage = new TreeMap<>();
    for (Band band : setup.bands().values()) {
      double inside = Arrays.stream(fine).filter(band::contains).count() / (double) fine.length;
      coverage.put(band.name(), new double[] {inside, answer.get(band.name()).asDouble()});
    }
    double mean = Arrays.stream(fine).average().orElseThrow() / answer.get("mean").asDouble() - 1;
    return new Line(plane, measured, errors, mean, held, heldWithScale, coverage);
  }
}
