package parfield.web.spectra;

import java.util.List;
import java.util.Optional;
import parfield.answer.Refusal;
import parfield.field.FieldSolver;
import parfield.formats.Setup;
import parfield.rig.Rig;
import parfield.web.bench.Benches;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;

/** Rigs of benches with the light of their lamps: as stated, or as a light model has it. */
final class LitRigs {
  private final Benches benches;

  LitRigs(Benches benches) {
    this.benches = benches;
  }

  /** Predicts PPFD. */
  FieldSolver solver() {
    return benches.solver();
  }

  /** Whether what rigs of a bench give can be predicted. */
  boolean predicts(OpenBench bench) {
    return bench.setup().isPresent()
        && (benches.model(bench).isPresent() || stated(bench.setupOrRefuse()));
  }

  private static boolean stated(Setup setup) {
    return setup.fixtures().values().stream()
        .flatMap(fixture -> fixture.channels().stream())
        .allMatch(channel -> channel.distribution().isPresent());
  }

  /** The rig with a distribution for every channel: as stated, else by the best estimate. */
  Rig lit(OpenBench bench, Rig rig) {
    Optional<StoredModel> model = benches.model(bench);
    if (model.isEmpty() && stated(bench.setupOrRefuse())) {
      return rig;
    }
    return model
        .map(StoredModel::model)
        .orElseThrow(() -> Refusal.of("there is no light model yet", "fit one on the page Model"))
        .best()
        .applyTo(rig);
  }

  static double depth(Question question, String field) {
    double usual =
        Math.rint(
                10
                    * question
                        .unit()
                        .fromMetres(question.bench().orElseThrow().bench().usualDepth()))
            / 10;
    double most = question.unit().fromMetres(question.deepest());
    double typed = question.asked().number(field, 0, most, question.unit().symbol(), usual);
    return Math.min(question.deepest(), question.unit().toMetres(typed));
  }

  /** What tells one light of a bench from another: its setup and its model. */
  List<Object> version(OpenBench bench) {
    return List.of(
        bench.id(),
        bench.revision(),
        benches.model(bench).map(model -> model.result().id().toString()).orElse(""));
  }

  /** What to know of the light model that predictions rest on; nothing where it is of today. */
  List<String> cautions(OpenBench bench) {
    return benches.model(bench).filter(model -> !model.current()).isPresent()
        ? List.of(
            "The light model is older than the setup or its readings: fit it again on the page"
                + " Model")
        : List.of();
  }
}
