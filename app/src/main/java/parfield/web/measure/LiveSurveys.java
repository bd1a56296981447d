package parfield.web.measure;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.sse.SseClient;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import parfield.workspace.Changes;
import parfield.workspace.Workspace;
import parfield.workspace.WorkspaceProblem;

/**
 * Pages that watch a survey: each is told of every change in the order of the survey's sequence,
 * and catches up from the last one it knows. What other programs write to the same workspace is
 * found by looking. Thread-safe.
 */
final class LiveSurveys implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(LiveSurveys.class);

  /** Time between two looks for what others wrote, and between two signs of life [ms]. */
  private static final long LOOK = 2000;

  private final Workspace workspace;
  private final Function<UUID, ObjectNode> figures;
  private final Map<UUID, Set<Watcher>> watchers = new ConcurrentHashMap<>();
  private final ScheduledExecutorService clock =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "parfield-live");
            thread.setDaemon(true);
            return thread;
          });

  private final ScheduledFuture<?> looking;

  private static final class Watcher {
    private final SseClient client;
    private long sequence;

    Watcher(SseClient client, long sequence) {
      this.client = client;
      this.sequence = sequence;
    }
  }

  /**
   * Watches surveys of a workspace.
   *
   * @param figures of a survey, sent after each change
   */
  LiveSurveys(Workspace workspace, Function<UUID, ObjectNode> figures) {
    this.workspace = workspace;
    this.figures = figures;
    this.looking = clock.scheduleWithFixedDelay(this::look, LOOK, LOOK, TimeUnit.MILLISECONDS);
  }

  /** A page begins to watch; it knows of the changes up to {@code sequence}. */
  void watch(SseClient client, UUID survey, long sequence) {
    client.keepAlive();
    Watcher watcher = new Watcher(client, sequence);
    Set<Watcher> all = watchers.computeIfAbsent(survey, id -> ConcurrentHashMap.newKeySet());
    all.add(watcher);
    client.onClose(() -> all.remove(watcher));
    client.sendEvent("ready", "{}");
    tell(survey, watcher, true);
  }

  /** A survey was changed: whoever watches it is told, not in the caller's time. */
  void changed(UUID survey) {
    if (!watchers.getOrDefault(survey, Set.of()).isEmpty()) {
      try {
        clock.execute(() -> tellAll(survey));
      } catch (RejectedExecutionException e) {
        // The server stops: what was written is stored, and pages catch up with the next server.
        LOG.debug("pages that watch survey {} are told by the next server", survey);
      }
    }
  }

  /** Tells all who watch a survey something that is no change of it. */
  void say(UUID survey, String event, ObjectNode what) {
    for (Watcher watcher : watchers.getOrDefault(survey, Set.of())) {
      watcher.client.sendEvent(event, what.toString());
    }
  }

  private void look() {
    watchers.forEach(
        (survey, all) -> {
          if (!all.isEmpty()) {
            tellAll(survey);
            all.forEach(LiveSurveys::greet);
          }
        });
  }

  /** A sign of life; what fails here must not end the looking, which serves all pages. */
  private static void greet(Watcher watcher) {
    try {
      watcher.client.sendComment("here");
    } catch (RuntimeException e) {
      LOG.debug("a page that watched is gone", e);
    }
  }

  private void tellAll(UUID survey) {
    for (Watcher watcher : watchers.getOrDefault(survey, Set.of())) {
      tell(survey, watcher, false);
    }
  }

  private void tell(UUID survey, Watcher watcher, boolean always) {
    try {
      synchronized (watcher) {
        Changes changes = workspace.readings().changesSince(survey, watcher.sequence);
        if (changes.sequence() == watcher.sequence && !always) {
          return;
        }
        watcher.client.sendEvent(
            "changes", ReadingsJson.of(changes).toString(), String.valueOf(changes.sequence()));
        watcher.sequence = changes.sequence();
        watcher.client.sendEvent("figures", figures.apply(survey).toString());
      }
    } catch (WorkspaceProblem e) {
      LOG.warn("a page that watches survey {} was not told: {}", survey, e.getMessage());
    } catch (RuntimeException e) {
      LOG.warn("a page that watches survey {} was not told", survey, e);
    }
  }

  /** Ends what pages watch, so that the server can stop. */
  @Override
  public void close() {
    looking.cancel(false);
    clock.shutdownNow();
    watchers.values().forEach(all -> all.forEach(watcher -> watcher.client.close()));
  }
}
