package parfield.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.lamp.Setting;

/** From the light that each channel shall give to what a person turns, in whole percent. */
public final class Dials {
  private Dials() {}

  /**
   * The setting that comes nearest to wanted outputs.
   *
   * <p>A master carries the level of the channels it scales and their own dials carry the ratio;
   * where masters overlap, the one that scales most channels is turned and the rest stay at 100. A
   * channel without a master carries its level itself.
   *
   * @param fixture whose dials
   * @param outputs fraction of full output of each channel, 0 to 1
   */
  public static Setting settingFor(Fixture fixture, double[] outputs) {
    return setting(fixture, outputs, Math::rint);
  }

  /** The setting that gives wanted outputs exactly: its percents need not be whole. */
  static Setting exactFor(Fixture fixture, double[] outputs) {
    return setting(fixture, outputs, DoubleUnaryOperator.identity());
  }

  private static Setting setting(Fixture fixture, double[] outputs, DoubleUnaryOperator percent) {
    Map<String, Double> levels = new TreeMap<>();
    for (int c = 0; c < outputs.length; c++) {
      double output = Math.max(0, Math.min(1, outputs[c]));
      levels.put(
          fixture.channels().get(c).name(), fixture.channels().get(c).curve().dialFor(output));
    }
    Map<String, Double> dials = new TreeMap<>();
    for (Master master : turned(fixture)) {
      double most = master.scales().stream().mapToDouble(levels::get).max().orElse(0);
      double level = percent.applyAsDouble(most);
      dials.put(master.name(), level);
      if (level > 0) {
        master.scales().forEach(name -> levels.merge(name, 100 / level, (own, by) -> own * by));
      }
    }
    levels.forEach((name, level) -> dials.put(name, Math.min(100, percent.applyAsDouble(level))));
    fixture.masters().forEach(master -> dials.putIfAbsent(master.name(), 100.0));
    return new Setting(dials);
  }

  /** Masters to turn: the widest first, none that scales a channel of one already taken. */
  private static List<Master> turned(Fixture fixture) {
    List<Master> widestFirst = new ArrayList<>(fixture.masters());
    widestFirst.sort(
        Comparator.comparingInt((Master master) -> -master.scales().size())
            .thenComparing(Master::name));
    Set<String> taken = new HashSet<>();
    List<Master> turned = new ArrayList<>();
    for (Master master : widestFirst) {
      if (!master.scales().isEmpty() && master.scales().stream().noneMatch(taken::contains)) {
        taken.addAll(master.scales());
        turned.add(master);
      }
    }
    return turned;
  }

  /**
   * Outputs in the ratio of a setting, the brightest channel at full output.
   *
   * @throws IllegalArgumentException if the setting leaves every channel dark
   */
  static double[] ratio(Fixture fixture, Setting setting) {
    double[] outputs = fixture.outputs(setting);
    double most = outputs[leading(outputs)];
    if (!(most > 0)) {
      throw new IllegalArgumentException(
          String.format(
              "fixture %s is dialled to no light at all, %s; dial the ratio of its channels",
              fixture.name(), setting.dials()));
    }
    return times(outputs, 1 / most);
  }

  /** Index of the brightest channel, the first of several. */
  static int leading(double[] outputs) {
    int leading = 0;
    for (int c = 1; c < outputs.length; c++) {
      if (outputs[c] > outputs[leading]) {
        leading = c;
      }
    }
    return leading;
  }

  static double[] times(double[] outputs, double factor) {
    double[] scaled = new double[outputs.length];
    for (int c = 0; c < scaled.length; c++) {
      scaled[c] = outputs[c] * factor;
    }
    return scaled;
  }

  /**
   * The setting on one ratio with the leading channel's level at a whole percent.
   *
   * @param ratio outputs with a greatest of 1
   * @param percent level of the channel that has it, 0 to 100
   */
  static Setting at(Fixture fixture, double[] ratio, int percent) {
    double scale = fixture.channels().get(leading(ratio)).curve().outputAt(percent);
    return settingFor(fixture, times(ratio, scale));
  }
}
