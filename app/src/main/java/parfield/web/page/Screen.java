package parfield.web.page;

import io.javalin.config.RoutesConfig;

/** One screen, or a few that belong together: the addresses it answers. */
public interface Screen {
  /** Adds its addresses. */
  void register(RoutesConfig routes);
}
