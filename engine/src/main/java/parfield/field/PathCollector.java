package parfield.field;

/** Gathers the paths from many sources to many receivers: told what comes before each path. */
interface PathCollector extends PathSink {
  /** The paths that follow leave from this source and end at the depth of this table. */
  void from(PointSource source, PathTable table);

  /** The paths that follow end at this receiver. */
  void to(int receiver);

  /** All paths to the receiver have been given. */
  default void done() {}
}
