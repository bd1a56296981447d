package parfield.survey;

import java.util.List;
import java.util.Objects;
import parfield.field.Places;
import parfield.rig.Rig;

/**
 * Readings taken with one rig and one meter.
 *
 * @param name what the bench calls it
 * @param rig what hung over the tank, at which setting
 * @param meter what was read with
 * @param readings at least one
 */
public record Survey(String name, Rig rig, Meter meter, List<Reading> readings) {
  public Survey {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(rig, "rig");
    Objects.requireNonNull(meter, "meter");
    readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw new IllegalArgumentException(
          String.format("survey %s holds no reading; take at least one", name));
    }
  }

  /** Places of the readings, in their order. */
  public Places places() {
    return Places.of(readings.stream().map(Reading::place).toList());
  }

  /** PPFD of the readings after the meter's corrections [µmol m⁻² s⁻¹], in their order. */
  public double[] ppfd() {
    return readings.stream().mapToDouble(reading -> meter.ppfd(reading.value())).toArray();
  }

  /** This survey with other readings. */
  public Survey withReadings(List<Reading> newReadings) {
    return new Survey(name, rig, meter, newReadings);
  }
}
