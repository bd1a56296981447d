package parfield.formats;

import java.io.StringReader;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import parfield.formats.SpectralUnit.Quantity;

/**
 * A spectrum in the XML of IES TM-27 (SPDX): one spectral distribution, its quantity, its bandwidth
 * and a sample for each wavelength.
 *
 * <p>Document types and entities are refused, so that a file reaches nothing but itself.
 */
final class SpdxFile {
  private static final int DEEPEST = 20;

  private final String file;
  private final Notes notes;
  private final Optional<SpectralUnit> asked;
  private String description = "";
  private String quantity = "";
  private OptionalDouble bandwidth = OptionalDouble.empty();
  private boolean corrected;
  private int distributions;
  private SampleColumn samples;
  private int count;

  private SpdxFile(String file, Notes notes, Optional<SpectralUnit> asked) {
    this.file = file;
    this.notes = notes;
    this.asked = asked;
  }

  /** Whether a text is XML. */
  static boolean isXml(String text) {
    return text.stripLeading().startsWith("<");
  }

  /**
   * Reads a document.
   *
   * @param asked what its numbers count, told beside the file
   * @return empty if a fault was noted
   */
  static Optional<MeasuredSpectrum> read(
      String file, String text, Optional<SpectralUnit> asked, Notes notes) {
    SpdxFile reader = new SpdxFile(file, notes, asked);
    int faults = notes.count();
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    try {
      XMLStreamReader xml = factory.createXMLStreamReader(new StringReader(text.stripLeading()));
      reader.document(xml);
      xml.close();
    } catch (XMLStreamException e) {
      int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNumber());
      reader.fault(line, "this is no well-formed XML", "", "", "export the file again");
    }
    if (notes.count() > faults) {
      return Optional.empty();
    }
    return reader.close();
  }

  private void fault(int line, String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, line, 0, what, value, limit, cure));
  }

  private void document(XMLStreamReader xml) throws XMLStreamException {
    int depth = 0;
    while (xml.hasNext()) {
      int event = xml.next();
      int line = xml.getLocation().getLineNumber();
      if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
        throw notes.fatal(
            new Fault(
                file,
                line,
                0,
                "a document type or an entity",
                "",
                "",
                "export the spectrum without it: such a file may reach for others"));
      }
      if (event == XMLStreamConstants.START_ELEMENT) {
        depth++;
        if (depth > DEEPEST) {
          throw notes.fatal(
              new Fault(
                  file, line, 0, "nesting", "more", DEEPEST + " levels", "export it as TM-27"));
        }
        if (depth == 1 && !xml.getLocalName().toUpperCase(Locale.ROOT).startsWith("IESTM27")) {
          throw notes.fatal(
              new Fault(
                  file,
                  line,
                  0,
                  "kind of XML",
                  Notes.shown(xml.getLocalName()),
                  "IESTM2714, as in a spectrum of IES TM-27",
                  "export the spectrum as SPDX or CSV"));
        }
        if (element(xml, line)) {
          depth--;
        }
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        depth--;
      }
    }
  }

  /** Takes an element that is known; returns whether it was read to its end. */
  private boolean element(XMLStreamReader xml, int line) throws XMLStreamException {
    switch (xml.getLocalName()) {
      case "Description" -> description = xml.getElementText().strip();
      case "SpectralQuantity" -> quantity = xml.getElementText().strip();
      case "BandwidthFWHM" -> bandwidth = width(xml.getElementText());
      case "BandwidthCorrected" -> corrected = isTrue(xml.getElementText().strip());
      case "SpectralDistribution" -> {
        distributions++;
        if (distributions > 1) {
          fault(line, "number of spectral distributions", "2", "1", "split the file");
        }
        return false;
      }
      case "SpectralData" -> sample(line, xml.getAttributeValue(null, "wavelength"), xml);
      default -> {
        return false;
      }
    }
    return true;
  }

  /** A boolean of XML Schema. */
  private static boolean isTrue(String text) {
    return text.equals("true") || text.equals("1");
  }

  private static OptionalDouble width(String text) {
    double width = NumberText.parse(text.strip());
    return width > 0 ? OptionalDouble.of(width) : OptionalDouble.empty();
  }

  private void sample(int line, String wavelength, XMLStreamReader xml) throws XMLStreamException {
    count++;
    if (count > SpectrumTable.MOST_ROWS) {
      throw notes.fatal(
          new Fault(
              file,
              line,
              0,
              "number of samples",
              "more",
              String.valueOf(SpectrumTable.MOST_ROWS),
              "export larger steps"));
    }
    if (samples == null) {
      samples = new SampleColumn(file, notes, 0, "", unit(line), true, true);
    }
    String written = xml.getElementText().strip();
    double nm = number(line, "wavelength", wavelength == null ? "" : wavelength.strip());
    double value = number(line, "SpectralData", written);
    if (!Double.isNaN(nm) && !Double.isNaN(value)) {
      samples.add(line, nm, value);
    }
  }

  private double number(int line, String what, String text) {
    double value = NumberText.parse(text);
    if (Double.isNaN(value)) {
      fault(
          line,
          what,
          text.isEmpty() ? "nothing" : Notes.shown(text),
          "a number with a decimal point",
          "write a number, or delete the sample");
    }
    return value;
  }

  /** What the samples count: TM-27 states watts, per nm. */
  private SpectralUnit unit(int line) {
    if (asked.isPresent()) {
      return asked.get();
    }
    SpectralUnit relative = SpectralUnit.relative(Quantity.ENERGY);
    return switch (quantity.toLowerCase(Locale.ROOT)) {
      case "flux" -> SpectralUnit.of("W/nm").orElseThrow();
      case "irradiance" -> SpectralUnit.of("W/m2/nm").orElseThrow();
      case "relative", "intensity", "radiance", "exitance" -> relative;
      default -> {
        fault(
            line,
            "SpectralQuantity",
            quantity.isEmpty() ? "nothing" : Notes.shown(quantity),
            "flux, irradiance, relative, intensity, radiance or exitance",
            "export the light of a lamp, or give --unit: " + SpectralUnit.EXAMPLES);
        yield relative;
      }
    };
  }

  private Optional<MeasuredSpectrum> close() {
    if (samples == null) {
      fault(0, "number of samples", "0", "2 or more", "export it with its SpectralData");
      return Optional.empty();
    }
    return samples
        .close(corrected ? OptionalDouble.empty() : bandwidth)
        .map(spectrum -> spectrum.named(description));
  }
}
