package parfield.workspace;

/** Why a revision was made. */
public enum Cause {
  /** Somebody saved or wrote something. */
  WRITE,
  /** Somebody took back an earlier change. */
  UNDO,
  /** Somebody brought a change back that had been taken back. */
  REDO
}
