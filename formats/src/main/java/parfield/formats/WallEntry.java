package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parfield.tank.Wall;

/** One pane: a name, {@code {name: true}}, or its shares. */
final class WallEntry {
  private static final List<String> NAMES =
      List.of("clean", "film", "coralline", "painted", "covered", "opaque");

  private static final Map<String, Wall> WALLS =
      Map.of(
          "clean", Wall.clean(),
          "film", Wall.film(),
          "coralline", Wall.coralline(),
          "painted", Wall.painted(),
          "covered", Wall.coveredWithAirGap(),
          "opaque", Wall.opaque());

  private WallEntry() {}

  /** The pane here; a clean one with a fault where it is wrong. */
  static Wall read(Entry entry) {
    if (!entry.isMap()) {
      return entry.word(NAMES).map(WALLS::get).orElse(Wall.clean());
    }
    List<String> keys = new ArrayList<>(NAMES);
    keys.addAll(List.of("clear", "diffuse", "cover"));
    Section wall = entry.section(keys.toArray(String[]::new)).orElseThrow();
    List<String> named = NAMES.stream().filter(wall::has).toList();
    boolean shares = wall.has("clear") || wall.has("diffuse") || wall.has("cover");
    if (named.size() == 1 && !shares) {
      return named(wall, named.get(0));
    }
    if (!named.isEmpty() || !shares) {
      entry.fault(
          named.isEmpty() ? "an empty map" : "several conditions",
          "one condition",
          "write painted, or {painted: true}, or {clear: 0.8, diffuse: 0.1, cover: water}");
      return Wall.clean();
    }
    return ofShares(wall);
  }

  private static Wall named(Section wall, String name) {
    Entry value = wall.optional(name).orElseThrow();
    Optional<Boolean> truth = value.truth();
    if (truth.isPresent() && !truth.get()) {
      value.fault("false", "true", "write the condition that the pane has, such as clean");
    }
    return WALLS.get(name);
  }

  private static Wall ofShares(Section wall) {
    double clear =
        wall.number(
            "clear", Limit.between(0, 1), "state the share of the pane that is clean glass");
    double diffuse =
        wall.number(
            "diffuse", Limit.between(0, 1), "state the diffuse reflectance of what covers it");
    Optional<String> cover =
        wall.required("cover", "state cover: water (growth) or cover: behind (paint)")
            .flatMap(entry -> entry.word(List.of("water", "behind")));
    if (Double.isNaN(clear) || Double.isNaN(diffuse) || cover.isEmpty()) {
      return Wall.clean();
    }
    return new Wall(
        clear,
        cover.get().equals("water") ? Wall.Cover.IN_WATER : Wall.Cover.BEHIND_GLASS,
        diffuse);
  }
}
