/**
 * The {@code parfield} command: arguments in, results on standard output, diagnostics on standard
 * error, exit codes out.
 *
 * <p>Belongs here: one class per subcommand, and the wording of the terminal. Does not belong here:
 * physics, file formats, drawing. No other package imports this one.
 */
package parfield.cli;
