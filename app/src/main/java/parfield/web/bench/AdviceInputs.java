package parfield.web.bench;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import parfield.formats.Setup;
import parfield.plan.Search;
import parfield.rig.Hanging;

/**
 * What a recommendation depends on, as a digest: the same digest, the same recommendation to the
 * same search. It is what its light model depends on (tank, room, fixtures, meters, readings and
 * their rigs), bands and demands, and how each kind of fixture hangs where it hangs first, which
 * every search starts from. A rig that is added after the others is none of that.
 */
final class AdviceInputs {
  private static final String PREFIX = "advice-";

  private AdviceInputs() {}

  /**
   * The digest.
   *
   * @param fit digest of what the light model was fitted to
   * @param setup with bands, demands and rigs
   */
  static String digest(String fit, Setup setup) {
    StringBuilder text = new StringBuilder(fit);
    setup.bands().values().forEach(band -> text.append('\n').append(band));
    setup.demands().forEach(demand -> text.append('\n').append(demand));
    if (!setup.rigs().isEmpty()) {
      Search.around(List.copyOf(setup.rigs().values()), 0)
          .patterns()
          .forEach(pattern -> text.append('\n').append(told(pattern)));
    }
    return PREFIX + FitInputs.digest(text.toString());
  }

  private static String told(Hanging pattern) {
    Map<String, Double> dials = new TreeMap<>();
    pattern.fixture().dials().forEach(dial -> dials.put(dial, pattern.setting().percent(dial)));
    return String.join(
        " ",
        pattern.fixture().name(),
        String.valueOf(pattern.x()),
        String.valueOf(pattern.y()),
        String.valueOf(pattern.tilt()),
        String.valueOf(pattern.yaw()),
        dials.toString());
  }

  /** Whether a stored digest is one of these; earlier ones were those of the fit. */
  static boolean isOne(String digest) {
    return digest.startsWith(PREFIX);
  }
}
