package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;
import parfield.spectrum.LightAnalysis;
import parfield.spectrum.LightFigures;
import parfield.spectrum.RadiantSpectrum;
import parfield.spectrum.Scale;
import parfield.spectrum.WaveBands;
import parfield.spectrum.Wavelengths;

/**
 * All figures of 10,000 spectra of one instrument: colour, colour rendering, photons, peaks, eyes.
 *
 * <p>Lights of four bells each, 380–780 nm, noise of a thousandth. The error is that of the PPFD
 * per joule, against the closed form of the bells without noise.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 6, time = 2)
public class SpectrumBenchmark implements Judged {
  private static final int SPECTRA = 10_000;
  private static final double HC_NA = 119.626566;

  /** Step of the wavelengths [nm]. */
  @Param({"1", "5"})
  public String step;

  private Wavelengths wavelengths;
  private RadiantSpectrum[] spectra;
  private double[][][] bells;

  /** Makes the lights. */
  @Setup
  public void prepare() {
    SplittableRandom random = new SplittableRandom(20_261);
    wavelengths = Wavelengths.even(380, 780, Double.parseDouble(step));
    spectra = new RadiantSpectrum[SPECTRA];
    bells = new double[SPECTRA][][];
    for (int s = 0; s < SPECTRA; s++) {
      bells[s] =
          new double[][] {
            {0.35 * random.nextDouble(), 405, 6},
            {0.5 + random.nextDouble(), 445 + 10 * random.nextDouble(), 9},
            {random.nextDouble(), 475, 12},
            {0.1 + 0.4 * random.nextDouble(), 560 + 20 * random.nextDouble(), 50}
          };
      double[] power = new double[wavelengths.size()];
      for (int i = 0; i < power.length; i++) {
        for (double[] bell : bells[s]) {
          double z = (wavelengths.nm(i) - bell[1]) / bell[2];
          power[i] += bell[0] * Math.exp(-z * z / 2);
        }
        power[i] += 0.001 * random.nextGaussian();
      }
      spectra[s] = new RadiantSpectrum(wavelengths, power, Scale.IRRADIANCE);
    }
  }

  /** The figures of all lights. */
  @Benchmark
  public void figures(Blackhole sink) {
    LightAnalysis analysis = LightAnalysis.on(wavelengths, WaveBands.COMMON);
    for (RadiantSpectrum spectrum : spectra) {
      sink.consume(analysis.figures(spectrum));
    }
  }

  @Override
  public Deviation deviation() {
    prepare();
    LightAnalysis analysis = LightAnalysis.on(wavelengths, WaveBands.COMMON);
    List<Double> relative = new ArrayList<>();
    for (int s = 0; s < SPECTRA; s++) {
      LightFigures found = analysis.figures(spectra[s]);
      double exact = 0;
      for (double[] bell : bells[s]) {
        exact += photons(bell);
      }
      relative.add(found.parPhotons() / exact - 1);
    }
    return Deviation.of(relative, "PPFD, exact, without the noise");
  }

  /** Photons of a bell of power within 400–700 nm: fine sums, which an even step makes exact. */
  private static double photons(double[] bell) {
    double step = 0.05;
    int steps = (int) Math.round(300 / step);
    double sum = 0;
    for (int i = 0; i <= steps; i++) {
      double nm = 400 + i * step;
      double z = (nm - bell[1]) / bell[2];
      double value = nm * bell[0] * Math.exp(-z * z / 2);
      sum += i == 0 || i == steps ? value / 2 : value;
    }
    return sum * step / HC_NA;
  }
}
