package parfield.care;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static parfield.care.CareBench.at;
import static parfield.care.CareBench.channel;
import static parfield.care.CareBench.field;
import static parfield.care.CareBench.fixture;
import static parfield.care.CareBench.hours;
import static parfield.care.CareBench.rig;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.field.Places;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.plan.Zone;
import parfield.rig.Rig;
import parfield.survey.Band;

/** Which group can live where. */
class LivestockTest {
  private static final CoralGroup SOFT =
      new CoralGroup(new Band("soft", 75, 150), 2.5, 6, Certainty.LOW, "invented");
  private static final Rig RIG =
      rig(fixture(channel("blue", OutputCurve.proportional())), Setting.full());

  @Test
  @DisplayName("a peak in its range is still too much over too long a day")
  void theDoseCountsBesideThePeak() {
    assertThat(SOFT.under(140, .0036 * 140 * 10)).isEqualTo(Standing.FITS);
    assertThat(SOFT.under(140, .0036 * 140 * 14)).isEqualTo(Standing.DAY_TOO_MUCH);
    assertThat(SOFT.under(80, .0036 * 80 * 6)).isEqualTo(Standing.DAY_TOO_LITTLE);
    assertThat(SOFT.under(160, 5)).isEqualTo(Standing.TOO_BRIGHT);
    assertThat(SOFT.under(70, 5)).isEqualTo(Standing.TOO_DIM);
  }

  @Test
  @DisplayName("what intervals say: a limit that is surely missed is named, peak before dose")
  void intervalsSayWhatIsSure() {
    assertThat(SOFT.surely(80, 140, 3, 5)).contains(Standing.FITS);
    assertThat(SOFT.surely(151, 170, 3, 5)).contains(Standing.TOO_BRIGHT);
    assertThat(SOFT.surely(60, 74, 1, 2)).contains(Standing.TOO_DIM);
    assertThat(SOFT.surely(60, 80, 1, 2.4)).contains(Standing.DAY_TOO_LITTLE);
    assertThat(SOFT.surely(140, 160, 6.1, 7)).contains(Standing.DAY_TOO_MUCH);
    assertThat(SOFT.surely(140, 160, 3, 5)).isEmpty();
    assertThat(SOFT.surely(80, 140, 5, 6.5)).isEmpty();
    // Without an interval it says the same as a single light.
    for (double peak = 0; peak <= 200; peak += 12.5) {
      for (double dose = 0; dose <= 8; dose += .5) {
        assertThat(SOFT.surely(peak, peak, dose, dose)).contains(SOFT.under(peak, dose));
      }
    }
  }

  @Test
  @DisplayName("shares count places: a field that falls evenly along the tank")
  void sharesCountPlaces() {
    Places places = Places.volume(CareBench.TANK, 30, 2, 3);
    double[] ppfd = new double[places.size()];
    for (int i = 0; i < ppfd.length; i++) {
      ppfd[i] = 300 * (1 - places.x(i) / .9);
    }
    DayLight light =
        DayLight.of(
            field(RIG, places, new double[][] {ppfd}, 1, 1, 1),
            DayOutputs.of(
                DailyProgram.together(RIG, at("10:00"), hours(0), hours(10), hours(0)), RIG));

    List<Home> whole = Home.of(light, places, Home.zones(CareBench.TANK, 1, 1), List.of(SOFT));
    // 75 to 150 of 300, and .036 mol a µmol: 2.7 to 5.4 mol, the dose asks no more: a quarter.
    assertThat(whole).hasSize(1);
    assertThat(whole.get(0).fits().value()).isCloseTo(.25, within(.04));
    assertThat(whole.get(0).places()).isEqualTo(180);
    assertThat(whole.get(0).standings().get(Standing.TOO_BRIGHT)).isEqualTo(.5);
    assertThat(whole.get(0).standings().values().stream().mapToDouble(d -> d).sum())
        .isCloseTo(1, within(1e-12));
    assertThat(whole.get(0).mostly()).isEqualTo(Standing.TOO_BRIGHT);
    assertThat(whole.get(0).answer()).isEqualTo(Home.Answer.SOME);

    // By peak alone a quarter; the dose alone lets in what .036 mol a µmol make 2.5 to 6: 69 to
    // 167.
    assertThat(whole.get(0).byPeak().value()).isCloseTo(.25, within(.04));
    assertThat(whole.get(0).byDose().value()).isCloseTo((6 - 2.5) / .036 / 300, within(.04));
    assertThat(light.mostDli().value())
        .isCloseTo(.036 * Arrays.stream(ppfd).max().orElseThrow(), within(1e-9));
    assertThat(light.leastDli().value())
        .isCloseTo(.036 * Arrays.stream(ppfd).min().orElseThrow(), within(1e-9));
    assertThat(light.meanDli(0, 1).value()).isCloseTo(.036 * (ppfd[0] + ppfd[1]) / 2, within(1e-9));

    List<Home> parts = Home.of(light, places, Home.zones(CareBench.TANK, 3, 3), List.of(SOFT));
    assertThat(parts).hasSize(9);
    assertThat(parts.get(0).answer()).as("left").isEqualTo(Home.Answer.NO);
    assertThat(parts.get(1).answer()).as("centre").isEqualTo(Home.Answer.YES);
    assertThat(parts.get(0).zone().name()).isEqualTo("upper third, left");
  }

  @Test
  void zonesFillTheTank() {
    for (int layers = 1; layers <= 3; layers++) {
      List<Zone> zones = Home.zones(CareBench.TANK, layers, 3);
      double volume =
          zones.stream()
              .mapToDouble(
                  zone ->
                      (zone.area().toX() - zone.area().fromX())
                          * (zone.area().toY() - zone.area().fromY())
                          * (zone.toDepth() - zone.fromDepth()))
              .sum();
      assertThat(volume).isCloseTo(.9 * .6 * .5, within(1e-12));
    }
    assertThatThrownBy(() -> Home.zones(CareBench.TANK, 4, 1))
        .hasMessage("water is cut into 1 to 3 layers; got 4");
  }

  @Test
  @DisplayName("every common group says that it has no source, and what it says can be met")
  void theCommonGroups() {
    assertThat(Livestock.common()).isNotEmpty();
    Livestock.common()
        .values()
        .forEach(
            group -> {
              assertThat(group.source()).isEqualTo("common practice, no source");
              assertThat(group.certainty()).isEqualTo(Certainty.LOW);
              // Some day of 6 to 12 h at some PPFD of the range gives a dose of the range.
              assertThat(.0036 * group.ppfd().from() * 6).isLessThan(group.dliTo());
              assertThat(.0036 * group.ppfd().to() * 12).isGreaterThan(group.dliFrom());
            });
  }

  @Test
  void aBenchOverridesItsNamesake() {
    Map<String, CoralGroup> all =
        Livestock.with(
            Map.of(
                "soft",
                SOFT,
                "sponges",
                new CoralGroup(new Band("sponges", 0, 40), 0, 1, Certainty.FAIR, "seen")));

    assertThat(all.get("soft")).isEqualTo(SOFT);
    assertThat(all.keySet()).startsWith("mushrooms", "soft").endsWith("sponges");
    assertThatThrownBy(
            () -> new CoralGroup(new Band("soft", 75, 150), 6, 2, Certainty.LOW, "invented"))
        .hasMessage(
            "group soft: its daily light integral must run upward from 0 mol m⁻² d⁻¹ or more; got"
                + " 6.0 to 2.0");
    assertThat(Arrays.stream(Standing.values()).map(Standing::words)).doesNotHaveDuplicates();
  }
}
