package parfield.web.meter;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Who is heard, who takes, and what pages are told. */
class MeterStreamTest {
  private static final MeterStream.Source POST = new MeterStream.Source(false, "10.0.0.7");
  private static final MeterStream.Source OTHER = new MeterStream.Source(false, "10.0.0.8");
  private static final MeterStream.Source PORT = new MeterStream.Source(true, "/dev/ttyUSB0");

  private final MeterStream stream = new MeterStream();
  private long now;

  private Heard say(String text) {
    return stream.hear(new LineReader.Line(text, Optional.empty()), now);
  }

  private void hold(String text, long milliseconds) {
    for (long end = now + milliseconds; now < end; now += 100) {
      say(text);
    }
  }

  private String words() {
    return stream.state().get("words").asText();
  }

  private long held() {
    return stream.state().path("hold").asLong(0);
  }

  @Test
  void aPageIsToldHowItStands() {
    assertThat(stream.state().get("link").asText()).isEqualTo("No meter is connected.");
    assertThat(stream.claimSource(POST, now)).isTrue();
    assertThat(words()).isEqualTo("Listening");
    hold("71.5", 500);
    assertThat(words()).isEqualTo("Moves");
    hold("71.5", 3000);
    assertThat(words()).isEqualTo("Holds still");
    assertThat(stream.state().get("value").asText()).isEqualTo("71.5");
    assertThat(stream.news(now)).isPresent();
    assertThat(stream.news(now)).as("nothing new").isEmpty();
    now += MeterStream.SILENT + 1;
    ObjectNode silent = stream.news(now).orElseThrow();
    assertThat(silent.get("words").asText()).isEqualTo("Silent");
    assertThat(silent.get("link").asText())
        .isEqualTo("Nothing was posted for 3 s: is the program that posts still running?");
    assertThat(silent.has("hold")).isFalse();
    hold("0.1", 3000);
    assertThat(words()).isEqualTo("Dark: is the sensor covered?");
  }

  @Test
  @DisplayName("what is not used is counted, and the last five are told")
  void ignored() {
    stream.claimSource(POST, now);
    for (int i = 1; i <= 7; i++) {
      say("noise " + "x".repeat(i));
    }
    say("71");

    ObjectNode state = stream.state();
    assertThat(state.get("numbers").asInt()).isEqualTo(1);
    assertThat(state.get("ignored").asInt()).isEqualTo(7);
    assertThat(state.get("told")).hasSize(5);
    assertThat(state.get("told").get(0).get("why").asText()).isEqualTo("it holds no number");
    stream.field(OptionalInt.of(2));
    assertThat(say("5;71")).isEqualTo(new Heard.Value(71, "71", 1));
  }

  @Test
  @DisplayName("one page takes: another that switches on takes over, and a rest is given once")
  void oneTaker() {
    stream.claimSource(POST, now);
    stream.taker("laptop", false);
    hold("71.5", 3000);
    long first = held();
    assertThat(stream.take("phone", first)).isEmpty();
    assertThat(stream.take("laptop", first)).isPresent();
    assertThat(stream.take("laptop", first)).as("the answer was lost").isPresent();
    assertThat(stream.take("phone", first)).isEmpty();
    assertThat(words()).isEqualTo("Taken: move the probe on");
    hold("71.5", 10_000);
    assertThat(held()).isZero();

    stream.taker("phone", false);
    hold("150", 4000);
    assertThat(stream.take("laptop", held())).isEmpty();
    assertThat(stream.take("phone", held()).orElseThrow().reading().typed()).isEqualTo("150");
    stream.noTaker("laptop");
    assertThat(stream.state().get("taker").asText()).isEqualTo("phone");
    stream.noTaker("phone");
    assertThat(stream.state().get("taker").asText()).isEmpty();
  }

  @Test
  @DisplayName("switching on does not take what lies on the table")
  void switchedOn() {
    stream.claimSource(POST, now);
    hold("12.0", 5000);
    stream.taker("laptop", false);
    assertThat(words()).isEqualTo("Waits until the probe is moved");
    hold("12.0", 5000);
    assertThat(held()).isZero();
  }

  @Test
  @DisplayName("by hand a reading is taken as it is, but not from a silent meter")
  void byHand() {
    stream.claimSource(POST, now);
    assertThat(stream.takeNow("laptop", now)).isEmpty();
    say("80");
    say("70");
    assertThat(stream.takeNow("laptop", now).orElseThrow().reading().typed()).isEqualTo("70");
    assertThat(stream.takeNow("laptop", now + MeterStream.SILENT + 1)).isEmpty();
  }

  @Test
  @DisplayName("two meters do not mix")
  void oneSource() {
    assertThat(stream.claimSource(POST, now)).isTrue();
    say("71");
    assertThat(stream.claimSource(OTHER, now + 1000)).isFalse();
    assertThat(stream.claimSource(POST, now + 1000)).isTrue();
    assertThat(stream.claimSource(OTHER, now + MeterStream.HELD + 1)).isTrue();
    assertThat(stream.claimSource(PORT, now)).as("a port is opened by a person").isTrue();
    assertThat(stream.claimSource(POST, now + 1_000_000)).isFalse();
    assertThat(stream.state().get("port").asText()).isEqualTo("/dev/ttyUSB0");
    stream.release(PORT);
    assertThat(stream.claimSource(POST, now)).isTrue();
  }

  @Test
  void paceIsKept() {
    int allowed = 0;
    for (int i = 0; i < 500; i++) {
      allowed += stream.allows(100, 0) ? 1 : 0;
    }
    assertThat(allowed).isEqualTo(100);
    assertThat(stream.allows(100, 9)).isFalse();
    assertThat(stream.allows(100, 10)).isTrue();
    for (int second = 1; second <= 10; second++) {
      for (int i = 0; i < 90; i++) {
        assertThat(stream.allows(100, 1000L * second)).isTrue();
      }
    }
  }
}
