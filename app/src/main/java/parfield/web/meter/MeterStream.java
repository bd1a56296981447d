package parfield.web.meter;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import parfield.answer.Json;

/**
 * What the meter of one survey says, whichever way it comes, and who takes it: one page at a time.
 * Times are milliseconds on a clock that only goes forward. Thread-safe.
 */
final class MeterStream {
  /** After this time without a line the meter is silent [ms]. */
  static final long SILENT = 3000;

  /** How long a sender who posts keeps others from mixing in [ms]. */
  static final long HELD = 5000;

  private static final int KEPT = 5;

  private final StillReading still = new StillReading();
  private final Deque<Heard.Ignored> ignored = new ArrayDeque<>();
  private Optional<Source> source = Optional.empty();
  private String link = "";
  private boolean away;
  private OptionalInt field = OptionalInt.empty();
  private long numbers;
  private long ignoredCount;
  private long lastLine = Long.MIN_VALUE;
  private boolean silent;
  private String taker = "";
  private boolean rippled;
  private boolean afterTake;
  private Optional<Taken> taken = Optional.empty();
  private boolean changed;
  private Optional<Allowance> pace = Optional.empty();

  /**
   * Where lines come from.
   *
   * @param serial whether from a serial port; else posted
   * @param key of the sender: the port's path, or whatever tells one sender from another
   */
  record Source(boolean serial, String key) {}

  /**
   * A reading that a page was given.
   *
   * @param hold number of the rest, 0 if it was taken by hand
   * @param page who took it
   * @param reading the value
   */
  record Taken(long hold, String page, Heard.Value reading) {}

  /** A sender begins, or goes on; false if another one is heard already. */
  synchronized boolean claimSource(Source wanted, long now) {
    boolean free =
        source.isEmpty()
            || source.get().equals(wanted)
            || wanted.serial()
            || (!source.get().serial() && now - lastLine > HELD);
    if (free && !source.equals(Optional.of(wanted))) {
      source = Optional.of(wanted);
      link = "";
      away = false;
      silent = false;
      lastLine = now;
      ignored.clear();
      ignoredCount = 0;
      numbers = 0;
      still.forget();
      changed = true;
    }
    return free;
  }

  /** Whether one more line may come now: {@code perSecond} over a while, and as many at once. */
  synchronized boolean allows(int perSecond, long now) {
    if (pace.isEmpty()) {
      pace = Optional.of(new Allowance(perSecond, now));
    }
    return pace.get().allows(now);
  }

  /** The sender of this kind and key no longer sends. */
  synchronized void release(Source gone) {
    if (source.equals(Optional.of(gone))) {
      source = Optional.empty();
      link = "";
      away = false;
      silent = false;
      still.forget();
      changed = true;
    }
  }

  /** How the port does, in words; {@code isAway} if it is tried again. */
  synchronized void link(String words, boolean isAway, long now) {
    if (isAway && !away) {
      still.forget();
    }
    if (!isAway) {
      lastLine = now;
    }
    changed |= isAway != away || !words.equals(link);
    link = words;
    away = isAway;
  }

  /** A line came. */
  synchronized Heard hear(LineReader.Line line, long now) {
    Heard heard = LineNumber.read(line, field);
    lastLine = now;
    silent = false;
    if (heard instanceof Heard.Value number) {
      numbers++;
      still.hear(number, now);
    } else if (heard instanceof Heard.Ignored other) {
      ignoredCount++;
      ignored.addFirst(other);
      while (ignored.size() > KEPT) {
        ignored.removeLast();
      }
    }
    changed = true;
    return heard;
  }

  /** The PPFD stands in this field of a line, from 1; empty to look for it. */
  synchronized void field(OptionalInt wanted) {
    if (!wanted.equals(field)) {
      field = wanted;
      ignored.clear();
      ignoredCount = 0;
      still.forget();
      changed = true;
    }
  }

  /** A page takes readings by itself from now on; every other one no longer does. */
  synchronized void taker(String page, boolean ripples) {
    boolean begins = !taker.equals(page);
    taker = page;
    rippled(ripples);
    if (begins) {
      waitToMove();
    }
    changed = true;
  }

  /** Whether the surface ripples, so that light flickers. */
  synchronized void rippled(boolean ripples) {
    rippled = ripples;
    still.use(ripples ? Steadiness.RIPPLED : Steadiness.CALM);
    changed = true;
  }

  /** A page no longer takes readings by itself. */
  synchronized void noTaker(String page) {
    if (taker.equals(page)) {
      taker = "";
      changed = true;
    }
  }

  /** The place was changed by hand. */
  synchronized void waitToMove() {
    if (still.state() != StillReading.State.WAITING) {
      still.waitToMove();
      afterTake = false;
      changed = true;
    }
  }

  /**
   * Gives a rest to the page that takes readings. Asked again by the same page, it answers the
   * same, so that an answer that was lost does no harm.
   *
   * @return empty if another page takes readings, or took this one, or the rest is over
   */
  synchronized Optional<Taken> take(String page, long hold) {
    if (taken.isPresent() && taken.get().hold() == hold) {
      return taken.filter(given -> given.page().equals(page));
    }
    if (!taker.equals(page)) {
      return Optional.empty();
    }
    return given(page, hold, still.take(hold));
  }

  /** Gives what the meter shows to a page whose person says so; empty if the meter is silent. */
  synchronized Optional<Taken> takeNow(String page, long now) {
    if (now - lastLine > SILENT || away) {
      return Optional.empty();
    }
    return given(page, 0, still.takeNow());
  }

  private Optional<Taken> given(String page, long hold, Optional<Heard.Value> reading) {
    if (reading.isEmpty()) {
      return Optional.empty();
    }
    taken = Optional.of(new Taken(hold, page, reading.get()));
    afterTake = true;
    changed = true;
    return taken;
  }

  /** What changed since it was asked last, for the pages; empty if nothing did. */
  synchronized Optional<ObjectNode> news(long now) {
    boolean quiet = source.isPresent() && !away && now - lastLine > SILENT;
    if (quiet && !silent) {
      silent = true;
      still.forget();
      changed = true;
    }
    if (!changed) {
      return Optional.empty();
    }
    changed = false;
    return Optional.of(state());
  }

  /** How it stands, for a page. */
  synchronized ObjectNode state() {
    ObjectNode json = Json.object();
    json.put("source", source.map(from -> from.serial() ? "SERIAL" : "POSTED").orElse(""));
    json.put("port", source.filter(Source::serial).map(Source::key).orElse(""));
    json.put("link", linkWords());
    json.put("away", away || silent);
    Optional<Heard.Value> latest = away || silent ? Optional.empty() : still.latest();
    latest.ifPresent(number -> json.put("value", number.typed()));
    json.put("state", still.state().name());
    json.put("words", words(latest));
    still.hold().ifPresent(hold -> json.put("hold", hold.number()));
    json.put("taker", taker);
    json.put("rippled", rippled);
    json.put("field", field.orElse(0));
    json.put("numbers", numbers);
    json.put("ignored", ignoredCount);
    ArrayNode told = json.putArray("told");
    for (Heard.Ignored each : ignored) {
      told.addObject().put("shown", each.shown()).put("why", each.why());
    }
    return json;
  }

  private String linkWords() {
    if (source.isEmpty()) {
      return "No meter is connected.";
    }
    if (away || (source.get().serial() && !link.isEmpty())) {
      return link
          + (silent ? ", but nothing was heard for 3 s: is the meter on and sending?" : ".");
    }
    if (silent) {
      return "Nothing was posted for 3 s: is the program that posts still running?";
    }
    return "Lines are posted.";
  }

  private String words(Optional<Heard.Value> latest) {
    if (latest.isEmpty()) {
      return source.isEmpty() ? "" : away || silent ? "Silent" : "Listening";
    }
    return switch (still.state()) {
      case LISTENING -> "Listening";
      case DARK -> "Dark: is the sensor covered?";
      case MOVING -> "Moves";
      case STILL -> "Holds still";
      case WAITING -> afterTake ? "Taken: move the probe on" : "Waits until the probe is moved";
    };
  }

  /** The lines that were ignored last, as a sentence each. */
  synchronized List<String> ignoredInWords() {
    return ignored.stream()
        .map(each -> String.format(Locale.ROOT, "“%s”: %s", each.shown(), each.why()))
        .toList();
  }
}
