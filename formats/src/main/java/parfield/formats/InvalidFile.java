package parfield.formats;

import java.util.List;
import java.util.stream.Collectors;

/** A file, or a set of files that belong together, cannot be taken; carries every fault found. */
public final class InvalidFile extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Fault> faults;

  /**
   * Wraps the faults of a file.
   *
   * @param faults at least one, in the order of the file
   * @throws IllegalArgumentException if there is none
   */
  public InvalidFile(List<Fault> faults) {
    super(faults.stream().map(Fault::message).collect(Collectors.joining("\n")));
    if (faults.isEmpty()) {
      throw new IllegalArgumentException("an invalid file has at least one fault; got none");
    }
    this.faults = List.copyOf(faults);
  }

  /** Returns every fault, in the order of the file. */
  public List<Fault> faults() {
    return faults;
  }
}
