/**
 * Benchmarks: time and error of the same computation in one row.
 *
 * <p>Belongs here: JMH benchmarks and the scenes they run on. Does not belong here: anything the
 * program needs, or any verdict that a test should give.
 */
package parfield.benchmarks;
