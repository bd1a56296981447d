package parfield.formats;

import java.util.regex.Pattern;

/**
 * A text of samples and what separates its cells. What separates is told by the lines that begin
 * with a number, for the lines before them may hold anything.
 *
 * @param text the text, runs of blanks made tabs where blanks separate
 * @param separator tab, semicolon or comma
 */
record SampleText(String text, char separator) {
  private static final int MOST_LINES = 200;
  private static final Pattern SAMPLE = Pattern.compile("^[+-]?[.\\d].*");
  private static final Pattern BLANKS = Pattern.compile("\\S*[^\\s,;]\\s+[^\\s,;]\\S*.*");

  /** Looks at a text. */
  static SampleText of(String text) {
    int tabs = 0;
    int semicolons = 0;
    int blanks = 0;
    int commas = 0;
    int seen = 0;
    for (String line : (Iterable<String>) text.lines()::iterator) {
      String sample = line.strip();
      if (!SAMPLE.matcher(sample).matches()) {
        continue;
      }
      if (line.indexOf('\t') >= 0) {
        tabs++;
      } else if (sample.indexOf(';') >= 0) {
        semicolons++;
      } else if (BLANKS.matcher(sample).matches()) {
        blanks++;
      } else if (sample.indexOf(',') >= 0) {
        commas++;
      }
      seen++;
      if (seen == MOST_LINES) {
        break;
      }
    }
    int most = Math.max(Math.max(tabs, semicolons), Math.max(blanks, commas));
    if (most == 0) {
      return new SampleText(text, TextTable.separator(text));
    }
    if (blanks == most) {
      return new SampleText(tabbed(text), '\t');
    }
    return new SampleText(text, tabs == most ? '\t' : semicolons == most ? ';' : ',');
  }

  private static String tabbed(String text) {
    StringBuilder tabbed = new StringBuilder(text.length());
    text.lines()
        .forEach(
            line -> {
              String stripped = line.strip();
              boolean sample = SAMPLE.matcher(stripped).matches();
              tabbed.append(sample ? stripped.replaceAll("[ \\t]+", "\t") : stripped).append('\n');
            });
    return tabbed.toString();
  }
}
