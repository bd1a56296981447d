package parfield.formats;

import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import parfield.care.CoralGroup;
import parfield.lamp.Fixture;
import parfield.plan.Demand;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.SpectralSensor;
import parfield.survey.Survey;
import parfield.survey.SurveyPlan;
import parfield.units.LengthUnit;

/** The setup file: one YAML document that holds a bench. See docs/FORMATS.md for every key. */
public final class SetupFile {
  /** Most bytes of a setup file. */
  static final int MOST_BYTES = 1 << 20;

  private static final int VERSION = 1;
  private static final String[] KEYS = {
    "parfield",
    "length",
    "tank",
    "fixtures",
    "rigs",
    "meters",
    "surveys",
    "bands",
    "livestock",
    "day",
    "demands"
  };

  private SetupFile() {}

  /**
   * Reads a setup and every file it names.
   *
   * @param path the setup file; files it names are found beside it
   * @return the bench
   * @throws InvalidFile with every fault of the setup and of the files it names
   */
  public static Setup read(Path path) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    Notes notes = new Notes();
    String text;
    try {
      text = Source.text(Source.bytes(path, MOST_BYTES));
    } catch (Unreadable e) {
      throw notes.fatal(e.of(file));
    }
    Attachments files = Attachments.of(path.toAbsolutePath().getParent());
    return setup(file, Yaml.parse(file, text, notes), new Sources(files, notes), Map.of(), notes);
  }

  /**
   * Reads a setup whose files and readings are held in memory: no name in it reaches the file
   * system.
   *
   * @param file what the setup is called in messages
   * @param text the YAML document
   * @param files what lies beside it, by name
   * @param held readings by survey, maybe none; they stand for the file that the survey names, if
   *     it names one
   * @return the bench; surveys without a reading are among its plans only
   * @throws InvalidFile with every fault of the setup, of the files and of the readings
   */
  public static Setup read(
      String file, String text, Map<String, byte[]> files, Map<String, List<Reading>> held) {
    Notes notes = new Notes();
    if (text.length() > MOST_BYTES) {
      throw notes.fatal(
          new Fault(
              file,
              0,
              0,
              "size of the setup",
              text.length() + " characters",
              "at most " + MOST_BYTES,
              "put tables into files of their own"));
    }
    return setup(
        file,
        Yaml.parse(file, text, notes),
        new Sources(Attachments.of(files), notes),
        held,
        notes);
  }

  /**
   * A setup with all that it is made of.
   *
   * @param text the YAML document
   * @param files that it names, by name; two ways to write one name are one
   * @param setup what it says
   */
  public record Gathered(String text, Map<String, byte[]> files, Setup setup) {
    public Gathered {
      files = Collections.unmodifiableMap(new LinkedHashMap<>(files));
    }
  }

  /**
   * Reads a setup and keeps every file it names, so that it can be stored elsewhere.
   *
   * @param path the setup file; files it names are found beside it
   * @return the bench with its files
   * @throws InvalidFile with every fault of the setup and of the files it names
   */
  public static Gathered gather(Path path) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    try {
      byte[] bytes = Source.bytes(path, MOST_BYTES);
      return gather(file, bytes, Attachments.of(path.toAbsolutePath().getParent()));
    } catch (Unreadable e) {
      throw new Notes().fatal(e.of(file));
    }
  }

  /**
   * Reads a setup whose files are held in memory, and keeps those that it names.
   *
   * @param file what the setup is called in messages
   * @param bytes the YAML document in UTF-8
   * @param files what lies beside it, by name
   * @return the bench with its files
   * @throws InvalidFile with every fault of the setup and of the files it names
   */
  public static Gathered gather(String file, byte[] bytes, Map<String, byte[]> files) {
    return gather(file, bytes, Attachments.of(files));
  }

  private static Gathered gather(String file, byte[] bytes, Attachments files) {
    Notes notes = new Notes();
    try {
      String text = Source.text(Source.checked(bytes, MOST_BYTES));
      Map<String, byte[]> kept = new LinkedHashMap<>();
      Sources sources = new Sources(Attachments.keeping(files, kept), notes);
      Setup setup = setup(file, Yaml.parse(file, text, notes), sources, Map.of(), notes);
      return new Gathered(text, kept, setup);
    } catch (Unreadable e) {
      throw notes.fatal(e.of(file));
    }
  }

  private static Setup setup(
      String file, Entry root, Sources sources, Map<String, List<Reading>> held, Notes notes) {
    Optional<Section> section = root.section(KEYS);
    if (section.isEmpty()) {
      throw notes.fatal();
    }
    Section top = section.get();
    version(top);
    Lengths lengths = new Lengths(unit(top));
    TankSection.Read tank =
        top.required("tank", "describe the tank: tank: {length: 90, width: 60, water: 50}")
            .map(entry -> TankSection.read(entry, lengths, sources))
            .orElse(new TankSection.Read(Optional.empty(), Room.unbounded()));
    Map<String, Optional<Fixture>> fixtures =
        each(
            top.required("fixtures", "describe at least one fixture"),
            (name, entry) -> FixtureSection.read(name, entry, lengths, sources));
    RigSection rigReader = new RigSection(fixtures, lengths, tank.room());
    Map<String, Optional<Rig>> rigs =
        each(
            top.required("rigs", "describe at least one rig"),
            (name, entry) -> rigReader.read(name, entry, tank.tank()));
    Map<String, Optional<MeterSection.Read>> meters =
        each(
            top.optional("meters"),
            (name, entry) -> MeterSection.read(name, entry, lengths, sources));
    SurveySection surveyReader =
        new SurveySection(rigs, meters, tank.tank(), lengths, sources, held);
    Map<String, Optional<SurveySection.Read>> surveys =
        each(top.optional("surveys"), surveyReader::read);
    Map<String, Optional<Band>> bands = each(top.optional("bands"), BandSection::read);
    Map<String, Optional<CoralGroup>> livestock =
        each(top.optional("livestock"), LivestockSection::read);
    Optional<StatedDay> day =
        top.optional("day").map(entry -> DaySection.read(entry, fixtures.values()));
    DemandSection demandReader = new DemandSection(bands, tank.tank(), lengths);
    List<Demand> demands = top.optional("demands").map(demandReader::read).orElse(List.of());
    notes.throwIfFaulty();
    return new Setup(
        file,
        lengths.unit(),
        tank.tank().orElseThrow(),
        tank.room(),
        sound(fixtures),
        sound(rigs),
        meters(meters),
        sensors(meters),
        plans(surveys),
        taken(surveys),
        sound(bands),
        sound(livestock),
        day,
        demands,
        notes.assumptions());
  }

  private static void version(Section top) {
    Optional<Entry> stated = top.required("parfield", "write the format's version: parfield: 1");
    if (stated.isPresent()) {
      stated
          .get()
          .number(
              Limit.between(VERSION, VERSION), "this program reads version 1: take a newer one");
    }
  }

  private static LengthUnit unit(Section top) {
    return top.required("length", "state the unit of every length in the file: cm or in")
        .flatMap(entry -> entry.word(List.of("cm", "in")))
        .map(word -> word.equals("in") ? LengthUnit.INCH : LengthUnit.CM)
        .orElse(LengthUnit.CM);
  }

  private static <T> Map<String, Optional<T>> each(
      Optional<Entry> stated, BiFunction<String, Entry, Optional<T>> read) {
    Map<String, Optional<T>> all = new LinkedHashMap<>();
    stated.ifPresent(
        entry -> {
          Map<String, Entry> named = entry.named("write name: {…}");
          if (entry.isMap() && named.isEmpty()) {
            entry.fault("an empty map", "1 entry or more", "fill it in, or delete the key");
          }
          named.forEach((name, value) -> all.put(name, read.apply(name, value)));
        });
    return all;
  }

  private static Map<String, Meter> meters(Map<String, Optional<MeterSection.Read>> read) {
    Map<String, Meter> meters = new LinkedHashMap<>();
    sound(read).forEach((name, meter) -> meters.put(name, meter.meter()));
    return meters;
  }

  private static Map<String, SpectralSensor> sensors(
      Map<String, Optional<MeterSection.Read>> read) {
    Map<String, SpectralSensor> sensors = new LinkedHashMap<>();
    sound(read)
        .forEach((name, meter) -> meter.sensor().ifPresent(sensor -> sensors.put(name, sensor)));
    return sensors;
  }

  private static Map<String, SurveyPlan> plans(Map<String, Optional<SurveySection.Read>> read) {
    Map<String, SurveyPlan> plans = new LinkedHashMap<>();
    sound(read).forEach((name, survey) -> plans.put(name, survey.plan()));
    return plans;
  }

  private static Map<String, Survey> taken(Map<String, Optional<SurveySection.Read>> read) {
    Map<String, Survey> surveys = new LinkedHashMap<>();
    sound(read)
        .forEach((name, survey) -> survey.taken().ifPresent(taken -> surveys.put(name, taken)));
    return surveys;
  }

  private static <T> Map<String, T> sound(Map<String, Optional<T>> read) {
    Map<String, T> sound = new LinkedHashMap<>();
    read.forEach((name, value) -> sound.put(name, value.orElseThrow()));
    return sound;
  }
}
