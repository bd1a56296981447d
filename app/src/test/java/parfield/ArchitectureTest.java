package parfield;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaModifier.STATIC;
import static com.tngtech.archunit.lang.conditions.ArchConditions.accessTargetWhere;
import static com.tngtech.archunit.lang.conditions.ArchConditions.dependOnClassesThat;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The plan of the house: which package may import which, and what the engine does without.
 *
 * <p>Each rule is asked twice: of the program, where it must hold, and of the few classes under
 * {@code parfield.architecture.violations}, where it must fail.
 */
class ArchitectureTest {
  /** Pure computation. A package imports only those that stand before it. */
  private static final List<String> ENGINE =
      List.of(
          "units",
          "parallel",
          "spectrum",
          "optics",
          "lamp",
          "aquascape",
          "tank",
          "rig",
          "field",
          "photon",
          "validation",
          "survey",
          "fit",
          "plan",
          "care");

  /** All packages, in the order in which data flows through them. */
  private static final List<String> ROOMS =
      Stream.concat(
              ENGINE.stream(),
              Stream.of("formats", "demo", "plot", "answer", "workspace", "report", "web", "cli"))
          .toList();

  private static final String PROGRAM = "parfield";
  private static final String VIOLATIONS = "parfield.architecture.violations";

  private static final JavaClasses PROGRAM_CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages(PROGRAM);

  private static final JavaClasses VIOLATING_CLASSES =
      new ClassFileImporter().importPackages(VIOLATIONS);

  @Test
  @DisplayName("the classes of every module are looked at")
  void modulesAreSeen() {
    assertThat(PROGRAM_CLASSES.stream().map(type -> room(type, PROGRAM)))
        .contains(Optional.of("lamp"), Optional.of("formats"), Optional.of("cli"));
  }

  @Test
  void packagesImportOnlyThoseAboveThem() {
    importOnlyRoomsAbove(PROGRAM).check(PROGRAM_CLASSES);

    assertThat(faults(importOnlyRoomsAbove(VIOLATIONS)))
        .hasSize(2)
        .anySatisfy(
            fault ->
                assertThat(fault)
                    .contains("package units imports package tank, which stands below it")
                    .contains("units.NeedsTank")
                    .contains("tank.NeedsUnits"))
        .anySatisfy(
            fault ->
                assertThat(fault)
                    .contains("package plot imports package cli, which stands below it"));
  }

  @Test
  void packagesAreRoomsOfThePlan() {
    resideInRooms(PROGRAM).check(PROGRAM_CLASSES);

    assertThat(faults(resideInRooms(VIOLATIONS)))
        .singleElement()
        .asString()
        .contains("kitchen.Stray")
        .contains("is in none of the packages " + ROOMS);
  }

  @Test
  void packagesAreFreeOfCycles() {
    beFreeOfCycles(PROGRAM).check(PROGRAM_CLASSES);

    assertThat(faults(beFreeOfCycles(VIOLATIONS)))
        .singleElement()
        .asString()
        .contains("Cycle detected")
        .contains("Slice tank")
        .contains("Slice units");
  }

  @Test
  void engineHasNoFileNetworkDatabaseOrJson() {
    stayPure(PROGRAM).check(PROGRAM_CLASSES);

    assertThat(faults(stayPure(VIOLATIONS)))
        .anyMatch(fault -> fault.contains("java.io.File"))
        .anyMatch(fault -> fault.contains("java.io.FileReader"))
        .anyMatch(fault -> fault.contains("java.nio.file.Path"))
        .anyMatch(fault -> fault.contains("java.net.URI"))
        .anyMatch(fault -> fault.contains("java.sql.Timestamp"))
        .anyMatch(fault -> fault.contains("java.time.Clock"))
        .anyMatch(fault -> fault.contains("com.fasterxml.jackson.databind.ObjectMapper"))
        .allMatch(fault -> fault.contains("field.Impure"));
  }

  @Test
  void engineHasNoConsoleClockOrHiddenRandomness() {
    takeEverythingAsArgument(PROGRAM).check(PROGRAM_CLASSES);

    assertThat(faults(takeEverythingAsArgument(VIOLATIONS)))
        .anyMatch(fault -> fault.contains("java.lang.System.out"))
        .anyMatch(fault -> fault.contains("java.lang.System.err"))
        .anyMatch(fault -> fault.contains("java.lang.System.nanoTime()"))
        .anyMatch(fault -> fault.contains("java.time.Instant.now()"))
        .anyMatch(fault -> fault.contains("java.lang.Math.random()"))
        .anyMatch(fault -> fault.contains("java.util.SplittableRandom.<init>()"))
        .hasSize(6)
        .allMatch(fault -> fault.contains("field.Impure"));
  }

  @Test
  void publicRecordsHideTheirArrays() {
    keepArraysOutOfPublicRecords().check(PROGRAM_CLASSES);

    assertThat(faults(keepArraysOutOfPublicRecords()))
        .singleElement()
        .asString()
        .contains("tank.Leaky is a public record with the array component depths");
  }

  @Test
  @DisplayName("every package says what belongs there")
  void packagesAreDescribed(@TempDir Path empty) throws IOException {
    Path sources = Path.of("..");
    assertThat(sources.resolve("engine/src/main/java")).isDirectory();
    assertThat(packagesWithoutDescription(sources)).isEmpty();

    Path kitchen = Files.createDirectories(empty.resolve("engine/src/main/java/parfield/kitchen"));
    Files.writeString(kitchen.resolve("Stray.java"), "package parfield.kitchen;");
    assertThat(packagesWithoutDescription(empty)).containsExactly(kitchen);
    Files.writeString(kitchen.resolve("package-info.java"), "package parfield.kitchen;");
    assertThat(packagesWithoutDescription(empty)).containsExactly(kitchen);
    Files.writeString(
        kitchen.resolve("package-info.java"), "/** Pots and pans. */\npackage parfield.kitchen;");
    assertThat(packagesWithoutDescription(empty)).isEmpty();
  }

  private static ArchRule importOnlyRoomsAbove(String root) {
    return classes()
        .that(areIn(root, ROOMS))
        .should(
            new ArchCondition<>("import only packages that stand above their own") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                  String from = room(type, root).orElseThrow();
                  String to = room(dependency.getTargetClass(), root).orElse(from);
                  if (ROOMS.indexOf(to) > ROOMS.indexOf(from)) {
                    String fault =
                        String.format(
                            Locale.ROOT,
                            "package %s imports package %s, which stands below it: %s",
                            from,
                            to,
                            dependency.getDescription());
                    events.add(SimpleConditionEvent.violated(dependency, fault));
                  }
                }
              }
            })
        .allowEmptyShould(true);
  }

  private static ArchRule resideInRooms(String root) {
    return classes()
        .should(
            new ArchCondition<>("reside in a package of the plan") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                if (room(type, root).filter(ROOMS::contains).isEmpty()) {
                  String fault = type.getName() + " is in none of the packages " + ROOMS;
                  events.add(SimpleConditionEvent.violated(type, fault));
                }
              }
            });
  }

  private static ArchRule beFreeOfCycles(String root) {
    return slices().matching(root + ".(**)").should().beFreeOfCycles();
  }

  private static ArchRule stayPure(String root) {
    DescribedPredicate<JavaClass> outside =
        resideInAnyPackage(
                "java.nio.file..",
                "java.nio.channels..",
                "java.net..",
                "java.sql..",
                "javax.sql..",
                "com.fasterxml..")
            .or(
                describe(
                    "file, console or clock of java.io and java.time",
                    type ->
                        type.getName().equals("java.io.Console")
                            || type.getName().equals("java.time.Clock")
                            || type.getName().matches("java\\.io\\.(Random)?(Access)?File\\w*")));
    return noClasses()
        .that(areIn(root, ENGINE))
        .should(dependOnClassesThat(outside))
        .allowEmptyShould(true);
  }

  private static ArchRule takeEverythingAsArgument(String root) {
    Set<String> hidden =
        Set.of(
            "java.lang.System.out",
            "java.lang.System.err",
            "java.lang.System.in",
            "java.lang.System.currentTimeMillis()",
            "java.lang.System.nanoTime()",
            "java.lang.Math.random()",
            "java.util.Random.<init>()",
            "java.util.SplittableRandom.<init>()",
            "java.util.concurrent.ThreadLocalRandom.current()",
            "java.util.UUID.randomUUID()");
    DescribedPredicate<JavaAccess<?>> readsHiddenInput =
        describe(
            "is console, clock or an unseeded generator",
            access -> {
              String target = access.getTarget().getFullName();
              return hidden.contains(target) || target.matches("java\\.time\\..*\\.now\\(.*\\)");
            });
    return noClasses()
        .that(areIn(root, ENGINE))
        .should(accessTargetWhere(readsHiddenInput))
        .allowEmptyShould(true);
  }

  /** An array in a record leaks, and compares by identity; inside one package that may be meant. */
  private static ArchRule keepArraysOutOfPublicRecords() {
    return classes()
        .that()
        .areRecords()
        .and()
        .arePublic()
        .should(
            new ArchCondition<>("have no array component") {
              @Override
              public void check(JavaClass type, ConditionEvents events) {
                for (JavaField field : type.getFields()) {
                  if (field.getRawType().isArray() && !field.getModifiers().contains(STATIC)) {
                    String fault =
                        String.format(
                            Locale.ROOT,
                            "%s is a public record with the array component %s",
                            type.getName(),
                            field.getName());
                    events.add(SimpleConditionEvent.violated(field, fault));
                  }
                }
              }
            })
        .allowEmptyShould(true);
  }

  /** The first name after {@code root} in the package of {@code type}: its room in the plan. */
  private static Optional<String> room(JavaClass type, String root) {
    String name = type.getPackageName();
    return name.startsWith(root + ".")
        ? Optional.of(name.substring(root.length() + 1).split(Pattern.quote("."), 2)[0])
        : Optional.empty();
  }

  private static DescribedPredicate<JavaClass> areIn(String root, List<String> rooms) {
    return describe(
        "are in the packages " + rooms,
        type -> room(type, root).filter(rooms::contains).isPresent());
  }

  private static List<String> faults(ArchRule rule) {
    return rule.evaluate(VIOLATING_CLASSES).getFailureReport().getDetails();
  }

  /** The source folders that hold classes but no {@code package-info.java} with a comment. */
  private static List<Path> packagesWithoutDescription(Path sources) throws IOException {
    List<Path> missing = new ArrayList<>();
    for (String module : List.of("engine", "formats", "app", "benchmarks")) {
      Path main = sources.resolve(module).resolve("src/main/java");
      if (!Files.isDirectory(main)) {
        continue;
      }
      try (Stream<Path> folders = Files.walk(main).filter(Files::isDirectory)) {
        for (Path folder : folders.sorted().toList()) {
          if (holdsClasses(folder) && !isDescribed(folder.resolve("package-info.java"))) {
            missing.add(folder);
          }
        }
      }
    }
    return missing;
  }

  private static boolean holdsClasses(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.anyMatch(file -> file.toString().endsWith(".java"));
    }
  }

  private static boolean isDescribed(Path packageInfo) throws IOException {
    return Files.exists(packageInfo) && Files.readString(packageInfo).contains("/**");
  }
}
