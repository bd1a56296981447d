package parfield.web.door;

import java.util.regex.Pattern;

/**
 * The word by which a program that reads a meter may post its lines, and nothing else. It is new
 * each time the server starts.
 */
public final class MeterToken {
  private static final Pattern LINES =
      Pattern.compile("/bench/[0-9a-f-]{36}/measure/[0-9a-f-]{36}/meter");

  private final String token = Secrets.token();

  /** The word, to be shown to whoever sits at this machine. */
  public String token() {
    return token;
  }

  /** Whether a request may post a meter's lines. */
  boolean allows(String method, String path, String authorization) {
    return method.equals("POST")
        && authorization != null
        && authorization.startsWith("Bearer ")
        && LINES.matcher(path).matches()
        && Secrets.same(token, authorization.substring("Bearer ".length()));
  }
}
