package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.lamp.Setting;
import parfield.tank.Place;
import parfield.tank.Tank;

class RetentionTest {
  private static final Survey ANY = new SimulatedSurvey(1).clean();

  @Test
  void isMeanOverMeanAtTheSamePlacesInWhateverOrder() {
    // Common practice, no source: keep 85 % of the lowest height's mean; 392 at 15 cm gives 333.2.
    Survey low = survey("low", reading(0.1, 0.1, 500), reading(0.3, 0.1, 284));
    Survey high = survey("high", reading(0.3, 0.1, 300), reading(0.1, 0.1, 366.4));
    Retention retention = Retention.of(high, low);
    assertThat(retention.reference()).isEqualTo(392);
    assertThat(retention.ratio()).isCloseTo(0.85, within(1e-12));
  }

  @Test
  void ofFields() {
    Places places = Places.plane(ANY.rig().tank(), 0.1, 2, 1);
    LightField low = new LightField(places, new double[] {100, 300});
    LightField high = new LightField(places, new double[] {100, 200});
    assertThat(Retention.of(high, low).ratio()).isEqualTo(0.75);
    Places others = Places.plane(Tank.of(2, 1, 1), 0.1, 2, 1);
    assertThatThrownBy(() -> Retention.of(high, new LightField(others, new double[] {1, 1})))
        .hasMessageStartingWith(
            "retention needs both heights at the same places; this field has x ");
  }

  @Test
  void refusesOtherPlacesDialsAndDarkness() {
    Survey low = survey("low", reading(0.1, 0.1, 500), reading(0.3, 0.1, 284));
    assertThatThrownBy(() -> Retention.of(survey("high", reading(0.1, 0.1, 300)), low))
        .hasMessage("retention needs both heights at the same places; high has 1 and low has 2");
    Survey moved = survey("high", reading(0.1, 0.1, 300), reading(0.32, 0.1, 200));
    assertThatThrownBy(() -> Retention.of(moved, low))
        .hasMessage(
            "retention needs both heights at the same places; high has x 0.320, y 0.100, depth"
                + " 0.150 m where low has x 0.300, y 0.100, depth 0.150 m");
    Survey dimmed =
        new Survey(
            "dim",
            ANY.rig().withSetting(new Setting(Map.of("blue", 50.0))),
            ANY.meter(),
            low.readings());
    assertThatThrownBy(() -> Retention.of(dimmed, low))
        .hasMessage(
            "retention compares heights at the same dials; surveys dim and low were read with other"
                + " fixtures or dials");
    Survey dark = survey("dark", reading(0.1, 0.1, 0), reading(0.3, 0.1, 0));
    assertThatThrownBy(() -> Retention.of(low, dark))
        .hasMessage("retention needs light at the reference height; its mean PPFD is 0.0");
  }

  private static Reading reading(double x, double y, double ppfd) {
    return new Reading(0, new Place(x, y, 0.15), ppfd);
  }

  private static Survey survey(String name, Reading... readings) {
    return new Survey(name, ANY.rig(), ANY.meter(), List.of(readings));
  }
}
