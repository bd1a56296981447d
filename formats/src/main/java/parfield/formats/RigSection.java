package parfield.formats;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Tank;

/** One of the setup's {@code rigs}: fixtures that hang over the tank, at dials. */
final class RigSection {
  private static final String HOW = "write hang: [{fixture: pendant, x: 45, y: 30, height: 20}]";

  private static final Limit DIAL = Limit.between(0, 100, "%");

  private final Map<String, Optional<Fixture>> fixtures;
  private final Lengths lengths;
  private final Room room;

  /**
   * A reader of rigs.
   *
   * @param fixtures by name; empty where the fixture is stated but wrong
   * @param lengths unit of lengths
   * @param room what the fixtures must fit into
   */
  RigSection(Map<String, Optional<Fixture>> fixtures, Lengths lengths, Room room) {
    this.fixtures = fixtures;
    this.lengths = lengths;
    this.room = room;
  }

  /** The rig, empty if anything about it is wrong or the tank is. */
  Optional<Rig> read(String name, Entry entry, Optional<Tank> tank) {
    int faults = entry.notes().count();
    Optional<Section> section = entry.section("hang", "dials");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    try (Section rig = section.get()) {
      Dials dials = dials(rig);
      List<Optional<Hanging>> hangings = new ArrayList<>();
      Set<String> known = new LinkedHashSet<>();
      boolean allKnown = true;
      Optional<Entry> hang = rig.required("hang", HOW);
      List<Entry> entries = hang.map(list -> list.list(HOW)).orElse(List.of());
      if (hang.isPresent() && hang.get().isList() && entries.isEmpty()) {
        hang.get().fault("an empty list", "1 fixture or more", HOW);
      }
      for (Entry hanging : entries) {
        Optional<Fixture> fixture = Optional.empty();
        int before = entry.notes().count();
        Optional<Section> stated =
            hanging.section("fixture", "x", "y", "height", "tilt", "yaw", "dials");
        if (stated.isPresent()) {
          fixture = fixture(stated.get());
          hangings.add(hanging(stated.get(), fixture, dials, rig, before));
        }
        fixture.ifPresent(found -> known.addAll(found.dials()));
        allKnown &= fixture.isPresent();
      }
      if (allKnown && !entries.isEmpty()) {
        unknownDials(dials, known);
      }
      if (entry.notes().count() > faults
          || tank.isEmpty()
          || hangings.stream().anyMatch(Optional::isEmpty)) {
        return Optional.empty();
      }
      return Optional.of(
          new Rig(name, tank.get(), hangings.stream().map(Optional::orElseThrow).toList()));
    }
  }

  /**
   * Dials as stated.
   *
   * @param entries where each stands
   * @param percents the setting of each that is sound
   */
  private record Dials(Map<String, Entry> entries, Map<String, Double> percents) {}

  private static Dials dials(Section section) {
    Map<String, Entry> entries =
        section
            .optional("dials")
            .map(entry -> entry.named("write dials: {blue: 100}"))
            .orElse(Map.of());
    Map<String, Double> percents = new TreeMap<>();
    entries.forEach(
        (name, entry) -> {
          double percent = entry.number(DIAL, "a dial runs from 0 to 100");
          if (!Double.isNaN(percent)) {
            percents.put(name, percent);
          }
        });
    return new Dials(entries, percents);
  }

  private static void unknownDials(Dials dials, Set<String> known) {
    dials
        .entries()
        .forEach(
            (name, entry) -> {
              if (!known.contains(name)) {
                entry.unknown(
                    entry.path() + " is no dial", name, known, "name a channel or a master");
              }
            });
  }

  private Optional<Fixture> fixture(Section hanging) {
    Optional<Entry> stated = hanging.required("fixture", "name the fixture that hangs here");
    Optional<String> name = stated.flatMap(entry -> entry.text("name a fixture"));
    if (name.isEmpty()) {
      return Optional.empty();
    }
    if (fixtures.isEmpty()) {
      // That none is stated is a fault of its own already.
      return Optional.empty();
    }
    if (!fixtures.containsKey(name.get())) {
      stated
          .get()
          .unknown(
              stated.get().path() + " is not stated",
              name.get(),
              fixtures.keySet(),
              "state it under fixtures");
      return Optional.empty();
    }
    return fixtures.get(name.get());
  }

  private Optional<Hanging> hanging(
      Section hanging, Optional<Fixture> fixture, Dials common, Section rig, int faults) {
    double x = hanging.number("x", lengths.signed(), "state the x of the fixture's centre");
    double y = hanging.number("y", lengths.signed(), "state the y of the fixture's centre");
    double height =
        hanging.number(
            "height",
            lengths.positive(),
            "the mounting height is that of the emitters above the still water; an emitter under"
                + " water cannot be computed");
    double tilt = angle(hanging, "tilt", 90);
    double yaw = angle(hanging, "yaw", 360);
    Dials own = dials(hanging);
    fixture.ifPresent(found -> unknownDials(own, new LinkedHashSet<>(found.dials())));
    if (hanging.at().notes().count() > faults || fixture.isEmpty()) {
      return Optional.empty();
    }
    Map<String, Double> percents = new TreeMap<>(common.percents());
    percents.putAll(own.percents());
    percents.keySet().retainAll(fixture.get().dials());
    for (String dial : fixture.get().dials()) {
      if (!percents.containsKey(dial)) {
        rig.taken("dial " + Notes.shown(dial), "100");
      }
    }
    Hanging hung =
        new Hanging(
            fixture.get(),
            lengths.metres(x),
            lengths.metres(y),
            lengths.metres(height),
            Math.toRadians(tilt),
            Math.toRadians(yaw),
            new Setting(percents));
    checkEmitters(hanging.at(), hung);
    checkRoom(hanging.at(), hung);
    return hanging.at().notes().count() > faults ? Optional.empty() : Optional.of(hung);
  }

  private static double angle(Section hanging, String key, double most) {
    return hanging
        .optional(key)
        .map(entry -> entry.number(Limit.between(-most, most, "degrees"), "state it in degrees"))
        .orElse(0.0);
  }

  /** A tilted fixture must not dip an emitter into the water. */
  private void checkEmitters(Entry at, Hanging hung) {
    List<Emitter> emitters = hung.fixture().emitters();
    for (int i = 0; i < emitters.size(); i++) {
      Emitter emitter = emitters.get(i);
      double sine = Math.sin(hung.tilt());
      double height = hung.height() + emitter.y() * sine - emitter.aperture() / 2 * Math.abs(sine);
      if (!(height > 0)) {
        at.fault(
            at.path(),
            String.format(Locale.ROOT, "emitter %d at %s under water", i + 1, shown(-height)),
            "every emitter above the water",
            "hang it higher or tilt it less");
        return;
      }
    }
  }

  private void checkRoom(Entry at, Hanging hung) {
    Fixture fixture = hung.fixture();
    double cosine = Math.abs(Math.cos(hung.yaw()));
    double sine = Math.abs(Math.sin(hung.yaw()));
    double across = fixture.width() * Math.cos(hung.tilt());
    check(at, "height", hung.height(), room.height(), "hang it lower, or state more room");
    String cure = "take a smaller fixture, or state more room";
    check(at, "extent along x", fixture.length() * cosine + across * sine, room.length(), cure);
    check(at, "extent along y", fixture.length() * sine + across * cosine, room.width(), cure);
  }

  private void check(Entry at, String what, double value, OptionalDouble most, String cure) {
    if (most.isPresent() && value > most.getAsDouble() + 1e-9) {
      at.fault(
          at.path() + " " + what,
          shown(value),
          "at most " + shown(most.getAsDouble()) + ", the room above the tank",
          cure);
    }
  }

  private String shown(double metres) {
    return NumberText.shown(lengths.unit().fromMetres(metres)) + " " + lengths.unit().symbol();
  }
}
