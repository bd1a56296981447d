package parfield.cli;

import parfield.spectrum.WaveBands;
import picocli.CommandLine.Option;

/** The wavebands that shares are taken of. */
final class BandsOption {
  @Option(
      names = "--bands",
      paramLabel = "NM,…",
      converter = WaveBandsConverter.class,
      description = "Ends of the wavebands; default: 380,400,430,480,510,600,700.")
  private WaveBands bands = WaveBands.COMMON;

  /** The bands asked for, or the common ones. */
  WaveBands bands() {
    return bands;
  }
}
