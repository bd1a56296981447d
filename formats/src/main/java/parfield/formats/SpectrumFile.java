package parfield.formats;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.spectrum.PhotonSpectrum;

/**
 * Spectra in a file: separated values or an XLSX workbook in any sane layout (see {@link
 * SpectrumTable}), or the XML of IES TM-27.
 */
public final class SpectrumFile {
  /** Most bytes of a file of spectra. */
  public static final int MOST_BYTES = 4 << 20;

  private SpectrumFile() {}

  /**
   * The spectra of a file.
   *
   * @param spectra at least one, in the order of the file; each has a name
   * @param assumptions what was taken without being stated, one plain sentence each
   */
  public record Read(List<MeasuredSpectrum> spectra, List<String> assumptions) {
    public Read {
      spectra = List.copyOf(spectra);
      assumptions = List.copyOf(assumptions);
    }
  }

  /**
   * Reads a file.
   *
   * @param path the file
   * @param asked what its numbers count, where the file does not say
   * @throws InvalidFile with every fault of the file
   */
  public static Read read(Path path, Optional<SpectralUnit> asked) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    Notes notes = new Notes();
    try {
      return read(file, Source.bytes(path, MOST_BYTES), asked);
    } catch (Unreadable e) {
      throw notes.fatal(e.of(file));
    }
  }

  /**
   * Reads a file that is held in memory already.
   *
   * @param file its name, which tells spectra and faults apart and reaches no file system
   * @param bytes what it holds, at most {@link #MOST_BYTES}
   * @param asked what its numbers count, where the file does not say
   * @throws InvalidFile with every fault of the file
   */
  public static Read read(String file, byte[] bytes, Optional<SpectralUnit> asked) {
    Notes notes = new Notes();
    try {
      List<MeasuredSpectrum> spectra = read(file, Source.checked(bytes, MOST_BYTES), asked, notes);
      notes.throwIfFaulty();
      return new Read(named(spectra, file), notes.assumptions());
    } catch (Unreadable e) {
      throw notes.fatal(e.of(file));
    }
  }

  /** A lone spectrum, or one without a name, goes by the name of its file. */
  private static List<MeasuredSpectrum> named(List<MeasuredSpectrum> spectra, String file) {
    int dot = file.lastIndexOf('.');
    String stem = dot > 0 ? file.substring(0, dot) : file;
    List<MeasuredSpectrum> named = new ArrayList<>();
    for (int i = 0; i < spectra.size(); i++) {
      MeasuredSpectrum spectrum = spectra.get(i);
      if (spectra.size() == 1) {
        named.add(spectrum.named(stem));
      } else {
        named.add(spectrum.name().isEmpty() ? spectrum.named(stem + " " + (i + 1)) : spectrum);
      }
    }
    return named;
  }

  /**
   * Reads spectra.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param asked what its numbers count, told beside the file
   * @param notes where faults and assumptions go
   * @return at least one spectrum; none if a fault was noted
   */
  static List<MeasuredSpectrum> read(
      String file, byte[] bytes, Optional<SpectralUnit> asked, Notes notes) {
    if (Workbook.isOld(bytes)) {
      notes.fault(
          new Fault(
              file, 0, 0, "kind of file", "an older binary workbook", "XLSX or CSV", "save it so"));
      return List.of();
    }
    if (Workbook.isPacked(bytes)) {
      return workbook(file, bytes, asked, notes);
    }
    try {
      String text = Source.text(bytes);
      if (SpdxFile.isXml(text)) {
        return SpdxFile.read(file, text, asked, notes).map(List::of).orElse(List.of());
      }
      return text(file, text, asked, notes);
    } catch (Unreadable e) {
      notes.fault(e.of(file));
      return List.of();
    }
  }

  private static List<MeasuredSpectrum> text(
      String file, String text, Optional<SpectralUnit> asked, Notes notes) {
    int faults = notes.count();
    SampleText samples = SampleText.of(text);
    SpectrumTable table =
        new SpectrumTable(
            file, notes, Decimals.inText(samples.separator()), samples.separator() == ',');
    TextTable.read(file, samples.text(), samples.separator(), notes, table);
    return notes.count() > faults ? List.of() : table.close(asked);
  }

  private static List<MeasuredSpectrum> workbook(
      String file, byte[] bytes, Optional<SpectralUnit> asked, Notes notes) {
    int faults = notes.count();
    List<SpectrumTable> sheets = new ArrayList<>();
    Workbook.read(
        file,
        bytes,
        notes,
        name -> {
          SpectrumTable sheet = new SpectrumTable(name, notes, Decimals.inSheet(), false);
          sheets.add(sheet);
          return sheet;
        });
    if (notes.count() > faults) {
      return List.of();
    }
    List<SpectrumTable> filled = sheets.stream().filter(sheet -> !sheet.isEmpty()).toList();
    List<MeasuredSpectrum> spectra = new ArrayList<>();
    (filled.isEmpty() ? sheets : filled).forEach(sheet -> spectra.addAll(sheet.close(asked)));
    return notes.count() > faults ? List.of() : spectra;
  }

  /**
   * The spectrum of a channel: the only one of a file, or the one of the channel's name.
   *
   * @param spectra those of the file, at least one
   * @param channel its name
   * @return empty if a fault was noted
   */
  static Optional<PhotonSpectrum> ofChannel(
      String file, List<MeasuredSpectrum> spectra, String channel, Notes notes) {
    Optional<MeasuredSpectrum> found =
        spectra.size() == 1
            ? Optional.of(spectra.get(0))
            : spectra.stream().filter(one -> one.name().equalsIgnoreCase(channel)).findFirst();
    if (found.isEmpty()) {
      List<String> names = spectra.stream().map(MeasuredSpectrum::name).toList();
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "spectrum of channel " + Notes.shown(channel),
              "columns " + Notes.shown(names),
              "one spectrum, or a column named " + Notes.shown(channel),
              Nearest.cure(channel, names, "name the column after the channel")));
      return Optional.empty();
    }
    return photons(file, found.get(), " of channel " + Notes.shown(channel), notes);
  }

  /**
   * The only spectrum of a file.
   *
   * @param spectra those of the file, at least one
   * @return empty if a fault was noted
   */
  static Optional<PhotonSpectrum> only(String file, List<MeasuredSpectrum> spectra, Notes notes) {
    if (spectra.size() > 1) {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "number of spectra",
              String.valueOf(spectra.size()),
              "1: it stands for one light",
              "keep the column that you mean"));
      return Optional.empty();
    }
    return photons(file, spectra.get(0), "", notes);
  }

  private static Optional<PhotonSpectrum> photons(
      String file, MeasuredSpectrum spectrum, String whose, Notes notes) {
    if (spectrum.unit().quantity() == SpectralUnit.Quantity.ENERGY) {
      notes.assume(file + ": energy is converted to photons, in proportion to wavelength");
    } else if (spectrum.unit().quantity() == SpectralUnit.Quantity.COUNTS) {
      notes.assume(file + ": counts are taken as photons, the spectrometer's own response in them");
    }
    if (spectrum.fromNm() > PhotonSpectrum.PAR_FROM_NM
        || spectrum.toNm() < PhotonSpectrum.PAR_TO_NM) {
      notes.assume(
          String.format(
              Locale.ROOT,
              "%s runs from %s to %s nm: no light is taken beyond, within 400 to 700 nm",
              file,
              NumberText.shown(spectrum.fromNm()),
              NumberText.shown(spectrum.toNm())));
    }
    PhotonSpectrum photons = spectrum.photons();
    if (!(photons.parPhotons() > 0)) {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "photons" + whose + " within 400 to 700 nm",
              "none",
              "some: PPFD counts them alone",
              "check that it is the spectrum you mean"));
      return Optional.empty();
    }
    return Optional.of(photons.relative());
  }
}
