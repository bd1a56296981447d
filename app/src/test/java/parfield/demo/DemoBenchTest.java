package parfield.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.fit.LightModelFit;
import parfield.formats.Setup;
import parfield.formats.SetupFile;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.units.Estimate;

class DemoBenchTest {
  private static final long SEED = 1;

  @TempDir private Path folder;

  private Setup written() throws IOException {
    for (Map.Entry<String, String> file : DemoBench.files(SEED).entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.writeString(path, file.getValue());
    }
    return SetupFile.read(folder.resolve(DemoBench.SETUP));
  }

  @Test
  void theSameSeedGivesTheSameFiles() {
    assertThat(DemoBench.files(7)).isEqualTo(DemoBench.files(7));
    assertThat(DemoBench.files(8).get("low.csv")).isNotEqualTo(DemoBench.files(7).get("low.csv"));
  }

  @Test
  void everyFileSaysThatItIsInvented() {
    assertThat(DemoBench.files(SEED))
        .isNotEmpty()
        .allSatisfy(
            (name, text) ->
                assertThat(text.lines().findFirst().orElseThrow())
                    .containsIgnoringCase("invented"));
  }

  @Test
  void theSetupStatesTheFixtureThatTheReadingsWereMadeWith() throws IOException {
    Fixture stated = written().fixtures().get("bar");
    Fixture real = DemoBench.bar();

    assertThat(stated.length()).isEqualTo(real.length());
    assertThat(stated.width()).isEqualTo(real.width());
    assertThat(stated.emitters()).isEqualTo(real.emitters());
    assertThat(stated.masters()).isEqualTo(real.masters());
    for (double percent : new double[] {0, 30, 50, 80, 100}) {
      Setting setting = new Setting(Map.of("overall", percent));
      assertThat(stated.outputs(setting)).isEqualTo(real.outputs(setting));
    }
  }

  @Test
  void theModelHoldsTheTruthOfARigThatWasNotMeasuredWithinItsInterval() throws IOException {
    Setup setup = written();
    FastSolver solver = new FastSolver();
    LightModel model = LightModelFit.with(solver).fit(List.copyOf(setup.surveys().values()));
    List<Double> centres = List.of(0.28, 0.92);
    double height = 0.25;
    Fixture bar = setup.fixtures().get("bar");
    Rig rig =
        new Rig(
            "between",
            setup.tank(),
            centres.stream().map(x -> Hanging.level(bar, x, 0.275, height)).toList());

    int inside = 0;
    int all = 0;
    double predicted = 0;
    double real = 0;
    for (double depth : new double[] {0.10, 0.25, 0.40}) {
      Places places = Places.plane(setup.tank(), depth, 24, 11);
      Estimate[] estimates = model.predict(solver, rig, places).asShown();
      double[] truth = DemoBench.truth(centres, height, Setting.full(), places).ppfd();
      for (int i = 0; i < truth.length; i++) {
        double shown = DemoBench.METER_SHOWS * truth[i];
        inside += shown >= estimates[i].low() && shown <= estimates[i].high() ? 1 : 0;
        all++;
        predicted += estimates[i].value();
        real += shown;
      }
    }

    // A 90 % interval; places share their errors, so that one bench may miss it by some points.
    assertThat((double) inside / all).isBetween(0.75, 1.0);
    assertThat(predicted / real).isBetween(0.97, 1.03);
  }
}
