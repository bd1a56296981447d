package parfield.workspace;

/**
 * How much a workspace holds.
 *
 * @param benches those put away too
 * @param surveys of all benches
 * @param readings those withdrawn too
 * @param revisions of all readings
 * @param results models and recommendations
 */
public record Holdings(long benches, long surveys, long readings, long revisions, long results) {}
