package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.survey.Reading;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * Readings in a file: separated values or an XLSX workbook, a list or grids; see {@link
 * ReadingsTable} for the layouts.
 */
final class ReadingsFile {
  /** Most bytes of a file of readings. */
  static final int MOST_BYTES = 64 << 20;

  private ReadingsFile() {}

  /**
   * What the setup says about a file of readings.
   *
   * @param unit of lengths that state none
   * @param depth of readings that state none, in {@code unit}
   * @param tank which must hold every place; empty if it is not known
   */
  record Context(LengthUnit unit, OptionalDouble depth, Optional<Tank> tank) {}

  /**
   * Reads a file.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param context what the setup says
   * @param notes where faults and assumptions go
   * @return the readings in the order of the file; not to be used if a fault was noted
   */
  static List<Reading> read(String file, byte[] bytes, Context context, Notes notes) {
    int faults = notes.count();
    List<Reading> readings = new ArrayList<>();
    if (Workbook.isOld(bytes)) {
      notes.fault(
          new Fault(
              file, 0, 0, "kind of file", "an older binary workbook", "XLSX or CSV", "save it so"));
    } else if (Workbook.isPacked(bytes)) {
      workbook(file, bytes, context, notes, readings);
    } else {
      text(file, bytes, context, notes, readings);
    }
    if (readings.isEmpty() && notes.count() == faults) {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "number of readings",
              "0",
              "1 or more",
              "take readings; a fit needs a grid of them"));
    }
    return readings;
  }

  private static void text(
      String file, byte[] bytes, Context context, Notes notes, List<Reading> readings) {
    try {
      String text = Source.text(bytes);
      ReadingPlaces places = new ReadingPlaces(file, notes, context);
      ReadingsTable table = new ReadingsTable(places, Decimals.inText(TextTable.separator(text)));
      TextTable.read(file, text, notes, table);
      table.close();
      readings.addAll(places.close());
    } catch (Unreadable e) {
      notes.fault(e.of(file));
    }
  }

  private static void workbook(
      String file, byte[] bytes, Context context, Notes notes, List<Reading> readings) {
    List<ReadingPlaces> sheets = new ArrayList<>();
    List<ReadingsTable> tables = new ArrayList<>();
    Workbook.read(
        file,
        bytes,
        notes,
        name -> {
          ReadingPlaces places = new ReadingPlaces(name, notes, context);
          ReadingsTable table = new ReadingsTable(places, Decimals.inSheet());
          sheets.add(places);
          tables.add(table);
          return table;
        });
    tables.forEach(ReadingsTable::close);
    sheets.forEach(places -> readings.addAll(places.close()));
  }
}
