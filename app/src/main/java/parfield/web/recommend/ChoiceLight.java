package parfield.web.recommend;

import java.util.List;
import java.util.Optional;
import parfield.answer.FieldAnswer;
import parfield.answer.FieldPictures;
import parfield.answer.FieldPrediction;
import parfield.field.FastSolver;
import parfield.fit.LightModel;
import parfield.formats.Setup;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import parfield.web.bench.OpenBench;

/**
 * The light of an option of a recommendation as pictures.
 *
 * @param bench over whose tank it hangs
 * @param model that it was found with
 * @param solver predicts
 * @param unit of lengths
 */
public record ChoiceLight(OpenBench bench, LightModel model, FastSolver solver, LengthUnit unit) {
  /** Names of the pictures. */
  public static final List<String> NAMES = List.of("map", "section", "band");

  /**
   * A picture.
   *
   * @param choice the option
   * @param name of {@link #NAMES}
   * @param asked depth of the plane as typed; if none is, that of most readings
   */
  public String svg(Choice choice, String name, Optional<String> asked) {
    Setup setup = bench.setupOrRefuse();
    Rig rig = choice.over(setup, choice.inWords(unit));
    FieldPrediction prediction = new FieldPrediction(model, solver, rig);
    FieldPictures pictures = new FieldPictures(setup, rig, unit);
    if (name.equals("section")) {
      return pictures.section(
          prediction.section(FieldPrediction.CELL), List.copyOf(setup.bands().values()));
    }
    double depth = bench.bench().usualDepth();
    if (asked.isPresent()) {
      depth = Double.parseDouble(DemandForm.typedNumber("depth", asked.get()));
      bench.bench().checkDepths(List.of(depth), unit);
    }
    prediction.addPlane(depth, FieldPrediction.CELL, bench.bench().bands());
    FieldAnswer field = prediction.answer(setup.source(), List.of());
    return name.equals("band") && !setup.bands().isEmpty()
        ? pictures.bandMap(field, 0, setup.bands().values().iterator().next())
        : pictures.map(field, 0, FieldPictures.scale(field));
  }
}
