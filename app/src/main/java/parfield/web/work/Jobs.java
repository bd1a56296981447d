package parfield.web.work;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
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

  /** Told from one thread only, so that it never hears of an earlier state after a later one. */
  private static final class Watcher {
    private final Consumer<Job> hears;
    private final AtomicBoolean due = new AtomicBoolean();
    private Job last;

    Watcher(Consumer<Job> hears) {
      this.hears = hears;
    }
  }

  private static final class Entry {
    private Job job;
    private final String key;
    private final AtomicBoolean cancelled = new AtomicBoolean();
    private final List<Watcher> watchers = new CopyOnWriteArrayList<>();

    Entry(Job job, String key) {
      this.job = job;
      this.key = key;
    }
  }

  private final ExecutorService worker = thread("parfield-work");

  /** Watchers are told here: one that is slow or fails holds up no work. */
  private final ExecutorService teller = thread("parfield-tell");

  private final Map<UUID, Entry> entries = new LinkedHashMap<>();

  private static ExecutorService thread(String name) {
    return Executors.newSingleThreadExecutor(
        work -> {
          Thread thread = new Thread(work, name);
          thread.setDaemon(true);
          return thread;
        });
  }

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
    } catch (Exception | Error e) {
      // An error too must end the work: a page would wait for it for ever.
      LOG.warn("{} failed", entry.job.kind(), e);
      tell(entry, Job.State.FAILED, entry.job.share(), entry.job.words(), Optional.of(why(e)));
      if (e instanceof InterruptedException) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static String why(Throwable e) {
    if (e instanceof OutOfMemoryError) {
      return "the memory was not enough; close other programs, or give Java more of it"
          + " (JAVA_TOOL_OPTIONS=-Xmx4g), and try again";
    }
    return e instanceof Error || e.getMessage() == null
        ? "the program has a fault, and this was not done; what was stored before is kept"
        : e.getMessage();
  }

  private void tell(
      Entry entry, Job.State state, double share, String words, Optional<String> problem) {
    synchronized (this) {
      entry.job =
          new Job(
              entry.job.id(), entry.job.bench(), entry.job.kind(), state, share, words, problem);
    }
    entry.watchers.forEach(watcher -> tell(entry, watcher));
  }

  /** Has a watcher told what is known by then; what it misses in between, it does not need. */
  private void tell(Entry entry, Watcher watcher) {
    if (!watcher.due.compareAndSet(false, true)) {
      return;
    }
    try {
      teller.execute(
          () -> {
            watcher.due.set(false);
            Job now = job(entry);
            if (!now.equals(watcher.last) && entry.watchers.contains(watcher)) {
              watcher.last = now;
              try {
                watcher.hears.accept(now);
              } catch (RuntimeException | Error e) {
                entry.watchers.remove(watcher);
                LOG.debug("a watcher of {} is gone", now.kind(), e);
              }
            }
          });
    } catch (RejectedExecutionException e) {
      LOG.debug("nobody is told any more: the server stops", e);
    }
  }

  private synchronized Job job(Entry entry) {
    return entry.job;
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

  /** Asks a piece of work to stop; a search keeps the best so far. */
  public synchronized void cancel(UUID id) {
    Entry entry = entries.get(id);
    if (entry != null) {
      entry.cancelled.set(true);
    }
  }

  /**
   * Tells of changes from now on, the present state first, from a thread of its own. A watcher that
   * fails is told no more.
   *
   * @return what ends it
   */
  public Runnable watch(UUID id, Consumer<Job> hears) {
    Entry entry;
    synchronized (this) {
      entry = entries.get(id);
    }
    if (entry == null) {
      return () -> {};
    }
    Watcher watcher = new Watcher(hears);
    entry.watchers.add(watcher);
    tell(entry, watcher);
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
      teller.shutdown();
      if (!teller.awaitTermination(1, TimeUnit.SECONDS)) {
        teller.shutdownNow();
      }
    } catch (InterruptedException e) {
      worker.shutdownNow();
      teller.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }
}
