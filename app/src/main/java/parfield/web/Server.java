package parfield.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.staticfiles.Location;
import java.util.List;
import java.util.Map;
import org.eclipse.jetty.server.handler.GracefulHandler;
import parfield.web.page.Libraries;
import parfield.web.page.Screen;

/** The running server. */
public final class Server implements AutoCloseable {
  /** Most bytes of one request. */
  private static final long MOST_BYTES = 64L << 20;

  /** Time for requests to finish when the server stops [ms]. */
  private static final long STOP = 5000;

  private final Javalin javalin;

  private Server(Javalin javalin) {
    this.javalin = javalin;
  }

  /**
   * Starts it.
   *
   * @param host address to listen on
   * @param port to listen on; 0 for a free one
   * @param screens what it answers
   */
  static Server start(String host, int port, List<Screen> screens) {
    Javalin javalin =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.http.maxRequestSize = MOST_BYTES;
              config.jetty.multipartConfig.maxFileSize(MOST_BYTES, SizeUnit.BYTES);
              config.jetty.multipartConfig.maxTotalRequestSize(MOST_BYTES, SizeUnit.BYTES);
              config.jetty.host = host;
              config.jetty.port = port;
              config.jetty.modifyServer(
                  server -> {
                    server.insertHandler(new GracefulHandler());
                    server.setStopTimeout(STOP);
                  });
              files(config, "/scripts");
              files(config, "/styles");
              new Libraries().register(config.routes);
              screens.forEach(screen -> screen.register(config.routes));
            });
    return new Server(javalin.start());
  }

  private static void files(JavalinConfig config, String path) {
    config.staticFiles.add(
        files -> {
          files.hostedPath = path;
          files.directory = "/parfield/web" + path;
          files.location = Location.CLASSPATH;
          files.headers = Map.of("Cache-Control", "no-cache");
        });
  }

  /** The port it listens on. */
  public int port() {
    return javalin.port();
  }

  @Override
  public void close() {
    javalin.stop();
  }
}
