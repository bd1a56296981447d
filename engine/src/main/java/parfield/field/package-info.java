/**
 * The light field: how much light reaches each place in the water under a rig.
 *
 * <p>One interface, {@link parfield.field.FieldSolver}; {@code FastSolver} answers it in closed
 * form. What does not belong here: statistics of a field (see {@code parfield.survey}).
 */
package parfield.field;
