/**
 * Choosing: what the plan must meet, sweeps over height and spacing, the search for dials, the
 * recommendation with its intervals and the readings that would verify it.
 *
 * <p>What does not belong here: fitting a light model (see {@code parfield.fit}), photoperiod,
 * acclimation and cautions (see {@code parfield.care}), documents.
 */
package parfield.plan;
