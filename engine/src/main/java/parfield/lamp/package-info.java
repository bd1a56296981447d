/**
 * The light fixture as a person buys and dials it: emitters, channels, intensity distributions,
 * output curves, dials.
 *
 * <p>What does not belong here: where the fixture hangs (see {@code parfield.rig}).
 */
package parfield.lamp;
