/**
 * What light it is: photon and radiant spectra, their sums by waveband, colour, photosynthetic and
 * eye-hazard weights.
 *
 * <p>Photons and radiant power are kept apart in name and type: {@link
 * parfield.spectrum.PhotonSpectrum} and {@link parfield.spectrum.RadiantSpectrum}. What a sum is
 * measured in stands in the spectrum's {@link parfield.spectrum.Scale}.
 *
 * <p>What does not belong here: file formats (see {@code parfield.formats}) and water (see {@code
 * parfield.optics}).
 */
package parfield.spectrum;
