package parfield.formats;

import java.util.Locale;

/**
 * The surface in a Wavefront OBJ file: vertices ({@code v}) and faces ({@code f}). Faces of more
 * than three corners are cut into triangles about their first corner; everything else is passed
 * over.
 */
final class ObjFile {
  private final String file;
  private final Notes notes;
  private final AsciiLines lines;
  private final Triangles.Builder found = new Triangles.Builder();

  private ObjFile(String file, byte[] bytes, Notes notes) {
    this.file = file;
    this.notes = notes;
    lines = new AsciiLines(bytes);
  }

  /** The triangles; some of them where a fault was noted. */
  static Triangles read(String file, byte[] bytes, Notes notes) {
    ObjFile reader = new ObjFile(file, bytes, notes);
    while (reader.lines.next() && !reader.found.full() && !notes.full(file)) {
      if (reader.lines.is(0, "v")) {
        reader.vertex();
      } else if (reader.lines.is(0, "f")) {
        reader.face();
      }
    }
    if (reader.found.full()) {
      notes.fault(Triangles.tooMany(file, reader.lines.line()));
    }
    return reader.found.build();
  }

  private void fault(String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, lines.line(), 0, what, value, limit, cure));
  }

  private void vertex() {
    double[] three = new double[3];
    if (lines.words() < 4) {
      fault("vertex", (lines.words() - 1) + " numbers", "x, y and z", "export the mesh once more");
    }
    for (int i = 0; i < 3 && lines.words() >= 4; i++) {
      three[i] = NumberText.parse(lines.word(i + 1));
      if (Double.isNaN(three[i])) {
        fault(
            "vertex",
            Notes.shown(lines.word(i + 1)),
            "a finite number",
            "export the mesh once more");
      }
    }
    // Faces count their vertices: one that is wrong still has its number.
    found.vertex(three[0], three[1], three[2]);
  }

  private void face() {
    int corners = lines.words() - 1;
    if (corners < 3) {
      fault("face", corners + " corners", "3 or more", "export the mesh once more");
      return;
    }
    int first = corner(1);
    int before = corner(2);
    for (int i = 3; i <= corners; i++) {
      int next = corner(i);
      if (first < 0 || before < 0 || next < 0) {
        return;
      }
      if (found.full()) {
        return;
      }
      found.triangle(first, before, next);
      before = next;
    }
  }

  /** The vertex of a corner such as 7, 7/2/3 or -1, from 0; −1 with a fault. */
  private int corner(int i) {
    String word = lines.word(i);
    int slash = word.indexOf('/');
    String number = slash < 0 ? word : word.substring(0, slash);
    long index;
    try {
      index = Long.parseLong(number);
    } catch (NumberFormatException e) {
      fault("corner of a face", Notes.shown(word), "a vertex number", "export the mesh once more");
      return -1;
    }
    // Counted from 1, or backward from the last one so far.
    long vertex = index < 0 ? found.vertices() + index : index - 1;
    if (vertex < 0 || vertex >= found.vertices()) {
      fault(
          "corner of a face",
          Notes.shown(word),
          String.format(Locale.ROOT, "one of the %d vertices before it", found.vertices()),
          "the file may be cut short or mixed up: export the mesh once more");
      return -1;
    }
    return (int) vertex;
  }
}
