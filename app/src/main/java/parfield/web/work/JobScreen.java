package parfield.web.work;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.sse.SseClient;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReference;
import parfield.web.page.Screen;

/**
 * How far work in the background is, told as it goes: by server-sent events, so that a page that
 * was loaded again finds the work where it is.
 */
public final class JobScreen implements Screen, AutoCloseable {
  private final Jobs jobs;
  private final Set<SseClient> clients = ConcurrentHashMap.newKeySet();

  /** The screen of these jobs. */
  public JobScreen(Jobs jobs) {
    this.jobs = jobs;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/jobs/{job}", context -> context.json(state(job(context))));
    routes.post("/bench/{id}/jobs/{job}/cancel", this::cancel);
    routes.sse("/bench/{id}/jobs/{job}/events", this::follow);
  }

  private Job job(Context context) {
    try {
      UUID bench = UUID.fromString(context.pathParam("id"));
      return jobs.job(UUID.fromString(context.pathParam("job")))
          .filter(job -> job.bench().equals(bench))
          .orElseThrow(() -> new NotFoundResponse("there is no such work, or it ended long ago"));
    } catch (IllegalArgumentException e) {
      throw new NotFoundResponse("there is no such work, or it ended long ago");
    }
  }

  private void cancel(Context context) {
    jobs.cancel(job(context).id());
    context.status(204);
  }

  private void follow(SseClient client) {
    Job job = job(client.ctx());
    client.keepAlive();
    clients.add(client);
    AtomicReference<Runnable> end = new AtomicReference<>(() -> {});
    client.onClose(
        () -> {
          end.get().run();
          clients.remove(client);
        });
    end.set(
        jobs.watch(
            job.id(),
            told -> {
              client.sendEvent("job", state(told));
              if (told.ended()) {
                client.close();
              }
            }));
    if (client.terminated()) {
      end.get().run();
    }
  }

  /** What a page is told of a piece of work. */
  static Map<String, Object> state(Job job) {
    return Map.of(
        "state", job.state().name(),
        "share", job.share(),
        "words", job.words(),
        "problem", job.problem().orElse(""));
  }

  /** Ends all streams. */
  @Override
  public void close() {
    clients.forEach(SseClient::close);
  }
}
