package parfield.web.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The first point, read again and again. */
class DriftTest {
  private static Drift.At at(long seconds, double value) {
    return new Drift.At(Instant.ofEpochSecond(seconds), value);
  }

  @Test
  @DisplayName("a line's own slope over its mean, by hand")
  void slope() {
    // 98, 100, 102 at 0, 30, 60 minutes: 4 of 100 in an hour.
    Drift drift = Drift.of(List.of(at(0, 98), at(1800, 100), at(3600, 102)), 0.005).orElseThrow();

    assertThat(drift.perHour()).isCloseTo(0.04, within(1e-12));
    // Times about their mean: -0.5, 0, 0.5 h, squares 0.5.
    assertThat(drift.error()).isCloseTo(0.005 / Math.sqrt(0.5), within(1e-12));
    assertThat(drift.clear()).isTrue();
    assertThat(drift.words())
        .isEqualTo(
            "+4.0 ± 0.7 % per hour (first point read 3 times in 60 min): the light or the meter"
                + " changed by +4.0 % meanwhile. Let the lamp warm up, then read the first places"
                + " again.");
  }

  @Test
  void withinTheRepeatError() {
    Drift drift = Drift.of(List.of(at(0, 100), at(3600, 101)), 0.02).orElseThrow();

    assertThat(drift.clear()).isFalse();
    assertThat(drift.words()).endsWith(": no more than the meter's repeat error explains.");
  }

  @Test
  void tooLittleToTell() {
    assertThat(Drift.of(List.of(at(0, 100)), 0.02)).isEmpty();
    assertThat(Drift.of(List.of(at(0, 100), at(59, 110)), 0.02)).isEmpty();
    assertThat(Drift.of(List.of(at(0, 0), at(600, 0)), 0.02)).isEmpty();
  }
}
