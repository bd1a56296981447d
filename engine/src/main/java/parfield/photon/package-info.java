/**
 * The reference solver: photon packets followed one by one through air, surface, water, panes,
 * bottom and rock.
 *
 * <p>Slow, with an error that it states, and free of the fast solver's assumptions: it measures
 * these. What does not belong here: statistics of a survey, and choosing.
 */
package parfield.photon;
