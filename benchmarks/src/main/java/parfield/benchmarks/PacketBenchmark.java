package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
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
import parfield.photon.Effort;
import parfield.photon.PhotonTracer;
import parfield.photon.TracedField;
import parfield.photon.VoxelGrid;
import parfield.photon.Wanted;
import parfield.photon.Watch;
import parfield.rig.Rig;

/**
 * The reference solver's loop: E_o in voxels of 2 cm, two fixtures × 2 emitters × 4 channels, by
 * 262,144 packets, against the same loop written plainly with as many packets.
 *
 * <p>A packet of the reference carries four channels and thirty-two wavebands; a plain one carries
 * one wavelength of one channel. The error is that of each channel's field.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(1)
public class PacketBenchmark implements Judged {
  private static final long PACKETS = 1 << 18;
  private static final VoxelGrid GRID = new VoxelGrid(45, 30, 25);

  /** Which loop, and on how many threads. */
  @Param({"reference, 1 thread", "reference, 2 threads", "plain, 1 thread"})
  public String loop;

  private Rig rig;

  /** What all loops are judged by; computed once. */
  private static final class Reference {
    static final double[] VALUES = values();

    private static double[] values() {
      PacketBenchmark benchmark = new PacketBenchmark();
      benchmark.prepare();
      return benchmark.values(benchmark.trace(64 * PACKETS, 2, 2));
    }
  }

  /** Prepares the scene. */
  @Setup
  public void prepare() {
    rig = Scenes.twoFixtures(Scenes.tank(), "round");
  }

  /** All packets. */
  @Benchmark
  public double[] packets() {
    return send(PACKETS, 1);
  }

  private double[] send(long packets, long seed) {
    if (loop.startsWith("plain")) {
      return new PlainPackets(rig, GRID.columns(), GRID.rows(), GRID.layers())
          .scalarIrradiance(packets, seed);
    }
    int threads = loop.contains("2 threads") ? 2 : 1;
    return values(trace(packets, seed, threads));
  }

  private TracedField trace(long packets, long seed, int threads) {
    return new PhotonTracer(Effort.packets(packets, seed).withThreads(threads))
        .trace(rig, Wanted.in(GRID), Watch.patient());
  }

  /** E_o of each channel of both fixtures together, one channel after another. */
  private double[] values(TracedField field) {
    int channels = rig.hangings().get(0).fixture().channels().size();
    double[] values = new double[channels * GRID.size()];
    for (int c = 0; c < channels; c++) {
      for (int i = 0; i < GRID.size(); i++) {
        for (int h = 0; h < rig.hangings().size(); h++) {
          values[c * GRID.size() + i] += field.scalarOf(h, c, i);
        }
      }
    }
    return values;
  }

  @Override
  public Deviation deviation() {
    prepare();
    double[] got = send(PACKETS, 1);
    double[] expected = Reference.VALUES;
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i < got.length; i++) {
      errors.add(got[i] / expected[i] - 1);
    }
    return Deviation.of(
        errors, "64 times as many packets of another seed, all voxels and channels");
  }
}
