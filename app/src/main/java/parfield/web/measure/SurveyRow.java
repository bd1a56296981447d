package parfield.web.measure;

import java.util.Objects;
import java.util.UUID;

/**
 * A survey in the list of a bench.
 *
 * @param id of it as it is stored
 * @param name of it
 * @param rig that hangs; empty if the setup no longer states the survey
 * @param meter it is read with; empty as for the rig
 * @param places of its grid; 0 if it has none
 * @param readings that count
 */
public record SurveyRow(UUID id, String name, String rig, String meter, int places, int readings) {
  public SurveyRow {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(rig, "rig");
    Objects.requireNonNull(meter, "meter");
  }

  /** Whether the setup states it. */
  public boolean stated() {
    return !rig.isEmpty();
  }
}
