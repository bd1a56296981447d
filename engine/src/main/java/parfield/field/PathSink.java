package parfield.field;

/** Takes the light paths that reach one place, one at a time. */
interface PathSink {
  /**
   * One path.
   *
   * @param reflectance product of the panes' reflectances along it
   * @param step of its horizontal distance in the path table
   * @param part of the way from there to the next step, 0 to 1
   * @param dx unfolded horizontal offset along x from the source [m]
   * @param dy unfolded horizontal offset along y [m]
   * @param distance their length [m]
   * @param orderX image order along x: how many panes it crossed there, signed by the first
   * @param orderY image order along y
   */
  void path(
      double reflectance,
      int step,
      double part,
      double dx,
      double dy,
      double distance,
      int orderX,
      int orderY);
}
