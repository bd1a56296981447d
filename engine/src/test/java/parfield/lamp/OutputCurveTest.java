package parfield.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.SeededLaw;

class OutputCurveTest {
  private static OutputCurve random(SplittableRandom random) {
    int n = 2 + random.nextInt(8);
    double[] dials = new double[n];
    double[] outputs = new double[n];
    for (int i = 1; i < n; i++) {
      dials[i] = dials[i - 1] + 0.1 + random.nextDouble();
      // Now and then a stretch on which nothing happens.
      outputs[i] = outputs[i - 1] + (random.nextInt(4) == 0 && i < n - 1 ? 0 : random.nextDouble());
    }
    double fullDial = dials[n - 1];
    double fullOutput = outputs[n - 1];
    for (int i = 0; i < n; i++) {
      dials[i] = i == n - 1 ? 100 : dials[i] * 100 / fullDial;
      outputs[i] = outputs[i] / fullOutput;
    }
    return new OutputCurve(dials, outputs);
  }

  @Test
  void proportionalIsProportional() {
    for (double dial = 0; dial <= 100; dial += 2.5) {
      assertThat(OutputCurve.proportional().outputAt(dial)).isCloseTo(dial / 100, within(1e-15));
    }
  }

  /**
   * Fritsch and Carlson 1980, by hand. Points (0, 0), (50, .2), (100, 1): secants .004, .016;
   * slopes .004, .010, .016, none shrunk, since 1² + 2.5² is below 9. At 25: .1 + 50/4 · (.004 −
   * .010)/2 = .0625; at 75: .6 + 50/4 · (.010 − .016)/2 = .5625.
   */
  @ParameterizedTest
  @CsvSource({"25, .0625", "75, .5625"})
  void followsFritschAndCarlson(double dial, double expected) {
    OutputCurve curve = new OutputCurve(new double[] {0, 50, 100}, new double[] {0, .2, 1});
    assertThat(curve.outputAt(dial)).isCloseTo(expected, within(1e-12));
  }

  /**
   * Fritsch and Carlson 1980, eq. for α² + β² above 9, by hand. Points (0, 0), (50, .05), (100, 1):
   * secants .001, .019; in the first piece α = 1, β = 10, so both slopes shrink by 3/√101:
   * .00029851 and .0029851. At 25: .025 + 50/4 · (.00029851 − .0029851)/2 = .0082087.
   */
  @Test
  void shrinksSlopesThatWouldOvershoot() {
    OutputCurve curve = new OutputCurve(new double[] {0, 50, 100}, new double[] {0, .05, 1});
    assertThat(curve.outputAt(25)).isCloseTo(.0082087, within(1e-7));
  }

  @Test
  void passesThroughEveryMeasuredPointAndNeverFalls() {
    SeededLaw.holds(
        300,
        random -> {
          OutputCurve curve = random(random);
          for (int i = 0; i < curve.size(); i++) {
            assertThat(curve.outputAt(curve.dial(i))).isCloseTo(curve.output(i), within(1e-12));
          }
          double last = 0;
          for (double dial = 0; dial <= 100; dial += 0.25) {
            double output = curve.outputAt(dial);
            assertThat(output).isBetween(-1e-12, 1 + 1e-12);
            assertThat(output).isGreaterThanOrEqualTo(last - 1e-12);
            last = output;
          }
        });
  }

  @Test
  void dialForUndoesOutputAt() {
    SeededLaw.holds(
        300,
        random -> {
          OutputCurve curve = random(random);
          double output = random.nextDouble();
          double dial = curve.dialFor(output);
          assertThat(curve.outputAt(dial)).isCloseTo(output, within(1e-9));
          // The lowest such dial: just below it there is less.
          if (dial > 1e-6) {
            assertThat(curve.outputAt(dial - 1e-6)).isLessThanOrEqualTo(output + 1e-12);
          }
        });
  }

  @Test
  void dialForFindsTheLowestDialOfAStretch() {
    OutputCurve curve = new OutputCurve(new double[] {0, 20, 60, 100}, new double[] {0, .5, .5, 1});
    assertThat(curve.dialFor(.5)).isCloseTo(20, within(1e-6));
    assertThat(curve.dialFor(0)).isCloseTo(0, within(1e-12));
    assertThat(curve.dialFor(1)).isEqualTo(100);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, 100.1, Double.NaN})
  void refusesADialOutsideItsRange(double dial) {
    assertThatThrownBy(() -> OutputCurve.proportional().outputAt(dial))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a dial runs from 0 to 100 %; got " + dial);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.1, 1.1, Double.NaN})
  void refusesAnOutputOutsideItsRange(double output) {
    assertThatThrownBy(() -> OutputCurve.proportional().dialFor(output))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an output fraction runs from 0 to 1; got " + output);
  }

  @Test
  void refusesPointsThatAreNoCurve() {
    refuses(
        new double[] {0, 100},
        new double[] {0},
        "an output curve needs two or more pairs of dial and output; got 2 and 1");
    refuses(
        new double[] {100},
        new double[] {1},
        "an output curve needs two or more pairs of dial and output; got 1 and 1");
    refuses(
        new double[] {5, 100},
        new double[] {0, 1},
        "an output curve must run from dial 0 to dial 100; got 5.0 to 100.0");
    refuses(
        new double[] {0, 90},
        new double[] {0, 1},
        "an output curve must run from dial 0 to dial 100; got 0.0 to 90.0");
    refuses(
        new double[] {0, 100},
        new double[] {0, .9},
        "an output curve must reach 1 at dial 100 (divide by the output there); got 0.9");
    refuses(
        new double[] {0, 100},
        new double[] {-.1, 1},
        "an output must be 0 or more; got -0.1 at dial 0");
    refuses(
        new double[] {0, 40, 70, 100},
        new double[] {0, .5, .4, 1},
        "an output curve must never fall; dial 70.0 gives 0.4 after dial 40.0 gave 0.5");
    refuses(
        new double[] {0, 70, 70, 100},
        new double[] {0, .5, .6, 1},
        "an output curve must never fall; dial 70.0 gives 0.6 after dial 70.0 gave 0.5");
    refuses(
        new double[] {0, 40, 100},
        new double[] {0, Double.NaN, 1},
        "an output curve must never fall; dial 40.0 gives NaN after dial 0.0 gave 0.0");
    refuses(
        new double[] {0, 40, 100},
        new double[] {0, .5, Double.NaN},
        "an output curve must never fall; dial 100.0 gives NaN after dial 40.0 gave 0.5");
  }

  private static void refuses(double[] dials, double[] outputs, String message) {
    assertThatThrownBy(() -> new OutputCurve(dials, outputs))
        .as(Arrays.toString(outputs))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }
}
