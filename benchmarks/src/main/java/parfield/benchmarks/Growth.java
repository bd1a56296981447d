package parfield.benchmarks;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.lamp.Fixture;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * Prints how the cost of a field grows with places, emitters, channels and images.
 *
 * <p>Least processor time of the solving thread over several runs, so that others on the machine
 * disturb little; the solver uses one thread.
 */
public final class Growth {
  private static final int FEWEST_RUNS = 5;

  /** How long each figure is sought, so that short ones are compiled anew if need be [s]. */
  private static final double LONG_ENOUGH = 0.4;

  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private Growth() {}

  /**
   * Measures and prints.
   *
   * @param arguments none
   */
  public static void main(String[] arguments) {
    Tank tank = Scenes.tank();
    Fixture pendant = Scenes.fixture("round", 2);
    solveOften(tank, pendant);
    System.out.println(
        "| places | emitters | channels | tank, cm | water, cm | paths a place and emitter"
            + " | warm, ms | ns a path | cold, ms | allocated warm, MB |");
    System.out.println("|---|---|---|---|---|---|---|---|---|---|");
    for (int finer : new int[] {1, 2, 4, 8}) {
      row(tank, pendant, Places.volume(tank, 12 * finer, 9 * finer, 4 * finer));
    }
    for (int emitters : new int[] {1, 2, 4, 8}) {
      row(tank, Scenes.fixture("round", emitters), Scenes.volume(tank));
    }
    for (int channels : new int[] {1, 2, 4}) {
      row(tank, pendant.withChannels(pendant.channels().subList(0, channels)), Scenes.volume(tank));
    }
    for (double size : new double[] {0.4, 0.6, 0.9, 1.8}) {
      Tank other = tank(size, size * 2 / 3, 0.5);
      row(other, pendant, Scenes.volume(other));
    }
    for (double depth : new double[] {0.25, 0.5, 1, 2}) {
      Tank other = tank(0.9, 0.6, depth);
      row(other, pendant, Scenes.volume(other));
    }
  }

  private static Tank tank(double length, double width, double depth) {
    return Tank.of(length, width, depth)
        .withBottomReflectance(0.35)
        .withWater(Water.seaWater(0.05));
  }

  private static Rig rig(Tank tank, Fixture fixture) {
    return new Rig(
        "over the middle",
        tank,
        List.of(Hanging.level(fixture, tank.length() / 2, tank.width() / 2, 0.2)));
  }

  /** Lets the compiler see all of it before anything is measured. */
  private static void solveOften(Tank tank, Fixture fixture) {
    Places places = Scenes.volume(tank);
    for (int i = 0; i < 40; i++) {
      FastSolver solver = new FastSolver();
      solver.unitFields(rig(tank, fixture), places);
      solver.unitFields(rig(tank, fixture), places);
    }
  }

  private static void row(Tank tank, Fixture fixture, Places places) {
    Rig rig = rig(tank, fixture);
    FastSolver solver = new FastSolver();
    Cost warm = least(() -> solver.unitFields(rig, places));
    Cost cold = least(() -> new FastSolver().unitFields(rig, places));
    int emitters = fixture.emitters().size();
    double paths = pathsPerPlace(solver, rig, places) / emitters;
    System.out.printf(
        Locale.ROOT,
        "| %,d | %d | %d | %.0f x %.0f | %.0f | %.2f | %.2f | %.0f | %.1f | %.2f |%n",
        places.size(),
        emitters,
        fixture.channels().size(),
        100 * tank.length(),
        100 * tank.width(),
        100 * tank.depth(),
        paths,
        warm.seconds * 1e3,
        warm.seconds * 1e9 / (paths * places.size() * emitters),
        cold.seconds * 1e3,
        warm.bytes / 1e6);
  }

  /** Mean number of direct paths that reach a place, from a sample of the places. */
  private static double pathsPerPlace(FastSolver solver, Rig rig, Places places) {
    List<Place> sample = new ArrayList<>();
    for (int i = 0; i < places.size(); i += 1 + places.size() / 2_000) {
      sample.add(places.get(i));
    }
    Rig dark = rig.withTank(rig.tank().withBottomReflectance(0));
    return (double) solver.paths(dark, Places.of(sample), PhotonSpectrum.flat()).size()
        / sample.size();
  }

  /** Processor time and bytes of one run. */
  private record Cost(double seconds, double bytes) {}

  private static Cost least(Supplier<UnitFields> solve) {
    double seconds = Double.POSITIVE_INFINITY;
    double bytes = Double.POSITIVE_INFINITY;
    long start = THREADS.getCurrentThreadCpuTime();
    for (int i = 0;
        i < FEWEST_RUNS || THREADS.getCurrentThreadCpuTime() - start < LONG_ENOUGH * 1e9;
        i++) {
      long bytesBefore = THREADS.getCurrentThreadAllocatedBytes();
      long before = THREADS.getCurrentThreadCpuTime();
      UnitFields fields = solve.get();
      seconds = Math.min(seconds, (THREADS.getCurrentThreadCpuTime() - before) * 1e-9);
      long allocated = THREADS.getCurrentThreadAllocatedBytes() - bytesBefore;
      bytes = Math.min(bytes, (double) allocated);
      if (Double.isNaN(fields.unit(0, 0, 0))) {
        throw new IllegalStateException("the field is not a number");
      }
    }
    return new Cost(seconds, bytes);
  }
}
