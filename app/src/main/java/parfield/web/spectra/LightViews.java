package parfield.web.spectra;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import parfield.answer.CompareAnswer;
import parfield.answer.DepthsAnswer;
import parfield.answer.DescribeAnswer;
import parfield.answer.EyesAnswer;
import parfield.answer.Light;
import parfield.answer.Numbers;
import parfield.answer.OverlayAnswer;
import parfield.answer.PartsAnswer;
import parfield.answer.Refusal;
import parfield.answer.SpectrumPictures;
import parfield.optics.Underwater;
import parfield.optics.Water;
import parfield.plot.ChromaticityChartSpec;
import parfield.plot.CurvesSpec;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.Comparison;
import parfield.spectrum.EyeExposure;
import parfield.spectrum.LightAnalysis;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.RadiantSpectrum;
import parfield.spectrum.Scale;
import parfield.spectrum.SymbiontAbsorption;
import parfield.spectrum.Unmixing;
import parfield.spectrum.ViewedSource;

/** The views that look at spectra as they were measured. */
final class LightViews {
  /** Steps of the chart of shares by depth. */
  private static final int STEPS = 10;

  /** Yellowing that a slider reaches [m⁻¹]; what is beyond can be typed. */
  static final double MOST_YELLOWING = 5;

  /** Farthest eye and largest lamp [m]. */
  private static final double FARTHEST = 100;

  private static final double BRIGHTEST = 100_000;

  private LightViews() {}

  static Seen overlay(Question question) {
    Optional<Light> reference = question.light("ref");
    List<Light> lights = question.without(reference);
    if (lights.isEmpty()) {
      throw Refusal.of(
          "only the reference is chosen", "choose a spectrum to lay over it, or no reference");
    }
    OverlayAnswer.Height height =
        switch (question.asked().text("height", "ppfd")) {
          case "peak" -> OverlayAnswer.Height.PEAK;
          case "measured" -> OverlayAnswer.Height.MEASURED;
          default -> OverlayAnswer.Height.PPFD;
        };
    List<Light> shown = new ArrayList<>(lights);
    reference.ifPresent(shown::add);
    if (shown.size() > OverlayAnswer.MOST) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "one picture tells %d spectra apart; %d are chosen",
              OverlayAnswer.MOST,
              shown.size()),
          "choose fewer here; the tables of the other pages take them all");
    }
    OverlayAnswer overlay =
        new OverlayAnswer(
            reference.map(light -> named(lights) + " beside " + light.name()).orElse(named(lights)),
            shown,
            height);
    Seen.Builder seen = new Seen.Builder();
    if (reference.isEmpty()) {
      return seen.picture(overlay.picture())
          .folded("Values of the picture, every 10 nm", overlay.table())
          .cautions("About the spectra", describe(question, lights).about())
          .of(overlay.summary(), overlay);
    }
    CompareAnswer compare = compare(question, lights, reference.get());
    seen.picture(
        lights.size() == 1 && height == OverlayAnswer.Height.PPFD
            ? SpectrumPictures.overlay(compare.lights().get(0), reference.get())
            : overlay.picture());
    return seen.folded("Values of the picture, every 10 nm", overlay.table())
        .table("How alike, at equal PPFD", compare.figures())
        .table("Shares by waveband, of all photons of the bands together", compare.shares())
        .sentences("What the figures mean", compare.explanation())
        .cautions("About the spectra", compare.about())
        .of(
            String.format(
                Locale.ROOT,
                "%s: overlap with %s %s %%, spectral angle %s°.",
                lights.get(0).name(),
                reference.get().name(),
                Numbers.percent(compare.lights().get(0).comparison().overlap()),
                Numbers.plain(Math.toDegrees(compare.lights().get(0).comparison().angle()), 1)),
            compare);
  }

  private static String named(List<Light> lights) {
    return lights.size() == 1
        ? lights.get(0).name()
        : Numbers.count(lights.size(), "spectrum", "spectra");
  }

  private static CompareAnswer compare(Question question, List<Light> lights, Light reference) {
    List<CompareAnswer.Compared> compared = new ArrayList<>();
    for (Light light : lights) {
      compared.add(
          new CompareAnswer.Compared(
              light,
              Comparison.of(Comparison.Basis.EQUAL_PPFD, light.photons(), reference.photons())));
    }
    return new CompareAnswer(
        reference, Comparison.Basis.EQUAL_PPFD, question.bands(), compared, List.of());
  }

  private static DescribeAnswer describe(Question question, List<Light> lights) {
    List<DescribeAnswer.Described> described = new ArrayList<>();
    for (Light light : lights) {
      RadiantSpectrum radiant = light.photons().toRadiant();
      described.add(
          new DescribeAnswer.Described(
              light, LightAnalysis.on(radiant.wavelengths(), question.bands()).figures(radiant)));
    }
    return new DescribeAnswer(described, List.of());
  }

  static Seen bands(Question question) {
    DescribeAnswer answer = describe(question, question.lights());
    Seen.Builder seen =
        new Seen.Builder()
            .table(
                String.format(
                    Locale.ROOT,
                    "Shares of wavebands are of all photons of %s–%s nm; what other shares are of"
                        + " stands beside them",
                    Numbers.plain(question.bands().fromNm(), 1),
                    Numbers.plain(question.bands().toNm(), 1)),
                answer.table());
    if (answer.lights().size() <= CurvesSpec.MOST_SERIES) {
      seen.picture(SpectrumPictures.spectra(answer.lights()));
    }
    List<DescribeAnswer.Described> coloured =
        answer.lights().stream()
            .filter(one -> one.figures().chromaticity().toOptional().isPresent())
            .limit(ChromaticityChartSpec.MOST_LIGHTS)
            .toList();
    if (!coloured.isEmpty()) {
      seen.picture(SpectrumPictures.colours(coloured));
    }
    return seen.sentences("Peaks, of energy per nm", answer.peaks())
        .sentences("Not defined", answer.notDefined())
        .cautions("About the spectra", answer.about())
        .sentences("About the share that symbionts absorb", SymbiontAbsorption.CAVEATS)
        .of(
            Numbers.count(answer.lights().size(), "spectrum", "spectra")
                + " by waveband and colour.",
            answer);
  }

  static Seen water(Question question) {
    Light light = question.lightOrFirst("light").orElseThrow();
    double deepest = question.deepest();
    double most = question.unit().fromMetres(deepest);
    double typed =
        question
            .asked()
            .number("depth", 0, most, question.unit().symbol(), Math.rint(most * 5) / 10);
    double depth = Math.min(deepest, question.unit().toMetres(typed));
    Water water = question.water();
    water =
        water.withYellowing(
            question.asked().number("yellowing", 0, MOST_YELLOWING, "1/m", water.yellowing()));
    refuseFaults(question.asked());
    TreeSet<Double> depths = new TreeSet<>(List.of(depth));
    for (int i = 0; i <= STEPS; i++) {
      double step = deepest * i / STEPS;
      if (Math.abs(step - depth) > 1e-6) {
        depths.add(step);
      }
    }
    DepthsAnswer answer = depths(question, light, water, List.copyOf(depths));
    DepthsAnswer there = depths(question, light, water, List.of(depth));
    Light below = new Light("just below the surface", light.photons(), List.of());
    String at = Numbers.withUnit(depth, question.unit()) + " deep";
    OverlayAnswer overlay =
        new OverlayAnswer(
            light.name() + ", " + at,
            List.of(
                new Light(at, Underwater.spectrum(light.photons(), water, depth), List.of()),
                below),
            OverlayAnswer.Height.COMMON);
    Seen.Builder seen =
        new Seen.Builder()
            .table("At this depth", there.table(question.unit()))
            .picture(overlay.picture())
            .folded("Values of the picture, every 10 nm", overlay.table());
    if (question.bands().bands().size() <= CurvesSpec.MOST_SERIES) {
      seen.picture(SpectrumPictures.depths(answer, question.unit()));
    }
    String left =
        there.depths().get(0).parLeft().toOptional().map(Numbers::finePercent).orElse("–");
    return seen.table("From the surface down", answer.table(question.unit()))
        .sentences("What is counted", answer.explanation())
        .cautions("About the spectra", answer.about())
        .of(
            String.format(
                Locale.ROOT,
                "%s of the PPFD of %s just below the surface is left %s, by absorption alone.",
                left + " %",
                light.name(),
                at),
            answer);
  }

  private static DepthsAnswer depths(
      Question question, Light light, Water water, List<Double> depths) {
    return new DepthsAnswer(
        light,
        water,
        question.bands(),
        Underwater.shift(light.photons(), water, question.bands(), depths),
        List.of());
  }

  static Seen parts(Question question) {
    Light light = question.lightOrFirst("light").orElseThrow();
    List<Light> channels = question.without(Optional.of(light));
    if (channels.isEmpty()) {
      throw Refusal.of(
          "a light is taken apart into others: only " + light.name() + " is chosen",
          "choose the spectra of the channels too, each measured alone");
    }
    List<ChannelLight> alone =
        channels.stream().map(one -> new ChannelLight(one.name(), one.photons())).toList();
    PartsAnswer answer =
        new PartsAnswer(
            channels,
            List.of(new PartsAnswer.TakenApart(light, Unmixing.of(light.photons(), alone))));
    PartsAnswer.TakenApart taken = answer.lights().get(0);
    return new Seen.Builder()
        .table(light.name() + " is made of", answer.table(taken))
        .sentences("How well", answer.remarks(taken))
        .cautions("About the spectra", answer.about())
        .of(answer.remarks(taken).get(0), answer);
  }

  static Seen eyes(Question question) {
    Light light = question.lightOrFirst("light").orElseThrow();
    Asked asked = question.asked();
    String unit = question.unit().symbol();
    double most = question.unit().fromMetres(FARTHEST);
    double least = question.unit().fromMetres(0.001);
    OptionalDouble distance = asked.number("distance", least, most, unit);
    OptionalDouble width = asked.number("width", least, most, unit);
    OptionalDouble height = asked.number("tall", least, most, unit);
    OptionalDouble ppfd = asked.number("ppfd", 1e-3, BRIGHTEST, Numbers.PPFD);
    refuseFaults(asked);
    boolean known = light.photons().scale() == Scale.IRRADIANCE;
    if (distance.isEmpty() || width.isEmpty() || height.isEmpty() || (ppfd.isEmpty() && !known)) {
      throw Refusal.of(
          "an estimate needs the distance, both sides of what shines"
              + (known ? "" : " and the PPFD where the eye is"),
          "read the PPFD in air, facing the light; never look into it to aim");
    }
    PhotonSpectrum atEye =
        ppfd.isPresent() ? light.photons().atPpfd(ppfd.getAsDouble()) : light.photons();
    EyesAnswer answer =
        new EyesAnswer(
            light,
            atEye.parPhotons(),
            EyeExposure.of(
                atEye.toRadiant(),
                new ViewedSource(
                    question.unit().toMetres(width.getAsDouble()),
                    question.unit().toMetres(height.getAsDouble()),
                    question.unit().toMetres(distance.getAsDouble()))));
    return new Seen.Builder()
        .cautions("Cautions", answer.cautions())
        .table("Limits for eyes, and after what time each is reached", answer.limitTable())
        .table("What reaches the eye", answer.figures())
        .cautions("About the spectra", answer.about())
        .of(answer.situation(question.unit()) + ".", answer);
  }

  /** Refuses what was typed if some of it is to mend. */
  static void refuseFaults(Asked asked) {
    List<String> faults = asked.sentences();
    if (!faults.isEmpty()) {
      throw Refusal.of(
          faults.size() == 1 ? "one number is to mend" : faults.size() + " numbers are to mend",
          faults.toArray(new String[0]));
    }
  }
}
