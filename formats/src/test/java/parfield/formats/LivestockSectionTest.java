package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.care.Certainty;
import parfield.care.CoralGroup;
import parfield.care.Livestock;
import parfield.survey.Band;

/** The setup's own groups of corals. */
class LivestockSectionTest {
  @TempDir private Path folder;

  private TestBench bench(String livestock) {
    return TestBench.in(folder)
        .with(
            "setup.yaml",
            TestBench.FULL.replace("demands:", "livestock:\n" + livestock + "demands:"));
  }

  @Test
  void aGroupOfItsOwnAndOneThatDiffers() {
    Setup setup =
        bench(
                """
                  soft: {dli: {from: 2, to: 5}, source: two years here, confidence: fair}
                  sponges: {ppfd: {from: 5, to: 40}, dli: {from: 0.2, to: 1.5}}
                """
                    .indent(2))
            .read();

    CoralGroup soft = Livestock.common().get("soft");
    assertThat(setup.livestock())
        .containsExactly(
            Map.entry("soft", new CoralGroup(soft.ppfd(), 2, 5, Certainty.FAIR, "two years here")),
            Map.entry(
                "sponges",
                new CoralGroup(
                    new Band("sponges", 5, 40),
                    0.2,
                    1.5,
                    Certainty.LOW,
                    "stated in the setup, no source")));
    assertThat(setup.assumptions())
        .contains(
            "livestock.soft does not state, so taken: ppfd 75 to 150",
            "livestock.sponges does not state, so taken: confidence low");
  }

  @Test
  void faultsNameTheGroup() {
    assertThat(bench("  sponges: {ppfd: {from: 40, to: 5}, dli: {from: 0, to: 200}}\n").faults())
        .containsExactly(
            "setup.yaml:45:19: livestock.sponges.ppfd: got from 40 to 5, allowed from below to;"
                + " write the smaller first",
            "setup.yaml:45:57: livestock.sponges.dli.to: got 200, allowed 0 to 100 mol/m²/d; state"
                + " the upper end");
    assertThat(bench("  sponges: {confidence: sure}\n").faults())
        .containsExactly(
            "setup.yaml:45:12: livestock.sponges.ppfd: got nothing; write ppfd: {from: …, to: …}",
            "setup.yaml:45:12: livestock.sponges.dli: got nothing; write dli: {from: …, to: …}",
            "setup.yaml:45:25: livestock.sponges.confidence: got sure, allowed low, fair, good;"
                + " write one of these");
  }

  @Test
  void withoutTheSectionThereIsNone() {
    assertThat(TestBench.in(folder).read().livestock()).isEmpty();
  }
}
