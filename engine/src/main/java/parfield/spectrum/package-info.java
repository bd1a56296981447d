/**
 * What light it is: photon flux by wavelength.
 *
 * <p>What does not belong here: file formats (see {@code parfield.formats}) and water (see {@code
 * parfield.optics}).
 */
package parfield.spectrum;
