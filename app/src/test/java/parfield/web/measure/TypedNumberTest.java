package parfield.web.measure;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A PPFD as people type it. */
class TypedNumberTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "71.5|71.5",
        "71,5|71.5",
        " 212 |212",
        "71,5 µmol|71.5",
        "71,5 μmol m⁻² s⁻¹|71.5",
        "71.5umol/m2/s|71.5",
        "71.5 µmol/m²/s|71.5",
        "93 PPFD|93",
        "+12|12",
        ",5|0.5",
        "7.|7",
        "-0|0",
        "1234|1234",
        "0,123|0.123",
        "1.234|1.234",
      })
  void numbers(String typed, double value) {
    assertThat(TypedNumber.read(typed).problem()).isEmpty();
    assertThat(TypedNumber.read(typed).value()).hasValue(value);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|type the number that the meter shows",
        "seven|seven is no number: type one as in 71.5 or 71,5",
        "71.5.2|71.5.2 is no number: type one as in 71.5 or 71,5",
        "7 1|7 1 is no number: type one as in 71.5 or 71,5",
        "71 lux|71 lux is no number: type one as in 71.5 or 71,5",
        "1e3|1e3 is no number: type one as in 71.5 or 71,5",
        "NaN|NaN is no number: type one as in 71.5 or 71,5",
        "<b>7</b>|<b>7</b> is no number: type one as in 71.5 or 71,5",
        "1,234|1,234 may mean 1234 or 1.234: type the one you mean",
        "-3|-3 is below 0, which no light is: if the meter shows it in the dark, type 0",
        "100001|100001 is above 100000, the most that is taken: look again",
      })
  void problems(String typed, String problem) {
    assertThat(TypedNumber.read(typed).value()).isEmpty();
    assertThat(TypedNumber.read(typed).problem()).hasValue(problem);
  }

  @Test
  void longTextIsCut() {
    assertThat(TypedNumber.read("9".repeat(500)).problem().orElseThrow())
        .isEqualTo("9".repeat(40) + "… is no number: type one as in 71.5 or 71,5");
  }

  @Test
  void oddButPossibleIsTakenWithARemark() {
    assertThat(TypedNumber.read("2400").remark())
        .hasValue("2400 is more than the sun at noon gives (about 2000)");
    assertThat(TypedNumber.read("0").remark())
        .hasValue("0: is the light on and the sensor's cap off?");
    assertThat(TypedNumber.read("240").remark()).isEmpty();
  }
}
