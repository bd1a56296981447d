package parfield.workspace;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.zip.ZipOutputStream;
import org.jdbi.v3.core.Handle;
import parfield.formats.InvalidFile;
import parfield.formats.SetupFile;
import parfield.formats.SurveyKeys;
import parfield.formats.WholeFile;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.units.LengthUnit;

/** Benches as files: a setup, the files it names, and readings as separated values. */
public final class BenchFiles {
  /** Name of the setup among the files of an exported bench. */
  public static final String SETUP = "setup.yaml";

  private static final Zip.Bounds BOUNDS = new Zip.Bounds(2000, 512L << 20);

  /** Where readings go whose survey the setup does not state. */
  private static final String UNSTATED = "not in the setup/";

  private final Database database;
  private final Clock clock;
  private final Benches benches;
  private final Surveys surveys;
  private final Readings readings;

  BenchFiles(Database database, Clock clock, Benches benches, Surveys surveys, Readings readings) {
    this.database = database;
    this.clock = clock;
    this.benches = benches;
    this.surveys = surveys;
    this.readings = readings;
  }

  /**
   * Takes a bench from a setup file, or from a zip archive that holds one.
   *
   * @param file the setup, with the files it names beside it; or an archive of both
   * @param who brings it
   * @return the bench
   * @throws InvalidFile with every fault of the setup and of the files it names
   * @throws WorkspaceProblem if the archive is damaged, too big or holds no setup
   */
  public SetupRevision take(Path file, String who) {
    String name = String.valueOf(file.getFileName());
    if (!name.toLowerCase(Locale.ROOT).endsWith(".zip")) {
      String bench = stem(name);
      Path folder = file.toAbsolutePath().getParent();
      if (bench.equalsIgnoreCase("setup") && folder != null && folder.getFileName() != null) {
        bench = folder.getFileName().toString();
      }
      return store(bench, false, SetupFile.gather(file), who);
    }
    try (InputStream in = Files.newInputStream(file)) {
      return takeZip(name, in, who);
    } catch (IOException e) {
      throw Zip.refused(name, "it cannot be read");
    }
  }

  /**
   * Takes a bench from a zip archive that holds a setup and the files it names: its only YAML
   * document, or the one named {@code setup.yaml} that lies least deep.
   *
   * @param name of the archive, which gives the bench its name
   * @param in the archive; the caller closes it
   * @param who brings it
   * @return the bench
   */
  public SetupRevision takeZip(String name, InputStream in, String who) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    Zip.read(
        name,
        in,
        BOUNDS,
        (file, content) -> {
          byte[] bytes = content.readAllBytes();
          if (!file.startsWith("__MACOSX/")) {
            files.put(file, bytes);
          }
        });
    List<String> documents =
        files.keySet().stream().filter(file -> file.matches("(?i).*\\.ya?ml")).toList();
    String setup =
        documents.stream()
            .filter(file -> documents.size() == 1 || lastPart(file).equals(SETUP))
            .min(Comparator.comparingInt((String file) -> file.split("/", -1).length))
            .orElseThrow(() -> Zip.refused(name, "it holds no " + SETUP));
    String folder = setup.substring(0, setup.lastIndexOf('/') + 1);
    Map<String, byte[]> beside = new LinkedHashMap<>();
    files.forEach(
        (file, bytes) -> {
          if (file.startsWith(folder)) {
            beside.put(file.substring(folder.length()), bytes);
          }
        });
    return store(stem(name), false, SetupFile.gather(setup, files.get(setup), beside), who);
  }

  /**
   * Takes a bench from files in memory.
   *
   * @param name what people shall call it
   * @param sample whether it is an invented one
   * @param setup the setup's name among the files
   * @param files by name
   * @param who brings it
   * @return the bench
   * @throws InvalidFile with every fault of the setup and of the files it names
   */
  public SetupRevision take(
      String name, boolean sample, String setup, Map<String, byte[]> files, String who) {
    if (!files.containsKey(setup)) {
      throw WorkspaceProblem.refused(
          "among the files is no " + setup, "add the setup to the files it names");
    }
    return store(name, sample, SetupFile.gather(setup, files.get(setup), files), who);
  }

  private SetupRevision store(
      String name, boolean sample, SetupFile.Gathered gathered, String who) {
    return database.write(
        handle -> {
          SetupRevision made =
              benches.create(handle, name, sample, gathered.text(), gathered.files(), who);
          for (String survey : gathered.setup().plans().keySet()) {
            UUID id = surveys.named(handle, made.bench(), survey).id();
            Survey taken = gathered.setup().surveys().get(survey);
            if (taken != null) {
              store(handle, id, taken.readings(), who);
            }
          }
          return made;
        });
  }

  private void store(Handle handle, UUID survey, List<Reading> taken, String who) {
    List<ReadingWrite> writes = new ArrayList<>();
    for (Reading reading : taken) {
      writes.add(
          new ReadingWrite(
              UUID.randomUUID(),
              UUID.randomUUID(),
              0,
              new Entry(
                  reading.place(),
                  writes.size() + 1,
                  Decimal.shortest(reading.value()),
                  OptionalDouble.of(reading.value()),
                  Entry.Origin.IMPORTED,
                  Entry.Kind.GRID,
                  false),
              clock.instant()));
    }
    readings.write(handle, survey, writes, who, true);
  }

  /**
   * A bench as files: its setup as {@link #SETUP} with the files it names, and the readings of each
   * survey as separated values. The text of the setup is changed only where it must name another
   * file of readings. A file of readings that was imported and not changed since stays as it was.
   *
   * @return bytes by name
   * @throws WorkspaceProblem if there is no such bench, or its setup states a depth for a survey
   *     that holds readings at another
   */
  public Map<String, byte[]> files(UUID bench) {
    return database.read(handle -> files(handle, bench));
  }

  /**
   * Writes a bench as a zip archive of {@link #files}; what was there is replaced.
   *
   * @throws InvalidFile if it cannot be written there
   */
  public void write(UUID bench, Path target) {
    Map<String, byte[]> files = files(bench);
    WholeFile.write(
        target,
        out -> {
          ZipOutputStream zip = new ZipOutputStream(out);
          for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Zip.begin(zip, file.getKey()).write(file.getValue());
            zip.closeEntry();
          }
          zip.finish();
        });
  }

  private static Map<String, byte[]> files(Handle handle, UUID bench) {
    SetupRevision setup = Benches.current(handle, bench);
    Map<String, byte[]> files = new TreeMap<>();
    setup
        .files()
        .forEach(
            (name, file) -> files.put(name, Contents.bytes(handle, file.digest()).orElseThrow()));
    Map<String, SurveyKeys> keys = keys(setup.text());
    Map<String, Survey> imported = imported(setup.text(), files);
    LengthUnit unit = unit(setup.text());
    Map<String, String> renamed = new HashMap<>();
    Map<String, List<Reading>> surelyAt = new HashMap<>();
    Set<String> taken = new HashSet<>();
    for (SurveySummary survey : Surveys.of(handle, bench)) {
      List<ReadingRevision> all = counted(handle, survey.id(), Entry.Kind.GRID);
      List<ReadingRevision> drift = counted(handle, survey.id(), Entry.Kind.DRIFT);
      String safe = safe(survey.name());
      if (!drift.isEmpty()) {
        files.put(free(files, UNSTATED + safe + "-drift"), ReadingsCsv.of(drift, unit, true));
      }
      SurveyKeys key = keys.get(survey.name());
      if (key == null) {
        if (!all.isEmpty()) {
          files.put(free(files, UNSTATED + safe), ReadingsCsv.of(all, unit, true));
        }
        continue;
      }
      String named = key.readings().orElse("");
      if (isAsImported(imported.get(survey.name()), all)) {
        taken.add(named);
        continue;
      }
      if (all.isEmpty() && named.isEmpty()) {
        continue;
      }
      String name = named;
      if (!isPlainText(named) || !taken.add(named)) {
        name = free(files, safe);
        renamed.put(survey.name(), name);
      }
      files.put(name, ReadingsCsv.of(all, unit, !key.depth()));
      if (key.depth()) {
        surelyAt.put(survey.name(), readings(all));
      }
    }
    String text =
        renamed.isEmpty() ? setup.text() : SurveyKeys.withReadings(SETUP, setup.text(), renamed);
    checkDepths(text, files, surelyAt);
    Map<String, byte[]> exported = new LinkedHashMap<>();
    exported.put(SETUP, text.getBytes(StandardCharsets.UTF_8));
    files.forEach(exported::putIfAbsent);
    return exported;
  }

  private static List<ReadingRevision> counted(Handle handle, UUID survey, Entry.Kind kind) {
    return Readings.of(handle, survey).stream()
        .filter(reading -> !reading.withdrawn() && reading.entry().kind() == kind)
        .toList();
  }

  private static List<Reading> readings(List<ReadingRevision> revisions) {
    return revisions.stream()
        .map(it -> new Reading(0, it.entry().place(), it.entry().value().orElseThrow()))
        .toList();
  }

  /** What the setup says of surveys; nothing while its text is no YAML, for people do type. */
  private static Map<String, SurveyKeys> keys(String text) {
    try {
      return SurveyKeys.of(SETUP, text);
    } catch (InvalidFile e) {
      return Map.of();
    }
  }

  /** The readings in the files as they were imported; none where the setup has faults. */
  private static Map<String, Survey> imported(String text, Map<String, byte[]> files) {
    try {
      return SetupFile.gather(SETUP, text.getBytes(StandardCharsets.UTF_8), files)
          .setup()
          .surveys();
    } catch (InvalidFile e) {
      return Map.of();
    }
  }

  private static boolean isAsImported(Survey imported, List<ReadingRevision> now) {
    if (imported == null || imported.readings().size() != now.size()) {
      return false;
    }
    for (int i = 0; i < now.size(); i++) {
      Reading then = imported.readings().get(i);
      Entry entry = now.get(i).entry();
      if (!then.place().equals(entry.place()) || then.value() != entry.value().orElseThrow()) {
        return false;
      }
    }
    return true;
  }

  private static LengthUnit unit(String text) {
    return text.lines().anyMatch(line -> line.matches("length\\s*:\\s*in\\s*(#.*)?"))
        ? LengthUnit.INCH
        : LengthUnit.CM;
  }

  /** A stated depth stands for all readings of its survey; others would be told wrong. */
  private static void checkDepths(
      String text, Map<String, byte[]> files, Map<String, List<Reading>> surelyAt) {
    Map<String, Survey> read = surelyAt.isEmpty() ? Map.of() : imported(text, files);
    surelyAt.forEach(
        (name, readings) -> {
          Survey survey = read.get(name);
          boolean same =
              survey == null
                  || survey.readings().stream()
                      .map(Reading::place)
                      .toList()
                      .equals(readings.stream().map(Reading::place).toList());
          if (!same) {
            throw WorkspaceProblem.refused(
                String.format(
                    Locale.ROOT,
                    "the setup states a depth for survey %s, which holds readings at another",
                    name),
                "delete the key depth of that survey in the setup, then export again");
          }
        });
  }

  private static boolean isPlainText(String name) {
    try {
      FileNames.check(name);
    } catch (IllegalArgumentException e) {
      return false;
    }
    return name.matches("(?i).*\\.(csv|tsv|txt)");
  }

  private static String safe(String survey) {
    String safe = survey.replaceAll("[^\\p{L}\\p{N}_. -]", "_").strip();
    return safe.replaceAll("\\.+$", "").isEmpty() ? "survey" : safe;
  }

  private static String free(Map<String, byte[]> files, String stem) {
    String name = stem + ".csv";
    for (int i = 2; files.containsKey(name); i++) {
      name = String.format(Locale.ROOT, "%s-%d.csv", stem, i);
    }
    return name;
  }

  private static String stem(String name) {
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static String lastPart(String name) {
    return name.substring(name.lastIndexOf('/') + 1);
  }
}
