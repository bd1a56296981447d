package parfield.workspace;

/**
 * What was taken from an archive of a workspace.
 *
 * @param benches that were added
 * @param known benches that were there already and stayed as they were
 * @param surveys that were added
 * @param readings that were added
 * @param results that were added
 * @param shelf things that were put on the shelf
 */
public record Taken(
    long benches, long known, long surveys, long readings, long results, long shelf) {}
