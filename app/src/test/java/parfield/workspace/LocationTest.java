package parfield.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a workspace is, as a person writes it. */
class LocationTest {
  @Test
  void filesAreAbsolute() {
    Path here = Path.of("").toAbsolutePath();

    assertThat(Location.parse("reef.db")).isEqualTo(new Location.File(here.resolve("reef.db")));
    assertThat(Location.parse("jdbc:sqlite:a/../reef.db"))
        .isEqualTo(new Location.File(here.resolve("reef.db")));
  }

  @Test
  void passwordsAreNotShown() {
    assertThat(Location.parse("jdbc:postgresql://db:5432/reef?user=ann&password=s3cret"))
        .hasToString("jdbc:postgresql://db:5432/reef");
    assertThat(Location.parse("JDBC:PostgreSQL://ann:s3cret@db/reef"))
        .hasToString("JDBC:PostgreSQL://db/reef");
  }

  @ParameterizedTest
  @ValueSource(strings = {"jdbc:h2:mem:x", "jdbc:mysql://db/reef", "postgres://db/reef"})
  void otherDatabasesAreRefused(String text) {
    assertThatThrownBy(() -> Location.parse(text))
        .isInstanceOfSatisfying(
            WorkspaceProblem.class,
            problem ->
                assertThat(problem.hints())
                    .containsExactly(
                        "name a file, or a URL as in jdbc:postgresql://host/database?user=name"))
        .hasMessage("a workspace is not kept in " + text.split("//", 2)[0]);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "jdbc:sqlite:", "jdbc:sqlite::memory:", "a?mode=memory", "a\0b"})
  void whatNamesNoFileIsRefused(String text) {
    assertThatThrownBy(() -> Location.parse(text))
        .isInstanceOf(WorkspaceProblem.class)
        .hasMessageEndingWith(" names no file for a workspace");
  }
}
