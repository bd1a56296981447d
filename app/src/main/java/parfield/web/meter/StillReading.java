package parfield.web.meter;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Tells when a meter holds still, and offers each rest once.
 *
 * <p>It looks at the shortest run of latest readings that has the time and the count of a {@link
 * Steadiness}. They hold still if nine tenths of them lie within its limit, the last two among
 * them, and if the first half and the second do not differ by more than a quarter of it: one
 * reading spoilt by noise does no harm, a value that still creeps is waited for. The reading that
 * is offered is the middle one of the run: a number that the meter showed.
 *
 * <p>After a take the probe must have left before anything is offered again: a run of readings,
 * {@link #AWAY} long, all farther from the taken value than twice the limit. So the same rest is
 * never taken for two places. In an even field the next place may read the same, and nothing leaves
 * while the probe is moved: then the sensor is shaded for a moment, or the reading is taken by
 * hand. Dark readings are never offered: a covered sensor holds still too.
 *
 * <p>Times are milliseconds on a clock that only goes forward. For a single thread.
 */
final class StillReading {
  /** Below this a sensor is taken to be covered [µmol m⁻² s⁻¹]. */
  static final double DARK = 1;

  /** How long a value must be another before the probe counts as moved [ms]. */
  static final long AWAY = 700;

  /** Two readings farther apart belong to no one rest [ms]. */
  static final long GAP = 5000;

  /** A run that needs longer than this is none: the meter is too slow [ms]. */
  static final long LONGEST = 15_000;

  private static final int MOST = 4096;

  /** How it stands. */
  enum State {
    /** Nothing was heard, or too little. */
    LISTENING,
    /** Dark: covered, or the light is off. */
    DARK,
    /** It changes. */
    MOVING,
    /** It holds still and is offered. */
    STILL,
    /** A reading was taken, or the place was changed by hand: the probe must move first. */
    WAITING
  }

  /**
   * A rest that is offered.
   *
   * @param number of it, from 1, each rest another
   * @param reading the middle one
   */
  record Hold(long number, Heard.Value reading) {}

  private record Sample(Heard.Value number, long time) {}

  private Steadiness steadiness = Steadiness.CALM;
  private final Deque<Sample> run = new ArrayDeque<>();
  private Optional<Heard.Value> reference = Optional.empty();
  private long awaySince = -1;
  private int away;
  private long holds;
  private Optional<Hold> hold = Optional.empty();
  private State state = State.LISTENING;

  /** From now on this counts as holding still. */
  void use(Steadiness wanted) {
    if (!wanted.equals(steadiness)) {
      steadiness = wanted;
      run.clear();
      hold = Optional.empty();
      state = reference.isPresent() ? State.WAITING : State.LISTENING;
    }
  }

  /** How it stands. */
  State state() {
    return state;
  }

  /** The rest that is offered; empty unless it holds still. */
  Optional<Hold> hold() {
    return hold;
  }

  /** The latest reading. */
  Optional<Heard.Value> latest() {
    return Optional.ofNullable(run.peekLast()).map(Sample::number);
  }

  /** The meter showed a number at a time [ms]. */
  void hear(Heard.Value number, long time) {
    if (!run.isEmpty() && time - run.peekLast().time() > GAP) {
      forget();
    }
    run.addLast(new Sample(number, time));
    while (run.size() > MOST || (run.size() > steadiness.count() && enoughWithoutFirst(time))) {
      run.removeFirst();
    }
    if (reference.isPresent()) {
      look(reference.get(), number, time);
      return;
    }
    state = judge(time);
    if (state != State.STILL) {
      hold = Optional.empty();
      return;
    }
    // While one rest goes on its number stays, and its reading follows.
    hold =
        Optional.of(new Hold(hold.map(Hold::number).orElseGet(() -> ++holds), middle(numbers())));
  }

  private boolean enoughWithoutFirst(long time) {
    var each = run.iterator();
    each.next();
    return time - each.next().time() >= steadiness.window();
  }

  /** Nothing was heard for a while: what comes now belongs to no rest before. */
  void forget() {
    run.clear();
    hold = Optional.empty();
    away = 0;
    state = reference.isPresent() ? State.WAITING : State.LISTENING;
  }

  /** Whether the probe has left the taken value. */
  private void look(Heard.Value taken, Heard.Value number, long time) {
    double far = 2 * steadiness.limit(taken.value(), Math.max(taken.step(), number.step()));
    if (Math.abs(number.value() - taken.value()) <= far) {
      away = 0;
      state = State.WAITING;
      return;
    }
    if (away++ == 0) {
      awaySince = time;
    }
    if (away >= 2 && time - awaySince >= AWAY) {
      reference = Optional.empty();
      Sample last = run.peekLast();
      run.clear();
      run.addLast(last);
      away = 0;
      state = State.MOVING;
    } else {
      state = State.WAITING;
    }
  }

  private State judge(long time) {
    List<Heard.Value> numbers = numbers();
    double[] sorted = numbers.stream().mapToDouble(Heard.Value::value).sorted().toArray();
    double median = sorted[(sorted.length - 1) / 2];
    if (median < DARK && numbers.get(numbers.size() - 1).value() < DARK) {
      return State.DARK;
    }
    long span = time - run.peekFirst().time();
    if (numbers.size() < steadiness.count() || span < steadiness.window()) {
      return numbers.size() < 2 ? State.LISTENING : State.MOVING;
    }
    double step = numbers.stream().mapToDouble(Heard.Value::step).max().orElseThrow();
    double limit = steadiness.limit(median, step);
    int most = (9 * sorted.length + 9) / 10;
    double spread = Double.POSITIVE_INFINITY;
    for (int i = 0; i + most <= sorted.length; i++) {
      spread = Math.min(spread, sorted[i + most - 1] - sorted[i]);
    }
    boolean lastTwo =
        numbers.subList(numbers.size() - 2, numbers.size()).stream()
            .allMatch(number -> Math.abs(number.value() - median) <= limit);
    double creep =
        Math.abs(
            middle(numbers.subList(0, numbers.size() / 2)).value()
                - middle(numbers.subList(numbers.size() - numbers.size() / 2, numbers.size()))
                    .value());
    // So that 0.1 + 0.2 is not more than 0.3.
    double slack = 1e-9 * Math.max(1, median);
    boolean still =
        span <= LONGEST
            && spread <= limit + slack
            && lastTwo
            && creep <= Math.max(limit / 4, step) + slack;
    return still ? State.STILL : State.MOVING;
  }

  private List<Heard.Value> numbers() {
    return run.stream().map(Sample::number).toList();
  }

  /** The lower middle one: a number that was shown. */
  private static Heard.Value middle(List<Heard.Value> numbers) {
    return numbers.stream()
        .sorted(Comparator.comparingDouble(Heard.Value::value))
        .toList()
        .get((numbers.size() - 1) / 2);
  }

  /**
   * Takes a rest: from now on the probe must leave it first.
   *
   * @return its reading; empty if that rest is over
   */
  Optional<Heard.Value> take(long number) {
    Optional<Heard.Value> taken =
        hold.filter(offered -> offered.number() == number).map(Hold::reading);
    taken.ifPresent(this::waitToLeave);
    return taken;
  }

  /**
   * Takes what the meter shows, because a person says so: the middle reading of a rest, else the
   * latest.
   */
  Optional<Heard.Value> takeNow() {
    Optional<Heard.Value> taken = hold.map(Hold::reading).or(this::latest);
    taken.ifPresent(this::waitToLeave);
    return taken;
  }

  /** The place was changed by hand, or taking was switched on: what is shown now is not offered. */
  void waitToMove() {
    if (reference.isEmpty()) {
      latest().ifPresent(this::waitToLeave);
    }
  }

  private void waitToLeave(Heard.Value taken) {
    reference = Optional.of(taken);
    hold = Optional.empty();
    away = 0;
    state = State.WAITING;
  }
}
