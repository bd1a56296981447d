/**
 * Spectra beside the steps of a bench: files of the shelf, held against each other, mixed, taken
 * apart and judged. What is answered comes from {@code parfield.answer}.
 */
package parfield.web.spectra;
