package parfield.photon;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Opening;
import parfield.tank.Tank;

/**
 * Light of the fixtures of a rig, every channel at full output.
 *
 * <p>Emitters are drawn alike; a packet leaves anywhere on the emitter's aperture. Two ways to draw
 * its direction are mixed: as the lamp sends light, which finds what misses the tank too, and
 * evenly over the opening, which sends as many packets to the dim ends of a tank as under the lamp.
 * The packet's weight makes up for both together (the balance heuristic of Veach and Guibas 1995).
 * Single-threaded.
 */
final class RigEmission implements Emission {
  /** Share of the packets whose directions are drawn as the lamp sends light. */
  private static final double AS_SENT = 0.25;

  /** No emitter dips into the water, and none lies in the plane that it aims at [m]. */
  private static final double LOWEST = 1e-3;

  private final List<Lamp> lamps = new ArrayList<>();
  private final int channels;
  private final Opening opening;
  private final double fromX;
  private final double fromY;
  private final double spanX;
  private final double spanY;
  private final double[] direction = new double[2];

  /** One emitter of one hanging. */
  private record Lamp(
      Hanging hanging,
      Emitter emitter,
      int firstChannel,
      DirectionTable directions,
      IntensityDistribution[] distributions,
      double[] factor,
      double[][] shares,
      Frame frame) {}

  /** Turns the lamp's frame into the tank's: the axis is tilted toward +y, then turned. */
  private record Frame(double cosYaw, double sinYaw, double cosTilt, double sinTilt) {
    static Frame of(Hanging hanging) {
      return new Frame(
          Math.cos(hanging.yaw()),
          Math.sin(hanging.yaw()),
          Math.cos(hanging.tilt()),
          Math.sin(hanging.tilt()));
    }
  }

  /** The tables of a rig's fixtures, shared by all threads. */
  static List<DirectionTable> tables(Rig rig) {
    return rig.hangings().stream()
        .map(hanging -> DirectionTable.of(distributions(hanging.fixture())))
        .toList();
  }

  private static List<IntensityDistribution> distributions(Fixture fixture) {
    return fixture.channels().stream().map(c -> c.distribution().orElseThrow()).toList();
  }

  /**
   * The emission of a rig.
   *
   * @param rig every channel must carry a distribution
   * @param tables of the same rig
   * @param bands that packets carry
   */
  RigEmission(Rig rig, List<DirectionTable> tables, Wavebands bands) {
    Tank tank = rig.tank();
    opening = tank.opening();
    fromX = opening.rim();
    fromY = opening.rim();
    spanX = tank.length() - 2 * opening.rim();
    spanY = tank.width() - 2 * opening.rim();
    int first = 0;
    for (int h = 0; h < rig.hangings().size(); h++) {
      Hanging hanging = rig.hangings().get(h);
      Fixture fixture = hanging.fixture();
      double[][] shares =
          fixture.channels().stream()
              .map(Channel::spectrumOrFlat)
              .map(bands::shares)
              .toArray(double[][]::new);
      for (Emitter emitter : fixture.emitters()) {
        lamps.add(
            new Lamp(
                hanging,
                emitter,
                first,
                tables.get(h),
                distributions(fixture).toArray(IntensityDistribution[]::new),
                new double[fixture.channels().size()],
                shares,
                Frame.of(hanging)));
      }
      first += fixture.channels().size();
    }
    channels = first;
  }

  @Override
  public int channels() {
    return channels;
  }

  @Override
  public void launch(Packet packet, double[] even, SplittableRandom random) {
    double drawn = even[0] * lamps.size();
    int index = Math.min((int) drawn, lamps.size() - 1);
    Lamp lamp = lamps.get(index);
    leave(packet, lamp, even[3], even[4]);
    // The plane that light passes through on its way in: that of the rim, or the water line for a
    // lamp that hangs lower than the rim.
    double fall = -opening.freeboard() - packet.z;
    double height = fall > LOWEST ? fall : -packet.z;
    if (drawn - index < AS_SENT) {
      lamp.directions().draw(even[1], even[2], direction);
      aim(packet, lamp.frame());
    } else {
      packet.dx = fromX + even[1] * spanX - packet.x;
      packet.dy = fromY + even[2] * spanY - packet.y;
      packet.dz = height;
      packet.normalise();
      readDirection(packet, lamp.frame());
    }
    double density =
        AS_SENT * lamp.directions().density(direction[0], direction[1])
            + (1 - AS_SENT) * densityOverOpening(packet, height);
    double perPacket = lamps.size() / density;
    double[] factor = lamp.factor();
    for (int c = 0; c < factor.length; c++) {
      factor[c] = lamp.distributions()[c].intensity(direction[0], direction[1]) * perPacket;
    }
    packet.launch(lamp.firstChannel(), factor, lamp.shares());
  }

  private static void leave(Packet packet, Lamp lamp, double alongShare, double acrossShare) {
    Emitter emitter = lamp.emitter();
    Hanging hanging = lamp.hanging();
    Frame frame = lamp.frame();
    double u = emitter.x() + (alongShare - 0.5) * emitter.aperture();
    double v = emitter.y() + (acrossShare - 0.5) * emitter.aperture();
    double across = v * frame.cosTilt;
    packet.x = hanging.x() + u * frame.cosYaw - across * frame.sinYaw;
    packet.y = hanging.y() + u * frame.sinYaw + across * frame.cosYaw;
    packet.z = -Math.max(LOWEST, hanging.height() + v * frame.sinTilt);
  }

  /** From the angles in the lamp's frame to the direction in the tank's. */
  private void aim(Packet packet, Frame frame) {
    double cosine = Math.cos(direction[0]);
    double sine = Math.sin(direction[0]);
    double along = sine * Math.cos(direction[1]);
    double lampAcross = sine * Math.sin(direction[1]);
    double across = lampAcross * frame.cosTilt + cosine * frame.sinTilt;
    packet.dx = along * frame.cosYaw - across * frame.sinYaw;
    packet.dy = along * frame.sinYaw + across * frame.cosYaw;
    packet.dz = cosine * frame.cosTilt - lampAcross * frame.sinTilt;
  }

  /** The way back: from the direction in the tank's frame to the angles in the lamp's. */
  private void readDirection(Packet packet, Frame frame) {
    double along = packet.dx * frame.cosYaw + packet.dy * frame.sinYaw;
    double across = packet.dy * frame.cosYaw - packet.dx * frame.sinYaw;
    double lampAcross = across * frame.cosTilt - packet.dz * frame.sinTilt;
    double lampDown = across * frame.sinTilt + packet.dz * frame.cosTilt;
    direction[0] = Math.atan2(Math.sqrt(along * along + lampAcross * lampAcross), lampDown);
    direction[1] = Math.atan2(lampAcross, along);
  }

  /** Probability per solid angle with which the even way over the opening draws a direction. */
  private double densityOverOpening(Packet packet, double height) {
    if (packet.dz <= 0) {
      return 0;
    }
    double distance = height / packet.dz;
    double x = packet.x + distance * packet.dx - fromX;
    double y = packet.y + distance * packet.dy - fromY;
    if (!(x >= 0 && x <= spanX && y >= 0 && y <= spanY)) {
      return 0;
    }
    return distance * distance / (packet.dz * spanX * spanY);
  }
}
