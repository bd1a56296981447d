package parfield.field;

import java.util.List;
import parfield.lamp.Channel;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.PhotonFlux;
import parfield.optics.Interface;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Opening;
import parfield.tank.Rectangle;
import parfield.tank.Tank;

/**
 * Where the light of a rig goes before it is in the water.
 *
 * @param emitted photon flux that leaves the lamps at their setting [µmol s⁻¹]
 * @param onOpening what of it falls on the free opening, lid not counted [µmol s⁻¹]
 * @param entered what of that passes a still surface, lid and dry panes not counted [µmol s⁻¹]
 */
public record LightBudget(double emitted, double onOpening, double entered) {
  /** Cells along each side of the opening, midpoint rule. */
  private static final int CELLS = 160;

  /** Share of the emitted light that misses the opening, 0 to 1; 0 for a dark rig. */
  public double spill() {
    return emitted == 0 ? 0 : Math.max(0, 1 - onOpening / emitted);
  }

  /**
   * The budget of a rig at its setting.
   *
   * @param rig every channel of every fixture must carry a distribution
   * @throws java.util.NoSuchElementException if a channel has none
   */
  public static LightBudget of(Rig rig) {
    double emitted = 0;
    double onOpening = 0;
    double entered = 0;
    for (int h = 0; h < rig.hangings().size(); h++) {
      Hanging hanging = rig.hangings().get(h);
      double[] outputs = hanging.fixture().outputs(hanging.setting());
      for (int c = 0; c < outputs.length; c++) {
        if (outputs[c] == 0) {
          continue;
        }
        Channel channel = hanging.fixture().channels().get(c);
        IntensityDistribution distribution = channel.distribution().orElseThrow();
        emitted += outputs[c] * PhotonFlux.of(distribution) * hanging.fixture().emitters().size();
        IntensityTable table = IntensityTable.of(List.of(distribution));
        for (PointSource source : PointSource.of(h, hanging)) {
          double[] arriving = arriving(rig.tank(), source, table);
          onOpening += outputs[c] * source.share() * arriving[0];
          entered += outputs[c] * source.share() * arriving[1];
        }
      }
    }
    return new LightBudget(emitted, onOpening, entered);
  }

  /** What of one source falls on the opening, and what of that enters [µmol s⁻¹]. */
  private static double[] arriving(Tank tank, PointSource source, IntensityTable table) {
    Opening opening = tank.opening();
    double spanX = tank.length() - 2 * opening.rim();
    double spanY = tank.width() - 2 * opening.rim();
    double cell = spanX * spanY / (CELLS * CELLS);
    // A lamp that hangs lower than the rim has the water line for its opening.
    boolean aboveRim = source.height() > opening.freeboard();
    double height = aboveRim ? source.height() - opening.freeboard() : source.height();
    double onward = source.height() / height;
    double[] intensity = new double[1];
    double falls = 0;
    double enters = 0;
    for (int j = 0; j < CELLS; j++) {
      double y = opening.rim() + spanY * (j + 0.5) / CELLS;
      for (int i = 0; i < CELLS; i++) {
        double x = opening.rim() + spanX * (i + 0.5) / CELLS;
        if (blocked(opening, x, y)) {
          continue;
        }
        double dx = x - source.x();
        double dy = y - source.y();
        double square = dx * dx + dy * dy + height * height;
        double cosine = height / Math.sqrt(square);
        double[] direction = source.direction(dx, dy, height);
        table.at(direction[0], Math.cos(direction[1]), Math.sin(direction[1]), intensity);
        double flux = intensity[0] * cosine / square * cell;
        falls += flux;
        if (meetsWater(tank, source.x() + onward * dx, source.y() + onward * dy)) {
          enters += flux * (1 - Interface.reflectance(cosine, 1, tank.water().refractiveIndex()));
        }
      }
    }
    return new double[] {falls, enters};
  }

  /** Whether light that came through the opening meets the water, not a pane above it. */
  private static boolean meetsWater(Tank tank, double x, double y) {
    return x >= 0 && x <= tank.length() && y >= 0 && y <= tank.width();
  }

  private static boolean blocked(Opening opening, double x, double y) {
    for (Rectangle rectangle : opening.opaque()) {
      if (rectangle.contains(x, y)) {
        return true;
      }
    }
    return false;
  }
}
