package parfield.web.setup;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parfield.answer.Refusal;
import parfield.formats.SetupPath;
import parfield.formats.SetupText;
import parfield.formats.SetupValue;
import parfield.units.LengthUnit;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;
import parfield.workspace.ShelfItem;

/**
 * Fixtures of a bench on the shelf that all benches share, and back.
 *
 * <p>What lies there is a piece of a setup: the unit of its lengths, the fixture under {@code
 * fixtures}, and, where it was fitted, the same with its fitted light under {@code fitted}. The
 * files that both name lie beside it.
 */
public final class FixtureShelf {
  private static final int MOST = 200;
  private static final SetupPath FITTED = SetupPath.root().key("fitted");
  private static final SetupPath UNIT = SetupPath.root().key("length");

  private final Desk desk;

  FixtureShelf(Desk desk) {
    this.desk = desk;
  }

  /**
   * A fixture on the shelf, as a page tells of it.
   *
   * @param item what lies there
   * @param fitted whether its fitted light lies there too
   */
  public record Kept(ShelfItem item, boolean fitted) {}

  /** The fixtures on the shelf, by name. */
  List<Kept> kept() {
    return desk.workspace().shelf().list(ShelfItem.Kind.FIXTURE, "", MOST, 0).items().stream()
        .map(item -> new Kept(item, !text(item).names(FITTED).isEmpty()))
        .toList();
  }

  private static SetupText text(ShelfItem item) {
    return SetupText.of(item.name(), item.text());
  }

  /** Puts a fixture of a bench on the shelf, with its files and, if there is one, its light. */
  ShelfItem put(OpenBench bench, String name, String who) {
    SetupText setup = SetupText.of(bench.name(), bench.text());
    SetupValue entry =
        setup
            .value(SetupForm.FIXTURES.name(name))
            .orElseThrow(
                () -> Refusal.of("the bench has no fixture " + name, "load the page again"));
    LengthUnit unit = SetupForm.stored(setup);
    Map<String, byte[]> files = new LinkedHashMap<>();
    FixtureEntry.files(entry)
        .forEach(file -> beside(bench, file).ifPresent(b -> files.put(file, b)));
    SetupText text =
        SetupText.of(name, "parfield: 1\n")
            .with(UNIT, new SetupValue.Text(unit.symbol()))
            .with(SetupForm.FIXTURES.name(name), entry);
    Optional<FittedLight> light = light(bench, name, entry, unit);
    if (light.isPresent()) {
      text = text.with(FITTED.name(name), light.get().entry());
      files.putAll(light.get().files());
    }
    return desk.workspace().shelf().put(ShelfItem.Kind.FIXTURE, name, text.text(), files, who);
  }

  private Optional<FittedLight> light(
      OpenBench bench, String name, SetupValue entry, LengthUnit unit) {
    return desk.benches()
        .model(bench)
        .filter(StoredModel::current)
        .filter(model -> bench.setup().isPresent())
        .flatMap(
            model ->
                FittedLight.of(
                    entry,
                    bench.setup().orElseThrow().fixtures().get(name),
                    model.model().best(),
                    bench.name(),
                    unit));
  }

  private static Optional<byte[]> beside(OpenBench bench, String file) {
    return Optional.ofNullable(bench.files().get(plain(file)));
  }

  /** A name of a file without detours. */
  private static String plain(String file) {
    return file.replace('\\', '/').replaceFirst("^(\\./+)+", "");
  }

  /**
   * A setup with a fixture of the shelf in it.
   *
   * @param text of the setup
   * @param files to put beside it
   * @param name that the fixture got
   */
  record Taken(String text, Map<String, byte[]> files, String name) {}

  /** Takes a fixture into a bench: under a free name, in the bench's unit, files of free names. */
  Taken take(OpenBench bench, String name, boolean fitted) {
    ShelfItem item = desk.workspace().shelf().get(ShelfItem.Kind.FIXTURE, name);
    SetupText shelved = text(item);
    SetupPath place = fitted ? FITTED : SetupForm.FIXTURES;
    SetupValue entry =
        shelved.names(place).stream()
            .findFirst()
            .flatMap(first -> shelved.value(place.name(first)))
            .orElseThrow(
                () ->
                    Refusal.of(
                        "no fitted light of " + name + " lies on the shelf",
                        "take it without, and fit it here"));
    SetupText setup = SetupText.of(bench.name(), bench.text());
    Map<String, byte[]> put = new LinkedHashMap<>();
    Map<String, String> names = new LinkedHashMap<>();
    for (String file : FixtureEntry.files(entry)) {
      if (item.files().containsKey(file)) {
        byte[] bytes = desk.workspace().bytes(item.files().get(file));
        String free = free(bench, put, plain(file), bytes);
        names.put(file, free);
        if (!bench.files().containsKey(free)) {
          put.put(free, bytes);
        }
      }
    }
    String free = Additions.free(setup.names(SetupForm.FIXTURES), item.name());
    SetupValue carried =
        FixtureEntry.inUnit(
            FixtureEntry.withFiles(entry, names),
            SetupForm.stored(shelved),
            SetupForm.stored(setup));
    return new Taken(setup.with(SetupForm.FIXTURES.name(free), carried).text(), put, free);
  }

  /** The name of a file, or another where a different file has that name. */
  private static String free(OpenBench bench, Map<String, byte[]> put, String file, byte[] bytes) {
    int dot = file.lastIndexOf('.') > file.lastIndexOf('/') ? file.lastIndexOf('.') : file.length();
    String name = file;
    for (int i = 2; ; i++) {
      byte[] there = bench.files().getOrDefault(name, put.get(name));
      if (there == null || Arrays.equals(there, bytes)) {
        return name;
      }
      name = file.substring(0, dot) + "-" + i + file.substring(dot);
    }
  }
}
