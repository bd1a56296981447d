package parfield.field;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.optics.Attenuation;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.Blend;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.Superposition;
import parfield.spectrum.WaveBands;
import parfield.spectrum.Wavelengths;

/**
 * What light it is at each place: the photon spectra of a rig's field.
 *
 * <p>Where a channel's light goes does not depend on its wavelength, but for what the water
 * absorbs: the share f(a) of it that is left at a place is a function of the absorption alone, f(a)
 * = ∫ p(L) e^(−aL) dL over the lengths L of all its paths. The solver is asked for f at a few
 * absorptions, by thin lines of light; ln f is so smooth that a polynomial through these gives all
 * wavelengths (tested against a solution for each waveband). A channel's spectrum at a place is
 * then S(λ) f(a(λ)), scaled to the PPFD that the solver finds for it. Immutable.
 */
public final class SpectralField {
  /** Lines of light by which f is found. */
  private static final int LINES = 4;

  /** Half the width of a line [nm]. */
  private static final double HALF_LINE = 0.5;

  /** A line's path in water by which its absorption is told [m]. */
  private static final double METRE = 1;

  /** Steps of the table of pure water [nm]. */
  private static final double STEP = 2.5;

  private final Rig rig;
  private final Places places;
  private final UnitFields fields;
  private final Lines lines;

  private SpectralField(Rig rig, Places places, UnitFields fields, Lines lines) {
    this.rig = rig;
    this.places = places;
    this.fields = fields;
    this.lines = lines;
  }

  /**
   * Solves for the spectra of a rig.
   *
   * @param solver predicts PPFD
   * @param rig the scene; every channel must carry a distribution and a spectrum
   * @param places where, all inside the rig's tank
   * @throws IllegalArgumentException if a channel has no spectrum or no distribution, or a place
   *     lies outside the tank; the message names it
   */
  public static SpectralField of(FieldSolver solver, Rig rig, Places places) {
    for (Hanging hanging : rig.hangings()) {
      for (Channel channel : hanging.fixture().channels()) {
        if (channel.spectrum().isEmpty()) {
          throw new IllegalArgumentException(
              String.format(
                  "fixture %s: channel %s has no spectrum, so that its light is of unknown colour;"
                      + " measure it and state it",
                  hanging.fixture().name(), channel.name()));
        }
      }
    }
    Lines lines = Lines.of(rig.tank().water());
    Rig probed = rig.withHangings(hanging -> hanging.withFixture(lines.beside(hanging.fixture())));
    return new SpectralField(rig, places, solver.unitFields(probed, places), lines);
  }

  /** Where the spectra are. */
  public Places places() {
    return places;
  }

  /**
   * The spectrum of E_d at a place, at the setting that the rig's hangings carry.
   *
   * @param place index of the place
   * @return in µmol m⁻² s⁻¹ nm⁻¹; its PPFD is the light field's
   * @throws IllegalArgumentException if no light gets there
   */
  public PhotonSpectrum at(int place) {
    return sum(place, rig.hangings().stream().map(Hanging::setting).toList());
  }

  /**
   * The spectrum of E_d at a place, with every fixture at one setting.
   *
   * @param place index of the place
   * @param setting the dials
   */
  public PhotonSpectrum at(int place, Setting setting) {
    return sum(place, rig.hangings().stream().map(hanging -> setting).toList());
  }

  private PhotonSpectrum sum(int place, List<Setting> settings) {
    List<PhotonSpectrum> spectra = new ArrayList<>();
    List<Double> outputs = new ArrayList<>();
    for (int h = 0; h < settings.size(); h++) {
      Fixture fixture = rig.hangings().get(h).fixture();
      double[] output = fixture.outputs(settings.get(h));
      for (int c = 0; c < output.length; c++) {
        if (output[c] > 0 && fields.unit(h, c, place) > 0) {
          spectra.add(unit(h, c, place));
          outputs.add(output[c]);
        }
      }
    }
    requireLight(spectra, place, "at this setting");
    return Superposition.of(spectra, outputs);
  }

  /**
   * One channel of all hangings together, each at full output: what a mix for that place is made
   * of.
   *
   * @param channel index in the order of every fixture's channels; fixtures alike
   * @param place index of the place
   * @throws IllegalArgumentException if no light of the channel gets there
   */
  public ChannelLight channel(int channel, int place) {
    List<PhotonSpectrum> spectra = new ArrayList<>();
    List<Double> once = new ArrayList<>();
    for (int h = 0; h < rig.hangings().size(); h++) {
      if (fields.unit(h, channel, place) > 0) {
        spectra.add(unit(h, channel, place));
        once.add(1.0);
      }
    }
    String name = rig.hangings().get(0).fixture().channels().get(channel).name();
    requireLight(spectra, place, "of channel " + name);
    return new ChannelLight(name, Superposition.of(spectra, once));
  }

  /**
   * One channel of all hangings together, each at full output, as the mean of all places.
   *
   * @param channel index in the order of every fixture's channels; fixtures alike
   * @throws IllegalArgumentException if a place gets no light of the channel
   */
  public ChannelLight meanChannel(int channel) {
    List<PhotonSpectrum> spectra = new ArrayList<>();
    List<Double> parts = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      spectra.add(channel(channel, i).spectrum());
      parts.add(1.0 / places.size());
    }
    String name = rig.hangings().get(0).fixture().channels().get(channel).name();
    return new ChannelLight(name, Superposition.of(spectra, parts));
  }

  /**
   * How the colours blend at the setting that the rig's hangings carry.
   *
   * @param division the bands
   * @param names what the places are called, in their order
   * @throws IllegalArgumentException if the numbers differ, or a place gets no light
   */
  public Blend blend(WaveBands division, List<String> names) {
    if (names.size() != places.size()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "every place needs a name; got %d names for %d places",
              names.size(),
              places.size()));
    }
    List<Blend.Spot> spots = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      spots.add(new Blend.Spot(names.get(i), at(i)));
    }
    return Blend.of(division, spots);
  }

  private void requireLight(List<PhotonSpectrum> spectra, int place, String what) {
    if (spectra.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "no light %s gets to place %d: x %s, y %s, depth %s m; choose another place",
              what,
              place,
              places.x(place),
              places.y(place),
              places.depth(place)));
    }
  }

  private PhotonSpectrum unit(int hanging, int channel, int place) {
    Fixture fixture = rig.hangings().get(hanging).fixture();
    PhotonSpectrum source = fixture.channels().get(channel).spectrum().orElseThrow();
    double[] logLeft = new double[LINES];
    for (int k = 0; k < LINES; k++) {
      int at = fixture.channels().size() + channel * LINES + k;
      logLeft[k] = Math.log(fields.unit(hanging, at, place));
    }
    return lines
        .attenuated(source, logLeft, rig.tank().water())
        .atPpfd(fields.unit(hanging, channel, place));
  }

  /** Thin lines of light whose absorptions span those of 400–700 nm. */
  private record Lines(List<PhotonSpectrum> spectra, double[] absorptions) {
    static Lines of(Water water) {
      TreeSet<Double> all = new TreeSet<>();
      double least = Double.POSITIVE_INFINITY;
      double most = 0;
      for (double nm = PhotonSpectrum.PAR_FROM_NM + STEP / 2;
          nm < PhotonSpectrum.PAR_TO_NM;
          nm += STEP) {
        all.add(nm);
        least = Math.min(least, water.absorption(nm));
        most = Math.max(most, water.absorption(nm));
      }
      List<PhotonSpectrum> spectra = new ArrayList<>();
      double[] absorptions = new double[LINES];
      for (int k = 0; k < LINES; k++) {
        // Chebyshev's points: a polynomial through them strays least between them.
        double wanted = least + (most - least) * (1 - Math.cos(Math.PI * k / (LINES - 1))) / 2;
        double nearest = all.first();
        for (double nm : all) {
          if (Math.abs(water.absorption(nm) - wanted)
              < Math.abs(water.absorption(nearest) - wanted)) {
            nearest = nm;
          }
        }
        all.remove(nearest);
        PhotonSpectrum line =
            new PhotonSpectrum(
                new double[] {nearest - HALF_LINE, nearest, nearest + HALF_LINE},
                new double[] {0, 1, 0});
        spectra.add(line);
        absorptions[k] = -Math.log(Attenuation.of(line, water).transmittance(METRE)) / METRE;
      }
      return new Lines(spectra, absorptions);
    }

    /** A fixture that carries the lines besides: for each channel all of them, beamed as it is. */
    Fixture beside(Fixture fixture) {
      List<Channel> channels = new ArrayList<>(fixture.channels());
      for (Channel channel : fixture.channels()) {
        for (int k = 0; k < LINES; k++) {
          channels.add(
              new Channel(
                  channel.name() + ", line " + (k + 1),
                  Optional.of(spectra.get(k)),
                  channel.watts(),
                  channel.curve(),
                  channel.distribution()));
        }
      }
      return fixture.withChannels(channels);
    }

    /** A spectrum after the water: relative. */
    PhotonSpectrum attenuated(PhotonSpectrum source, double[] logLeft, Water water) {
      TreeSet<Double> places = new TreeSet<>();
      for (int i = 0; i < source.size(); i++) {
        places.add(source.wavelengthNm(i));
      }
      double last = source.wavelengths().last();
      double first = source.wavelengths().first();
      for (double nm = STEP * Math.ceil(first / STEP); nm < last; nm += STEP) {
        places.add(nm);
      }
      double[] nm = places.stream().mapToDouble(Double::doubleValue).toArray();
      double[] values = new double[nm.length];
      for (int i = 0; i < nm.length; i++) {
        values[i] =
            source.at(nm[i])
                * Math.exp(interpolated(logLeft, water.absorption(nm[i])) - logLeft[0]);
      }
      return new PhotonSpectrum(Wavelengths.of(nm), values, source.scale()).relative();
    }

    /** ln f at an absorption; beyond the lines the last slope goes on. */
    private double interpolated(double[] logLeft, double absorption) {
      double most = absorptions[LINES - 1];
      if (absorption <= most) {
        return polynomial(logLeft, absorption);
      }
      double step = (most - absorptions[0]) * 1e-4;
      double slope = (polynomial(logLeft, most) - polynomial(logLeft, most - step)) / step;
      return polynomial(logLeft, most) + slope * (absorption - most);
    }

    /** Lagrange's polynomial through the lines. */
    private double polynomial(double[] logLeft, double absorption) {
      double sum = 0;
      for (int k = 0; k < LINES; k++) {
        double term = logLeft[k];
        for (int j = 0; j < LINES; j++) {
          if (j != k) {
            term *= (absorption - absorptions[j]) / (absorptions[k] - absorptions[j]);
          }
        }
        sum += term;
      }
      return sum;
    }
  }
}
