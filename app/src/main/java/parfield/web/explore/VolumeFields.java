package parfield.web.explore;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parfield.field.Cells;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Tank;

/**
 * The light in the whole water, channel by channel, as the browser takes it.
 *
 * <p>Little-endian floats [fixture kind][channel][layer][row][column]: PPFD with that channel of
 * all fixtures of that kind at full output [µmol m⁻² s⁻¹], NaN in rock. Kinds in the order in which
 * they are first hung, channels in the fixture's.
 */
final class VolumeFields {
  /** Fields that are kept: each is some hundred kilobytes. */
  private static final int KEPT = 48;

  private final Map<String, byte[]> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, byte[]> eldest) {
          return size() > KEPT;
        }
      };

  /** How many cells the water is divided into. */
  record Lattice(int columns, int rows, int layers) {
    /** About {@code cells} cells, as cubic as whole numbers allow. */
    static Lattice of(Tank tank, int cells) {
      double side = Math.cbrt(tank.length() * tank.width() * tank.depth() / cells);
      return new Lattice(
          count(tank.length(), side), count(tank.width(), side), count(tank.depth(), side));
    }

    private static int count(double length, double side) {
      return Math.max(6, Math.min(96, (int) Math.round(length / side)));
    }
  }

  /**
   * The fields of a rig.
   *
   * @param key tells everything that the field depends on but the rig's places
   * @param rig every channel with a distribution
   * @param lattice where
   */
  byte[] of(String key, Rig rig, Lattice lattice, FieldSolver solver) {
    StringBuilder places = new StringBuilder(key).append(lattice);
    for (Hanging hanging : rig.hangings()) {
      places
          .append(';')
          .append(hanging.fixture().name())
          .append(' ')
          .append(hanging.x())
          .append(' ')
          .append(hanging.y())
          .append(' ')
          .append(hanging.height())
          .append(' ')
          .append(hanging.tilt())
          .append(' ')
          .append(hanging.yaw());
    }
    String whole = places.toString();
    synchronized (kept) {
      byte[] known = kept.get(whole);
      if (known != null) {
        return known;
      }
    }
    byte[] bytes = computed(rig, lattice, solver);
    synchronized (kept) {
      kept.put(whole, bytes);
    }
    return bytes;
  }

  private static byte[] computed(Rig rig, Lattice lattice, FieldSolver solver) {
    Places places = Places.volume(rig.tank(), lattice.columns, lattice.rows, lattice.layers);
    UnitFields fields = solver.unitFields(rig, places);
    Cells cells = places.cells().orElseThrow();
    int size = lattice.columns * lattice.rows * lattice.layers;
    List<float[]> all = new ArrayList<>();
    Map<String, Integer> first = new LinkedHashMap<>();
    for (int h = 0; h < rig.hangings().size(); h++) {
      Hanging hanging = rig.hangings().get(h);
      int channels = hanging.fixture().channels().size();
      Integer known = first.get(hanging.fixture().name());
      int at = known == null ? all.size() : known;
      if (known == null) {
        first.put(hanging.fixture().name(), at);
        for (int c = 0; c < channels; c++) {
          float[] empty = new float[size];
          Arrays.fill(empty, cells.size() == size ? 0 : Float.NaN);
          all.add(empty);
        }
      }
      for (int c = 0; c < channels; c++) {
        float[] sum = all.get(at + c);
        for (int i = 0; i < places.size(); i++) {
          int cell = cells.cell(i);
          float light = (float) fields.unit(h, c, i);
          sum[cell] = Float.isNaN(sum[cell]) ? light : sum[cell] + light;
        }
      }
    }
    ByteBuffer buffer =
        ByteBuffer.allocate(all.size() * size * Float.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    all.forEach(
        field -> {
          for (float value : field) {
            buffer.putFloat(value);
          }
        });
    return buffer.array();
  }
}
