package parfield.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Ctrl-C, taken as "enough": while one of these is open, the process does not end before the work
 * has stopped and told the best it has. It then ends with the exit code of an interrupted process.
 */
final class Interruption implements AutoCloseable {
  /** The longest that the process waits for the work to stop [s]. */
  private static final long PATIENCE = 60;

  private final AtomicBoolean asked = new AtomicBoolean();
  private final CountDownLatch told = new CountDownLatch(1);
  private final Thread hook = new Thread(this::hold, "interruption");

  Interruption() {
    Runtime.getRuntime().addShutdownHook(hook);
  }

  /** Whether the person has had enough. */
  boolean asked() {
    return asked.get();
  }

  private void hold() {
    asked.set(true);
    try {
      if (!told.await(PATIENCE, TimeUnit.SECONDS)) {
        return;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** The best is told: the process may end. */
  @Override
  public void close() {
    told.countDown();
    if (!asked.get()) {
      try {
        Runtime.getRuntime().removeShutdownHook(hook);
      } catch (IllegalStateException e) {
        // The process began to end in this very moment: the hook runs, and finds its work done.
        asked.set(true);
      }
    }
  }
}
