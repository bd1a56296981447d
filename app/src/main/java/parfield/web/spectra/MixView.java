package parfield.web.spectra;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.answer.Light;
import parfield.answer.MixAnswer;
import parfield.answer.MixableChannels;
import parfield.answer.MixedAnswer;
import parfield.answer.Numbers;
import parfield.answer.Refusal;
import parfield.answer.SpectrumPictures;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.plan.DialledMix;
import parfield.rig.Rig;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.MixGoal;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.Scale;
import parfield.spectrum.WaveBand;
import parfield.web.bench.OpenBench;

/** Channels mixed by their dials, and the dials nearest to a wanted light. */
final class MixView {
  private static final WaveBand PAR =
      WaveBand.of(PhotonSpectrum.PAR_FROM_NM, PhotonSpectrum.PAR_TO_NM);

  private static final double BRIGHTEST = 100_000;
  private static final int KEPT = 16;

  private final LitRigs rigs;

  /** Channels under rigs, so that a slider need not wait for the solver. */
  private final Map<List<Object>, MixableChannels> under =
      Collections.synchronizedMap(
          new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<List<Object>, MixableChannels> eldest) {
              return size() > KEPT;
            }
          });

  MixView(LitRigs rigs) {
    this.rigs = rigs;
  }

  /**
   * What can be dialled.
   *
   * @param from where the channels come from: {@code chosen}, or the name of a fixture
   * @param rig under which their brightness is predicted; empty where it is typed or measured
   * @param channels before typed brightness is taken
   * @param dials what is dialled now, by dial
   * @param found the nearest setting, if it was asked for
   */
  record Mixing(
      String from,
      String rig,
      MixableChannels channels,
      Map<String, Double> dials,
      Optional<MixAnswer> found) {}

  static final String CHOSEN = "chosen";

  /** Fixtures of a bench whose channels all have spectra. */
  static List<String> fixtures(Question question) {
    return question.setup().stream()
        .flatMap(setup -> setup.fixtures().values().stream())
        .filter(
            fixture ->
                fixture.channels().stream().allMatch(channel -> channel.spectrum().isPresent()))
        .map(Fixture::name)
        .toList();
  }

  /** Rigs that hang nothing but one fixture. */
  static List<String> rigs(Question question, String fixture) {
    return question.setup().stream()
        .flatMap(setup -> setup.rigs().values().stream())
        .filter(
            rig ->
                rig.hangings().stream()
                    .allMatch(hanging -> hanging.fixture().name().equals(fixture)))
        .map(Rig::name)
        .toList();
  }

  /**
   * The channels and their dials, set to the nearest mix where that is asked for.
   *
   * @throws Refusal if there are no channels
   */
  Mixing mixing(Question question) {
    Asked asked = question.asked();
    List<String> fixtures = fixtures(question);
    String from = asked.text("from", fixtures.isEmpty() ? CHOSEN : fixtures.get(0));
    MixableChannels channels;
    String rigName = "";
    if (from.equals(CHOSEN) || !fixtures.contains(from)) {
      from = CHOSEN;
      List<Light> lights = question.without(question.light("ref"));
      if (lights.isEmpty()) {
        throw Refusal.of(
            "no channel is chosen", "choose the spectra of the channels, each measured alone");
      }
      channels = MixableChannels.of(lights);
    } else {
      List<String> hung = rigs(question, from);
      OpenBench bench = question.bench().orElseThrow();
      rigName =
          asked.has("rig")
              ? asked.text("rig", "")
              : hung.isEmpty() || !rigs.predicts(bench) ? "" : hung.get(0);
      channels =
          hung.contains(rigName)
              ? under(question, bench, rigName)
              : MixableChannels.of(question.setup().orElseThrow().fixtures().get(from));
    }
    return new Mixing(
        from, rigName, channels, dials(question, channels, rigName), Optional.empty());
  }

  private MixableChannels under(Question question, OpenBench bench, String rigName) {
    double depth = LitRigs.depth(question, "depth");
    List<Object> key = List.of(rigs.version(bench), rigName, depth, question.unit());
    MixableChannels known = under.get(key);
    if (known == null) {
      Rig rig = bench.bench().rig(rigName);
      MixableChannels.onlyFixture(rig);
      known =
          MixableChannels.under(rigs.solver(), rig, rigs.lit(bench, rig), depth, question.unit());
      under.put(key, known);
    }
    return known;
  }

  private static Map<String, Double> dials(
      Question question, MixableChannels channels, String rigName) {
    Optional<Setting> hung =
        question
            .setup()
            .map(setup -> setup.rigs().get(rigName))
            .map(rig -> rig.hangings().get(0).setting());
    Map<String, Double> dials = new LinkedHashMap<>();
    List<String> names = channels.fixture().dials();
    for (String name : names) {
      double usual = hung.map(setting -> setting.percent(name)).orElse(100.0);
      dials.put(name, question.asked().number(Asked.field("dial", name), 0, 100, "%", usual));
    }
    return dials;
  }

  /** Channels whose brightness beside each other is known: predicted, typed, or measured. */
  private static List<ChannelLight> scaled(Asked asked, MixableChannels channels) {
    List<ChannelLight> lights = channels.lights();
    List<OptionalDouble> typed = new ArrayList<>();
    for (ChannelLight light : lights) {
      typed.add(asked.number(Asked.field("full", light.name()), 1e-3, BRIGHTEST, Numbers.PPFD));
    }
    LightViews.refuseFaults(asked);
    boolean some = typed.stream().anyMatch(OptionalDouble::isPresent);
    List<ChannelLight> scaled = new ArrayList<>();
    for (int i = 0; i < lights.size(); i++) {
      ChannelLight light = lights.get(i);
      if (typed.get(i).isEmpty() && (some || light.spectrum().scale() == Scale.RELATIVE)) {
        throw Refusal.of(
            "how bright channel " + light.name() + " is beside the others is not known",
            "read every channel alone at full output, at one place, and type the PPFD of each under"
                + " Brightness",
            "or, for the fixture of a bench with a light model, take it from a rig");
      }
      scaled.add(
          typed.get(i).isEmpty()
              ? light
              : new ChannelLight(
                  light.name(), light.spectrum().atPpfd(typed.get(i).getAsDouble())));
    }
    return scaled;
  }

  /** The same mixing, its dials at the nearest mix to what is wanted. */
  Mixing nearest(Question question, Mixing mixing) {
    Asked asked = question.asked();
    List<ChannelLight> lights = scaled(asked, mixing.channels());
    Map<String, DialledMix.Level> levels = levels(asked, mixing.channels());
    Map<WaveBand, Double> shares = new LinkedHashMap<>();
    Optional<Light> reference = Optional.empty();
    if (asked.text("goal", "ref").equals("shares")) {
      List<WaveBand> bands = question.bands().bands();
      for (WaveBand band : bands) {
        OptionalDouble share = asked.number(Asked.field("share", Numbers.nm(band)), 0, 100, "%");
        if (share.isPresent()) {
          shares.put(band, share.getAsDouble() / 100);
        }
      }
    } else {
      reference = question.light("ref");
    }
    LightViews.refuseFaults(asked);
    if (reference.isEmpty() && shares.isEmpty()) {
      throw Refusal.of(
          "nothing is wanted yet", "choose a reference, or type the share of a waveband or more");
    }
    MixGoal goal =
        reference
            .map(light -> MixGoal.shape(light.photons(), PAR))
            .orElseGet(() -> MixGoal.shares(question.bands(), shares));
    DialledMix mix = DialledMix.nearest(goal, mixing.channels().fixture(), lights, levels);
    Map<String, Double> dials = new LinkedHashMap<>();
    mixing.channels().fixture().dials().forEach(name -> dials.put(name, mix.dials().percent(name)));
    MixAnswer answer =
        new MixAnswer(
            reference,
            shares,
            question.bands(),
            mixing.channels().fixture(),
            lights,
            mix,
            mixing.channels().statements(),
            List.of());
    return new Mixing(mixing.from(), mixing.rig(), mixing.channels(), dials, Optional.of(answer));
  }

  private static Map<String, DialledMix.Level> levels(Asked asked, MixableChannels channels) {
    Map<String, DialledMix.Level> levels = new LinkedHashMap<>();
    for (ChannelLight light : channels.lights()) {
      String lowest = Asked.field("low", light.name());
      double low = asked.number(lowest, 0, 100, "%", 0);
      double high = asked.number(Asked.field("high", light.name()), 0, 100, "%", 100);
      if (low > high) {
        asked.fault(
            lowest,
            String.format(
                Locale.ROOT,
                "%s lies above the highest, %s: swap them",
                Asked.plain(low),
                Asked.plain(high)));
      } else {
        levels.put(light.name(), new DialledMix.Level(low, high));
      }
    }
    return levels;
  }

  Seen seen(Question question, Mixing mixing) {
    Seen.Builder seen = new Seen.Builder();
    if (!mixing.rig().isEmpty()) {
      question.bench().ifPresent(bench -> seen.cautions(BlendView.MODEL, rigs.cautions(bench)));
    }
    if (mixing.found().isPresent()) {
      MixAnswer answer = mixing.found().get();
      return seen.table(
              "The nearest setting, in whole percents: the sliders stand at it", answer.dialTable())
          .sentences("How near", answer.remarks())
          .picture(SpectrumPictures.mix(answer))
          .table("Shares by waveband, of all photons of the bands together", answer.bandTable())
          .sentences("What it rests on", answer.statements())
          .cautions("About the spectra", answer.about())
          .of(answer.remarks().get(0), answer);
    }
    List<ChannelLight> lights = scaled(question.asked(), mixing.channels());
    Optional<Light> reference = question.light("ref");
    MixedAnswer answer =
        MixedAnswer.of(
            mixing.channels().fixture(),
            lights,
            new Setting(mixing.dials()),
            reference,
            question.bands(),
            mixing.channels().statements());
    seen.picture(answer.picture()).table("What is dialled", answer.dialTable());
    answer
        .compared()
        .ifPresent(
            compared ->
                seen.table("Beside the reference, at equal PPFD", compared.figures())
                    .table(
                        "Shares by waveband, of all photons of the bands together",
                        compared.shares()));
    return seen.table("Figures of the mix", answer.described().table())
        .sentences("What it rests on", answer.statements())
        .cautions(
            "About the spectra",
            answer.compared().map(compared -> compared.about()).orElse(List.of()))
        .of(summary(answer), answer);
  }

  private static String summary(MixedAnswer answer) {
    var figures = answer.described().lights().get(0).figures();
    String light =
        switch (figures.scale()) {
          case IRRADIANCE ->
              "PPFD " + Numbers.significant(figures.parPhotons()) + " " + Numbers.PPFD;
          case FLUX -> "PPF " + Numbers.significant(figures.parPhotons()) + " µmol s⁻¹";
          case RELATIVE -> "brightness not known";
        };
    return "The mix: "
        + light
        + answer
            .compared()
            .map(
                compared ->
                    String.format(
                        Locale.ROOT,
                        "; overlap with %s %s %%, spectral angle %s°",
                        compared.reference().name(),
                        Numbers.percent(compared.lights().get(0).comparison().overlap()),
                        Numbers.plain(
                            Math.toDegrees(compared.lights().get(0).comparison().angle()), 1)))
            .orElse("")
        + ".";
  }
}
