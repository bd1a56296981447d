package parfield.cli;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.answer.Bench;
import parfield.answer.Refusal;
import parfield.care.CoralGroup;
import parfield.care.HadLight;
import parfield.care.Pace;
import picocli.CommandLine.Option;

/** The light that a coral had before. */
final class HadOptions {
  @Option(
      names = "--had-ppfd",
      paramLabel = "PPFD",
      description =
          "Highest PPFD of the day that the coral had, the low end if only a range is known.")
  private Double peak;

  @Option(
      names = "--had-dli",
      paramLabel = "DLI",
      description = "Daily light integral that it had, in mol m⁻² d⁻¹, the low end of a range.")
  private Double dli;

  @Option(
      names = "--known",
      paramLabel = "measured|told",
      description = "How that is known; told is slower. Default: told.")
  private String known;

  @Option(
      names = "--group",
      paramLabel = "GROUP",
      description =
          "The coral's group: where its light is not known, the low end of what the group is given.")
  private String group;

  @Option(
      names = "--first",
      paramLabel = "DATE",
      description = "First day, as in 2026-12-01. Default: today.")
  private String first;

  boolean stated() {
    return peak != null || dli != null || group != null || known != null;
  }

  /** The coral's group, if it was stated. */
  Optional<CoralGroup> group(Bench bench) {
    return Optional.ofNullable(group).map(name -> DayOptions.groups(bench, List.of(name)).get(0));
  }

  HadLight had(Bench bench) {
    if (peak == null && dli == null) {
      if (known != null) {
        throw Refusal.of(
            "--known tells how the light before is known; it was not stated",
            "add --had-ppfd or --had-dli, or leave --known out");
      }
      if (group == null) {
        throw Refusal.of(
            "it is not known what light the coral had",
            "state --had-ppfd or --had-dli, or its --group, of which the low end is taken then");
      }
      return HadLight.unknown(DayOptions.groups(bench, List.of(group)).get(0));
    }
    Pace.Known how =
        Arrays.stream(Pace.Known.values())
            .filter(one -> one != Pace.Known.UNKNOWN)
            .filter(one -> one.words().equals(known == null ? "told" : known))
            .findFirst()
            .orElseThrow(
                () -> Refusal.of("light is measured or told; got " + known, "leave --known out"));
    try {
      return new HadLight(how, optional(peak), optional(dli));
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage());
    }
  }

  private static OptionalDouble optional(Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  LocalDate first() {
    if (first == null) {
      return LocalDate.now(ZoneId.systemDefault());
    }
    try {
      return LocalDate.parse(first);
    } catch (DateTimeException e) {
      throw Refusal.of(
          "a day is written as in 2026-12-01; got " + first,
          "give the first day so, or leave it out for today");
    }
  }
}
