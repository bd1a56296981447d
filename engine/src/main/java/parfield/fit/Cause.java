package parfield.fit;

/** Why a light model may be wrong over a tank in which it was not measured. */
public enum Cause {
  /** What the readings left open about the lamps. */
  LAMPS("the lamps, as far as the readings tell"),
  /** The scale error of the meter that the model was measured with. */
  METER("the scale of the meter that measured the model"),
  /** Another specimen of the same fixture gives more or less light. */
  SPECIMEN("another specimen of the fixture"),
  /** Panes are less or more clear than stated. */
  PANES("the panes' condition"),
  /** The bottom reflects otherwise than stated. */
  BOTTOM("the bottom's reflectance"),
  /** The water is yellower or clearer than stated. */
  YELLOWING("the water's yellowing"),
  /** The fixtures hang a little aside, higher or lower than stated. */
  HANGING("where the fixtures really hang"),
  /** The lid lets more or less through than stated; nothing without a lid. */
  LID("the lid"),
  /** The solver leaves out what matters a little in every tank and more in some. */
  SOLVER("what the fast solver leaves out in this tank"),
  /** The model itself misses single places. */
  DISCREPANCY("what the model itself misses");

  private final String words;

  Cause(String words) {
    this.words = words;
  }

  /** What it is, in a few words. */
  public String words() {
    return words;
  }
}
