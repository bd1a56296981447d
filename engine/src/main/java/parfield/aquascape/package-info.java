/**
 * The rocks in the water: their shapes and reflectance, what a straight ray meets, where coral can
 * live.
 *
 * <p>Coordinates are the tank's: x along the length from the left pane, y from the front pane to
 * the back, depth positive downward from the still water surface, all in metres. What does not
 * belong here: the tank about the rocks, light, mesh files.
 */
package parfield.aquascape;
