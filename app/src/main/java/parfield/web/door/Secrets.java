package parfield.web.door;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;

/** What nobody can guess. */
final class Secrets {
  private static final SecureRandom RANDOM = new SecureRandom();

  private Secrets() {}

  /** 256 bits as text that fits a cookie and an address. */
  static String token() {
    byte[] bytes = new byte[32];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /**
   * A code that a person can type: letters and digits that cannot be taken for each other.
   *
   * @param length of it; 5 bits each
   */
  static String code(int length) {
    String alphabet = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
    StringBuilder code = new StringBuilder();
    for (int i = 0; i < length; i++) {
      code.append(alphabet.charAt(RANDOM.nextInt(alphabet.length())));
    }
    return code.toString();
  }

  /** Whether two texts are the same, in a time that does not tell where they differ. */
  static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }
}
