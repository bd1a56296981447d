package parfield.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.field.Places;
import parfield.photon.Effort;
import parfield.photon.PhotonTracer;
import parfield.photon.TracedField;
import parfield.photon.VoxelGrid;
import parfield.photon.Wanted;
import parfield.photon.Watch;
import parfield.rig.Rig;
import parfield.tank.Tank;

/**
 * How long the reference solver takes to a standard error: 64 places of a survey, and every voxel
 * of 2 cm.
 */
public final class TimeToError {
  private TimeToError() {}

  /**
   * Prints a table.
   *
   * @param arguments wanted relative standard error, 0.01 if none is given; then perhaps a number
   *     of threads
   */
  public static void main(String[] arguments) {
    double target = arguments.length > 0 ? Double.parseDouble(arguments[0]) : 0.01;
    int threads =
        arguments.length > 1
            ? Integer.parseInt(arguments[1])
            : Runtime.getRuntime().availableProcessors();
    Tank tank = Scenes.tank();
    Rig rig = Scenes.twoFixtures(tank, "round");
    List<Wanted> wanted = new ArrayList<>();
    wanted.add(Wanted.at(Places.volume(tank, 8, 4, 2)));
    wanted.add(Wanted.at(Places.volume(tank, 8, 4, 2)).withSensor(0.04));
    wanted.add(Wanted.in(new VoxelGrid(45, 30, 25)));
    String[] names = {"64 places, 16 mm", "64 places, 40 mm", "33,750 voxels, 20 mm"};
    System.out.println("| wanted | error | packets, million | time, s | million a s |");
    System.out.println("|---|---|---|---|---|");
    for (int i = 0; i < names.length; i++) {
      PhotonTracer tracer = new PhotonTracer(Effort.until(target, 1).withThreads(threads));
      // The compiler's time is not the solver's.
      new PhotonTracer(Effort.packets(1 << 19, 2).withThreads(threads))
          .trace(rig, wanted.get(i), Watch.patient());
      long start = System.nanoTime();
      TracedField field = tracer.trace(rig, wanted.get(i), Watch.patient());
      double seconds = (System.nanoTime() - start) / 1e9;
      System.out.printf(
          Locale.ROOT,
          "| %s | %.2f %% | %.1f | %.1f | %.2f |%n",
          names[i],
          100 * field.worstError(),
          field.packets() / 1e6,
          seconds,
          field.packets() / 1e6 / seconds);
    }
  }
}
