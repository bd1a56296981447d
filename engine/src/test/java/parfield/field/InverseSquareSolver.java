package parfield.field;

import java.util.List;
import parfield.lamp.Emitter;
import parfield.lamp.IntensityDistribution;
import parfield.rig.Hanging;
import parfield.rig.Rig;

/**
 * Light without water, panes or bottom, for tests: a point in air by the inverse-square law and the
 * cosine law, E = I(γ) cos γ / D² (e.g. CIE e-ILV 17-21-079 and the definition of irradiance), with
 * D the straight distance. Fixtures hang level and square.
 */
public final class InverseSquareSolver implements FieldSolver {
  @Override
  public UnitFields unitFields(Rig rig, Places places) {
    List<Hanging> hangings = rig.hangings();
    double[][][] values = new double[hangings.size()][][];
    for (int h = 0; h < values.length; h++) {
      Hanging hanging = hangings.get(h);
      values[h] = new double[hanging.fixture().channels().size()][places.size()];
      for (int c = 0; c < values[h].length; c++) {
        IntensityDistribution intensity =
            hanging.fixture().channels().get(c).distribution().orElseThrow();
        for (Emitter emitter : hanging.fixture().emitters()) {
          for (int i = 0; i < places.size(); i++) {
            double dx = places.x(i) - hanging.x() - emitter.x();
            double dy = places.y(i) - hanging.y() - emitter.y();
            double dz = places.depth(i) + hanging.height();
            double r2 = dx * dx + dy * dy + dz * dz;
            double cosine = dz / Math.sqrt(r2);
            values[h][c][i] +=
                intensity.intensity(Math.acos(cosine), Math.atan2(dy, dx)) * cosine / r2;
          }
        }
      }
    }
    return new UnitFields(rig, places, values);
  }
}
