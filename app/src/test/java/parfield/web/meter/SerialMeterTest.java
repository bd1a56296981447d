package parfield.web.meter;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A meter at a serial port, for real: a pseudo-terminal pair with a meter that misbehaves. */
class SerialMeterTest {
  private static final String PAGE = UUID.randomUUID().toString();

  @TempDir private Path folder;
  private final UUID survey = UUID.randomUUID();
  private final SplittableRandom random = new SplittableRandom(20261130);
  private PseudoTerminal cable;
  private Meters meters;
  private MeterStream stream;

  @BeforeEach
  void plugIn() throws Exception {
    cable = new PseudoTerminal(folder);
    cable.plugIn();
    meters = Meters.now((of, news) -> {});
    stream = meters.of(survey);
  }

  @AfterEach
  void close() {
    if (meters != null) {
      meters.close();
    }
    cable.close();
  }

  private ObjectNode state(Predicate<ObjectNode> until) throws InterruptedException {
    for (int i = 0; i < 1000; i++) {
      ObjectNode state = stream.state();
      if (until.test(state)) {
        return state;
      }
      TimeUnit.MILLISECONDS.sleep(10);
    }
    throw new AssertionError("still " + stream.state());
  }

  private String line(double value) {
    return String.format(
        java.util.Locale.ROOT,
        "PAR: %.1f umol\r\n",
        value * (1 + 0.004 * (random.nextDouble() - 0.5)));
  }

  /** Ten readings a second, every fifth line spoilt in another way; takes each rest once. */
  private List<Double> show(double value, int lines) throws InterruptedException {
    List<Double> taken = new ArrayList<>();
    for (int i = 0; i < lines; i++) {
      switch (i % 25) {
        case 3 -> cable.send("P\u0001R: 9" + (char) 7 + "\n");
        case 8 -> cable.send(new byte[] {'7', 0, '1', (byte) 0xFF, (byte) 0xFE, '\n'});
        case 13 -> cable.send("PAR: 55.0 um"); // cut short, runs into the next line
        case 18 -> cable.send("BATT 85 %\r\n25.4 C\r\n");
        case 23 -> cable.send("µ\n", StandardCharsets.UTF_16);
        default -> {}
      }
      cable.send(line(value));
      TimeUnit.MILLISECONDS.sleep(100);
      ObjectNode state = stream.state();
      if (state.has("hold")) {
        stream
            .take(PAGE, state.get("hold").asLong())
            .ifPresent(given -> taken.add(given.reading().value()));
      }
    }
    return taken;
  }

  @Test
  @DisplayName(
      "ten readings a second with noise, garbage, half lines and a pulled plug: taken right")
  void noiseGarbageHalfLinesAndADisconnect() throws Exception {
    meters.open(survey, cable.port(), 9600);
    state(it -> it.get("link").asText().contains("at 9600 baud"));
    stream.taker(PAGE, false);
    cable.send("3.4 umol\r\n"); // the rest of a line that began before

    assertThat(show(120, 45)).singleElement().satisfies(it -> within(it, 120));
    assertThat(show(60, 45)).singleElement().satisfies(it -> within(it, 60));
    ObjectNode before = stream.state();
    assertThat(before.get("ignored").asInt()).isBetween(10, 40);
    assertThat(before.get("numbers").asInt()).isBetween(70, 90);
    assertThat(before.get("told").findValuesAsText("why"))
        .anyMatch(why -> why.contains("zero bytes") || why.contains("no meter writes"))
        .anyMatch(why -> why.contains("touches other characters") || why.contains("no PPFD"));

    cable.pull();
    ObjectNode gone = state(it -> it.get("away").asBoolean() && !it.has("value"));
    assertThat(gone.get("link").asText()).contains(cable.port()).contains("It is tried again");
    assertThat(gone.has("hold")).isFalse();

    cable.plugIn();
    state(it -> it.get("link").asText().contains("at 9600 baud"));
    assertThat(show(200, 45)).singleElement().satisfies(it -> within(it, 200));
  }

  private static void within(double value, double true_) {
    assertThat(value).isBetween(0.99 * true_, 1.01 * true_);
  }

  @Test
  @DisplayName("a port that is not there is told, and found once it is plugged in")
  void pluggedInLater() throws Exception {
    cable.pull();
    meters.open(survey, cable.port(), 9600);
    ObjectNode away = state(it -> it.get("away").asBoolean());
    assertThat(away.get("link").asText())
        .isEqualTo(cable.port() + " is not there: is the meter plugged in? It is tried again.");

    cable.plugIn();
    state(it -> it.get("link").asText().contains("at 9600 baud"));
    cable.send("x\n71.5\n");
    assertThat(state(it -> it.has("value")).get("value").asText()).isEqualTo("71.5");
  }

  @Test
  @DisplayName("a port serves one survey at a time: the other is told that no meter is connected")
  void anotherSurvey() throws Exception {
    meters.open(survey, cable.port(), 9600);
    state(it -> it.get("link").asText().contains("at 9600 baud"));
    UUID other = UUID.randomUUID();

    meters.open(other, cable.port(), 9600);

    assertThat(stream.state().get("link").asText()).isEqualTo("No meter is connected.");
    assertThat(meters.of(other).state().get("port").asText()).isEqualTo(cable.port());
    meters.close(other);
    assertThat(meters.of(other).state().get("source").asText()).isEmpty();
  }

  @Test
  @DisplayName("a meter that is on but says nothing is told")
  void silent() throws Exception {
    meters.open(survey, cable.port(), 9600);
    state(it -> it.get("link").asText().contains("at 9600 baud"));
    cable.send("x\n71.5\n");
    state(it -> it.has("value"));

    ObjectNode silent = state(it -> it.get("words").asText().equals("Silent"));
    assertThat(silent.get("link").asText())
        .isEqualTo(
            cable.port()
                + " at 9600 baud, but nothing was heard for 3 s: is the meter on and sending?");
  }
}
