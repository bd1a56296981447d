package parfield.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import parfield.answer.DescribeAnswer;
import parfield.answer.Light;
import parfield.answer.SpectrumPictures;
import parfield.answer.Table;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.fit.LightModel;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.plan.Option;
import parfield.plot.CurvesSpec;
import parfield.rig.Rig;
import parfield.spectrum.LightAnalysis;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.RadiantSpectrum;
import parfield.spectrum.Superposition;
import parfield.spectrum.WaveBands;

/**
 * The spectrum of a dialled rig: its channels as they leave the fixture, each weighed by its share
 * of the light in the water.
 *
 * @param mix the channels together; empty where a channel that is lit states no spectrum
 * @param channels those that are lit, alone
 */
record MixedLight(Optional<DescribeAnswer.Described> mix, List<DescribeAnswer.Described> channels) {
  private static final int COLUMNS = 8;
  private static final int ROWS = 4;
  private static final int LAYERS = 3;

  /**
   * The light of an option.
   *
   * @param rig the option's, over the bench's tank as stated
   */
  static MixedLight of(Option option, Rig rig, LightModel model, FieldSolver solver) {
    Fixture fixture = option.arrangement().pattern().fixture();
    double[] outputs = fixture.outputs(option.setting());
    UnitFields fields =
        solver.unitFields(
            model.best().applyTo(rig), Places.volume(rig.tank(), COLUMNS, ROWS, LAYERS));
    List<PhotonSpectrum> spectra = new ArrayList<>();
    List<Double> factors = new ArrayList<>();
    List<DescribeAnswer.Described> channels = new ArrayList<>();
    boolean whole = true;
    for (int c = 0; c < outputs.length; c++) {
      Channel channel = fixture.channels().get(c);
      double light = outputs[c] * DoubleStream.of(fields.ofChannel(c)).average().orElse(0);
      if (!(light > 0)) {
        continue;
      }
      if (channel.spectrum().isEmpty()) {
        whole = false;
        continue;
      }
      PhotonSpectrum spectrum = channel.spectrum().get().relative();
      spectra.add(spectrum);
      factors.add(light / spectrum.parPhotons());
      channels.add(described(channel.name(), spectrum));
    }
    Optional<DescribeAnswer.Described> mix =
        whole && !spectra.isEmpty()
            ? Optional.of(described("as recommended", Superposition.of(spectra, factors)))
            : Optional.empty();
    return new MixedLight(mix, channels);
  }

  private static DescribeAnswer.Described described(String name, PhotonSpectrum spectrum) {
    RadiantSpectrum radiant = spectrum.toRadiant();
    return new DescribeAnswer.Described(
        new Light(name, spectrum, List.of()),
        LightAnalysis.on(radiant.wavelengths(), WaveBands.COMMON).figures(radiant));
  }

  List<Picture> pictures() {
    List<Picture> pictures = new ArrayList<>();
    mix.ifPresent(
        one ->
            pictures.add(
                new Picture(
                    SpectrumPictures.spectra(List.of(one)),
                    "Photon spectrum of the light at the recommended dials, with shares by waveband",
                    "The light at the recommended dials: the channels' spectra, each weighed by its"
                        + " share of the light in the water.")));
    if (channels.size() > 1) {
      pictures.add(
          new Picture(
              SpectrumPictures.spectra(
                  channels.subList(0, Math.min(channels.size(), CurvesSpec.MOST_SERIES))),
              "Photon spectra of the channels, each with its highest point at 1",
              "The channels alone, each with its highest point at 1."));
    }
    return pictures;
  }

  /** Figures of the mix; empty without one. */
  Optional<Table> table() {
    return mix.map(one -> new DescribeAnswer(List.of(one), List.of()).table());
  }
}
