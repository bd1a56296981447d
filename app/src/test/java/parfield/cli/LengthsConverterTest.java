package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.units.LengthUnit;
import picocli.CommandLine.TypeConversionException;

class LengthsConverterTest {
  private static List<Double> cm(String text) {
    return new LengthsConverter().convert(text).metres(LengthUnit.CM);
  }

  @Test
  void listsRangesAndBothMixed() {
    assertThat(cm("15")).containsExactly(0.15);
    assertThat(cm("15,20.5, 30")).containsExactly(0.15, 0.205, 0.30);
    assertThat(cm("15:40:5")).containsExactly(0.15, 0.20, 0.25, 0.30, 0.35, 0.40);
    assertThat(cm("10,20:22:0.5")).containsExactly(0.10, 0.20, 0.205, 0.21, 0.215, 0.22);
  }

  @Test
  void aRangeStopsBeforeItsEndWhereTheStepDoesNotReachIt() {
    assertThat(cm("10:24:5")).containsExactly(0.10, 0.15, 0.20);
    assertThat(cm("10:10:5")).containsExactly(0.10);
  }

  @Test
  void lengthsAreInTheUnitThatIsAskedFor() {
    assertThat(new LengthsConverter().convert("6:8:1").metres(LengthUnit.INCH))
        .containsExactly(0.1524, 0.1778, 0.2032);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "a", "1,,2", "-5", "NaN", "1e3", "Infinity", "1:2", "1:2:3:4", "1.2.3"})
  void whatIsNoLengthIsRefused(String text) {
    assertThatThrownBy(() -> cm(text))
        .isInstanceOf(TypeConversionException.class)
        .hasMessage("lengths are numbers of 0 or more, as in 15,20,30 or 15:40:5; got " + text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"20:10:5", "10:20:0", "0:100:0.1"})
  void rangesRunUpwardInAReasonableNumberOfSteps(String text) {
    assertThatThrownBy(() -> cm(text))
        .isInstanceOf(TypeConversionException.class)
        .hasMessage("a range FROM:TO:STEP runs upward in at most 200 steps; got " + text);
  }
}
