/**
 * A meter that is read by itself: its lines, over a serial port or posted, become numbers, and the
 * number becomes a reading once it holds still.
 */
package parfield.web.meter;
