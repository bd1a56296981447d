/**
 * The bench in the browser: {@link parfield.web.Server} puts the screens together and starts them.
 *
 * <p>Belongs here: which screens there are, starting and stopping. Does not belong here: what a
 * screen shows (a package each), who may come in ({@code door}), work in the background ({@code
 * work}), stored benches ({@code bench}), how a page is drawn ({@code page}).
 */
package parfield.web;
