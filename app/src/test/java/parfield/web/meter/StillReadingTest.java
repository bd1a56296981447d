package parfield.web.meter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.LongToDoubleFunction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** A probe on a stick: carried, held, carried on. Times are simulated. */
class StillReadingTest {
  private final StillReading still = new StillReading();
  private final SplittableRandom random = new SplittableRandom(20261130);
  private final List<Double> taken = new ArrayList<>();
  private long now;
  private long pause;
  private boolean takes;

  @BeforeEach
  void tenASecond() {
    pause = 100;
    takes = true;
  }

  private static Heard.Value shown(double value) {
    return new Heard.Value(value, String.valueOf(value), 0.1);
  }

  /** The meter shows something for a time; each rest is taken at once. */
  private void show(long milliseconds, LongToDoubleFunction value) {
    long begin = now;
    while (now < begin + milliseconds) {
      double rounded = Math.round(10 * value.applyAsDouble(now - begin)) / 10.0;
      still.hear(shown(Math.max(0, rounded)), now);
      now += pause;
      if (takes) {
        still
            .hold()
            .flatMap(hold -> still.take(hold.number()))
            .ifPresent(number -> taken.add(number.value()));
      }
    }
  }

  private void hold(long milliseconds, double value, double noise) {
    show(milliseconds, t -> value * (1 + noise * (random.nextDouble() - 0.5) * 2));
  }

  private void carry(double from, double to) {
    show(1500, t -> from + (to - from) * t / 1500.0);
  }

  @Test
  @DisplayName("each rest is offered once, with a number that the meter showed")
  void onceEach() {
    hold(6000, 200, 0.01);
    carry(200, 150);
    hold(6000, 150, 0.01);
    carry(150, 80);
    hold(6000, 80, 0.01);

    assertThat(taken).hasSize(3);
    assertThat(taken.get(0)).isBetween(198.0, 202.0);
    assertThat(taken.get(1)).isBetween(148.5, 151.5);
    assertThat(taken.get(2)).isBetween(79.2, 80.8);
  }

  @Test
  @DisplayName("however long it rests after a take, the same rest is not taken twice")
  void neverTwice() {
    hold(600_000, 120, 0.012);

    assertThat(taken).hasSize(1);
    assertThat(still.state()).isEqualTo(StillReading.State.WAITING);
  }

  @Test
  @DisplayName(
      "light that flickers by more than the limit is not taken, unless rippling is allowed")
  void ripples() {
    show(30_000, t -> 120 * (1 + 0.045 * Math.sin(t / 160.0)));
    assertThat(taken).isEmpty();
    assertThat(still.state()).isEqualTo(StillReading.State.MOVING);

    still.use(Steadiness.RIPPLED);
    show(30_000, t -> 120 * (1 + 0.045 * Math.sin(t / 160.0)));
    assertThat(taken).hasSize(1);
    assertThat(taken.get(0)).isBetween(113.0, 127.0);
  }

  @Test
  @DisplayName("flicker that begins after a take does not take the place again")
  void flickerAfterTheTake() {
    hold(4000, 120, 0);
    show(20_000, t -> 120 * (1 + 0.12 * Math.sin(t / 160.0)));
    hold(20_000, 120, 0);

    assertThat(taken).containsExactly(120.0);
  }

  @Test
  @DisplayName("a value that creeps towards its end is waited for")
  void creep() {
    // A meter that smooths over three seconds: it comes within 1 % only after 14 s.
    show(40_000, t -> 200 - 100 * Math.exp(-t / 3000.0));

    assertThat(taken).hasSize(1);
    assertThat(taken.get(0)).isBetween(195.0, 200.0);
  }

  @Test
  @DisplayName("one reading in twenty spoilt by noise does no harm; half of them do")
  void spikes() {
    show(8000, t -> t / pause % 20 == 10 ? 999 : 120);
    assertThat(taken).containsExactly(120.0);

    show(2000, t -> 0);
    show(20_000, t -> t / pause % 2 == 0 ? 300 : 90);
    assertThat(taken).hasSize(1);
  }

  @Test
  @DisplayName("a spike alone is no move: the rest goes on")
  void spikeAfterTheTake() {
    hold(4000, 120, 0);
    show(500, t -> 900);
    hold(10_000, 120, 0);

    assertThat(taken).containsExactly(120.0);
  }

  @Test
  @DisplayName("a place that reads the same is taken after the sensor was shaded")
  void evenField() {
    hold(5000, 120, 0.005);
    hold(10_000, 121, 0.005);
    assertThat(taken).hasSize(1);

    hold(1500, 20, 0);
    hold(5000, 121, 0.005);
    assertThat(taken).hasSize(2);
    assertThat(taken.get(1)).isBetween(120.0, 122.0);
  }

  @Test
  @DisplayName("a covered sensor holds still and is not taken")
  void dark() {
    hold(30_000, 0.2, 0);

    assertThat(taken).isEmpty();
    assertThat(still.state()).isEqualTo(StillReading.State.DARK);
    assertThat(still.takeNow()).as("unless a person says so").isPresent();
  }

  @Test
  @DisplayName("a meter that shows whole numbers may flicker by one")
  void wholeNumbers() {
    takes = false;
    for (int i = 0; i < 40; i++) {
      still.hear(new Heard.Value(20 + i % 2, String.valueOf(20 + i % 2), 1), 100L * i);
    }

    assertThat(still.state()).isEqualTo(StillReading.State.STILL);
  }

  @Test
  @DisplayName("slow meters need more time, and too slow ones are not taken by themselves")
  void slow() {
    pause = 1000;
    hold(4000, 120, 0);
    assertThat(taken).isEmpty();
    hold(2000, 120, 0);
    assertThat(taken).hasSize(1);

    carry(120, 60);
    pause = 4500;
    hold(120_000, 60, 0);
    assertThat(taken).hasSize(1);
  }

  @Test
  @DisplayName("what was heard before a silence does not count")
  void gap() {
    hold(1500, 120, 0);
    now += StillReading.GAP + 1;
    hold(1500, 120, 0);

    assertThat(taken).isEmpty();
  }

  @Test
  @DisplayName("after the place was changed by hand, the probe must move before it is taken")
  void changedByHand() {
    takes = false;
    hold(5000, 120, 0);
    assertThat(still.hold()).isPresent();
    still.waitToMove();
    takes = true;
    hold(20_000, 120, 0);
    assertThat(taken).isEmpty();

    carry(120, 90);
    hold(5000, 90, 0);
    assertThat(taken).containsExactly(90.0);
  }

  @Test
  @DisplayName("a rest that is over cannot be taken")
  void tooLate() {
    takes = false;
    hold(3000, 120, 0);
    long number = still.hold().orElseThrow().number();
    carry(120, 60);

    assertThat(still.take(number)).isEmpty();
    hold(3000, 60, 0);
    assertThat(still.take(number)).isEmpty();
    assertThat(still.hold().orElseThrow().number()).isEqualTo(number + 1);
  }
}
