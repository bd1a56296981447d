package parfield.workspace;

import java.nio.charset.StandardCharsets;
import java.util.List;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/** Readings as separated values, as a setup's file of readings has them. */
final class ReadingsCsv {
  private ReadingsCsv() {}

  /**
   * A row of names, then a reading a row.
   *
   * @param readings none of them withdrawn
   * @param unit of lengths
   * @param depth whether depths are written
   */
  static byte[] of(List<ReadingRevision> readings, LengthUnit unit, boolean depth) {
    StringBuilder text = new StringBuilder();
    text.append("x_").append(unit.symbol()).append(",y_").append(unit.symbol());
    text.append(depth ? ",depth_" + unit.symbol() : "").append(",ppfd\n");
    for (ReadingRevision reading : readings) {
      Place place = reading.entry().place();
      text.append(Decimal.length(place.x(), unit)).append(',');
      text.append(Decimal.length(place.y(), unit)).append(',');
      text.append(depth ? Decimal.length(place.depth(), unit) + "," : "");
      text.append(Decimal.shortest(reading.entry().value().orElseThrow())).append('\n');
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
