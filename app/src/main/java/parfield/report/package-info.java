/**
 * The published advice: what a stranger needs to hang the same light, as one page and as a printed
 * paper.
 *
 * <p>A report holds what {@code parfield.answer} says, in the order in which it is read; it
 * computes no figure of its own.
 */
package parfield.report;
