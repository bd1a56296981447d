/**
 * A rig: fixtures hung over a tank at settings; one scene to be solved.
 *
 * <p>What does not belong here: solving it (see {@code parfield.field}).
 */
package parfield.rig;
