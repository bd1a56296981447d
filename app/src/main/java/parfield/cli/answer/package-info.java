/**
 * What the commands answer: findings as text for people and as JSON for programs.
 *
 * <p>Belongs here: wording, rounding, tables, the shape of the JSON; everything is a pure function
 * of what was found. Does not belong here: finding it, files, the console.
 */
package parfield.cli.answer;
