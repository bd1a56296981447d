/**
 * How independent pieces of work are shared out among processors.
 *
 * <p>What does not belong here: what the work is, threads of one's own, anything whose result
 * depends on who does a piece or when.
 */
package parfield.parallel;
