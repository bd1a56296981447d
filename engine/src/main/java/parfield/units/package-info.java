/**
 * Small value types for quantities whose unit or domain is easily mistaken, and the conversion of
 * centimetres, inches and nanometres at the edge.
 *
 * <p>Belongs here: one quantity, its domain check, its conversions. Does not belong here: a general
 * framework of units, or anything that knows a lamp or a tank.
 */
package parfield.units;
