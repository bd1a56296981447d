package parfield.web.spectra;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import parfield.answer.Light;
import parfield.answer.Refusal;
import parfield.formats.Setup;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.web.bench.OpenBench;
import parfield.workspace.ShelfItem;
import parfield.workspace.WorkspaceProblem;

/**
 * The spectra that can be chosen: of the shelf, of a bench's channels and of the files beside its
 * setup. Thread-safe.
 */
final class Lights {
  /** Spectra that one answer looks at. */
  static final int MOST = 40;

  private static final int KEPT_FILES = 500;

  private final SpectrumShelf shelf;

  /** Files beside setups, read; by digest and name. */
  private final Map<String, SpectrumShelf.Content> beside = new ConcurrentHashMap<>();

  Lights(SpectrumShelf shelf) {
    this.shelf = shelf;
  }

  /**
   * One spectrum that can be chosen.
   *
   * @param key of it in an address
   * @param light as it was read
   * @param from where it comes from: a file or a fixture
   */
  record Offered(String key, Light light, String from) {}

  /**
   * Spectra that come from one place.
   *
   * @param title of the place
   * @param invented whether they are made up
   * @param item what lies on the shelf, if it lies there
   * @param offered the spectra
   * @param notes what was taken without being stated, or why there are none
   */
  record Group(
      String title,
      boolean invented,
      Optional<ShelfItem> item,
      List<Offered> offered,
      List<String> notes) {}

  /** All that can be chosen, by where it comes from. */
  List<Group> groups(Optional<OpenBench> bench) {
    List<Group> groups = new ArrayList<>();
    bench.ifPresent(
        open -> {
          open.setup()
              .ifPresent(
                  setup ->
                      setup
                          .fixtures()
                          .keySet()
                          .forEach(name -> ofFixture(open, name).ifPresent(groups::add)));
          // What the setup names is a channel already.
          new TreeMap<>(open.files())
              .keySet().stream()
                  .filter(name -> !open.text().contains(name))
                  .forEach(name -> ofFile(open, name).ifPresent(groups::add));
        });
    shelf.list().forEach(item -> groups.add(ofShelf(item)));
    return groups;
  }

  private Optional<Group> ofFixture(OpenBench bench, String name) {
    Fixture fixture = bench.setup().map(Setup::fixtures).map(all -> all.get(name)).orElse(null);
    if (fixture == null) {
      return Optional.empty();
    }
    List<Offered> offered = new ArrayList<>();
    for (Channel channel : fixture.channels()) {
      channel
          .spectrum()
          .ifPresent(
              photons ->
                  offered.add(
                      new Offered(
                          key("channel", name, channel.name()),
                          new Light(channel.name(), photons, List.of()),
                          name)));
    }
    return offered.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Group(
                "Channels of fixture " + name,
                bench.sample(),
                Optional.empty(),
                offered,
                List.of()));
  }

  private Optional<Group> ofFile(OpenBench bench, String name) {
    if (!name.toLowerCase(Locale.ROOT).matches(".*\\.(csv|tsv|txt|xlsx|xml|spdx)")
        || !bench.files().containsKey(name)) {
      return Optional.empty();
    }
    if (beside.size() > KEPT_FILES) {
      beside.clear();
    }
    SpectrumShelf.Content content =
        beside.computeIfAbsent(
            bench.document().files().get(name).digest() + "/" + name,
            key ->
                SpectrumShelf.content(
                    name.substring(name.lastIndexOf('/') + 1),
                    bench.files().get(name),
                    Optional.empty()));
    // What is no spectrum here are readings, which have a page of their own.
    return content.lights().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Group(
                name,
                bench.sample(),
                Optional.empty(),
                offered("file", name, content.lights()),
                content.assumptions()));
  }

  private Group ofShelf(ShelfItem item) {
    SpectrumShelf.Content content = shelf.content(item);
    List<String> notes = new ArrayList<>(content.assumptions());
    content.problem().ifPresent(problem -> notes.add(problem.title()));
    return new Group(
        item.name(),
        SpectrumShelf.invented(item),
        Optional.of(item),
        offered("shelf", item.name(), content.lights()),
        notes);
  }

  private static List<Offered> offered(String kind, String place, List<Light> lights) {
    List<Offered> offered = new ArrayList<>();
    for (int i = 0; i < lights.size(); i++) {
      offered.add(new Offered(key(kind, place, String.valueOf(i)), lights.get(i), place));
    }
    return offered;
  }

  private static String key(String kind, String place, String which) {
    return kind + "/" + encoded(place) + "/" + encoded(which);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /**
   * The spectra of some keys.
   *
   * @param missing takes the names of those that are there no longer
   * @return each once, by names that tell them apart
   * @throws Refusal if there are more than {@link #MOST}
   */
  List<Offered> of(Optional<OpenBench> bench, List<String> keys, List<String> missing) {
    Set<String> distinct = new LinkedHashSet<>(keys);
    if (distinct.size() > MOST) {
      throw Refusal.of(
          String.format(
              Locale.ROOT, "%d spectra are chosen; at most %d can be", distinct.size(), MOST),
          "choose fewer");
    }
    List<Offered> found = new ArrayList<>();
    for (String key : distinct) {
      find(bench, key).ifPresentOrElse(found::add, () -> missing.add(name(key)));
    }
    return apart(found);
  }

  private Optional<Offered> find(Optional<OpenBench> bench, String key) {
    String[] parts = key.split("/", -1);
    if (parts.length != 3) {
      return Optional.empty();
    }
    Optional<Group> group =
        switch (parts[0]) {
          case "shelf" -> onShelf(decoded(parts[1]));
          case "channel" -> bench.flatMap(open -> ofFixture(open, decoded(parts[1])));
          case "file" -> bench.flatMap(open -> ofFile(open, decoded(parts[1])));
          default -> Optional.empty();
        };
    return group.flatMap(
        all -> all.offered().stream().filter(one -> one.key().equals(key)).findFirst());
  }

  /** The spectra of something on the shelf. */
  List<Offered> ofShelf(String name) {
    return ofShelf(shelf.get(name)).offered();
  }

  private Optional<Group> onShelf(String name) {
    try {
      return Optional.of(ofShelf(shelf.get(name)));
    } catch (WorkspaceProblem e) {
      if (e.kind() == WorkspaceProblem.Kind.NOT_FOUND) {
        return Optional.empty();
      }
      throw e;
    }
  }

  private static String decoded(String part) {
    try {
      return URLDecoder.decode(part, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return part;
    }
  }

  private static String name(String key) {
    String[] parts = key.split("/", -1);
    return parts.length == 3 ? decoded(parts[1]) : key;
  }

  /** Lights of one name take the place they come from to it, and a number if need be. */
  private static List<Offered> apart(List<Offered> found) {
    Map<String, Long> count =
        found.stream()
            .collect(Collectors.groupingBy(one -> one.light().name(), Collectors.counting()));
    Map<String, Integer> used = new LinkedHashMap<>();
    List<Offered> apart = new ArrayList<>();
    for (Offered one : found) {
      String name = one.light().name();
      String told = count.get(name) > 1 ? name + " (" + one.from() + ")" : name;
      int times = used.merge(told, 1, Integer::sum);
      String last = times > 1 ? told + " " + times : told;
      apart.add(
          new Offered(
              one.key(),
              new Light(last, one.light().photons(), one.light().cautions()),
              one.from()));
    }
    return apart;
  }
}
