package parfield.cli;

import java.util.stream.DoubleStream;
import parfield.answer.Bench;
import parfield.answer.Refusal;
import parfield.tank.Place;
import parfield.units.LengthUnit;
import picocli.CommandLine.Option;

/** A place in the water that a command is asked about; the same for all of them. */
final class PlaceOption {
  @Option(
      names = "--at",
      paramLabel = "X,Y,DEPTH",
      converter = LengthsConverter.class,
      description = "The place; default: the middle, at the usual depth of the readings.")
  private LengthsConverter.Lengths at;

  /**
   * The place that was asked for.
   *
   * @throws Refusal if it is none, or not in the water
   */
  Place in(Bench bench, LengthUnit unit) {
    if (at == null) {
      return bench.checked(
          new Place(
              bench.setup().tank().length() / 2,
              bench.setup().tank().width() / 2,
              bench.usualDepth()),
          unit);
    }
    double[] metres = at.metres(unit).stream().flatMapToDouble(DoubleStream::of).toArray();
    if (metres.length != 3) {
      throw Refusal.of(
          "a place is x, y and depth: three lengths; got " + metres.length,
          "write it as in --at 45,30,20");
    }
    return bench.checked(new Place(metres[0], metres[1], metres[2]), unit);
  }
}
