package parfield.care;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.rig.Rig;

/**
 * The output of every channel of a rig through the day of a program.
 *
 * <p>A ramp moves the dial evenly; the light follows the output curve. A dial that a program holds
 * at 0 gives no light, whatever the curve says at 0: the channel is switched off. Masters stand
 * where the rig dials them. Immutable.
 */
public final class DayOutputs {
  /** Step at which the day is looked through for its brightest moments [s]. */
  private static final int LOOK = 60;

  /** A spell on one channel of one hanging: where its dial stands on the plateau [%]. */
  private record Lit(LitSpell spell, double dial, OutputCurve curve) {
    double output(double secondOfDay) {
      double share = spell.share(secondOfDay);
      return share > 0 && dial > 0 ? curve.outputAt(share * dial) : 0;
    }

    /** Seconds at full output that give the same light. */
    double fullSeconds() {
      if (dial == 0) {
        return 0;
      }
      double ramps = spell.rampUp().toSeconds() + spell.rampDown().toSeconds();
      return ramps * curve.integral(0, dial) / dial
          + spell.plateau().toSeconds() * curve.outputAt(dial);
    }
  }

  private final DailyProgram program;
  private final List<List<List<Lit>>> lit;

  private DayOutputs(DailyProgram program, List<List<List<Lit>>> lit) {
    this.program = program;
    this.lit = lit;
  }

  /**
   * The day of a rig.
   *
   * @param program when its channels are lit
   * @param rig at the setting that a level of 100 % stands for
   * @throws IllegalArgumentException if the program names a channel that the rig has not
   */
  public static DayOutputs of(DailyProgram program, Rig rig) {
    program.requireChannels(rig);
    return new DayOutputs(
        program,
        rig.hangings().stream()
            .map(
                hanging ->
                    hanging.fixture().channels().stream()
                        .map(channel -> lit(program, hanging.fixture(), hanging.setting(), channel))
                        .toList())
            .toList());
  }

  private static List<Lit> lit(
      DailyProgram program, Fixture fixture, Setting setting, Channel channel) {
    double percent = setting.percent(channel.name());
    for (Master master : fixture.masters()) {
      if (master.scales().contains(channel.name())) {
        percent *= setting.percent(master.name()) / 100;
      }
    }
    double full = percent;
    return program.spells().stream()
        .filter(spell -> spell.channel().equals(channel.name()))
        .map(spell -> new Lit(spell, full * spell.level() / 100, channel.curve()))
        .toList();
  }

  /** The program. */
  public DailyProgram program() {
    return program;
  }

  /**
   * Outputs at a time of day.
   *
   * @param secondOfDay 0 to 86 400
   * @return fraction of full output [hanging][channel]
   */
  public double[][] at(double secondOfDay) {
    double[][] outputs = new double[lit.size()][];
    for (int h = 0; h < outputs.length; h++) {
      outputs[h] =
          lit.get(h).stream()
              .mapToDouble(
                  spells -> spells.stream().mapToDouble(spell -> spell.output(secondOfDay)).sum())
              .toArray();
    }
    return outputs;
  }

  /**
   * The light of the day as time at full output, exact: ∫ output dt.
   *
   * @return [hanging][channel] [s]
   */
  public double[][] fullSeconds() {
    double[][] seconds = new double[lit.size()][];
    for (int h = 0; h < seconds.length; h++) {
      seconds[h] =
          lit.get(h).stream()
              .mapToDouble(spells -> spells.stream().mapToDouble(Lit::fullSeconds).sum())
              .toArray();
    }
    return seconds;
  }

  /**
   * Outputs at the moments that can be the brightest somewhere: those of which no other moment has
   * every channel as bright. Looked for at each minute and at each end of a ramp; where one moment
   * has every channel at its most, it is the only one, and exact.
   *
   * @return [moment][hanging][channel], at least one moment
   */
  public double[][][] brightest() {
    TreeSet<Double> times = new TreeSet<>(program.edges());
    for (int second = 0; second < LitSpell.DAY; second += LOOK) {
      times.add((double) second);
    }
    List<double[][]> best = new ArrayList<>();
    for (double time : times) {
      double[][] outputs = at(time);
      if (best.stream().noneMatch(other -> asBright(other, outputs))) {
        best.removeIf(other -> asBright(outputs, other));
        best.add(outputs);
      }
    }
    return best.toArray(double[][][]::new);
  }

  private static boolean asBright(double[][] one, double[][] other) {
    for (int h = 0; h < one.length; h++) {
      for (int c = 0; c < one[h].length; c++) {
        if (one[h][c] < other[h][c]) {
          return false;
        }
      }
    }
    return true;
  }

  /**
   * Times of day between which a curve through the day has no corner, and steps of ten minutes: for
   * a picture.
   *
   * @return seconds of the day, ascending, 0 and 86 400 among them
   */
  public double[] moments() {
    TreeSet<Double> times = new TreeSet<>(program.edges());
    for (double edge : program.edges()) {
      // A step is drawn as a step.
      times.add(Math.max(0, edge - 1));
      times.add(Math.min(LitSpell.DAY, edge + 1));
    }
    for (int second = 0; second <= LitSpell.DAY; second += 600) {
      times.add((double) second);
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }

  @Override
  public String toString() {
    return "DayOutputs" + Arrays.deepToString(fullSeconds());
  }
}
