package parfield.cli;

import java.util.List;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.plan.Mix;
import parfield.plan.Search;
import parfield.units.LengthUnit;
import picocli.CommandLine.Option;

/** Where a command looks for rigs; the same for all that recommend. */
final class Searching {
  @Option(
      names = "--counts",
      paramLabel = "N,...",
      split = ",",
      hideParamSyntax = true,
      description = "Numbers of fixtures; default: 1 to as many as the fullest rig has.")
  private List<Integer> counts = List.of();

  @Option(
      names = "--heights",
      paramLabel = "LENGTHS",
      converter = LengthsConverter.class,
      description =
          "Mounting heights, as in 15,20,30 or 15:40:5; default: from the lowest of the rigs to"
              + " the highest, at least to twice the lowest. The lowest is the reference of"
              + " retention.")
  private LengthsConverter.Lengths heights;

  @Option(
      names = "--spacings",
      paramLabel = "LENGTHS",
      converter = LengthsConverter.class,
      description = "Centre to centre, as in 40:70:5; default: derived from the tank's length.")
  private LengthsConverter.Lengths spacings;

  @Option(
      names = "--depth",
      paramLabel = "LENGTH",
      description = "Plane to report on beside the water volume; default: that of most readings.")
  private Double depth;

  @Option(
      names = "--free-mix",
      description = "Dial every channel by itself; default: their ratio is kept as in the rigs.")
  private boolean freeMix;

  /** The search that was asked for; what was left open is as the bench suggests. */
  Search search(Bench bench, LengthUnit unit) {
    Search search = Advice.search(bench, plane(bench, unit));
    if (!counts.isEmpty()) {
      search = search.withCounts(counts);
    }
    if (heights != null) {
      search = search.withHeights(heights.metres(unit));
    }
    if (spacings != null) {
      search = search.withSpacings(spacings.metres(unit));
    }
    if (freeMix) {
      search = search.withMix(Mix.FREE);
    }
    return search;
  }

  private double plane(Bench bench, LengthUnit unit) {
    return depth == null ? bench.usualDepth() : unit.toMetres(depth);
  }
}
