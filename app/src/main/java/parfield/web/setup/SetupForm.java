package parfield.web.setup;

import static parfield.web.setup.FormField.Kind.CHOICE;
import static parfield.web.setup.FormField.Kind.CURVE;
import static parfield.web.setup.FormField.Kind.FILE;
import static parfield.web.setup.FormField.Kind.LENGTH;
import static parfield.web.setup.FormField.Kind.LENGTHS;
import static parfield.web.setup.FormField.Kind.NAME;
import static parfield.web.setup.FormField.Kind.NAMES;
import static parfield.web.setup.FormField.Kind.NUMBER;
import static parfield.web.setup.FormField.Kind.SHAPE;
import static parfield.web.setup.FormField.Kind.TEXT;
import static parfield.web.setup.FormField.Kind.TRUTH;
import static parfield.web.setup.FormField.Kind.WORD;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import parfield.formats.SetupPath;
import parfield.formats.SetupText;
import parfield.formats.SetupValue;
import parfield.units.LengthUnit;

/** The form that a setup's text gives: every part of it as fields, whatever state it is in. */
final class SetupForm {
  static final List<String> SIDES = List.of("left", "right", "front", "back");
  static final SetupPath TANK = SetupPath.root().key("tank");
  static final SetupPath ROCKS = TANK.key("aquascape");
  static final SetupPath FIXTURES = SetupPath.root().key("fixtures");
  static final SetupPath RIGS = SetupPath.root().key("rigs");
  static final SetupPath METERS = SetupPath.root().key("meters");
  static final SetupPath SURVEYS = SetupPath.root().key("surveys");
  static final SetupPath BANDS = SetupPath.root().key("bands");
  static final SetupPath DEMANDS = SetupPath.root().key("demands");

  private static final List<String> WALLS =
      List.of("clean", "film", "coralline", "painted", "covered", "opaque");
  static final List<String> SHAPES = List.of("box", "ellipsoid");
  private static final String PPFD = "µmol/m²/s";

  private final SetupText text;
  private final LengthUnit shown;
  private final LengthUnit stored;
  private final List<String> files;
  private final Set<String> read;

  private SetupForm(
      SetupText text, LengthUnit shown, Collection<String> files, Collection<String> read) {
    this.text = text;
    this.shown = shown;
    this.stored = stored(text);
    this.files = files.stream().sorted().toList();
    this.read = Set.copyOf(read);
  }

  /** Unit of the lengths in a setup. */
  static LengthUnit stored(SetupText text) {
    return text.value(SetupPath.root().key("length"))
        .filter(unit -> unit.plain().equals("in"))
        .map(unit -> LengthUnit.INCH)
        .orElse(LengthUnit.CM);
  }

  /**
   * The sections of the form.
   *
   * @param text of the setup
   * @param shown unit of lengths on the page
   * @param files names of the files beside the setup
   * @param read surveys that hold stored readings, which are kept under their name
   */
  static List<FormGroup> of(
      SetupText text, LengthUnit shown, Collection<String> files, Collection<String> read) {
    SetupForm form = new SetupForm(text, shown, files, read);
    return List.of(
        form.tank(), form.rigs(), form.fixtures(), form.meters(), form.surveys(), form.bands());
  }

  private FormGroup tank() {
    List<FormField> fields = new ArrayList<>();
    fields.add(length(TANK, "length", "inner length"));
    fields.add(length(TANK, "width", "inner width, front to back"));
    fields.add(length(TANK, "water", "depth of the water"));
    fields.add(length(TANK, "freeboard", "panes above the water", "none"));
    fields.add(length(TANK, "rim", "opaque rim of one pane", "none"));
    fields.add(
        choice(
            TANK.key("lid"),
            "lid",
            List.of("none"),
            List.of(
                number(TANK.key("lid"), "mesh", "open share of a mesh", ""),
                word(TANK.key("lid").key("clear"), "clear sheet", List.of("glass", "acrylic")))));
    fields.add(word(TANK.key("surface"), "surface", List.of("still", "gentle", "strong")));
    fields.add(number(TANK, "yellowing", "yellowing at 440 nm", "1/m", "0.05"));
    fields.add(number(TANK, "scattering", "scattering at 550 nm", "1/m", "0"));
    fields.add(number(TANK.key("bottom"), "reflectance", "reflectance of the bottom", "", "0.3"));
    FormGroup walls =
        group(
            TANK.key("walls"),
            "Panes",
            FormGroup.Look.LIST,
            SIDES.stream().map(this::wall).toList(),
            List.of(),
            "",
            false);
    FormGroup braces =
        rows(
            TANK.key("braces"),
            "Braces",
            "brace",
            (path, i) ->
                List.of(
                    length(path, "from", "from"),
                    length(path, "to", "to"),
                    word(path.key("along"), "along", List.of("length", "width"))));
    FormGroup opaque =
        rows(
            TANK.key("opaque"),
            "Other opaque parts over the water",
            "opaque part",
            (path, i) ->
                List.of(
                    field(path.key("x").at(0), "x from", LENGTH, "", List.of(), ""),
                    field(path.key("x").at(1), "x to", LENGTH, "", List.of(), ""),
                    field(path.key("y").at(0), "y from", LENGTH, "", List.of(), ""),
                    field(path.key("y").at(1), "y to", LENGTH, "", List.of(), "")));
    FormGroup room =
        group(
            TANK.key("room"),
            "Room above the water",
            FormGroup.Look.LIST,
            List.of(
                length(TANK.key("room"), "height", "free height", "unbounded"),
                length(TANK.key("room"), "length", "free length", "unbounded"),
                length(TANK.key("room"), "width", "free width", "unbounded")),
            List.of(),
            "",
            false);
    FormGroup rocks = list(ROCKS, "Rocks", "rock", entries(ROCKS, this::rock));
    return section(TANK, "Tank", fields, List.of(walls, braces, opaque, rocks, room), "");
  }

  private FormGroup rock(SetupPath path) {
    String shape = shape(text, path);
    List<FormField> fields = new ArrayList<>();
    fields.add(name(path));
    fields.add(
        new FormField(
            path,
            "shape",
            SHAPE,
            "",
            SHAPES,
            shape.equals("mesh") ? "the shape of a mesh stands in its file" : "",
            shape,
            shape.equals("mesh"),
            List.of()));
    if (shape.equals("mesh")) {
      List<String> meshes =
          files.stream().filter(file -> file.matches("(?i).*\\.(obj|stl|glb|gltf)")).toList();
      fields.add(field(path.key("mesh"), "file of its mesh", FILE, "", meshes, ""));
      fields.add(word(path.key("unit"), "unit of that file", List.of("mm", "cm", "in", "m")));
      fields.add(word(path.key("up"), "axis of that file that is up", List.of("y", "z")));
    } else {
      SetupPath sizes = path.key(shape.isEmpty() ? SHAPES.get(0) : shape);
      fields.add(length(sizes, "length", "length"));
      fields.add(length(sizes, "width", "width"));
      fields.add(length(sizes, "height", "height"));
    }
    fields.add(length(path, "x", "x of its middle"));
    fields.add(length(path, "y", "y of its middle"));
    fields.add(length(path, "above bottom", "its foot above the bottom", "0"));
    fields.add(number(path, "yaw", "turn", "degrees", "0"));
    fields.add(
        text.value(path.key("reflectance")).filter(SetupValue.Text.class::isInstance).isPresent()
            ? field(path.key("reflectance"), "file of its reflectance", FILE, "", files, "0.15")
            : number(path, "reflectance", "reflectance", "", "0.15"));
    return entry(path, fields, List.of());
  }

  /** What a rock is stated to be: box, ellipsoid or mesh; empty for none of these. */
  static String shape(SetupText text, SetupPath rock) {
    return Stream.of("box", "ellipsoid", "mesh")
        .filter(kind -> text.value(rock.key(kind)).isPresent())
        .findFirst()
        .orElse("");
  }

  private FormField wall(String side) {
    SetupPath path = TANK.key("walls").key(side);
    return choice(
        path,
        side + " pane",
        WALLS,
        List.of(
            number(path, "clear", "clean share", ""),
            number(path, "diffuse", "reflectance of the rest", ""),
            word(path.key("cover"), "where the rest is", List.of("water", "behind"))));
  }

  private FormGroup fixtures() {
    return section(FIXTURES, "Fixtures", List.of(), entries(FIXTURES, this::fixture), "fixture");
  }

  private FormGroup fixture(SetupPath path) {
    FormGroup emitters =
        rows(
            path.key("emitters"),
            "Emitters: offsets from the fixture's centre",
            "emitter",
            (emitter, i) ->
                List.of(
                    length(emitter, "x", "x, along it"),
                    length(emitter, "y", "y, across it"),
                    length(emitter, "aperture", "lit square", "fitted")));
    FormGroup channels =
        list(
            path.key("channels"),
            "Channels",
            "channel",
            entries(path.key("channels"), this::channel));
    FormGroup masters =
        list(
            path.key("dials"),
            "Masters: dials that scale several channels",
            "master",
            entries(
                path.key("dials"),
                master ->
                    row(
                        master,
                        List.of(
                            name(master),
                            field(
                                master.key("scales"),
                                "channels that it scales",
                                NAMES,
                                "",
                                List.of(),
                                "")))));
    return entry(
        path,
        List.of(
            name(path),
            length(path, "length", "length", "unknown"),
            length(path, "width", "width", "unknown"),
            distribution(path, "distribution of its light")),
        List.of(emitters, channels, masters));
  }

  private FormGroup channel(SetupPath path) {
    return row(
        path,
        List.of(
            name(path),
            field(path.key("spectrum"), "spectrum", FILE, "", files, "flat, 400 to 700 nm"),
            number(path, "watts", "at full output", "W", "unknown"),
            field(path.key("output"), "output by dial", CURVE, "", List.of(), "proportional"),
            distribution(path, "distribution, if its own")));
  }

  private FormField distribution(SetupPath holder, String label) {
    SetupPath path = holder.key("distribution");
    return choice(
        path,
        label,
        List.of("fitted"),
        List.of(
            number(path, "beam", "beam angle", "degrees"),
            number(path, "lobe", "or power of the cosine", ""),
            number(path, "photon flux", "photon flux of an emitter", "µmol/s"),
            number(path, "peak", "or peak intensity", "µmol/s/sr"),
            field(path.key("table"), "or a table", FILE, "", files, "")));
  }

  private FormGroup rigs() {
    return section(
        RIGS, "Rigs: what hangs over the tank", List.of(), entries(RIGS, this::rig), "rig");
  }

  private FormGroup rig(SetupPath path) {
    List<String> fixtures = text.names(FIXTURES);
    Set<String> dials = new LinkedHashSet<>();
    for (int i = 0; i < text.size(path.key("hang")); i++) {
      dials.addAll(dialsOf(text, fixtureAt(text, path, i)));
    }
    dials.addAll(text.names(path.key("dials")));
    FormGroup hang =
        rows(
            path.key("hang"),
            "Hung",
            "fixture",
            (hung, i) ->
                Stream.concat(
                        Stream.of(
                            field(hung.key("fixture"), "fixture", WORD, "", fixtures, ""),
                            length(hung, "x", "x of its centre"),
                            length(hung, "y", "y of its centre"),
                            length(hung, "height", "height above the water"),
                            number(hung, "yaw", "turn", "degrees", "0"),
                            number(hung, "tilt", "tilt", "degrees", "0")),
                        text.names(hung.key("dials")).stream()
                            .map(dial -> dial(hung.key("dials").name(dial), "its own " + dial)))
                    .toList());
    FormGroup settings =
        group(
            path.key("dials"),
            "Dials",
            FormGroup.Look.LIST,
            dials.stream().map(dial -> dial(path.key("dials").name(dial), dial)).toList(),
            List.of(),
            "",
            false);
    return entry(path, List.of(name(path)), List.of(hang, settings));
  }

  private FormField dial(SetupPath path, String label) {
    return field(path, label, NUMBER, "%", List.of(), "100");
  }

  /** Name of the fixture that hangs at a place of a rig. */
  static String fixtureAt(SetupText text, SetupPath rig, int i) {
    return text.value(rig.key("hang").at(i).key("fixture")).map(SetupValue::plain).orElse("");
  }

  /** Every dial that a fixture has: one a channel, and its masters. */
  static Set<String> dialsOf(SetupText text, String fixture) {
    Set<String> dials = new LinkedHashSet<>(text.names(FIXTURES.name(fixture).key("dials")));
    dials.addAll(text.names(FIXTURES.name(fixture).key("channels")));
    return dials;
  }

  private FormGroup meters() {
    List<String> responses =
        Stream.concat(
                Stream.of("ideal", "generic blue-weak", "generic red-short", "generic even"),
                files.stream())
            .toList();
    List<String> lights =
        Stream.concat(Stream.of("illuminant A", "illuminant D65", "equal photons"), files.stream())
            .toList();
    return section(
        METERS,
        "Meters",
        List.of(),
        entries(
            METERS,
            path ->
                entry(
                    path,
                    List.of(
                        name(path),
                        number(path, "immersion", "immersion factor", "", "1"),
                        field(
                            path.key("applied"),
                            "readings hold it already",
                            TRUTH,
                            "",
                            List.of("true", "false"),
                            "true"),
                        number(path, "ambient", "shown in the dark", PPFD, "0"),
                        number(path, "scale error", "scale error", "", "0.05"),
                        number(path, "repeat error", "repeat error", "", "0.02"),
                        length(path, "position error", "position error", "0.5 cm"),
                        number(path, "resolution", "smallest step", PPFD, "1"),
                        field(
                            path.key("response"),
                            "how it sees colour",
                            FILE,
                            "",
                            responses,
                            "not stated"),
                        field(
                            path.key("calibrated under"),
                            "calibrated under",
                            FILE,
                            "",
                            lights,
                            "")),
                    List.of())),
        "meter");
  }

  private FormGroup surveys() {
    return section(
        SURVEYS,
        "Surveys",
        List.of(),
        entries(
            SURVEYS,
            path ->
                entry(
                    path,
                    List.of(
                        surveyName(path),
                        field(path.key("rig"), "rig", WORD, "", text.names(RIGS), ""),
                        field(path.key("meter"), "meter", WORD, "", text.names(METERS), ""),
                        field(
                            path.key("grid").key("depths"),
                            "depths to read at",
                            LENGTHS,
                            "",
                            List.of(),
                            grid(path)),
                        number(path.key("grid"), "columns", "places along x", "", "by size"),
                        number(path.key("grid"), "rows", "places along y", "", "by size"),
                        field(
                            path.key("readings"), "file of readings", TEXT, "", List.of(), "none"),
                        length(path, "depth", "depth, where that states none", "none")),
                    List.of())),
        "survey");
  }

  /** What a survey without depths is read at. */
  private String grid(SetupPath survey) {
    return text.value(survey.key("grid").key("places")).isPresent()
        ? "places of its own"
        : "no grid";
  }

  private FormField surveyName(SetupPath path) {
    FormField plain = name(path);
    boolean fixed = read.contains(plain.shown());
    return new FormField(
        path,
        plain.label(),
        NAME,
        "",
        List.of(),
        fixed ? "its readings are kept under this name" : "",
        plain.shown(),
        fixed,
        List.of());
  }

  private FormGroup bands() {
    return section(
        BANDS,
        "Bands: wanted ranges of PPFD",
        List.of(),
        entries(
            BANDS,
            path ->
                row(
                    path,
                    List.of(
                        name(path),
                        number(path, "from", "from", PPFD),
                        number(path, "to", "to", PPFD)))),
        "band");
  }

  // Pieces.

  /** The fields of one element of a list. */
  private interface Row {
    List<FormField> fields(SetupPath path, int index);
  }

  private FormGroup rows(SetupPath path, String title, String adds, Row row) {
    List<FormGroup> rows = new ArrayList<>();
    for (int i = 0; i < text.size(path); i++) {
      rows.add(
          group(
              path.at(i),
              adds + " " + (i + 1),
              FormGroup.Look.ROW,
              row.fields(path.at(i), i),
              List.of(),
              "",
              true));
    }
    return list(path, title, adds, rows);
  }

  /** What an entry of a map looks like. */
  private interface Named {
    FormGroup of(SetupPath path);
  }

  private List<FormGroup> entries(SetupPath path, Named each) {
    return text.names(path).stream().map(name -> each.of(path.name(name))).toList();
  }

  private static FormGroup group(
      SetupPath path,
      String title,
      FormGroup.Look look,
      List<FormField> fields,
      List<FormGroup> groups,
      String adds,
      boolean removable) {
    return new FormGroup(path, title, look, fields, groups, adds, removable);
  }

  private static FormGroup section(
      SetupPath path, String title, List<FormField> fields, List<FormGroup> groups, String adds) {
    return group(path, title, FormGroup.Look.SECTION, fields, groups, adds, false);
  }

  private static FormGroup list(SetupPath path, String title, String adds, List<FormGroup> rows) {
    return group(path, title, FormGroup.Look.LIST, List.of(), rows, adds, false);
  }

  private static String nameOf(SetupPath path) {
    return ((SetupPath.Name) path.steps().get(path.steps().size() - 1)).name();
  }

  private static FormGroup entry(SetupPath path, List<FormField> fields, List<FormGroup> groups) {
    return group(path, nameOf(path), FormGroup.Look.ENTRY, fields, groups, "", true);
  }

  private static FormGroup row(SetupPath path, List<FormField> fields) {
    return group(path, nameOf(path), FormGroup.Look.ROW, fields, List.of(), "", true);
  }

  private static FormField name(SetupPath path) {
    return new FormField(path, "name", NAME, "", List.of(), "", nameOf(path), false, List.of());
  }

  private FormField length(SetupPath holder, String key, String label) {
    return length(holder, key, label, "");
  }

  private FormField length(SetupPath holder, String key, String label, String hint) {
    return field(holder.key(key), label, LENGTH, "", List.of(), hint);
  }

  private FormField number(SetupPath holder, String key, String label, String unit) {
    return number(holder, key, label, unit, "");
  }

  private FormField number(SetupPath holder, String key, String label, String unit, String hint) {
    return field(holder.key(key), label, NUMBER, unit, List.of(), hint);
  }

  private FormField word(SetupPath path, String label, List<String> words) {
    return field(path, label, WORD, "", words, "");
  }

  private FormField field(
      SetupPath path,
      String label,
      FormField.Kind kind,
      String unit,
      List<String> options,
      String hint) {
    String value =
        text.value(path).map(found -> TypedValue.shown(kind, found, shown, stored)).orElse("");
    return new FormField(path, label, kind, unit, options, hint, value, false, List.of());
  }

  private FormField choice(
      SetupPath path, String label, List<String> words, List<FormField> parts) {
    List<String> options = new ArrayList<>(words);
    options.add(FormField.BY_PARTS);
    return new FormField(path, label, CHOICE, "", options, "", chosen(path, words), false, parts);
  }

  /** A word as it stands, {@code {word: true}} too, or that it is stated by parts. */
  private String chosen(SetupPath path, List<String> words) {
    Optional<SetupValue> value = text.value(path);
    if (value.isEmpty() && path.parent().equals(TANK.key("walls"))) {
      // One word for all four panes.
      value = text.value(path.parent()).filter(all -> !all.plain().isEmpty());
    }
    if (value.isPresent() && value.get() instanceof SetupValue.Fields fields) {
      List<String> keys = List.copyOf(fields.entries().keySet());
      return keys.size() == 1 && words.contains(keys.get(0)) ? keys.get(0) : FormField.BY_PARTS;
    }
    return value.map(SetupValue::plain).orElse("");
  }
}
