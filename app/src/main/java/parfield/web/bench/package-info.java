/**
 * A stored bench as the screens see it: its setup read, its readings in it, its light model. All
 * snapshots; what is stored stands in {@code workspace}.
 */
package parfield.web.bench;
