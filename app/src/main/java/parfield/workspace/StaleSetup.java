package parfield.workspace;

import java.util.List;
import java.util.Locale;

/** A setup was saved over a revision that is no longer the current one: nothing was changed. */
public final class StaleSetup extends WorkspaceProblem {
  private static final long serialVersionUID = 1L;

  private final transient SetupRevision current;

  StaleSetup(long basedOn, SetupRevision current) {
    super(
        Kind.STALE,
        String.format(
            Locale.ROOT,
            "the setup was changed meanwhile: revision %d by %s; yours is based on %d",
            current.revision(),
            current.who(),
            basedOn),
        List.of("look at the current setup, then change it again; nothing was saved"));
    this.current = current;
  }

  /** Returns the setup as it is now. */
  public SetupRevision current() {
    return current;
  }
}
