package parfield.web.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class SteadinessTest {
  @Test
  void limitIsAShareButNeverBelowTheStepOrTheFloor() {
    assertThat(Steadiness.CALM.limit(200, 0.1)).isEqualTo(6.0);
    assertThat(Steadiness.CALM.limit(20, 1)).isEqualTo(2.0);
    assertThat(Steadiness.CALM.limit(2, 0.1)).isEqualTo(0.5);
    assertThat(Steadiness.RIPPLED.limit(200, 0.1)).isEqualTo(20.0);
  }

  @Test
  void nonsenseIsRefused() {
    assertThatThrownBy(() -> new Steadiness(0, 2000, 5))
        .hasMessage("share 0.0, window 2000 ms, count 5 is no steadiness");
  }
}
