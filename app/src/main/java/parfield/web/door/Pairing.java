package parfield.web.door;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Lets a phone in: a code that the computer shows works once and for ten minutes, and gives a
 * session. After a few wrong codes the code is void. Thread-safe.
 */
public final class Pairing {
  /** Cookie of a session. */
  public static final String COOKIE = "parfield-session";

  /** How long a code works. */
  static final Duration CODE_LIFE = Duration.ofMinutes(10);

  /** How long a session lasts. */
  static final Duration SESSION_LIFE = Duration.ofDays(30);

  /** Wrong codes after which the code is void. */
  static final int MOST_WRONG = 5;

  private static final int CODE_LENGTH = 8;
  private static final int MOST_SESSIONS = 50;

  /**
   * A code that is shown.
   *
   * @param code to type
   * @param until it works
   */
  public record Code(String code, Instant until) {}

  /**
   * A device that was let in.
   *
   * @param id by which it can be sent away; not the secret
   * @param device what its browser says it is
   * @param since when
   */
  public record Session(UUID id, String device, Instant since) {}

  private final Clock clock;
  private final Map<String, Session> sessions = new LinkedHashMap<>();
  private Optional<Code> code = Optional.empty();
  private int wrong;

  /** Nobody is let in yet. */
  public Pairing(Clock clock) {
    this.clock = clock;
  }

  /** A new code; the one before is void. */
  public synchronized Code newCode() {
    wrong = 0;
    Code made = new Code(Secrets.code(CODE_LENGTH), clock.instant().plus(CODE_LIFE));
    code = Optional.of(made);
    return made;
  }

  /** The code that works now, if one does. */
  public synchronized Optional<Code> code() {
    code = code.filter(shown -> clock.instant().isBefore(shown.until()));
    return code;
  }

  /**
   * Takes a code for a session.
   *
   * @param typed what was typed
   * @param device what the browser says it is
   * @return the secret of the new session; empty if the code does not work (any more)
   */
  public synchronized Optional<String> enter(String typed, String device) {
    Optional<Code> shown = code();
    if (shown.isEmpty()) {
      return Optional.empty();
    }
    String plain = typed.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
    if (!Secrets.same(shown.get().code(), plain)) {
      wrong++;
      if (wrong >= MOST_WRONG) {
        code = Optional.empty();
      }
      return Optional.empty();
    }
    code = Optional.empty();
    if (sessions.size() >= MOST_SESSIONS) {
      sessions.remove(sessions.keySet().iterator().next());
    }
    String secret = Secrets.token();
    String name = device.length() > 120 ? device.substring(0, 120) : device;
    sessions.put(secret, new Session(UUID.randomUUID(), name, clock.instant()));
    return Optional.of(secret);
  }

  /** The session of a secret, if it is one and has not ended. */
  public synchronized Optional<Session> session(String secret) {
    if (secret == null) {
      return Optional.empty();
    }
    sessions
        .values()
        .removeIf(session -> clock.instant().isAfter(session.since().plus(SESSION_LIFE)));
    return Optional.ofNullable(sessions.get(secret));
  }

  /** All devices that were let in. */
  public synchronized List<Session> sessions() {
    return List.copyOf(sessions.values());
  }

  /** Sends a device away. */
  public synchronized void end(UUID session) {
    sessions.values().removeIf(known -> known.id().equals(session));
  }
}
