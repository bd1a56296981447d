package parfield.plan;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * What a figure is a share or a mean of: a plane's area, the water volume or the living surface,
 * kept apart by name. What is in rock belongs to none of them.
 */
public sealed interface Extent {
  /** The zone that it is limited to; empty for the whole tank. */
  Optional<Zone> zone();

  /** The same extent limited to a zone. */
  Extent within(Zone zone);

  /** In words, such as "the plane 20 cm deep" or "the water volume of zone reef". */
  String inWords(LengthUnit unit);

  /**
   * Checks that the extent lies in the water.
   *
   * @throws IllegalArgumentException if it does not; the message says what, where and the limit
   */
  void checkInside(Tank tank);

  /** The whole water volume. */
  static Extent volume() {
    return new Volume(Optional.empty());
  }

  /** The whole horizontal plane at a depth [m]. */
  static Extent plane(double depth) {
    return new Plane(depth, Optional.empty());
  }

  /** All that coral can live on. */
  static Extent livingSurface() {
    return new Living(Optional.empty());
  }

  /**
   * The water volume, of the whole tank or of a zone.
   *
   * @param zone which part; empty for all
   */
  record Volume(Optional<Zone> zone) implements Extent {
    public Volume {
      Objects.requireNonNull(zone, "zone");
    }

    @Override
    public Extent within(Zone newZone) {
      return new Volume(Optional.of(newZone));
    }

    @Override
    public String inWords(LengthUnit unit) {
      return "the water volume" + zone.map(z -> " of zone " + z.name()).orElse("");
    }

    @Override
    public void checkInside(Tank tank) {
      zone.ifPresent(z -> z.checkInside(tank));
    }
  }

  /**
   * A horizontal plane, of the whole tank or of a zone.
   *
   * @param depth below the surface [m], 0 or more
   * @param zone which part; empty for all; it must hold the depth
   */
  record Plane(double depth, Optional<Zone> zone) implements Extent {
    public Plane {
      Objects.requireNonNull(zone, "zone");
      if (!(depth >= 0) || Double.isInfinite(depth)) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "a plane's depth must be 0 m or more; got %s m", depth));
      }
      if (zone.isPresent() && !(depth >= zone.get().fromDepth() && depth <= zone.get().toDepth())) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the plane %s m deep does not cut zone %s, which runs from %s to %s m",
                depth,
                zone.get().name(),
                zone.get().fromDepth(),
                zone.get().toDepth()));
      }
    }

    @Override
    public Extent within(Zone newZone) {
      return new Plane(depth, Optional.of(newZone));
    }

    @Override
    public String inWords(LengthUnit unit) {
      return String.format(
          Locale.ROOT,
          "the plane %s %s deep%s",
          Wording.number(unit.fromMetres(depth), 1),
          unit.symbol(),
          zone.map(z -> " of zone " + z.name()).orElse(""));
    }

    @Override
    public void checkInside(Tank tank) {
      if (depth > tank.depth()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the plane %s m deep lies below the bottom; the water is %s m deep",
                depth,
                tank.depth()));
      }
      zone.ifPresent(z -> z.checkInside(tank));
    }
  }

  /**
   * The surface that coral can live on, of the whole tank or of a zone: faces of rocks that look
   * upward and the free bottom. Its light is what a sensor that faces up reads there.
   *
   * @param zone which part; empty for all
   * @see parfield.aquascape.LivingSurface
   */
  record Living(Optional<Zone> zone) implements Extent {
    public Living {
      Objects.requireNonNull(zone, "zone");
    }

    @Override
    public Extent within(Zone newZone) {
      return new Living(Optional.of(newZone));
    }

    @Override
    public String inWords(LengthUnit unit) {
      return "the living surface" + zone.map(z -> " of zone " + z.name()).orElse("");
    }

    @Override
    public void checkInside(Tank tank) {
      zone.ifPresent(z -> z.checkInside(tank));
    }
  }
}
