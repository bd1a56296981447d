package parfield.workspace;

/**
 * What a file of a bench or of the shelf holds.
 *
 * @param digest SHA-256 of its bytes in hexadecimal; {@link Workspace#bytes} gives them
 * @param size of it [bytes]
 */
public record StoredFile(String digest, long size) {}
