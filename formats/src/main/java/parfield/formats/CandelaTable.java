package parfield.formats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.TreeMap;
import parfield.lamp.AimedIntensity;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.TabulatedIntensity;

/**
 * Luminous intensities by direction as a photometric file holds them, all factors applied, turned
 * into the lamp's own frame: γ from straight down, C from the length axis toward the width axis.
 *
 * <p>Between its nodes it is straight in each angle, beyond them dark. Immutable.
 */
public final class CandelaTable {
  /** Systems of planes (CIE 121, ANSI/IES LM-75). */
  public enum Planes {
    /** Turns about the upright axis of a lamp that shines forward. */
    A,
    /** Turns about the level axis of a lamp that shines forward. */
    B,
    /** Half-planes about the vertical axis of a lamp that shines down. */
    C
  }

  /** What a file leaves out since it follows. */
  public enum Symmetry {
    AXIAL("the same all round"),
    QUADRANTS("the same in four quadrants"),
    ALONG("mirrored at the length axis"),
    ACROSS("mirrored at the width axis"),
    SIDEWAYS("mirrored left and right"),
    NONE("none");

    private final String words;

    Symmetry(String words) {
      this.words = words;
    }

    /** As a sentence goes on with it. */
    public String words() {
      return words;
    }
  }

  private static final double TURN = 360;

  private final Planes planes;
  private final Symmetry symmetry;

  /** C, or turns about the axis of the planes [degrees]. */
  private final double[] around;

  /** γ, or elevations toward the axis of the planes [degrees]. */
  private final double[] along;

  /** Luminous intensities [around][along] [cd]. */
  private final double[][] candela;

  private CandelaTable(
      Planes planes, Symmetry symmetry, double[] around, double[] along, double[][] candela) {
    this.planes = Objects.requireNonNull(planes, "planes");
    this.symmetry = Objects.requireNonNull(symmetry, "symmetry");
    this.around = around;
    this.along = along;
    this.candela = candela;
  }

  /**
   * A table on C-planes.
   *
   * @param symmetry not {@link Symmetry#SIDEWAYS}
   * @param azimuths of the planes in the lamp's own frame [degrees]; one, or all that the symmetry
   *     asks for: 0 to 90, 0 to 180, 90 to 270, or once round; in any order
   * @param gammas [degrees], ascending within 0 to 180, two or more
   * @param candela [azimuth][γ]
   */
  static CandelaTable onC(
      Symmetry symmetry, double[] azimuths, double[] gammas, double[][] candela) {
    TreeMap<Double, double[]> ring = new TreeMap<>();
    for (int i = 0; i < azimuths.length; i++) {
      double azimuth = azimuths[i];
      ring.put(azimuth, candela[i]);
      if (symmetry == Symmetry.ACROSS) {
        ring.putIfAbsent(((TURN / 2 - azimuth) % TURN + TURN) % TURN, candela[i]);
      }
    }
    if (symmetry == Symmetry.AXIAL) {
      ring = new TreeMap<>(Map.of(0.0, candela[0]));
    } else if (symmetry == Symmetry.NONE || symmetry == Symmetry.ACROSS) {
      close(ring);
    }
    double[][] rows = ring.values().toArray(double[][]::new);
    double[] angles = ring.keySet().stream().mapToDouble(it -> it).toArray();
    return fromNadir(symmetry, angles, gammas, rows);
  }

  /**
   * Gives a ring of planes one at 0 and the same at 360 degrees, on the line between neighbours.
   */
  private static void close(NavigableMap<Double, double[]> ring) {
    double[] end = ring.remove(TURN);
    if (end != null) {
      ring.putIfAbsent(0.0, end);
    }
    if (!ring.containsKey(0.0)) {
      Map.Entry<Double, double[]> before = ring.lastEntry();
      Map.Entry<Double, double[]> after = ring.firstEntry();
      double gap = after.getKey() + TURN - before.getKey();
      double share = (TURN - before.getKey()) / gap;
      double[] row = new double[before.getValue().length];
      for (int j = 0; j < row.length; j++) {
        row[j] = before.getValue()[j] * (1 - share) + after.getValue()[j] * share;
      }
      ring.put(0.0, row);
    }
    ring.put(TURN, ring.get(0.0));
  }

  /** How steeply light begins that a file tells of from the horizon on [degrees]. */
  private static final double STEEP = 1e-6;

  private static CandelaTable fromNadir(
      Symmetry symmetry, double[] azimuths, double[] gammas, double[][] rows) {
    if (gammas[0] == 0) {
      double[][] copy = new double[rows.length][];
      Arrays.setAll(copy, i -> rows[i].clone());
      return new CandelaTable(Planes.C, symmetry, azimuths, gammas.clone(), copy);
    }
    double[] all = new double[gammas.length + 2];
    all[1] = gammas[0] - STEEP;
    System.arraycopy(gammas, 0, all, 2, gammas.length);
    double[][] padded = new double[rows.length][all.length];
    for (int i = 0; i < rows.length; i++) {
      System.arraycopy(rows[i], 0, padded[i], 2, gammas.length);
    }
    return new CandelaTable(Planes.C, symmetry, azimuths, all, padded);
  }

  /**
   * A table of aiming angles.
   *
   * @param planes A or B
   * @param mirrored whether only angles to one side are told, the other being alike
   * @param horizontals horizontal angles [degrees], ascending
   * @param verticals vertical angles [degrees], ascending
   * @param candela [horizontal][vertical]
   */
  static CandelaTable aimed(
      Planes planes,
      boolean mirrored,
      double[] horizontals,
      double[] verticals,
      double[][] candela) {
    double[] across = horizontals;
    double[][] rows = candela;
    if (mirrored) {
      TreeMap<Double, double[]> both = new TreeMap<>();
      for (int i = 0; i < horizontals.length; i++) {
        both.put(horizontals[i] + 0.0, candela[i]);
        both.putIfAbsent(0.0 - horizontals[i], candela[i]);
      }
      across = both.keySet().stream().mapToDouble(it -> it).toArray();
      rows = both.values().toArray(double[][]::new);
    }
    Symmetry symmetry = mirrored ? Symmetry.SIDEWAYS : Symmetry.NONE;
    if (planes == Planes.A) {
      double[][] copy = new double[rows.length][];
      for (int i = 0; i < copy.length; i++) {
        copy[i] = rows[i].clone();
      }
      return new CandelaTable(planes, symmetry, across.clone(), verticals.clone(), copy);
    }
    double[][] turned = new double[verticals.length][across.length];
    for (int i = 0; i < across.length; i++) {
      for (int j = 0; j < verticals.length; j++) {
        turned[j][i] = rows[i][j];
      }
    }
    return new CandelaTable(planes, symmetry, verticals.clone(), across.clone(), turned);
  }

  /** The system of its planes. */
  public Planes planes() {
    return planes;
  }

  /** What the file left out. */
  public Symmetry symmetry() {
    return symmetry;
  }

  /** The same table with every intensity multiplied. */
  CandelaTable times(double factor) {
    double[][] scaled = new double[candela.length][];
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] = Arrays.stream(candela[i]).map(it -> it * factor).toArray();
    }
    return new CandelaTable(planes, symmetry, around, along, scaled);
  }

  /**
   * Luminous flux [lm]: the integral of the intensities, straight between the nodes, over all
   * directions; no rule of thumb for zones.
   */
  public double flux() {
    return flux(-TURN, TURN);
  }

  /** Share of the flux that goes below the horizon; of planes A and B all that goes forward. */
  public double downwardShare() {
    double all = flux();
    if (planes == Planes.C) {
      return all > 0 ? flux(0, 90) / all : 0;
    }
    return all > 0 ? 1 : 0;
  }

  private double flux(double from, double to) {
    if (around.length == 1) {
      return 2 * Math.PI * ring(candela[0], from, to);
    }
    double sum = 0;
    for (int i = 0; i + 1 < around.length; i++) {
      double step = Math.toRadians(around[i + 1] - around[i]);
      sum += step * (ring(candela[i], from, to) + ring(candela[i + 1], from, to)) / 2;
    }
    double span = around[around.length - 1] - around[0];
    boolean part = planes == Planes.C && span < TURN;
    return part ? sum * Math.rint(TURN / span) : sum;
  }

  /** ∫ I sin γ dγ, or ∫ I cos(elevation), over one plane within two angles, I straight. */
  private double ring(double[] row, double from, double to) {
    double sum = 0;
    double shift = planes == Planes.C ? 0 : 90;
    for (int j = 0; j + 1 < along.length; j++) {
      double low = Math.max(along[j], from);
      double high = Math.min(along[j + 1], to);
      if (high > low) {
        double slope = (row[j + 1] - row[j]) / (along[j + 1] - along[j]);
        sum +=
            straight(
                Math.toRadians(low + shift),
                Math.toRadians(high + shift),
                row[j] + slope * (low - along[j]),
                row[j] + slope * (high - along[j]));
      }
    }
    return sum;
  }

  /** ∫ I sin t dt from a to b for I straight from p to q, by parts. */
  private static double straight(double a, double b, double p, double q) {
    double slope = (q - p) / (b - a);
    // sin b − sin a, without the cancellation that a short step would suffer.
    double sines = 2 * Math.cos((a + b) / 2) * Math.sin((b - a) / 2);
    return p * Math.cos(a) - q * Math.cos(b) + slope * sines;
  }

  /** The highest intensity [cd]. */
  public double peak() {
    double peak = 0;
    for (double[] row : candela) {
      peak = Math.max(peak, Arrays.stream(row).max().orElse(0));
    }
    return peak;
  }

  /** The luminous intensity in a direction [cd]: γ from straight down, C from the length axis. */
  public double candela(double gamma, double azimuth) {
    return distribution(1).intensity(gamma, azimuth);
  }

  /**
   * The distribution of these intensities times a factor.
   *
   * @param factor above 0, as µmol s⁻¹ sr⁻¹ per cd
   */
  public IntensityDistribution distribution(double factor) {
    double[] turns = Arrays.stream(around).map(Math::toRadians).toArray();
    double[] other = Arrays.stream(along).map(Math::toRadians).toArray();
    double[][] scaled = times(factor).candela;
    if (planes != Planes.C) {
      return new AimedIntensity(
          planes == Planes.A ? AimedIntensity.Axis.UPRIGHT : AimedIntensity.Axis.LEVEL,
          turns,
          other,
          scaled);
    }
    double[][] byGamma = new double[along.length][around.length];
    for (int i = 0; i < around.length; i++) {
      for (int j = 0; j < along.length; j++) {
        byGamma[j][i] = scaled[i][j];
      }
    }
    return new TabulatedIntensity(other, turns, byGamma);
  }

  /** Both lists of angles in short, for people. */
  static String span(double[] angles) {
    List<String> ends = new ArrayList<>();
    ends.add(NumberText.shown(angles[0]));
    if (angles.length > 1) {
      ends.add(NumberText.shown(angles[angles.length - 1]));
    }
    return String.format(Locale.ROOT, "%d at %s degrees", angles.length, String.join(" to ", ends));
  }
}
