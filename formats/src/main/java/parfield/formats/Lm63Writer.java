package parfield.formats;

import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Writes ANSI/IES LM-63-2002: type C, absolute photometry, no line longer than 80 letters, lines
 * ended as the standard asks for.
 */
final class Lm63Writer {
  /** Longest line, as all editions allow. */
  private static final int LONGEST = 80;

  private static final String END = "\r\n";

  private final StringBuilder text = new StringBuilder();

  private Lm63Writer() {}

  /** The file of a light. */
  static byte[] bytes(FixtureLight light) {
    Lm63Writer writer = new Lm63Writer();
    writer.write(light, light.written());
    // ASCII where it is; a name with other letters is better than none.
    return writer.text.toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  private void write(FixtureLight light, FixtureLight.Written written) {
    LightGrid grid = written.grid();
    line("IESNA:LM-63-2002");
    label("TEST", "light model " + light.fixture());
    label("TESTLAB", "no laboratory: a light model fitted to readings in a tank");
    label("ISSUEDATE", DateTimeFormatter.ISO_LOCAL_DATE.format(light.date()));
    label("MANUFAC", "not stated");
    label("LUMINAIRE", light.fixture() + ": " + channels(light));
    label(
        "OTHER",
        "candela by the spectra stated; photons by the keywords that begin with _PARFIELD");
    written.keywords().lines().forEach(line -> label(line.name(), line.text()));
    line("TILT=NONE");
    numbers(
        "1",
        "-1",
        "1",
        String.valueOf(grid.angles()),
        String.valueOf(grid.planes()),
        "1",
        "2",
        PhotonKeywords.number(light.width()),
        PhotonKeywords.number(light.length()),
        "0");
    numbers("1", "1", PhotonKeywords.number(light.watts().orElse(0)));
    numbers(each(grid.angles(), grid::gamma));
    numbers(each(grid.planes(), grid::azimuth));
    for (int i = 0; i < grid.planes(); i++) {
      int plane = i;
      numbers(each(grid.angles(), j -> grid.value(plane, j)));
    }
  }

  /** Names of the channels and what they stand at. */
  static String channels(FixtureLight light) {
    List<String> channels = new ArrayList<>();
    for (FixtureLight.Part part : light.parts()) {
      channels.add(
          part.name()
              + (part.output() == 1
                  ? ""
                  : String.format(Locale.ROOT, " at %.3g of full output", part.output())));
    }
    return String.join(", ", channels);
  }

  private static String[] each(int count, java.util.function.IntToDoubleFunction value) {
    return IntStream.range(0, count)
        .mapToObj(i -> PhotonKeywords.number(value.applyAsDouble(i)))
        .toArray(String[]::new);
  }

  private void line(String line) {
    text.append(line).append(END);
  }

  /** A keyword with its text, which goes on after MORE where it is long. */
  private void label(String name, String words) {
    String start = "[" + name + "]";
    StringBuilder line = new StringBuilder(start);
    for (String word : Fault.printable(words).split(" ")) {
      if (line.length() + 1 + word.length() > LONGEST && line.length() > start.length()) {
        line(line.toString());
        start = "[MORE]";
        line = new StringBuilder(start);
      }
      line.append(' ').append(word);
    }
    line(line.toString());
  }

  private void numbers(String... numbers) {
    StringBuilder line = new StringBuilder();
    for (String number : numbers) {
      if (line.length() + 1 + number.length() > LONGEST) {
        line(line.toString());
        line = new StringBuilder();
      }
      line.append(line.length() == 0 ? "" : " ").append(number);
    }
    line(line.toString());
  }
}
