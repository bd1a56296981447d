/**
 * What light does at and in water: Snell and Fresnel, panes, absorption, the moving surface.
 *
 * <p>Pure functions of angles and path lengths. What does not belong here: tanks and lamps.
 */
package parfield.optics;
