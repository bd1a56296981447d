package parfield.workspace;

import java.util.List;

/**
 * Changes of a survey.
 *
 * @param sequence of the last change; ask for what came after it next time
 * @param readings that were changed, each as it is now, in the order of their last change
 * @param canUndo whether there is a change to take back
 * @param canRedo whether there is a change to bring back
 */
public record Changes(
    long sequence, List<ReadingRevision> readings, boolean canUndo, boolean canRedo) {
  public Changes {
    readings = List.copyOf(readings);
  }
}
