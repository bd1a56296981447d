package parfield.web.work;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Work in the background, one piece after the other: a fit uses all processors by itself. What is
 * asked for again while it waits or runs is not begun twice. Thread-safe.
 */
public final class Jobs implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);

  /** Pieces of work that are remembered after their end. */
  private static final int REMEMBERED = 200;

  /** What a piece of work tells while it runs, and whether it shall stop. */
  public interface Report {
    /** Says how far it is. */
    void say(double share, String words);

    /** Whether a person asked it to stop, with what is known by now. */
    boolean cancelled();
  }

  /** The work itself; what it finds it stores by itself before it returns. */
  public interface Work {
    /** Does it. */
    void run(Report report) throws Exception;
  }

  private static final class Entry {
    private Job job;
    private final String key;
    private final AtomicBoolean cancelled = new AtomicBoolean();
    private final List<Consumer<Job>> watchers = new CopyOnWriteArrayList<>();

    Entry(Job job, String key) {
      this.job = job;
      this.key = key;
    }
  }

  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "parfield-work");
            thread.setDaemon(true);
            return thread;
          });

  private final Map<UUID, Entry> entries = new LinkedHashMap<>();

  /**
   * Begins a piece of work, or finds the one of the same kind, bench and key that has not ended.
   *
   * @param bench whose
   * @param kind what is done
   * @param key tells work of one kind apart, as by its inputs
   * @param work what to do
   */
  public synchronized Job begin(UUID bench, String kind, String key, Work work) {
    for (Entry entry : entries.values()) {
      if (!entry.job.ended()
          && entry.job.bench().equals(bench)
          && entry.job.kind().equals(kind)
          && entry.key.equals(key)) {
        return entry.job;
      }
    }
    forgetOld();
    Job job =
        new Job(UUID.randomUUID(), bench, kind, Job.State.WAITING, 0, "waiting", Optional.empty());
    Entry entry = new Entry(job, key);
    entries.put(job.id(), entry);
    worker.execute(() -> run(entry, work));
    return job;
  }

  private void run(Entry entry, Work work) {
    if (entry.cancelled.get()) {
      tell(entry, Job.State.STOPPED, 0, "stopped before it began", Optional.empty());
      return;
    }
    tell(entry, Job.State.RUNNING, 0, "working", Optional.empty());
    try {
      work.run(
          new Report() {
            @Override
            public void say(double share, String words) {
              tell(entry, Job.State.RUNNING, share, words, Optional.empty());
            }

            @Override
            public boolean cancelled() {
              return entry.cancelled.get();
            }
          });
      Job last = job(entry.job.id()).orElse(entry.job);
      tell(
          entry,
          entry.cancelled.get() ? Job.State.STOPPED : Job.State.DONE,
          entry.cancelled.get() ? last.share() : 1,
          last.words(),
          Optional.empty());
    } catch (Exception e) {
      String why = e.getMessage() == null ? "the program has a fault" : e.getMessage();
      LOG.warn("{} failed", entry.job.kind(), e);
      tell(entry, Job.State.FAILED, entry.job.share(), entry.job.words(), Optional.of(why));
    }
  }

  private void tell(
      Entry entry, Job.State state, double share, String words, Optional<String> problem) {
    Job told;
    synchronized (this) {
      told =
          new Job(
              entry.job.id(), entry.job.bench(), entry.job.kind(), state, share, words, problem);
      entry.job = told;
    }
    entry.watchers.forEach(watcher -> watcher.accept(told));
  }

  /** A piece of work by its id, if it is remembered. */
  public synchronized Optional<Job> job(UUID id) {
    return Optional.ofNullable(entries.get(id)).map(entry -> entry.job);
  }

  /** The newest piece of work of a bench and kind. */
  public synchronized Optional<Job> latest(UUID bench, String kind) {
    return entries.values().stream()
        .map(entry -> entry.job)
        .filter(job -> job.bench().equals(bench) && job.kind().equals(kind))
        .reduce((earlier, later) -> later);
  }

  /** Asks a piece of work to stop; it keeps the best so far. */
  public synchronized void cancel(UUID id) {
    Entry entry = entries.get(id);
    if (entry != null) {
      entry.cancelled.set(true);
    }
  }

  /**
   * Tells of every change from now on, the present state first.
   *
   * @return what ends it
   */
  public synchronized Runnable watch(UUID id, Consumer<Job> watcher) {
    Entry entry = entries.get(id);
    if (entry == null) {
      return () -> {};
    }
    entry.watchers.add(watcher);
    watcher.accept(entry.job);
    return () -> entry.watchers.remove(watcher);
  }

  private void forgetOld() {
    if (entries.size() >= REMEMBERED) {
      entries.values().removeIf(entry -> entry.job.ended());
    }
  }

  /** Asks all work to stop and waits a little for it. */
  @Override
  public void close() {
    synchronized (this) {
      entries.values().forEach(entry -> entry.cancelled.set(true));
    }
    worker.shutdown();
    try {
      if (!worker.awaitTermination(5, TimeUnit.SECONDS)) {
        worker.shutdownNow();
      }
    } catch (InterruptedException e) {
      worker.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }
}
