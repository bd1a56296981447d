package parfield.workspace;

import java.time.Instant;
import java.util.UUID;

/**
 * A bench in a list.
 *
 * @param id of it
 * @param name what people call it; need not be unique
 * @param sample whether it is an invented one, to try things on
 * @param putAway whether it is kept out of lists
 * @param revision of its setup
 * @param surveys how many
 * @param readings of all surveys, without those withdrawn
 * @param created when
 * @param changed when its setup, a survey or a reading was changed last
 */
public record BenchSummary(
    UUID id,
    String name,
    boolean sample,
    boolean putAway,
    long revision,
    int surveys,
    int readings,
    Instant created,
    Instant changed) {}
