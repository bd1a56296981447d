package parfield.formats;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Locale;

/**
 * The triangles in an STL file, binary or text. Normals are passed over: the corners tell them.
 *
 * <p>Binary: 80 bytes of anything, the number of triangles as 4 bytes, then 50 bytes each (twelve
 * 4-byte numbers, low byte first: normal and three corners; two bytes of anything). A file that is
 * exactly as long as its number of triangles asks for is binary, whatever it begins with.
 */
final class StlFile {
  private static final int HEAD = 84;
  private static final int TRIANGLE = 50;

  private final String file;
  private final Notes notes;
  private final Triangles.Builder found = new Triangles.Builder();

  private StlFile(String file, Notes notes) {
    this.file = file;
    this.notes = notes;
  }

  /** The triangles; some of them where a fault was noted. */
  static Triangles read(String file, byte[] bytes, Notes notes) {
    StlFile reader = new StlFile(file, notes);
    boolean text = startsAsText(bytes);
    long count = bytes.length < HEAD ? 0 : count(bytes);
    if (bytes.length >= HEAD && (!text || bytes.length == HEAD + TRIANGLE * count)) {
      reader.binary(bytes, count);
    } else if (text) {
      reader.text(new AsciiLines(bytes));
    } else {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "the file is no STL",
              bytes.length + " bytes",
              "text that begins with solid, or 84 bytes and more",
              "export the mesh once more"));
    }
    return reader.found.build();
  }

  private static boolean startsAsText(byte[] bytes) {
    AsciiLines lines = new AsciiLines(bytes);
    return lines.next() && lines.is(0, "solid");
  }

  private static long count(byte[] bytes) {
    return Integer.toUnsignedLong(
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt(HEAD - 4));
  }

  private void binary(byte[] bytes, long count) {
    if (count > Triangles.MOST) {
      notes.fault(Triangles.tooMany(file, 0));
      return;
    }
    long needed = HEAD + TRIANGLE * count;
    if (bytes.length < needed) {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "length of the file",
              String.format(
                  Locale.ROOT, "%d bytes where it states %d triangles", bytes.length, count),
              String.format(Locale.ROOT, "%d bytes", needed),
              "it was cut short: copy or export it once more"));
      return;
    }
    if (bytes.length > needed) {
      notes.assume(
          String.format(
              Locale.ROOT,
              "%s: %d bytes after its last triangle are passed over",
              file,
              bytes.length - needed));
    }
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    for (int t = 0; t < count && !notes.full(file); t++) {
      for (int corner = 0; corner < 3; corner++) {
        int at = HEAD + TRIANGLE * t + 12 + 12 * corner;
        float x = in.getFloat(at);
        float y = in.getFloat(at + 4);
        float z = in.getFloat(at + 8);
        if (!Float.isFinite(x) || !Float.isFinite(y) || !Float.isFinite(z)) {
          notes.fault(
              new Fault(
                  file,
                  0,
                  0,
                  String.format(Locale.ROOT, "triangle %d, corner %d", t + 1, corner + 1),
                  x + ", " + y + ", " + z,
                  "finite numbers",
                  "mend the mesh in the program that made it, and export it once more"));
        }
        found.vertex(x, y, z);
      }
      found.triangle(3 * t, 3 * t + 1, 3 * t + 2);
    }
  }

  private void text(AsciiLines lines) {
    boolean ended = false;
    while (lines.next() && !found.full() && !notes.full(file)) {
      if (lines.is(0, "vertex")) {
        vertex(lines);
      } else if (lines.is(0, "endloop")) {
        int corners = found.vertices() - 3 * found.triangles();
        if (corners != 3) {
          fault(lines, "facet", corners + " corners", "3", "export the mesh once more");
          return;
        }
        int last = found.vertices() - 1;
        found.triangle(last - 2, last - 1, last);
      } else if (lines.is(0, "endsolid")) {
        ended = true;
      } else if (!lines.is(0, "facet")
          && !lines.is(0, "outer")
          && !lines.is(0, "endfacet")
          && !lines.is(0, "solid")) {
        fault(
            lines,
            "line of an STL",
            Notes.shown(lines.word(0)),
            "solid, facet, outer, vertex, endloop, endfacet, endsolid",
            "export the mesh once more");
        return;
      }
    }
    if (found.full()) {
      notes.fault(Triangles.tooMany(file, lines.line()));
    } else if (!ended && !notes.full(file)) {
      fault(
          lines,
          "end of the file",
          "no endsolid",
          "endsolid in the last line",
          "it was cut short: copy or export it once more");
    }
  }

  private void vertex(AsciiLines lines) {
    double[] three = new double[3];
    if (lines.words() < 4) {
      fault(
          lines,
          "vertex",
          (lines.words() - 1) + " numbers",
          "x, y and z",
          "export the mesh once more");
    }
    for (int i = 0; i < 3 && lines.words() >= 4; i++) {
      three[i] = NumberText.parse(lines.word(i + 1));
      if (Double.isNaN(three[i])) {
        fault(
            lines,
            "vertex",
            Notes.shown(lines.word(i + 1)),
            "a finite number",
            "export the mesh once more");
      }
    }
    found.vertex(three[0], three[1], three[2]);
  }

  private void fault(AsciiLines lines, String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, lines.line(), 0, what, value, limit, cure));
  }
}
