/**
 * Small value types that every other room uses: length units at the edge, a figure with its
 * interval.
 *
 * <p>What does not belong here: a unit framework, a global unit setting, anything with a formula of
 * the field. Inside the engine lengths are metres and angles radians, in plain {@code double}s.
 */
package parfield.units;
