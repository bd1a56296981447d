/**
 * What keeps people, animals and things from harm beside the light: cautions.
 *
 * <p>Belongs here: photoperiod, daily dose, ramps, energy and cautions, as plain figures and
 * sentences. Does not belong here: choosing a rig (see {@code parfield.plan}), documents.
 */
package parfield.care;
