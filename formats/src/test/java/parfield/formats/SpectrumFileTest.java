package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.formats.SpectralUnit.Quantity;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.Scale;

class SpectrumFileTest {
  private static final Optional<SpectralUnit> STATED = Optional.empty();

  @TempDir private Path folder;

  private SpectrumFile.Read read(String name, String text) {
    return read(name, text, STATED);
  }

  private SpectrumFile.Read read(String name, String text, Optional<SpectralUnit> asked) {
    return read(name, text.getBytes(StandardCharsets.UTF_8), asked);
  }

  private SpectrumFile.Read read(String name, byte[] bytes, Optional<SpectralUnit> asked) {
    try {
      Path file = folder.resolve(name);
      Files.write(file, bytes);
      return SpectrumFile.read(file, asked);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private List<String> faults(String name, String text) {
    try {
      read(name, text);
      return List.of();
    } catch (InvalidFile e) {
      return e.faults().stream().map(Fault::message).toList();
    }
  }

  /** The three samples that every layout below holds. */
  private static void assertThree(MeasuredSpectrum spectrum) {
    PhotonSpectrum photons = spectrum.photons();
    assertThat(photons.wavelengths().toArray()).containsExactly(440, 450, 460.5);
    assertThat(photons.photonFluxes()).containsExactly(0.25, 1, 0.5);
  }

  @Test
  void readsCommasSemicolonsTabsAndBlanks() {
    for (String text :
        List.of(
            "wavelength_nm,photons\n440,0.25\n450,1\n460.5,0.5\n",
            "Wavelength (nm); Photon flux\n440;0,25\n450;1\n460,5;0,5\n",
            "λ [nm]\tphotons\r\n440\t0.25\r\n450\t1\r\n460.5\t0.5\r\n",
            "# photons\n440 0.25\n450   1\n  460.5 0.5\n",
            "photons\n440, 0.25\n450, 1.0\n460.5, 0.5\n",
            """
            Lamp;bar 3
            Taken;2026-03-01 10:15
            Integration;100 ms

            nm;photons
            440;0.25
            450;1
            460.5;0.5
            """)) {
      SpectrumFile.Read read = read("one.csv", text);

      assertThat(read.spectra()).as(text).hasSize(1);
      assertThree(read.spectra().get(0));
      assertThat(read.spectra().get(0).name()).isEqualTo("one");
      assertThat(read.spectra().get(0).unit().scale()).isEqualTo(Scale.RELATIVE);
    }
  }

  @Test
  void readsAnInstrumentsExport() {
    SpectrumFile.Read read =
        read(
            "export.txt",
            """
            Data from probe 7
            Integration Time (sec): 1.0E-1
            Units: µmol/m²/s/nm
            >>>>>Begin<<<<<
            440.0\t0.25
            450.0\t1.0
            460.5\t0.5
            >>>>>End<<<<<
            """);

    assertThree(read.spectra().get(0));
    assertThat(read.spectra().get(0).photons().scale()).isEqualTo(Scale.IRRADIANCE);
    assertThat(read.assumptions())
        .containsExactly("export.txt: the line >>>>>End<<<<< is not read");
  }

  @Test
  void readsSeveralSpectraOfOneFileWithNamesAndARowOfUnits() {
    SpectrumFile.Read read =
        read(
            "channels.csv",
            """
            pixel;wavelength;blue;white;dark
            ;nm;mW/m2/nm;W/m2/nm;
            1;440;250;0,25;3
            2;450;1000;1;3
            3;460,5;500;0,5;3
            """);

    assertThat(read.spectra()).extracting(MeasuredSpectrum::name).containsExactly("blue", "white");
    assertThat(read.spectra().get(0).radiant().powers())
        .containsExactly(read.spectra().get(1).radiant().powers());
    assertThat(read.spectra().get(0).radiant().powers()).containsExactly(0.25, 1, 0.5);
    assertThat(read.assumptions())
        .contains(
            "channels.csv: the column pixel is not used",
            "channels.csv: the column dark is not used");
  }

  @Test
  void asksForWhatIsNotStatedAndTakesWhatIsTold() {
    String text = "nm,S\n440,0.25\n450,1\n460.5,0.5\n";
    assertThat(faults("s.csv", text))
        .containsExactly(
            "s.csv:1: what the values count: got nothing stated for S, allowed energy, photons or"
                + " counts; write it into the head, as in wavelength_nm,relative_photon_flux, or"
                + " give --unit: W/m2/nm, uW/cm2/nm, W/nm, umol/m2/s/nm, energy, photons, counts");
    MeasuredSpectrum told = read("s.csv", text, SpectralUnit.of("umol/m2/s/nm")).spectra().get(0);
    assertThree(told);
    assertThat(told.photons().ppfd()).isPresent();

    SpectrumFile.Read against =
        read("s.csv", text.replace("S", "W/nm"), SpectralUnit.of("photons"));
    assertThree(against.spectra().get(0));
    assertThat(against.assumptions())
        .containsExactly("s.csv: the unit that was asked for is taken, not the one it states");
  }

  @Test
  void readsAWorkbookSheetBySheet() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (org.dhatim.fastexcel.Workbook book =
        new org.dhatim.fastexcel.Workbook(bytes, "test", "1.0")) {
      for (String name : List.of("left", "right")) {
        Worksheet sheet = book.newWorksheet(name);
        sheet.value(0, 0, "Wavelength");
        sheet.value(0, 1, name + " (W/m2/nm)");
        double[][] rows = {{440, 0.25}, {450, 1}, {460.5, 0.5}};
        for (int i = 0; i < rows.length; i++) {
          sheet.value(i + 1, 0, rows[i][0]);
          sheet.value(i + 1, 1, rows[i][1]);
        }
      }
      book.newWorksheet("empty");
    }
    SpectrumFile.Read read = read("places.xlsx", bytes.toByteArray(), STATED);

    assertThat(read.spectra()).hasSize(2);
    assertThat(read.spectra().get(1).radiant().powers()).containsExactly(0.25, 1, 0.5);
  }

  @Test
  @DisplayName("TM-27: 300 W and 1379.2923 µmol/s, the hand-computed truths of flat_400_700.spdx")
  void readsTm27() {
    Path file = Path.of("../../shared/reference/photometric/flat_400_700.spdx");
    Assumptions.assumeTrue(
        Files.exists(file), "skipped: no folder ../shared/reference beside the project");
    MeasuredSpectrum flat = SpectrumFile.read(file, STATED).spectra().get(0);

    assertThat(flat.name()).isEqualTo("flat_400_700");
    assertThat(flat.cautions())
        .containsExactly(
            "no sample from 400 to 500 nm: a straight line is taken, which no narrow peak follows");
    assertThat(flat.radiant().scale()).isEqualTo(Scale.FLUX);
    assertThat(flat.radiant().power()).isCloseTo(300, within(1e-9));
    // Its 100 nm steps are divided before the conversion, which is exact to 3e-5.
    assertThat(flat.photons().photons()).isCloseTo(1379.2923, within(1379.2923 * 3e-5));
  }

  private static String spdx(String inner) {
    return "<?xml version=\"1.0\"?>\n<IESTM2714 version=\"1.0\">\n" + inner + "\n</IESTM2714>\n";
  }

  @Test
  void tellsWhatIsWrongWithTm27() {
    assertThat(faults("a.spdx", "<svg/>"))
        .containsExactly(
            "a.spdx:1: kind of XML: got svg, allowed IESTM2714, as in a spectrum of IES TM-27;"
                + " export the spectrum as SPDX or CSV");
    assertThat(faults("a.spdx", spdx("<SpectralDistribution>")))
        .hasSize(1)
        .first()
        .asString()
        .matches("a.spdx:\\d+: this is no well-formed XML: export the file again");
    assertThat(faults("a.spdx", spdx("<Header/>")))
        .containsExactly(
            "a.spdx: number of samples: got 0, allowed 2 or more; export it with its SpectralData");
    assertThat(
            faults(
                "a.spdx",
                spdx(
                    """
                    <SpectralQuantity>reflectance</SpectralQuantity>
                    <SpectralData wavelength="440">1,5</SpectralData>
                    <SpectralData>1</SpectralData>""")))
        .containsExactly(
            "a.spdx:4: SpectralQuantity: got reflectance, allowed flux, irradiance, relative,"
                + " intensity, radiance or exitance; export the light of a lamp, or give --unit:"
                + " W/m2/nm, uW/cm2/nm, W/nm, umol/m2/s/nm, energy, photons, counts",
            "a.spdx:4: SpectralData: got 1,5, allowed a number with a decimal point; write a"
                + " number, or delete the sample",
            "a.spdx:5: wavelength: got nothing, allowed a number with a decimal point; write a"
                + " number, or delete the sample");
  }

  @Test
  @DisplayName("XML that reaches for other files, or that grows, is refused")
  void refusesHostileXml() throws IOException {
    Files.writeString(folder.resolve("secret.txt"), "secret");
    String refused =
        "a document type or an entity: export the spectrum without it: such a file may reach for"
            + " others";
    for (String text :
        List.of(
            "<!DOCTYPE a SYSTEM \"file:secret.txt\"><IESTM2714/>",
            "<!DOCTYPE a [<!ENTITY s SYSTEM \"file:secret.txt\">]><IESTM2714>&s;</IESTM2714>",
            "<!DOCTYPE a [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;\">]><IESTM2714>&b;"
                + "</IESTM2714>")) {
      assertThat(faults("a.spdx", text)).as(text).containsExactly("a.spdx:1: " + refused);
    }
    assertThat(faults("a.spdx", spdx("<a>".repeat(100_000))))
        .containsExactly("a.spdx:3: nesting: got more, allowed 20 levels; export it as TM-27");
  }

  @Test
  void boundsRowsAndColumns() {
    StringBuilder rows = new StringBuilder("nm,photons\n");
    for (int i = 0; i < 20_002; i++) {
      rows.append(300 + i * 0.1).append(",1\n");
    }
    assertThat(faults("long.csv", rows.toString()))
        .containsExactly(
            "long.csv:20002: number of rows: got more, allowed 20000; split the file, or keep the"
                + " columns that you need");
    assertThat(faults("wide.csv", "nm" + ",photons".repeat(200) + "\n"))
        .containsExactly(
            "wide.csv:1: number of columns: got more, allowed 120; split the file, or keep the"
                + " columns that you need");
  }

  @Test
  void refusesBytesThatAreNoText() {
    byte[] bytes = new byte[4096];
    new SplittableRandom(7).nextBytes(bytes);
    bytes[0] = (byte) 0xC3;
    bytes[1] = 0x28;
    assertThatThrownBy(() -> read("photo.csv", bytes, STATED))
        .hasMessage(
            "photo.csv:1: the file cannot be read: got the byte 0xC3, allowed text in UTF-8; save"
                + " it as UTF-8");
  }

  /** A Gaussian peak at 450 nm, 20 nm wide, on a 1 nm grid from 380 to 780 nm. */
  private static double peak(int nm) {
    return Math.exp(-0.5 * Math.pow((nm - 450) / 8.5, 2));
  }

  private List<String> cautions(IntToDoubleFunction value, int step) {
    StringBuilder text = new StringBuilder("nm,photons\n");
    for (int nm = 380; nm <= 780; nm += step) {
      text.append(String.format(Locale.ROOT, "%d,%.6f\n", nm, value.applyAsDouble(nm)));
    }
    return read("made.csv", text.toString()).spectra().get(0).cautions();
  }

  @Test
  void hasNothingToSayOfACleanSpectrum() {
    assertThat(cautions(SpectrumFileTest::peak, 1)).isEmpty();
    assertThat(cautions(nm -> nm / 780.0, 1)).isEmpty();
    assertThat(cautions(nm -> Math.rint(100 * peak(nm)) / 100, 1)).isEmpty();
  }

  @Test
  void tellsADarkSignalLeftIn() {
    // 2 % of the peak over 400 nm is 8 of the 8 + 21.3 of the whole (21.3 = 8.5 √(2π)).
    assertThat(cautions(nm -> 0.02 + peak(nm), 1))
        .containsExactly(
            "it lies at 2 % of its peak at both ends: a dark signal may have been left in, 27.3 %"
                + " of the whole; take a spectrum with the light off and subtract it");
  }

  @Test
  void tellsNoiseAndKeepsItsNegativeValues() {
    SplittableRandom random = new SplittableRandom(20260301);
    StringBuilder text = new StringBuilder("nm,photons\n");
    for (int nm = 380; nm <= 780; nm++) {
      double noise = 0.02 * Math.sqrt(3) * (2 * random.nextDouble() - 1);
      text.append(String.format(Locale.ROOT, "%d,%.6f\n", nm, peak(nm) + noise));
    }
    MeasuredSpectrum noisy = read("noisy.csv", text.toString()).spectra().get(0);

    assertThat(noisy.cautions())
        .singleElement()
        .asString()
        .matches("its noise is about [12]\\.\\d % of its peak: average more spectra, .*");
    assertThat(java.util.stream.DoubleStream.of(noisy.photons().photonFluxes()).min().orElseThrow())
        .isNegative();
  }

  @Test
  void tellsAStepTooWideForThePeak() {
    assertThat(cautions(SpectrumFileTest::peak, 10))
        .containsExactly(
            "its highest peak, at 450 nm, is 20 nm wide and sampled every 10 nm: its height and"
                + " width are rough; export smaller steps");
  }

  @Test
  void tellsABandpassTooWideForThePeak() {
    StringBuilder text = new StringBuilder("<SpectralQuantity>flux</SpectralQuantity>");
    text.append("<BandwidthFWHM>12</BandwidthFWHM>\n");
    for (int nm = 380; nm <= 780; nm++) {
      text.append(
          String.format(
              Locale.ROOT, "<SpectralData wavelength=\"%d\">%.6f</SpectralData>%n", nm, peak(nm)));
    }
    MeasuredSpectrum broad = read("broad.spdx", spdx(text.toString())).spectra().get(0);

    assertThat(broad.unit().quantity()).isEqualTo(Quantity.ENERGY);
    assertThat(broad.cautions())
        .containsExactly(
            "the spectrometer's bandpass of 12 nm widens its highest peak, at 450 nm, which shows"
                + " 20 nm: the true one is narrower and higher");
  }

  @Test
  void readsTheReferencesOfTheTrade() {
    Path folder = Path.of("../../shared/reference");
    Assumptions.assumeTrue(
        Files.exists(folder), "skipped: no folder ../shared/reference beside the project");
    SpectrumFile.Read lamps = SpectrumFile.read(folder.resolve("illuminants_LED_5nm.csv"), STATED);
    assertThat(lamps.spectra()).hasSize(9);
    assertThat(lamps.spectra().get(4).name()).isEqualTo("LED-B5");
    assertThat(lamps.spectra().get(4).unit()).isEqualTo(SpectralUnit.relative(Quantity.ENERGY));
    SpectrumFile.Read blue =
        SpectrumFile.read(folder.resolve("synthetic_SYN4_BLUE_1nm.csv"), STATED);
    assertThat(blue.spectra().get(0).unit()).isEqualTo(SpectralUnit.relative(Quantity.ENERGY));
    assertThat(blue.spectra().get(0).cautions()).isEmpty();
  }
}
