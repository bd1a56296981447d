package parfield.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The few script files of others that pages use, each by a name of ours; no other can be asked. */
public final class Libraries implements Screen {
  private static final String LIST = "/parfield/web/libraries.properties";

  private final Properties files = new Properties();

  /** Reads which files there are. */
  public Libraries() {
    try (InputStream in = Libraries.class.getResourceAsStream(LIST)) {
      files.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/libraries/{name}", this::send);
  }

  private void send(Context context) {
    String file = files.getProperty(context.pathParam("name"));
    if (file == null) {
      throw new NotFoundResponse("there is no such library");
    }
    String etag = '"' + file + '"';
    context.header("ETag", etag).header("Cache-Control", "no-cache");
    if (etag.equals(context.header("If-None-Match"))) {
      context.status(304);
      return;
    }
    InputStream in = Libraries.class.getResourceAsStream("/META-INF/resources/webjars/" + file);
    context.contentType("text/javascript; charset=utf-8").result(in);
  }
}
