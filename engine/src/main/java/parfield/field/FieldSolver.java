package parfield.field;

import parfield.rig.Rig;

/** Predicts the light field of a rig; implementations are immutable and thread-safe. */
public interface FieldSolver {
  /**
   * Solves once per channel: a rig's field at any setting is a weighted sum of these.
   *
   * @param rig the scene; every channel of every fixture must carry a distribution
   * @param places where the field is wanted, all in the water of the rig's tank
   * @return the fields of all channels at full output
   * @throws IllegalArgumentException if a channel has no distribution or a place lies outside the
   *     tank or in a rock; the message names it
   */
  UnitFields unitFields(Rig rig, Places places);

  /** The field at the rig's own setting. */
  default LightField solve(Rig rig, Places places) {
    return unitFields(rig, places).atRigSetting();
  }
}
