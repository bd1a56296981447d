package parfield.survey;

import java.util.List;
import java.util.Objects;

/**
 * How much lies below, inside and above a band; the three shares add up to 1.
 *
 * <p>What the shares are of, the owner says in its name: of readings, of a plane's area, of the
 * water volume.
 *
 * @param band the wanted range
 * @param below share under its lower end, 0 to 1
 * @param inside share inside, both ends included, 0 to 1: the coverage
 * @param above share over its upper end, 0 to 1
 */
public record Coverage(Band band, double below, double inside, double above) {
  public Coverage {
    Objects.requireNonNull(band, "band");
  }

  /** Counts values, each with the same weight; at least one. */
  static Coverage of(double[] ppfd, Band band) {
    int below = 0;
    int inside = 0;
    for (double value : ppfd) {
      if (value < band.from()) {
        below++;
      } else if (value <= band.to()) {
        inside++;
      }
    }
    double n = ppfd.length;
    return new Coverage(band, below / n, inside / n, (ppfd.length - below - inside) / n);
  }

  static List<Coverage> ofEach(double[] ppfd, List<Band> bands) {
    return bands.stream().map(band -> of(ppfd, band)).toList();
  }
}
