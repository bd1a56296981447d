package parfield.web.meter;

import com.fazecast.jSerialComm.SerialPort;
import java.io.File;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The serial ports of this machine. Thread-safe. */
public final class SerialPorts {
  /** Environment variable that names ports which the system does not list, as paths are joined. */
  public static final String VARIABLE = "PARFIELD_SERIAL_PORTS";

  /** System property that is asked where the variable is not set. */
  static final String PROPERTY = "parfield.serial.ports";

  private static final Logger LOG = LoggerFactory.getLogger(SerialPorts.class);

  private final Supplier<String> others;

  /**
   * A port.
   *
   * @param path by which it is opened, as {@code /dev/ttyUSB0} or {@code COM3}
   * @param description what the system says about it
   */
  public record Port(String path, String description) {
    public Port {
      Objects.requireNonNull(path, "path");
      Objects.requireNonNull(description, "description");
    }
  }

  /**
   * The ports that the system lists, and others.
   *
   * @param others paths of ports beside, joined as {@link File#pathSeparator} says; may give null
   */
  public SerialPorts(Supplier<String> others) {
    this.others = others;
  }

  /** The ports that the system lists, and those of {@link #VARIABLE} or {@link #PROPERTY}. */
  public static SerialPorts ofThisMachine() {
    return new SerialPorts(
        () -> System.getenv().getOrDefault(VARIABLE, System.getProperty(PROPERTY)));
  }

  /**
   * What can be chosen.
   *
   * @param ports that are there now
   * @param trouble why the system's ports cannot be listed; empty if they were
   */
  public record Listing(List<Port> ports, Optional<String> trouble) {
    public Listing {
      ports = List.copyOf(ports);
      Objects.requireNonNull(trouble, "trouble");
    }
  }

  /** The ports that are there now; asking again finds those that were plugged in meanwhile. */
  public Listing list() {
    Map<String, Port> ports = new LinkedHashMap<>();
    Optional<String> trouble = Optional.empty();
    try {
      for (SerialPort port : SerialPort.getCommPorts()) {
        String path = port.getSystemPortPath();
        ports.putIfAbsent(path, new Port(path, port.getDescriptivePortName()));
      }
    } catch (LinkageError | RuntimeException e) {
      LOG.warn("serial ports cannot be listed", e);
      trouble =
          Optional.of(
              "serial ports cannot be used on this machine: post the meter's lines instead");
    }
    String named = others.get();
    if (named != null) {
      Arrays.stream(named.split(File.pathSeparator))
          .map(String::strip)
          .filter(path -> !path.isEmpty())
          .forEach(path -> ports.putIfAbsent(path, new Port(path, "named in " + VARIABLE)));
    }
    return new Listing(List.copyOf(ports.values()), trouble);
  }
}
