package parfield.web.model;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import parfield.answer.ModelCharts;
import parfield.answer.Numbers;
import parfield.fit.FitReport;
import parfield.lamp.Fixture;
import parfield.plot.Caption;
import parfield.plot.ResidualMap;
import parfield.plot.ResidualMapSpec;
import parfield.plot.Scene;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.units.LengthUnit;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;

/** A light model as pictures, drawn when they are asked for. */
public final class ModelPictures {
  private final OpenBench bench;
  private final StoredModel stored;
  private final LengthUnit unit;
  private final Map<String, Picture> all = new LinkedHashMap<>();
  private final Map<String, Supplier<String>> drawings = new LinkedHashMap<>();

  /**
   * A picture.
   *
   * @param name of its file
   * @param title of it
   * @param summary what it shows, in a sentence
   */
  public record Picture(String name, String title, String summary) {}

  ModelPictures(OpenBench bench, StoredModel stored, LengthUnit unit) {
    this.bench = bench;
    this.stored = stored;
    this.unit = unit;
    lamps();
    scatter();
    if (stored.current()) {
      residuals();
    }
  }

  /** What there is to see. */
  List<Picture> all() {
    return List.copyOf(all.values());
  }

  /** A picture by its name. */
  Optional<String> named(String name) {
    return Optional.ofNullable(drawings.get(name)).map(Supplier::get);
  }

  private void add(String name, Caption caption, Supplier<String> drawing) {
    all.put(name, new Picture(name, caption.title(), caption.summary()));
    drawings.put(name, drawing);
  }

  private void lamps() {
    Map<String, Fixture> fixtures = bench.setup().map(setup -> setup.fixtures()).orElse(Map.of());
    stored
        .model()
        .best()
        .distributions()
        .forEach(
            (fixture, channels) -> {
              for (int c = 0; c < channels.size(); c++) {
                lamp(fixture, c, fixtures.get(fixture));
              }
            });
  }

  private void lamp(String fixture, int channel, Fixture stated) {
    String channelName =
        stated != null && channel < stated.channels().size()
            ? stated.channels().get(channel).name()
            : "channel " + (channel + 1);
    Caption caption = ModelCharts.lampCaption(stored.model(), fixture, channel, channelName);
    add(
        String.format(Locale.ROOT, "lamp-%d-%d.svg", all.size(), channel),
        caption,
        () -> ModelCharts.lamp(stored.model(), fixture, channel, caption));
  }

  private void scatter() {
    FitReport report = stored.model().report();
    add("scatter.svg", ModelCharts.scatterCaption(report), () -> ModelCharts.scatter(report));
  }

  private void residuals() {
    int number = 0;
    for (Survey survey : FoundModel.fitted(bench, stored)) {
      List<Double> depths =
          survey.readings().stream().map(r -> r.place().depth()).distinct().sorted().toList();
      for (double depth : depths) {
        number++;
        residuals("residuals-" + number + ".svg", survey, depth);
      }
    }
  }

  private void residuals(String name, Survey survey, double depth) {
    List<ResidualMapSpec.Residual> residuals =
        stored.model().report().residuals().stream()
            .filter(residual -> residual.survey().equals(survey.name()))
            .filter(residual -> residual.index() < survey.readings().size())
            .filter(r -> survey.readings().get(r.index()).place().depth() == depth)
            .map(residual -> residual(survey.readings().get(residual.index()), residual))
            .toList();
    double worst = residuals.stream().mapToDouble(r -> Math.abs(r.relative())).max().orElse(0);
    Caption caption =
        new Caption(
            String.format(
                Locale.ROOT,
                "Residuals of %s, %s deep",
                survey.name(),
                Numbers.withUnit(depth, unit)),
            String.format(
                Locale.ROOT,
                "Measured over predicted less one, in percent; the largest is %.0f %%.",
                100 * worst));
    add(
        name,
        caption,
        () ->
            ResidualMap.svg(
                new ResidualMapSpec(
                    caption,
                    Scene.of(survey.rig().tank(), unit).withFixtures(survey.rig().hangings()),
                    residuals)));
  }

  private static ResidualMapSpec.Residual residual(Reading reading, FitReport.Residual residual) {
    return new ResidualMapSpec.Residual(
        reading.place().x(),
        reading.place().y(),
        residual.measured() / Math.max(1e-9, residual.predicted()) - 1,
        !residual.suspicion().isEmpty());
  }
}
