package parfield.web.door;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.LoggerFactory;

/** Under which addresses other devices of the network reach this machine. */
public final class OwnAddresses {
  private OwnAddresses() {}

  /** The IPv4 addresses of interfaces that are up, private ones first. */
  public static List<String> hosts() {
    List<String> own = new ArrayList<>();
    List<String> others = new ArrayList<>();
    try {
      for (NetworkInterface face : NetworkInterface.networkInterfaces().toList()) {
        if (face.isUp() && !face.isLoopback()) {
          for (InetAddress address : face.inetAddresses().toList()) {
            if (address instanceof Inet4Address) {
              (address.isSiteLocalAddress() ? own : others).add(address.getHostAddress());
            }
          }
        }
      }
    } catch (SocketException e) {
      LoggerFactory.getLogger(OwnAddresses.class)
          .warn("the addresses of this machine cannot be listed", e);
    }
    own.addAll(others);
    return own;
  }
}
