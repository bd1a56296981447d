package parfield.web.spectra;

import java.util.List;
import java.util.OptionalDouble;
import parfield.answer.BlendAnswer;
import parfield.answer.Light;
import parfield.answer.PredictedBlend;
import parfield.answer.SpectrumPictures;
import parfield.rig.Rig;
import parfield.spectrum.Blend;
import parfield.web.bench.OpenBench;

/** How the colours of measured places blend, or of places that are predicted under a rig. */
final class BlendView {
  /** Heading over what is to be known of a light model. */
  static final String MODEL = "About the light model";

  private final LitRigs rigs;

  BlendView(LitRigs rigs) {
    this.rigs = rigs;
  }

  Seen seen(Question question) {
    String from = question.asked().text("places", "");
    BlendAnswer answer =
        from.isEmpty() || question.bench().isEmpty()
            ? measured(question)
            : predicted(question, question.bench().get(), from);
    Seen.Builder seen = new Seen.Builder();
    if (!from.isEmpty()) {
      question.bench().ifPresent(bench -> seen.cautions(MODEL, rigs.cautions(bench)));
    }
    if (question.bands().bands().size() <= SpectrumPictures.MOST_BLEND_BANDS) {
      seen.picture(SpectrumPictures.blend(answer));
    }
    return seen.table("Every place against the mean light of all", answer.table())
        .sentences("What the figures mean", answer.explanation())
        .sentences("What it rests on", answer.statements())
        .cautions("About the spectra", answer.about())
        .of(answer.blend().words(), answer);
  }

  private static BlendAnswer measured(Question question) {
    List<Light> lights = question.lights();
    return new BlendAnswer(
        Blend.of(
            question.bands(),
            lights.stream().map(light -> new Blend.Spot(light.name(), light.photons())).toList()),
        question.bands(),
        List.of(),
        lights,
        List.of());
  }

  private BlendAnswer predicted(Question question, OpenBench bench, String rigName) {
    double depth = LitRigs.depth(question, "depth");
    LightViews.refuseFaults(question.asked());
    Rig rig = bench.bench().rig(rigName);
    return PredictedBlend.of(
        rigs.solver(),
        rigs.lit(bench, rig),
        PredictedBlend.usualPlaces(rig, depth),
        OptionalDouble.of(depth),
        question.bands(),
        question.unit(),
        List.of());
  }
}
