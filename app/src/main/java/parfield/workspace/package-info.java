/**
 * The stored library: benches with their setups and files, surveys with their readings, what was
 * computed from them, and a shelf of fixtures and spectra, in one SQLite file or in PostgreSQL.
 *
 * <p>Nothing that was stored is overwritten or deleted: an edit is a new revision, and undo appends
 * the one before. What stands here knows no physics and parses no setup but where a bench comes in
 * or goes out as files.
 */
package parfield.workspace;
