package parfield.web.door;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Codes and sessions. */
class PairingTest {
  private final Ticking clock = new Ticking();
  private final Pairing pairing = new Pairing(clock);

  private static final class Ticking extends Clock {
    private Instant now = Instant.EPOCH;

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  @Test
  @DisplayName("a code gives a session once")
  void once() {
    String code = pairing.newCode().code();

    String secret = pairing.enter(code.toLowerCase(java.util.Locale.ROOT), "phone").orElseThrow();

    assertThat(pairing.session(secret)).isPresent();
    assertThat(pairing.enter(code, "another")).isEmpty();
    assertThat(pairing.session("guessed")).isEmpty();
    assertThat(pairing.session(null)).isEmpty();
  }

  @Test
  void aCodeLastsTenMinutes() {
    String code = pairing.newCode().code();
    clock.now = clock.now.plus(Duration.ofMinutes(10));

    assertThat(pairing.enter(code, "phone")).isEmpty();
    assertThat(pairing.code()).isEmpty();
  }

  @Test
  @DisplayName("five wrong codes make the right one void")
  void guesses() {
    String code = pairing.newCode().code();
    for (int i = 0; i < 5; i++) {
      assertThat(pairing.enter("00000000", "thief")).isEmpty();
    }

    assertThat(pairing.enter(code, "phone")).isEmpty();
  }

  @Test
  void aDeviceIsSentAway() {
    String secret = pairing.enter(pairing.newCode().code(), "phone").orElseThrow();

    pairing.end(pairing.session(secret).orElseThrow().id());

    assertThat(pairing.session(secret)).isEmpty();
    assertThat(pairing.sessions()).isEmpty();
  }

  @Test
  void aSessionEndsAfterThirtyDays() {
    String secret = pairing.enter(pairing.newCode().code(), "phone").orElseThrow();
    clock.now = clock.now.plus(Duration.ofDays(31));

    assertThat(pairing.session(secret)).isEmpty();
  }
}
