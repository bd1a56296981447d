package parfield.web.meter;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A meter at a serial port: eight bits, no parity, one stop bit. Where the port goes away, it is
 * tried again until the meter is closed. Thread-safe.
 */
final class SerialMeter implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SerialMeter.class);

  /** Longest wait for bytes before the port is looked at [ms]. */
  private static final int WAIT = 200;

  /** The system's number for a file that is not there (POSIX ENOENT). */
  private static final int NOT_THERE = 2;

  private static final long FIRST_PAUSE = 500;
  private static final long LONGEST_PAUSE = 4000;

  private final String path;
  private final int baud;
  private final Ear ear;
  private final Thread thread;
  private volatile boolean closed;

  /** What becomes of it; called on one thread. */
  interface Ear {
    /** The port is open, told in words; what comes may begin within a line. */
    void opened(String words);

    /** The port is away, and is tried again. */
    void away(String why);

    /** Bytes came. */
    void heard(byte[] bytes, int length);
  }

  /** Opens a port and listens until it is closed. */
  SerialMeter(String path, int baud, Ear ear) {
    this.path = path;
    this.baud = baud;
    this.ear = ear;
    this.thread = new Thread(this::run, "parfield-serial");
    thread.setDaemon(true);
  }

  /** Begins. */
  void start() {
    thread.start();
  }

  String path() {
    return path;
  }

  int baud() {
    return baud;
  }

  private void run() {
    long pause = FIRST_PAUSE;
    while (!closed) {
      try {
        SerialPort port = SerialPort.getCommPort(path);
        port.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, WAIT, 0);
        if (port.openPort()) {
          pause = FIRST_PAUSE;
          try {
            ear.opened(path + " at " + baud + " baud");
            listen(port);
          } finally {
            port.closePort();
          }
          if (!closed) {
            ear.away(path + " has gone: is the plug out? It is tried again");
          }
        } else {
          ear.away(refused(port.getLastErrorCode()));
        }
      } catch (SerialPortInvalidPortException e) {
        ear.away(refused(NOT_THERE));
      } catch (LinkageError | RuntimeException e) {
        LOG.warn("serial port {} failed", path, e);
        ear.away(path + " cannot be used: " + e.getMessage() + ". It is tried again");
      }
      pause = rest(pause);
    }
  }

  /** The usual numbers of the system's errors (POSIX errno). */
  private String refused(int code) {
    return switch (code) {
      case NOT_THERE, 6, 19 -> path + " is not there: is the meter plugged in? It is tried again";
      case 13, 1 ->
          path
              + " may not be opened by this user: on Linux, join the group dialout, and sign in"
              + " again";
      case 16 -> path + " is in use by another program: close that one. It is tried again";
      default ->
          String.format(
              Locale.ROOT, "%s cannot be opened (error %d). It is tried again", path, code);
    };
  }

  private void listen(SerialPort port) {
    byte[] bytes = new byte[1024];
    while (!closed) {
      int read = port.readBytes(bytes, bytes.length);
      if (read < 0 || (read == 0 && port.bytesAvailable() < 0)) {
        return;
      }
      if (read > 0) {
        ear.heard(bytes, read);
      }
    }
  }

  private long rest(long pause) {
    if (!closed) {
      try {
        TimeUnit.MILLISECONDS.sleep(pause);
      } catch (InterruptedException e) {
        closed = true;
        Thread.currentThread().interrupt();
      }
    }
    return Math.min(LONGEST_PAUSE, 2 * pause);
  }

  /** Closes the port and waits until it is free. */
  @Override
  public void close() {
    closed = true;
    thread.interrupt();
    try {
      thread.join(TimeUnit.SECONDS.toMillis(3));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
