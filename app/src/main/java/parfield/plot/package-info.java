/**
 * Pictures as SVG text, drawn by hand: heat maps, maps of a band, sections and curves; one look for
 * the terminal's exports, the screen and the report.
 *
 * <p>Belongs here: what a picture shows (immutable specifications), how values become colours,
 * isolines and labels. Lengths come in metres and leave in centimetres or inches. Does not belong
 * here: solving or fitting anything, reading or writing files. The same specification gives the
 * same text, byte for byte, in every locale.
 */
package parfield.plot;
