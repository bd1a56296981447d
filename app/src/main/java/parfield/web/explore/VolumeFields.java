package parfield.web.explore;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.util.Arrays;
import java.util.Iterator;
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
 *
 * <p>Light adds up, so what is kept is the light of each fixture where it hangs: moving one of a
 * rig costs that one alone.
 */
final class VolumeFields {
  /** Values that are kept: 32 MB of them. */
  private static final int KEPT = 8_000_000;

  private final Map<Key, float[][]> kept = new LinkedHashMap<>(16, 0.75f, true);
  private int size;

  /** Everything that the light of one fixture depends on. */
  private record Key(
      String scene,
      Lattice lattice,
      String fixture,
      double x,
      double y,
      double height,
      double tilt,
      double yaw) {}

  /** How many cells the water is divided into. */
  record Lattice(int columns, int rows, int layers) {
    /** About {@code cells} cells, as cubic as whole numbers allow. */
    static Lattice of(Tank tank, int cells) {
      double side = Math.cbrt(tank.length() * tank.width() * tank.depth() / cells);
      return new Lattice(
          count(tank.length(), side), count(tank.width(), side), count(tank.depth(), side));
    }

    /** How many there are, those in rock too. */
    int cells() {
      return columns * rows * layers;
    }

    private static int count(double length, double side) {
      return Math.max(6, Math.min(96, (int) Math.round(length / side)));
    }
  }

  /**
   * The fields of a rig.
   *
   * @param scene tells everything that the fields depend on but where the fixtures hang
   * @param rig every channel with a distribution
   * @param lattice where
   */
  byte[] of(String scene, Rig rig, Lattice lattice, FieldSolver solver) {
    List<float[][]> lights =
        rig.hangings().parallelStream()
            .map(hanging -> of(scene, rig, hanging, lattice, solver))
            .toList();
    Map<String, float[][]> kinds = new LinkedHashMap<>();
    for (int h = 0; h < lights.size(); h++) {
      String kind = rig.hangings().get(h).fixture().name();
      float[][] sum = kinds.get(kind);
      if (sum == null) {
        kinds.put(kind, copy(lights.get(h)));
      } else {
        add(lights.get(h), sum);
      }
    }
    int values = kinds.values().stream().mapToInt(fields -> fields.length * lattice.cells()).sum();
    ByteBuffer buffer = ByteBuffer.allocate(values * Float.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    FloatBuffer floats = buffer.asFloatBuffer();
    kinds.values().forEach(fields -> Arrays.stream(fields).forEach(floats::put));
    return buffer.array();
  }

  private static int values(float[][] light) {
    return light.length * light[0].length;
  }

  private static float[][] copy(float[][] light) {
    return Arrays.stream(light).map(float[]::clone).toArray(float[][]::new);
  }

  private static void add(float[][] light, float[][] sum) {
    for (int c = 0; c < light.length; c++) {
      for (int i = 0; i < light[c].length; i++) {
        sum[c][i] += light[c][i];
      }
    }
  }

  /** The light of one fixture of a rig [channel][cell]; not to be changed. */
  private float[][] of(
      String scene, Rig rig, Hanging hanging, Lattice lattice, FieldSolver solver) {
    Key key =
        new Key(
            scene,
            lattice,
            hanging.fixture().name(),
            hanging.x(),
            hanging.y(),
            hanging.height(),
            hanging.tilt(),
            hanging.yaw());
    synchronized (kept) {
      float[][] known = kept.get(key);
      if (known != null) {
        return known;
      }
    }
    float[][] light = computed(rig.tank(), hanging, lattice, solver);
    synchronized (kept) {
      if (kept.put(key, light) == null) {
        size += values(light);
      }
      Iterator<float[][]> eldest = kept.values().iterator();
      while (size > KEPT && kept.size() > 1) {
        size -= values(eldest.next());
        eldest.remove();
      }
    }
    return light;
  }

  private static float[][] computed(
      Tank tank, Hanging hanging, Lattice lattice, FieldSolver solver) {
    Places places = Places.volume(tank, lattice.columns, lattice.rows, lattice.layers);
    UnitFields fields =
        solver.unitFields(new Rig(hanging.fixture().name(), tank, List.of(hanging)), places);
    Cells cells = places.cells().orElseThrow();
    float[][] light = new float[hanging.fixture().channels().size()][lattice.cells()];
    for (int c = 0; c < light.length; c++) {
      if (cells.size() < light[c].length) {
        Arrays.fill(light[c], Float.NaN);
      }
      for (int i = 0; i < places.size(); i++) {
        light[c][cells.cell(i)] = (float) fields.unit(0, c, i);
      }
    }
    return light;
  }
}
