/**
 * From readings to a light model: the inverse problem, with its posterior.
 *
 * <p>Problem, method and result are three types: surveys, {@code LightModelFit}, {@link
 * parfield.fit.LightModel}. What does not belong here: choosing a rig (see {@code parfield.plan}).
 */
package parfield.fit;
