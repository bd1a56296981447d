package parfield.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.units.LengthUnit;

/** Scales, ticks and rasters. */
class ScaleTest {
  @Test
  void standsBetweenRoundNumbers() {
    assertThat(Scale.around(22, 508)).isEqualTo(new Scale(0, 550));
    assertThat(Scale.around(508, 22)).isEqualTo(new Scale(0, 550));
    assertThat(Scale.around(100, 200)).isEqualTo(new Scale(100, 200));
    assertThat(Scale.around(0.62, 0.93)).isEqualTo(new Scale(0.6, 0.95));
  }

  @Test
  @DisplayName("a flat field still gets a scale")
  void flat() {
    assertThat(Scale.around(0, 0).high()).isPositive();
    Scale scale = Scale.around(120, 120);
    assertThat(scale.low()).isLessThan(120);
    assertThat(scale.high()).isGreaterThan(120);
  }

  @Test
  void holdsItsValuesAndHasFewLevels() {
    for (long seed = 1; seed <= 200; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double a = Math.pow(10, random.nextDouble(-2, 4));
      double b = a * random.nextDouble(0, 1);
      Scale scale = Scale.around(a, b);
      assertThat(scale.low()).as("seed %d", seed).isLessThanOrEqualTo(b * (1 + 1e-9));
      assertThat(scale.high()).as("seed %d", seed).isGreaterThanOrEqualTo(a * (1 - 1e-9));
      assertThat(scale.levels()).as("seed %d", seed).hasSizeBetween(2, 9).isSorted();
      assertThat(scale.levels()).allMatch(level -> level > scale.low() && level < scale.high());
    }
  }

  @Test
  void comparedRastersShareOne() {
    Raster dim = new Raster(2, 2, new double[] {20, 30, 40, 50});
    Raster bright = new Raster(2, 2, new double[] {300, 310, 320, 390});

    assertThat(Scale.of(List.of(dim, bright))).isEqualTo(new Scale(0, 400));
  }

  @Test
  void ticksAreShortAndInTheRulesOwnSteps() {
    assertThat(Ticks.text(-0.0)).isEqualTo("0");
    assertThat(Ticks.text(0.25)).isEqualTo("0.25");
    assertThat(Ticks.text(1500)).isEqualTo("1500");
    assertThat(Ticks.text(-2)).isEqualTo("−2");
    assertThat(Ticks.lengthStep(1.8, LengthUnit.INCH, 9)).isEqualTo(12);
    assertThat(Ticks.lengthStep(0.6, LengthUnit.INCH, 9)).isEqualTo(3);
    assertThat(Ticks.lengthStep(0.9, LengthUnit.CM, 9)).isEqualTo(10);
    assertThat(Ticks.within(0, 30, 10)).containsExactly(0.0, 10.0, 20.0, 30.0);
  }

  @Test
  void refusesWhatCannotBeDrawn() {
    assertThatThrownBy(() -> new Scale(5, 5))
        .hasMessage("a scale must run upward between two numbers; got 5.0 to 5.0");
    assertThatThrownBy(() -> new Scale(Double.NaN, 5)).hasMessageContaining("got NaN to 5.0");
    assertThatThrownBy(() -> new Raster(1, 3, new double[3]))
        .hasMessage("a raster needs at least 2 x 2 cells; got 1 x 3");
    assertThatThrownBy(() -> new Raster(2, 2, new double[5]))
        .hasMessage("a raster of 2 x 2 cells needs 4 values; got 5");
    assertThatThrownBy(() -> new Raster(2, 2, new double[] {1, 2, 3, Double.NaN}))
        .hasMessage("a raster's values must be finite; got NaN in column 1 of row 1");
    assertThatThrownBy(() -> new Caption(" ", "")).hasMessage("a picture needs a title; got \" \"");
  }

  @Test
  void rastersDoNotChangeWithTheirArray() {
    double[] values = {1, 2, 3, 4};
    Raster raster = new Raster(2, 2, values);
    values[3] = 99;
    assertThat(raster.value(1, 1)).isEqualTo(4);
    assertThat(raster.max()).isEqualTo(4);
  }
}
