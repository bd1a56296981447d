package parfield.formats;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a read notes down: faults, so that all are told at once, and assumptions. For one thread.
 *
 * <p>Of each file the first {@value #MOST_PER_FILE} faults are kept and the rest counted.
 */
final class Notes {
  static final int MOST_PER_FILE = 50;

  private static final int LONGEST_VALUE = 60;
  private static final int MOST_NAMES = 20;

  private final Map<String, List<Fault>> byFile = new LinkedHashMap<>();
  private final Map<String, Integer> counts = new LinkedHashMap<>();
  private final Set<String> assumptions = new LinkedHashSet<>();
  private int count;

  /** Notes a fault and goes on. */
  void fault(Fault fault) {
    count++;
    List<Fault> faults = byFile.computeIfAbsent(fault.file(), file -> new ArrayList<>());
    if (faults.size() < MOST_PER_FILE) {
      faults.add(fault);
    }
    counts.merge(fault.file(), 1, Integer::sum);
  }

  /** Notes a fault after which nothing more can be read. */
  InvalidFile fatal(Fault fault) {
    fault(fault);
    return invalid();
  }

  /** Ends a read that cannot go on after the faults noted. */
  InvalidFile fatal() {
    return invalid();
  }

  /** Notes something taken without being stated: one plain sentence; each is kept once. */
  void assume(String sentence) {
    assumptions.add(sentence);
  }

  /** Returns how many faults were noted so far: no more than before means a part is sound. */
  int count() {
    return count;
  }

  List<String> assumptions() {
    return List.copyOf(assumptions);
  }

  /** Ends a read: throws if anything was wrong. */
  void throwIfFaulty() {
    if (count > 0) {
      throw invalid();
    }
  }

  private InvalidFile invalid() {
    List<Fault> all = new ArrayList<>();
    byFile.forEach(
        (file, faults) -> {
          all.addAll(faults);
          int more = counts.get(file) - faults.size();
          if (more > 0) {
            all.add(
                new Fault(
                    file,
                    0,
                    0,
                    String.format(Locale.ROOT, "%d more faults", more),
                    "",
                    "",
                    "mend those above first"));
          }
        });
    return new InvalidFile(all);
  }

  /** Returns whether more faults of this file will only be counted, so that none need be worded. */
  boolean full(String file) {
    return counts.getOrDefault(file, 0) >= MOST_PER_FILE;
  }

  /** Names as they may stand in a message: the first few. */
  static String shown(Collection<String> names) {
    String list =
        names.stream().limit(MOST_NAMES).map(Notes::shown).collect(Collectors.joining(", "));
    return names.size() > MOST_NAMES ? list + ", …" : list;
  }

  /** A text as it may stand in a message: printable, not longer than a line bears. */
  static String shown(String text) {
    int points = text.codePointCount(0, text.length());
    return points <= LONGEST_VALUE
        ? Fault.printable(text)
        : Fault.printable(text.substring(0, text.offsetByCodePoints(0, LONGEST_VALUE))) + "…";
  }
}
