package parfield.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.tank.Place;

/** A workspace as those see it who use it. */
class WorkspaceTest {
  @TempDir private Path folder;

  @Test
  void keepsABenchWithItsReadings() {
    Location location = Location.parse(folder.resolve("deep/workspace.db").toString());
    UUID survey;
    UUID reading = UUID.randomUUID();
    try (Workspace workspace = Workspace.open(location)) {
      byte[] csv = "a,b".getBytes(StandardCharsets.UTF_8);
      SetupRevision setup =
          workspace
              .benches()
              .create("Långtank", true, "parfield: 1 # so\n", Map.of("a/b", csv), "Ann");
      survey = workspace.surveys().named(setup.bench(), "low").id();
      ReadingWrite first =
          new ReadingWrite(
              UUID.randomUUID(),
              reading,
              0,
              Entry.typed(new Place(0.1, 0.2, 0.3), 1, "123", 123),
              Instant.parse("2026-01-02T03:04:05.000006Z"));
      WriteResult result = workspace.readings().write(survey, List.of(first), "Ann").get(0);
      assertThat(workspace.readings().write(survey, List.of(first), "Ann")).containsExactly(result);
      assertThat(workspace.readings().undo(survey, UUID.randomUUID(), "Bo")).hasSize(1);
      assertThat(workspace.readings().redo(survey, UUID.randomUUID(), "Bo")).hasSize(1);
      assertThat(workspace.benches().list("langtank", 10, 0).items())
          .singleElement()
          .matches(bench -> bench.readings() == 1 && bench.surveys() == 1);
      assertThat(workspace.bytes(setup.files().get("a/b"))).isEqualTo(csv);
    }
    try (Workspace workspace = Workspace.open(location)) {
      assertThat(workspace.readings().history(reading))
          .extracting(ReadingRevision::cause)
          .containsExactly(Cause.WRITE, Cause.UNDO, Cause.REDO);
      assertThat(workspace.readings().of(survey).get(0).entry().value()).hasValue(123);
    }
  }
}
