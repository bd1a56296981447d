/**
 * Readings taken with one rig: grid plans, meters and their corrections, statistics, readings that
 * look wrong.
 *
 * <p>What does not belong here: fitting a model to them (see {@code parfield.fit}).
 */
package parfield.survey;
