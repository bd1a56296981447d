package parfield.tank;

/**
 * A place in the water.
 *
 * @param x along the length from the left pane [m]
 * @param y from the front pane to the back [m]
 * @param depth below the still surface, positive downward [m]
 */
public record Place(double x, double y, double depth) {}
