package parfield.formats;

import com.code_intelligence.jazzer.junit.FuzzTest;

/**
 * Looks for bytes that no reader of light files was made for, guided by coverage. What it finds is
 * kept beside its seeds in the test resources, where LightFileCorpusTest reads them again.
 *
 * <p>{@code JAZZER_FUZZ=1 mvn -Pfuzz test -pl formats -am -Dtest=LightFileFuzzing#lm63
 * -Dsurefire.failIfNoSpecifiedTests=false}, one method at a time.
 */
class LightFileFuzzing {
  @FuzzTest(maxDuration = "10m")
  void lm63(byte[] bytes) {
    LightFileTrial.photometric(bytes);
  }

  @FuzzTest(maxDuration = "10m")
  void eulumdat(byte[] bytes) {
    LightFileTrial.photometric(bytes);
  }

  @FuzzTest(maxDuration = "10m")
  void exchangedSpectrum(byte[] bytes) {
    LightFileTrial.exchangedSpectrum(bytes);
  }
}
