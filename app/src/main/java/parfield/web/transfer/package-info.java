/**
 * A light model that was fitted over another tank, applied to a bench: brought in, its error taken
 * apart, its advice, and the few readings that would confirm it. No physics, no fit of a bench's
 * own readings.
 */
package parfield.web.transfer;
