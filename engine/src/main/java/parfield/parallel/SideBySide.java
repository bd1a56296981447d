package parfield.parallel;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinTask;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import java.util.function.Supplier;

/**
 * Independent pieces of work, done on all processors.
 *
 * <p>A parallel stream cuts its elements into a few parts beforehand; where pieces take long and
 * unequally, as the solving of draws does, one processor waits at the end. Here each takes the next
 * piece as soon as it is free.
 */
public final class SideBySide {
  private SideBySide() {}

  /**
   * Begins a piece of work whose result is needed later.
   *
   * @param work what to do, meanwhile
   * @return waits for the result; throws what the work threw
   */
  public static <T> Supplier<T> ahead(Supplier<T> work) {
    Supplier<List<T>> alone = ahead(1, index -> work.get());
    return () -> alone.get().get(0);
  }

  /**
   * Begins pieces of work whose results are needed later. Whoever asks for these does what nobody
   * has begun by then.
   *
   * @param count of pieces
   * @param piece what to do, by index
   * @return waits for what each gave, by index; throws what the first piece threw that threw
   *     anything, once all are done
   */
  public static <T> Supplier<List<T>> ahead(int count, IntFunction<T> piece) {
    List<ForkJoinTask<Supplier<T>>> tasks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int index = i;
      tasks.add(ForkJoinTask.adapt(() -> outcome(piece, index)).fork());
    }
    return () -> {
      // Others take from the front, so the last is the one to take back first.
      for (int i = count - 1; i >= 0; i--) {
        tasks.get(i).join();
      }
      return tasks.stream().map(task -> task.join().get()).toList();
    };
  }

  /** Does pieces of work for what they leave behind. */
  public static void each(int count, IntConsumer piece) {
    all(
        count,
        index -> {
          piece.accept(index);
          return true;
        });
  }

  /**
   * Does pieces of work.
   *
   * @param count of pieces
   * @param piece what to do, by index
   * @return what each gave, by index
   * @throws RuntimeException what the first piece threw that threw anything, once all are done
   */
  public static <T> List<T> all(int count, IntFunction<T> piece) {
    return ahead(count, piece).get();
  }

  /** What a piece gave or threw: a task would throw a copy of it, with another message. */
  private static <T> Supplier<T> outcome(IntFunction<T> piece, int index) {
    try {
      T result = piece.apply(index);
      return () -> result;
    } catch (RuntimeException e) {
      return () -> {
        throw e;
      };
    }
  }
}
