/** The benches of a workspace: the first run, the list, import and export. */
package parfield.web.home;
