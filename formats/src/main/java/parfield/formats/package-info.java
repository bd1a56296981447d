/**
 * Foreign text and sheets in and out: setup file, readings, and published exchange formats, checked
 * and converted to SI at this fence.
 *
 * <p>Belongs here: parsing, writing, and faults with their place in the file. Does not belong here:
 * any decision about light.
 */
package parfield.formats;
