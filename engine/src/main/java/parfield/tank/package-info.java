/**
 * The tank: inner box, panes and their condition, opening, bottom, water, places in it.
 *
 * <p>Axes: x along the length from the left pane, y from the front pane to the back, depth positive
 * downward from the still water surface. What does not belong here: lamps.
 */
package parfield.tank;
