package parfield.web.meter;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.web.measure.TypedNumber;

/**
 * Finds the PPFD in a line of a meter, or says why the line is not used. Never guesses:
 *
 * <ol>
 *   <li>Times and dates ({@code 12:00:01}, {@code 2026-11-30}) are no numbers.
 *   <li>If exactly one number is followed by a unit of PPFD (µmol …, PPFD, PAR), it is the one.
 *   <li>Else if exactly one number follows the word PAR or PPFD, it is the one.
 *   <li>Else if the line holds one number, and no words but a few harmless ones, it is the one.
 *   <li>Every other line is doubtful and not used: several numbers, a number that touches a letter,
 *       two decimal signs, another unit, {@code 1,234}, below 0.
 * </ol>
 *
 * Whoever knows how the meter writes may name a field instead: the line is then cut at semicolons
 * or tabs if it holds any, else at commas if it holds any, else at spaces, and the rules are asked
 * of that field alone.
 */
final class LineNumber {
  /** Stands for a unit of PPFD once it was found. */
  private static final String UNIT = "\uE000";

  private static final Pattern TIMES =
      Pattern.compile(
          "(?<![\\d.,])(?:\\d{4}-\\d{2}-\\d{2}|\\d{1,2}[./]\\d{1,2}[./]\\d{4})(?![\\d])T?"
              + "|(?<![\\d.,])\\d{1,2}:\\d{2}(?::\\d{2})?(?![\\d:])Z?");

  private static final Pattern UNITS =
      Pattern.compile(
          "(?:[µμu]mol|micromol)(?:e?s)?(?:[ /·*.(]*photons?)?"
              + "(?:[ /·*.(]*m(?:\\^|\\*\\*)?[-−⁻]?[2²])?"
              + "(?:[ /·*.]*s(?:ec)?(?:(?:\\^|\\*\\*)?[-−⁻]?[1¹])?)?\\)?(?![\\p{L}\\d])"
              + "(?! ?/ ?mol)",
          Pattern.CASE_INSENSITIVE);

  /** Digits with what may belong to them. */
  private static final Pattern RUN = Pattern.compile("[.,]*\\d[\\d.,]*");

  private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d+)?");
  private static final Pattern UNIT_AFTER =
      Pattern.compile("^\\s*(?:" + UNIT + "|(?:PAR|PPFD)(?![\\p{L}\\d])).*", flags());
  private static final Pattern LABEL_BEFORE =
      Pattern.compile(
          ".*(?:(?<![\\p{L}\\d])(?:PAR|PPFD)|" + UNIT + ")[\\s:=()\\[\\]\"" + UNIT + "]*$",
          flags());
  private static final Pattern OTHER_UNIT_AFTER =
      Pattern.compile(
          "^\\s?(°|º|%|(?:klx|lux|lx|fc|mv|v|ma|k|c|f|hz|w|mol|dli|ms|s|nm|min|h|db|ppm|ph)"
              + "(?![\\p{L}\\d])).*",
          flags());
  private static final Pattern WORDS = Pattern.compile("\\p{L}+");
  private static final Set<String> HARMLESS =
      Set.of("par", "ppfd", "light", "value", "reading", "quantum", "photon", "photons", "ok");

  private LineNumber() {}

  private static int flags() {
    return Pattern.CASE_INSENSITIVE | Pattern.DOTALL;
  }

  private record Found(String digits, boolean negative, String before, String after) {}

  /**
   * Reads a line.
   *
   * @param line as the reader cut it
   * @param field which field of the line holds the PPFD, from 1; empty to look for it
   */
  static Heard read(LineReader.Line line, OptionalInt field) {
    if (line.trouble().isPresent()) {
      return new Heard.Ignored(line.text(), line.trouble().get());
    }
    String text = line.text();
    if (field.isPresent()) {
      String[] fields = text.split(separator(text), -1);
      if (field.getAsInt() > fields.length) {
        return ignored(
            line,
            String.format(
                Locale.ROOT,
                "it has %d fields, and field %d was asked for",
                fields.length,
                field.getAsInt()));
      }
      text = fields[field.getAsInt() - 1];
    }
    return read(line, text);
  }

  private static String separator(String text) {
    if (text.indexOf(';') >= 0 || text.indexOf('\t') >= 0) {
      return "[;\\t]";
    }
    return text.indexOf(',') >= 0 ? "," : "\\s+";
  }

  private static Heard read(LineReader.Line line, String asked) {
    String text = TIMES.matcher(asked.strip()).replaceAll(" ");
    text = UNITS.matcher(text).replaceAll(UNIT);
    List<Found> numbers = new ArrayList<>();
    Matcher runs = RUN.matcher(text);
    while (runs.find()) {
      String digits = runs.group();
      if (!NUMBER.matcher(digits).matches()) {
        return ignored(line, digits + " is no number");
      }
      String before = text.substring(0, runs.start());
      String after = text.substring(runs.start() + digits.length());
      boolean signed = before.endsWith("-") || before.endsWith("−") || before.endsWith("+");
      boolean negative = signed && !before.endsWith("+");
      String left = signed ? before.substring(0, before.length() - 1) : before;
      if (touches(left, after)) {
        return ignored(line, digits + " touches other characters");
      }
      numbers.add(new Found(digits, negative, left, after));
    }
    if (numbers.isEmpty()) {
      return ignored(line, "it holds no number");
    }
    List<Found> byUnit = numbers.stream().filter(LineNumber::hasUnit).toList();
    List<Found> byLabel = numbers.stream().filter(LineNumber::hasLabel).toList();
    if (byUnit.size() == 1) {
      return value(line, byUnit.get(0));
    }
    if (byUnit.isEmpty() && byLabel.size() == 1) {
      return value(line, byLabel.get(0));
    }
    if (numbers.size() > 1) {
      return ignored(
          line, "it holds several numbers: say which field of the line the PPFD stands in");
    }
    Matcher other = OTHER_UNIT_AFTER.matcher(numbers.get(0).after());
    if (other.matches()) {
      return ignored(line, "its unit is " + other.group(1) + ", which is no PPFD");
    }
    Matcher words = WORDS.matcher(text.replace(UNIT, " "));
    while (words.find()) {
      if (!HARMLESS.contains(words.group().toLowerCase(Locale.ROOT))) {
        return ignored(
            line,
            "it speaks of "
                + words.group()
                + ", which may be no PPFD: say which field of the line it stands in");
      }
    }
    return value(line, numbers.get(0));
  }

  private static boolean hasUnit(Found number) {
    return UNIT_AFTER.matcher(number.after()).matches();
  }

  private static boolean hasLabel(Found number) {
    return LABEL_BEFORE.matcher(number.before()).matches()
        && !OTHER_UNIT_AFTER.matcher(number.after()).matches();
  }

  /** Whether a number is glued to something that is neither space, bracket nor unit. */
  private static boolean touches(String before, String after) {
    boolean left =
        !before.isEmpty()
            && !" \t:=\";,".contains(before.substring(before.length() - 1))
            && !before.endsWith(UNIT);
    boolean right =
        !after.isEmpty()
            && !" \t\";,°º%".contains(after.substring(0, 1))
            && !UNIT_AFTER.matcher(after).matches()
            && !OTHER_UNIT_AFTER.matcher(after).matches();
    return left || right;
  }

  private static Heard value(LineReader.Line line, Found found) {
    TypedNumber read = TypedNumber.read((found.negative() ? "-" : "") + found.digits());
    if (read.problem().isPresent()) {
      return ignored(line, read.problem().get());
    }
    int sign = Math.max(found.digits().indexOf('.'), found.digits().indexOf(','));
    int decimals = sign < 0 ? 0 : found.digits().length() - sign - 1;
    return new Heard.Value(
        read.value().getAsDouble(), found.digits(), Math.pow(10, -Math.min(9, decimals)));
  }

  private static Heard.Ignored ignored(LineReader.Line line, String why) {
    return new Heard.Ignored(LineReader.shown(line.text()), why);
  }
}
