package parfield.workspace;

/** Where a change stands in the walk of undo and redo. */
enum State {
  /** It holds, or is itself an undo or redo. */
  DONE,
  /** It was taken back and can be brought back. */
  UNDONE,
  /** It was taken back, and something else was written since. */
  PASSED
}
