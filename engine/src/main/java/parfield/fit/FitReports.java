package parfield.fit;

import java.util.List;
import parfield.survey.Survey;

/** Writes down what a fit found, for people. */
final class FitReports {
  private FitReports() {}

  static FitReport of(
      List<Survey> surveys,
      List<LampGroups.Group> all,
      List<LampGroups.Group> groups,
      Conditions conditions,
      FreedomSearch.Chosen chosen) {
    return new FitReport(List.of(), List.of(), List.of(), List.of(), chosen.discrepancy());
  }
}
