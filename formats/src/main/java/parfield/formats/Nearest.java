package parfield.formats;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** The known name that a mistyped one most likely means. */
public final class Nearest {
  private static final int LONGEST = 40;
  private static final int MOST = 500;

  private Nearest() {}

  /**
   * Finds the known name nearest to what was written.
   *
   * @param written what was written
   * @param known what exists; the first {@value #MOST} are looked at
   * @return the nearest, the first of equals; empty if none is close: more than a third of the
   *     letters wrong, and at least two
   */
  public static Optional<String> of(String written, Collection<String> known) {
    if (written.length() > LONGEST) {
      return Optional.empty();
    }
    String best = null;
    int least = Math.max(2, (written.length() + 2) / 3) + 1;
    for (String name : known.stream().limit(MOST).toList()) {
      if (name.length() > LONGEST) {
        continue;
      }
      int distance = distance(written.toLowerCase(Locale.ROOT), name.toLowerCase(Locale.ROOT));
      if (distance < least && distance < Math.max(written.length(), name.length())) {
        least = distance;
        best = name;
      }
    }
    return Optional.ofNullable(best);
  }

  /** The cure that names the nearest known name, or says what else to do. */
  static String cure(String written, Collection<String> known, String otherwise) {
    return of(written, known).map(name -> "did you mean " + name + "?").orElse(otherwise);
  }

  /**
   * Letters to insert, delete, replace or swap with their neighbour to turn one word into another
   * (Damerau 1964, Commun. ACM 7:171; the restricted form that swaps no letter twice).
   */
  static int distance(String a, String b) {
    int[] beforeLast = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replace = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        row[j] = Math.min(Math.min(row[j - 1], last[j]) + 1, last[j - 1] + replace);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
        }
      }
      int[] spare = beforeLast;
      beforeLast = last;
      last = row;
      row = spare;
    }
    return last[b.length()];
  }
}
