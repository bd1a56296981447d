/**
 * An invented bench: a tank, a fixture, a meter and a person that never were, and the readings they
 * would have taken.
 *
 * <p>Belongs here: the hidden truth, the noise of reading it, the files of the bench, each marked
 * as invented. Does not belong here: fitting or judging it; nothing outside this package knows the
 * truth.
 */
package parfield.demo;
