/**
 * The proof that the numbers can be trusted: published cases computed anew, and solver against
 * solver. No physics of its own.
 */
package parfield.validation;
