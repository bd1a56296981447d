/**
 * The step that measures: surveys with their grids, each reading stored the moment it is typed,
 * live figures, marks and map. What a meter sends is read in {@code web.meter}.
 */
package parfield.web.measure;
