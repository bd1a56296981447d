package parfield.workspace;

import java.time.Instant;
import java.util.UUID;

/**
 * A survey in a list.
 *
 * @param id of it
 * @param bench whose
 * @param benchName what the bench is called
 * @param name its key among the setup's {@code surveys}
 * @param sequence counts its changes; see {@link Readings#changesSince}
 * @param readings how many, without those withdrawn
 * @param created when
 * @param changed when a reading was changed last
 */
public record SurveySummary(
    UUID id,
    UUID bench,
    String benchName,
    String name,
    long sequence,
    int readings,
    Instant created,
    Instant changed) {}
