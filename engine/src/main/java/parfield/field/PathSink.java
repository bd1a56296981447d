package parfield.field;

/** Takes the light paths that reach one place, one at a time. */
interface PathSink {
  /**
   * One path.
   *
   * @param reflectance product of the panes' reflectances along it
   * @param position of its horizontal distance in the path table
   * @param dx unfolded horizontal offset along x from the source [m]
   * @param dy unfolded horizontal offset along y [m]
   * @param distance their length [m]
   * @param orderX image order along x: how many panes it crossed there, signed by the first
   * @param orderY image order along y
   */
  void path(
      double reflectance,
      double position,
      double dx,
      double dy,
      double distance,
      int orderX,
      int orderY);
}
