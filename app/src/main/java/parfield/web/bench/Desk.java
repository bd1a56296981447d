package parfield.web.bench;

import java.util.Objects;
import parfield.web.page.Pages;
import parfield.web.work.Jobs;
import parfield.workspace.Workspace;

/**
 * What every screen works with.
 *
 * @param workspace what is stored
 * @param benches the stored benches, read
 * @param pages draws pages
 * @param jobs work in the background
 * @param version of the program
 */
public record Desk(Workspace workspace, Benches benches, Pages pages, Jobs jobs, String version) {
  public Desk {
    Objects.requireNonNull(workspace, "workspace");
    Objects.requireNonNull(benches, "benches");
    Objects.requireNonNull(pages, "pages");
    Objects.requireNonNull(jobs, "jobs");
    Objects.requireNonNull(version, "version");
  }

  /** A desk over a workspace, which its owner closes. */
  public static Desk over(Workspace workspace, String version) {
    return new Desk(workspace, new Benches(workspace, version), new Pages(), new Jobs(), version);
  }
}
