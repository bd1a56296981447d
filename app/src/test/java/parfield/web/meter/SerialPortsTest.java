package parfield.web.meter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class SerialPortsTest {
  @Test
  @DisplayName("ports that the system does not list can be named")
  void named() {
    SerialPorts ports = new SerialPorts(() -> " /dev/one" + File.pathSeparator + "/dev/two ");

    assertThat(ports.list().ports())
        .contains(
            new SerialPorts.Port("/dev/one", "named in PARFIELD_SERIAL_PORTS"),
            new SerialPorts.Port("/dev/two", "named in PARFIELD_SERIAL_PORTS"));
    assertThat(new SerialPorts(() -> null).list().trouble()).isEmpty();
  }
}
