package parfield.formats;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import parfield.lamp.IntensityDistribution;
import parfield.units.Estimate;

/**
 * The light of a whole fixture, or of one channel of it, to be written as a photometric file.
 *
 * @param fixture its name
 * @param parts its channels, at least one
 * @param emitters how many emitters give off this light, alike
 * @param length of the luminous opening along the fixture's length [m], 0 if not known
 * @param width of the luminous opening across it [m], 0 if not known
 * @param low the photon flux at the low end of its interval over the best estimate
 * @param high the photon flux at the high end of its interval over the best estimate
 * @param source what the numbers come from, in a sentence
 * @param date of the file
 */
public record FixtureLight(
    String fixture,
    List<Part> parts,
    int emitters,
    double length,
    double width,
    double low,
    double high,
    String source,
    LocalDate date) {
  /**
   * One channel.
   *
   * @param name of the channel
   * @param emitter photon intensity of one emitter at full output
   * @param output share of it that the file tells of, 0 to 1
   * @param lumensPerMicromole luminous flux over photon flux of its spectrum [lm per µmol s⁻¹],
   *     above 0
   * @param watts electric power at full output, if known
   */
  public record Part(
      String name,
      IntensityDistribution emitter,
      double output,
      double lumensPerMicromole,
      OptionalDouble watts) {
    public Part {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(emitter, "emitter");
      Objects.requireNonNull(watts, "watts");
      if (!(lumensPerMicromole > 0) || !(output >= 0 && output <= 1)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "channel %s needs an output of 0 to 1 and lumens of a photon above 0; got %s and"
                    + " %s",
                name,
                output,
                lumensPerMicromole));
      }
    }
  }

  public FixtureLight {
    Objects.requireNonNull(fixture, "fixture");
    parts = List.copyOf(parts);
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(date, "date");
    if (parts.isEmpty() || emitters < 1) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a fixture's light needs a channel and an emitter; got %d and %d",
              parts.size(),
              emitters));
    }
  }

  /** A weighted sum of the channels' distributions. */
  private record Sum(List<Part> parts, double[] weights) implements IntensityDistribution {
    @Override
    public double intensity(double gamma, double azimuth) {
      double sum = 0;
      for (int i = 0; i < weights.length; i++) {
        if (weights[i] > 0) {
          sum += weights[i] * parts.get(i).emitter().intensity(gamma, azimuth);
        }
      }
      return sum;
    }

    @Override
    public double[] around(double gamma, double[] azimuths) {
      double[] sum = new double[azimuths.length];
      for (int i = 0; i < weights.length; i++) {
        double[] part = weights[i] > 0 ? parts.get(i).emitter().around(gamma, azimuths) : sum;
        for (int j = 0; j < sum.length && weights[i] > 0; j++) {
          sum[j] += weights[i] * part[j];
        }
      }
      return sum;
    }

    @Override
    public boolean axiallySymmetric() {
      return parts.stream().allMatch(part -> part.emitter().axiallySymmetric());
    }

    @Override
    public boolean quadrantSymmetric() {
      return parts.stream().allMatch(part -> part.emitter().quadrantSymmetric());
    }
  }

  private IntensityDistribution photons() {
    return new Sum(parts, parts.stream().mapToDouble(part -> emitters * part.output()).toArray());
  }

  private IntensityDistribution candela() {
    return new Sum(
        parts,
        parts.stream()
            .mapToDouble(part -> emitters * part.output() * part.lumensPerMicromole())
            .toArray());
  }

  /** Power at these outputs, if that of every channel is known [W]. */
  OptionalDouble watts() {
    double sum = 0;
    for (Part part : parts) {
      if (part.watts().isEmpty()) {
        return OptionalDouble.empty();
      }
      sum += part.output() * part.watts().getAsDouble();
    }
    return OptionalDouble.of(sum);
  }

  /** What is written: intensities rounded as a file holds them, and our keywords for them. */
  record Written(LightGrid grid, PhotonKeywords keywords) {}

  /**
   * Samples the light on angles as fine as it needs.
   *
   * @throws IllegalArgumentException if it gives off no light at all
   */
  Written written() {
    LightGrid grid = LightGrid.of(candela());
    double lumens = grid.table().flux();
    double ppf = grid.with(photons()).table().flux();
    if (!(lumens > 0) || !(ppf > 0)) {
      throw new IllegalArgumentException("fixture " + fixture + " gives off no light so");
    }
    List<PhotonKeywords.ChannelFlux> channels = new ArrayList<>();
    for (Part part : parts) {
      double flux = emitters * grid.with(part.emitter()).table().flux();
      channels.add(new PhotonKeywords.ChannelFlux(part.name(), flux));
    }
    return new Written(
        grid,
        new PhotonKeywords(
            ppf / lumens, new Estimate(ppf, ppf * low, ppf * high), channels, source));
  }

  /** Its photon flux, with its interval [µmol s⁻¹]. */
  public Estimate ppf() {
    return written().keywords().ppf();
  }

  /**
   * How far photon intensities that are taken from candela by one factor err at most, where they
   * are a tenth of the highest or more: 0 where all channels have one shape.
   */
  public double worstByDirection() {
    Written written = written();
    LightGrid photons = written.grid().with(photons());
    double peak = photons.table().peak();
    return written.grid().worst(photons, written.keywords().photonsPerLumen(), PLAIN_SHARE * peak);
  }

  private static final double PLAIN_SHARE = 0.1;

  /** Its photometric file. */
  public byte[] bytes(PhotometricFile.Format format) {
    return switch (format) {
      case LM63 -> Lm63Writer.bytes(this);
      case EULUMDAT -> EulumdatWriter.bytes(this);
    };
  }
}
