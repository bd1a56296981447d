package parfield.web.spectra;

import java.util.List;
import java.util.Optional;
import parfield.workspace.ShelfItem;

/**
 * All spectra that can be chosen, as a page lists them.
 *
 * @param all by where they come from
 */
public record SpectrumGroups(List<Group> all) {
  public SpectrumGroups {
    all = List.copyOf(all);
  }

  /**
   * Spectra of one place.
   *
   * @param title of it
   * @param invented whether they are made up
   * @param stored what lies on the shelf, if it lies there
   * @param offered the spectra
   * @param notes what was taken without being stated, or why there are none
   */
  public record Group(
      String title,
      boolean invented,
      Optional<ShelfItem> stored,
      List<Offered> offered,
      List<String> notes) {}

  /**
   * One spectrum.
   *
   * @param key of it in an address
   * @param name of it
   */
  public record Offered(String key, String name) {}

  static SpectrumGroups of(List<Lights.Group> groups) {
    return new SpectrumGroups(
        groups.stream()
            .map(
                group ->
                    new Group(
                        group.title(),
                        group.invented(),
                        group.item(),
                        group.offered().stream()
                            .map(one -> new Offered(one.key(), one.light().name()))
                            .toList(),
                        group.notes()))
            .toList());
  }

  /** Whether there is nothing to choose. */
  public boolean empty() {
    return all.isEmpty();
  }

  /** Whether invented spectra can be chosen already. */
  public boolean hasInvented() {
    return all.stream().anyMatch(Group::invented);
  }
}
