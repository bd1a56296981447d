package parfield.photon;

import java.util.Locale;

/**
 * Equal boxes that fill the water, in which scalar irradiance E_o is counted: x fastest, then y,
 * then depth.
 *
 * @param columns along x, 1 or more
 * @param rows along y, 1 or more
 * @param layers along depth, 1 or more
 */
public record VoxelGrid(int columns, int rows, int layers) {
  public VoxelGrid {
    if (columns < 1 || rows < 1 || layers < 1) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a grid of voxels needs at least one each way; got %d x %d x %d",
              columns,
              rows,
              layers));
    }
  }

  /** Returns the number of voxels. */
  public int size() {
    return Math.multiplyExact(Math.multiplyExact(columns, rows), layers);
  }
}
