package parfield.web.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import parfield.answer.Bench;
import parfield.formats.Fault;
import parfield.formats.InvalidFile;
import parfield.formats.Setup;
import parfield.workspace.BenchSummary;
import parfield.workspace.SetupRevision;
import parfield.workspace.SurveySummary;

/**
 * A stored bench at one moment. Immutable.
 *
 * @param summary of it
 * @param document its setup as it is stored
 * @param files what lies beside the setup, by name
 * @param surveys its stored surveys, by name
 * @param setup what the setup states, with the stored readings in it; empty if it has faults
 * @param faults why there is no setup
 * @param inputs digest of what a fit depends on: all of the setup but bands, demands and rigs that
 *     no survey names, its files, and the readings
 * @param advised digest of what a recommendation depends on; empty if the setup has faults
 */
public record OpenBench(
    BenchSummary summary,
    SetupRevision document,
    Map<String, byte[]> files,
    Map<String, SurveySummary> surveys,
    Optional<Setup> setup,
    List<Fault> faults,
    String inputs,
    Optional<String> advised) {
  public OpenBench {
    Objects.requireNonNull(summary, "summary");
    Objects.requireNonNull(document, "document");
    files = Map.copyOf(files);
    surveys = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(surveys));
    Objects.requireNonNull(setup, "setup");
    faults = List.copyOf(faults);
    Objects.requireNonNull(inputs, "inputs");
    Objects.requireNonNull(advised, "advised");
  }

  /** Its id. */
  public UUID id() {
    return summary.id();
  }

  /** What people call it. */
  public String name() {
    return summary.name();
  }

  /** Whether it is an invented one. */
  public boolean sample() {
    return summary.sample();
  }

  /** Revision of its setup. */
  public long revision() {
    return document.revision();
  }

  /** Its setup as text. */
  public String text() {
    return document.text();
  }

  /** Number of readings that count. */
  public int readings() {
    return surveys.values().stream().mapToInt(SurveySummary::readings).sum();
  }

  /**
   * What its setup states.
   *
   * @throws InvalidFile with the faults, if it has some
   */
  public Setup setupOrRefuse() {
    return setup.orElseThrow(() -> new InvalidFile(new ArrayList<>(faults)));
  }

  /**
   * The bench, to be asked something.
   *
   * @throws InvalidFile if its setup has faults
   */
  public Bench bench() {
    return new Bench(setupOrRefuse());
  }
}
