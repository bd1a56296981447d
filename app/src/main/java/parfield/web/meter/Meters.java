package parfield.web.meter;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The meters of all surveys, and the ports that are open. Thread-safe. */
final class Meters implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Meters.class);

  /** Pages are told at most this often [ms]. */
  private static final long PACE = 100;

  private final LongSupplier clock;
  private final BiConsumer<UUID, ObjectNode> pages;
  private final Map<UUID, MeterStream> streams = new ConcurrentHashMap<>();
  private final Map<UUID, SerialMeter> ports = new LinkedHashMap<>();
  private final ScheduledFuture<?> telling;
  private final ScheduledExecutorService teller =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "parfield-meter");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * Meters.
   *
   * @param clock milliseconds that only go forward
   * @param pages is told how the meter of a survey stands, whenever that changed
   */
  Meters(LongSupplier clock, BiConsumer<UUID, ObjectNode> pages) {
    this.clock = clock;
    this.pages = pages;
    this.telling = teller.scheduleWithFixedDelay(this::tell, PACE, PACE, TimeUnit.MILLISECONDS);
  }

  /** Meters by the clock of this machine. */
  static Meters now(BiConsumer<UUID, ObjectNode> pages) {
    return new Meters(() -> TimeUnit.NANOSECONDS.toMillis(System.nanoTime()), pages);
  }

  /** The time [ms]. */
  long time() {
    return clock.getAsLong();
  }

  /** The meter of a survey, which exists. */
  MeterStream of(UUID survey) {
    return streams.computeIfAbsent(survey, id -> new MeterStream());
  }

  private void tell() {
    streams.forEach(
        (survey, stream) -> {
          try {
            stream.news(time()).ifPresent(news -> pages.accept(survey, news));
          } catch (RuntimeException e) {
            LOG.warn("pages of survey {} were not told of the meter", survey, e);
          }
        });
  }

  /** Reads a survey's meter at a port. Whoever used the port before no longer does. */
  synchronized void open(UUID survey, String path, int baud) {
    close(survey);
    Optional<UUID> before =
        ports.entrySet().stream()
            .filter(open -> open.getValue().path().equals(path))
            .map(Map.Entry::getKey)
            .findFirst();
    before.ifPresent(this::close);
    MeterStream stream = of(survey);
    MeterStream.Source source = new MeterStream.Source(true, path);
    stream.claimSource(source, time());
    stream.link("Opening " + path, false, time());
    SerialMeter meter = new SerialMeter(path, baud, new SerialEar(stream));
    ports.put(survey, meter);
    meter.start();
  }

  /** No longer reads a survey's meter at a port. */
  synchronized void close(UUID survey) {
    SerialMeter open = ports.remove(survey);
    if (open != null) {
      open.close();
      of(survey).release(new MeterStream.Source(true, open.path()));
    }
  }

  /** The port that is read for a survey. */
  synchronized Optional<SerialMeter> port(UUID survey) {
    return Optional.ofNullable(ports.get(survey));
  }

  private final class SerialEar implements SerialMeter.Ear {
    private final MeterStream stream;
    private LineReader reader = new LineReader(false);

    SerialEar(MeterStream stream) {
      this.stream = stream;
    }

    @Override
    public void opened(String words) {
      reader = new LineReader(false);
      stream.link(words, false, time());
    }

    @Override
    public void away(String why) {
      stream.link(why, true, time());
    }

    @Override
    public void heard(byte[] bytes, int length) {
      long now = time();
      reader.accept(bytes, length).forEach(line -> stream.hear(line, now));
    }
  }

  /** Closes every port, and tells pages nothing more. */
  @Override
  public void close() {
    telling.cancel(false);
    teller.shutdownNow();
    List<SerialMeter> open;
    synchronized (this) {
      open = List.copyOf(ports.values());
      ports.clear();
    }
    open.forEach(SerialMeter::close);
  }
}
