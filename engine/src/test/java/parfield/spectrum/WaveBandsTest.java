package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class WaveBandsTest {
  @Test
  void dividesWhatIsCommonlyDivided() {
    assertThat(WaveBands.COMMON.bands().stream().map(WaveBand::name))
        .containsExactly(
            "380–400 nm", "400–430 nm", "430–480 nm", "480–510 nm", "510–600 nm", "600–700 nm");
    assertThat(WaveBands.COMMON.fromNm()).isEqualTo(380);
    assertThat(WaveBands.COMMON.toNm()).isEqualTo(700);
  }

  /** Flat photons: shares are widths. */
  @Test
  void sharesOfFlatPhotonsAreWidths() {
    PhotonSpectrum flat = new PhotonSpectrum(new double[] {300, 900}, new double[] {1, 1});
    List<Double> shares = WaveBands.COMMON.shares(flat).toOptional().orElseThrow();

    assertThat(shares.get(0)).isCloseTo(20 / 320.0, within(1e-12));
    assertThat(shares.get(4)).isCloseTo(90 / 320.0, within(1e-12));
    assertThat(shares.stream().mapToDouble(x -> x).sum()).isCloseTo(1, within(1e-12));
    assertThat(new WaveBand("far red", 700, 750.5).photons(flat)).isEqualTo(50.5);
    assertThat(WaveBand.of(700, 750.5).name()).isEqualTo("700–750.5 nm");
  }

  @Test
  void hasNoSharesOfNoLight() {
    PhotonSpectrum infrared = new PhotonSpectrum(new double[] {750, 800}, new double[] {1, 1});
    assertThat(WaveBands.COMMON.shares(infrared))
        .isEqualTo(Finding.notDefined("no photons within 380 to 700 nm"));
  }

  @Test
  void refusesBandsThatMakeNoDivision() {
    assertThatThrownBy(() -> new WaveBands(List.of()))
        .hasMessage("a division into wavebands needs one band or more; got 0");
    assertThatThrownBy(() -> WaveBands.edges(400, 500, 450))
        .hasMessage("waveband 500–450 nm must run upward from above 0 nm; got 500.0 to 450.0 nm");
    assertThatThrownBy(() -> new WaveBands(List.of(WaveBand.of(400, 500), WaveBand.of(490, 600))))
        .hasMessage(
            "wavebands must ascend without overlap; 490–600 nm begins at 490.0 nm, before 400–500"
                + " nm ends at 500.0 nm");
  }
}
