package parfield.web.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Work in the background comes to an end, whatever happens to it or to those who watch. */
class JobsTest {
  /** No test waits so long unless something is broken [s]. */
  private static final int LONG = 30;

  private final Jobs jobs = new Jobs();
  private final UUID bench = UUID.randomUUID();
  private final CountDownLatch go = new CountDownLatch(1);

  @AfterEach
  void close() {
    go.countDown();
    jobs.close();
  }

  private Job begin(String key, Jobs.Work work) {
    return jobs.begin(bench, "test", key, work);
  }

  private void waitToGo() throws InterruptedException {
    assertThat(go.await(LONG, TimeUnit.SECONDS)).isTrue();
  }

  /** Every state that a watcher hears of, to the end. */
  private List<Job> watched(Job job) throws InterruptedException {
    BlockingQueue<Job> heard = new LinkedBlockingQueue<>();
    jobs.watch(job.id(), heard::add);
    List<Job> all = new ArrayList<>();
    do {
      Job next = heard.poll(LONG, TimeUnit.SECONDS);
      assertThat(next).as("the work does not end: %s", all).isNotNull();
      all.add(next);
    } while (!all.get(all.size() - 1).ended());
    return all;
  }

  private Job ended(Job job) throws InterruptedException {
    List<Job> all = watched(job);
    return all.get(all.size() - 1);
  }

  @Test
  void done() throws InterruptedException {
    Job job =
        begin(
            "a",
            report -> {
              report.say(0.5, "half way");
              report.say(0.9, "nearly");
            });

    Job end = ended(job);

    assertThat(end.state()).isEqualTo(Job.State.DONE);
    assertThat(end.share()).isEqualTo(1);
    assertThat(end.words()).isEqualTo("nearly");
    assertThat(jobs.latest(bench, "test")).contains(end);
  }

  @Test
  @DisplayName("a watcher that fails does not harm the work nor another watcher")
  void failingWatcher() throws InterruptedException {
    Job job =
        begin(
            "a",
            report -> {
              waitToGo();
              report.say(0.5, "half way");
            });
    List<Job> heard = new ArrayList<>();
    jobs.watch(
        job.id(),
        told -> {
          heard.add(told);
          throw new IllegalStateException("the line is broken");
        });
    jobs.watch(
        job.id(),
        told -> {
          throw new AssertionError("broken worse");
        });
    go.countDown();

    assertThat(ended(job).state()).isEqualTo(Job.State.DONE);
    assertThat(heard).as("once it failed, it is told no more").hasSize(1);
    assertThat(ended(begin("b", report -> {})).state()).isEqualTo(Job.State.DONE);
  }

  @Test
  @DisplayName("a watcher that hangs does not hold up the work")
  void hangingWatcher() throws InterruptedException {
    CountDownLatch done = new CountDownLatch(1);
    Job job =
        begin(
            "a",
            report -> {
              waitToGo();
              for (int i = 0; i < 100; i++) {
                report.say(i / 100.0, "step " + i);
              }
              done.countDown();
            });
    CountDownLatch let = new CountDownLatch(1);
    CountDownLatch hangs = new CountDownLatch(1);
    jobs.watch(
        job.id(),
        told -> {
          hangs.countDown();
          try {
            let.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
        });
    assertThat(hangs.await(LONG, TimeUnit.SECONDS)).isTrue();
    go.countDown();

    assertThat(done.await(LONG, TimeUnit.SECONDS)).isTrue();
    let.countDown();
    assertThat(ended(job).state()).isEqualTo(Job.State.DONE);
  }

  @Test
  @DisplayName("an error ends the work, in words, and the next piece begins")
  void errors() throws InterruptedException {
    Job memory =
        ended(
            begin(
                "a",
                report -> {
                  throw new OutOfMemoryError("Java heap space");
                }));
    assertThat(memory.state()).isEqualTo(Job.State.FAILED);
    assertThat(memory.problem().orElseThrow()).startsWith("the memory was not enough; close");

    Job stack = ended(begin("b", report -> deeper(0)));
    assertThat(stack.state()).isEqualTo(Job.State.FAILED);
    assertThat(stack.problem())
        .contains("the program has a fault, and this was not done; what was stored before is kept");

    Job refused =
        ended(
            begin(
                "c",
                report -> {
                  throw new IllegalArgumentException("a rig too many");
                }));
    assertThat(refused.problem()).contains("a rig too many");
    assertThat(ended(begin("d", report -> {})).state()).isEqualTo(Job.State.DONE);
  }

  private static int deeper(int depth) {
    return depth < 0 ? 0 : deeper(depth + 1) + 1;
  }

  @Test
  @DisplayName("states come in order, each once, and the last is the end")
  void order() throws InterruptedException {
    Job job =
        begin(
            "a",
            report -> {
              for (int i = 0; i < 2_000; i++) {
                report.say(i / 2_000.0, String.valueOf(i));
              }
            });
    List<Job> heard = watched(job);

    assertThat(heard).extracting(Job::share).isSorted();
    assertThat(heard).doesNotHaveDuplicates();
    assertThat(heard.get(heard.size() - 1).ended()).isTrue();
  }

  @Test
  @DisplayName("what runs is not begun twice; what waits can be stopped before it begins")
  void twice() throws InterruptedException {
    Job first = begin("a", report -> waitToGo());
    assertThat(begin("a", report -> {}).id()).isEqualTo(first.id());
    Job second = begin("b", report -> {});
    assertThat(second.id()).isNotEqualTo(first.id());

    jobs.cancel(second.id());
    go.countDown();

    assertThat(ended(first).state()).isEqualTo(Job.State.DONE);
    assertThat(ended(second).state()).isEqualTo(Job.State.STOPPED);
    assertThat(begin("a", report -> {}).id()).isNotEqualTo(first.id());
  }

  @Test
  void stopped() throws InterruptedException {
    CountDownLatch running = new CountDownLatch(1);
    Job job =
        begin(
            "a",
            report -> {
              report.say(0.25, "best so far");
              running.countDown();
              while (!report.cancelled()) {
                Thread.onSpinWait();
              }
            });
    assertThat(running.await(LONG, TimeUnit.SECONDS)).isTrue();
    jobs.cancel(job.id());

    Job end = ended(job);

    assertThat(end.state()).isEqualTo(Job.State.STOPPED);
    assertThat(end.share()).isEqualTo(0.25);
    assertThat(end.words()).isEqualTo("best so far");
  }

  @Test
  void unknown() {
    jobs.watch(UUID.randomUUID(), told -> {}).run();
    jobs.cancel(UUID.randomUUID());

    assertThat(jobs.job(UUID.randomUUID())).isEmpty();
  }
}
