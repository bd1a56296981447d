package parfield.field;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinTask;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;

/**
 * Independent pieces of work, done on all processors.
 *
 * <p>A parallel stream cuts its elements into a few parts beforehand; where pieces take long and
 * unequally, as the solving of draws does, one processor waits at the end. Here each takes the next
 * piece as soon as it is free.
 */
public final class SideBySide {
  private SideBySide() {}

  /** Does them all, for what they leave behind. */
  static void each(int count, IntConsumer piece) {
    all(
        count,
        index -> {
          piece.accept(index);
          return true;
        });
  }

  /**
   * Does them all.
   *
   * @param count of pieces
   * @param piece what to do, by index; of what several throw, one is thrown
   * @return what each gave, by index
   */
  public static <T> List<T> all(int count, IntFunction<T> piece) {
    List<ForkJoinTask<T>> tasks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int index = i;
      tasks.add(ForkJoinTask.adapt(() -> piece.apply(index)).fork());
    }
    // Others take from the front, so the last is the one to take back first.
    List<T> results = new ArrayList<>(tasks.size());
    for (int i = count - 1; i >= 0; i--) {
      tasks.get(i).join();
    }
    for (ForkJoinTask<T> task : tasks) {
      results.add(task.join());
    }
    return results;
  }
}
