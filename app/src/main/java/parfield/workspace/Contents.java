package parfield.workspace;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Bytes by the digest of what they are; each content is kept once. */
final class Contents {
  private Contents() {}

  static StoredFile put(Handle handle, byte[] bytes) {
    StoredFile file = new StoredFile(digest(bytes), bytes.length);
    handle
        .createUpdate(
            "INSERT INTO contents (digest, size, bytes) VALUES (:digest, :size, :bytes)"
                + " ON CONFLICT (digest) DO NOTHING")
        .bind("digest", file.digest())
        .bind("size", file.size())
        .bind("bytes", bytes)
        .execute();
    return file;
  }

  static Optional<byte[]> bytes(Handle handle, String digest) {
    return handle
        .createQuery("SELECT bytes FROM contents WHERE digest = :digest")
        .bind("digest", digest)
        .map((row, context) -> row.getBytes(1))
        .findOne();
  }

  static String digest(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError("every Java has SHA-256", e);
    }
  }
}
